"""A measured hole as people type it: commas, units, several strings, and slips that are named."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.site.fits_data import fits_data
from tests.browser.small_site import look_inside
from tests.watch import watched_page

MOST = fits_data({})["most"]


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"fits_hole": ["readHole"], "millimetres": ["readMm"]})
        yield page
    assert faults == []


def read_hole(page: Page, typed: dict[str, str]) -> Any:
    return page.evaluate("([typed, most]) => inside.readHole(typed, most)", [typed, MOST])


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("2.1", 2.1),
        ("2,1", 2.1),
        (" 2,10 mm ", 2.1),
        ("2.1mm", 2.1),
        ("2.", 2.0),
        (".5", 0.5),
        ("２．１", 2.1),
        ("−2.1", -2.1),
        ("0", 0.0),
        ("", None),
        ("2.1.0", None),
        ("2 1", None),
        ("1.234,5", None),
        ("2.1 in", None),
        ("1e1", None),
        ("Infinity", None),
        ("0x2", None),
        (",", None),
    ],
)
def test_a_length_is_read_as_people_type_it(inside: Page, text: str, mm: float | None) -> None:
    read = inside.evaluate(
        "(text) => { const mm = inside.readMm(text); return Number.isNaN(mm) ? null : mm; }", text
    )
    assert read == mm


@pytest.mark.parametrize(
    ("strings", "string", "read"),
    [
        ("1", "0.68", [0.68]),
        ("2", "0,68", [0.68, 0.68]),
        ("2", "0,70 + 0,62", [0.62, 0.7]),
        ("2", "0,62, 0,70", [0.62, 0.7]),
        ("3", "0.62/0.70 mm", [0.62, 0.7, 0.7]),
        ("", "0.62 0.70", [0.62, 0.7]),
        ("", "", None),
        ("1", "", None),
        ("0", "", []),
        ("0", "0.7", []),
    ],
)
def test_string_diameters_are_read(inside: Page, strings: str, string: str, read: list[float] | None) -> None:
    hole = {"bore": "", "depth": "", "strings": strings, "string": string, "step": ""}
    answer = read_hole(inside, hole)
    assert answer["problems"] == {}
    assert answer["wanted"]["strings"] == read


@pytest.mark.parametrize(
    ("field", "text", "words"),
    [
        ("bore", "two", "“two” is no bore: expected millimetres, such as 2.1."),
        ("bore", "21", "expected more than 0 and at most 15 mm. Did you mean 2.1?"),
        ("bore", "-2.1", "expected more than 0 and at most 15 mm. Did you mean 2.1?"),
        ("depth", "940", "cannot be “940”: expected more than 0 and at most 60 mm. Did you mean 9.4?"),
        ("depth", "0", "The rim depth cannot be “0”: expected more than 0 and at most 60 mm."),
        ("string", "0.62 + x", "“x” is no string diameter"),
        ("string", "0.62,0.70", "“0.62,0.70” is no string diameter"),
        ("strings", "two", "The number of strings cannot be “two”: expected a whole number from 0 to 8."),
        ("step", "2", "at most 1 mm. Did you mean 0.2?"),
        ("bore", "<b>1</b>", "“<b>1</b>” is no bore"),
        ("bore", "9" * 40, "expected more than 0 and at most 15 mm."),
    ],
)  # fmt: skip
def test_a_wrong_field_is_named_with_what_was_expected(
    inside: Page, field: str, text: str, words: str
) -> None:
    hole = {"bore": "2.1", "depth": "9.4", "strings": "2", "string": "0.7", "step": "0.05", field: text}
    answer = read_hole(inside, hole)
    assert set(answer["problems"]) == {field}
    assert words in answer["problems"][field]
