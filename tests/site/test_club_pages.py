"""The page of a club: what stands beside a tension that a frame was not made for."""

from __future__ import annotations

from dataclasses import replace

import pytest
from lxml import html

from rimbook.book.model import ClubFrame, TensionLimit
from tests.site.sample import demo_book, plain, published


def frames(tension: TensionLimit | None) -> html.HtmlElement:
    """The frames of a club that strings the Plover 76, which is printed 28 lb, at this tension."""
    book = demo_book()
    assert book.frames["plover-76"].tension_limit == TensionLimit(28, "lb")
    club = replace(book.clubs["weir-lane"], frames=(ClubFrame("plover-76", tension=tension),))
    page = published(replace(book, clubs={club.slug: club}))["clubs/weir-lane/index.html"]
    (found,) = html.fromstring(plain(page)).xpath("//section[@id='frames']")
    return found


def row(tension: TensionLimit | None) -> str:
    (found,) = frames(tension).xpath(".//tbody/tr")
    return " ".join(found.text_content().split())


def test_a_tension_above_the_printed_limit_has_its_caution_in_the_row() -> None:
    said = row(TensionLimit(240, "lb"))
    assert "240 lb" in said
    assert "757.1 % above the 28 lb printed on the frame. The maker's limit comes first" in said


def test_the_frames_above_their_limit_are_named_before_the_table() -> None:
    (above,) = frames(TensionLimit(240, "lb")).xpath("./p[@class='rb-note']")
    assert "Plover 76 (2024)" in above.text_content()
    assert frames(TensionLimit(24, "lb")).xpath("./p[@class='rb-note']") == []


@pytest.mark.parametrize(
    ("tension", "over"),
    [
        (None, False),
        (TensionLimit(28, "lb"), False),
        (TensionLimit(12.7, "kg"), False),
        (TensionLimit(12.71, "kg"), True),
        (TensionLimit(125, "N"), True),
    ],
)
def test_units_are_compared_as_forces(tension: TensionLimit | None, over: bool) -> None:
    assert ("above the 28 lb printed on the frame" in row(tension)) is over
