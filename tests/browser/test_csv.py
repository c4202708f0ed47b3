"""Comma-separated text, after RFC 4180, and what people and spreadsheets make of it."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.small_site import look_inside
from tests.watch import watched_page

PLAIN = [["aaa", "bbb", "ccc"], ["zzz", "yyy", "xxx"]]


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"csv": ["readCsv", "writeCsv"]})
        yield page
    assert faults == []


def read(page: Page, text: str) -> Any:
    return page.evaluate("(text) => inside.readCsv(text)", text)


def cells(page: Page, text: str) -> list[list[str]]:
    found = read(page, text)
    assert found["faults"] == []
    return [row["cells"] for row in found["rows"]]


def write(page: Page, rows: list[list[str]]) -> str:
    text: str = page.evaluate("(rows) => inside.writeCsv(rows)", rows)
    return text


@pytest.mark.parametrize(
    ("text", "rows"),
    [
        ("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", PLAIN),
        ("aaa,bbb,ccc\r\nzzz,yyy,xxx", PLAIN),
        (
            "field_name,field_name,field_name\r\naaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
            [["field_name"] * 3, *PLAIN],
        ),
        ("aaa,bbb,ccc", PLAIN[:1]),
        ('"aaa","bbb","ccc"\r\nzzz,yyy,xxx', PLAIN),
        ('"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx', [["aaa", "b\r\nbb", "ccc"], PLAIN[1]]),
        ('"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]),
    ],
)
def test_the_examples_of_rfc_4180(inside: Page, text: str, rows: list[list[str]]) -> None:
    """RFC 4180, section 2, numbers 1 to 7 (Y. Shafranovich, 2005)."""
    assert cells(inside, text) == rows


@pytest.mark.parametrize(
    ("text", "rows"),
    [
        ("", []),
        ("\r\n\r\n", []),
        ("\ufeffa,b\n1,2\n", [["a", "b"], ["1", "2"]]),
        ("a;b\n1,5;2", [["a", "b"], ["1,5", "2"]]),
        ("a\tb\n1,5\t2", [["a", "b"], ["1,5", "2"]]),
        ('"a;x",b\n1,2', [["a;x", "b"], ["1", "2"]]),
        ("a,b\r1,2", [["a", "b"], ["1", "2"]]),
        (" a , b ", [[" a ", " b "]]),
        ("a,,\n,,c", [["a", "", ""], ["", "", "c"]]),
        ('""', []),
        ("a,b,", [["a", "b", ""]]),
    ],
)
def test_what_is_understood_beyond_it(inside: Page, text: str, rows: list[list[str]]) -> None:
    assert cells(inside, text) == rows


def test_a_faulty_row_is_named_and_the_others_are_kept(inside: Page) -> None:
    found = read(inside, 'a,b\n1,"2"x\n3,4"4\n5,6\n7,"8\n9,10')
    assert [(fault["row"], fault["message"].split(":")[0]) for fault in found["faults"]] == [
        (2, "Something follows a closing quote"),
        (3, "A quote stands inside a cell that does not begin with one"),
        (5, "A quote is opened and never closed."),
    ]
    assert found["rows"] == [
        {"row": 1, "cells": ["a", "b"]},
        {"row": 4, "cells": ["5", "6"]},
        {"row": 6, "cells": ["9", "10"]},
    ]


def test_rows_count_as_in_a_spreadsheet(inside: Page) -> None:
    found = read(inside, 'a\r\n"1\r\n1"\r\n\r\n2\r\n')
    assert [row["row"] for row in found["rows"]] == [1, 2, 4]


def test_too_much_is_cut_off_with_a_word(inside: Page) -> None:
    long = read(inside, "x" * 1_000_001)
    assert "longer than 1000000 characters" in long["faults"][0]["message"]
    many = read(inside, "a\n" * 6000)
    assert len(many["rows"]) == 5000
    assert many["faults"] == [
        {"row": 5001, "message": "There are more than 5000 rows; the rest is left out."}
    ]


@pytest.mark.parametrize("cell", ["=1+2", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "＝1"])
def test_no_cell_becomes_a_formula(inside: Page, cell: str) -> None:
    """OWASP, CSV Injection: cells that begin with = + - @, tab or carriage return."""
    text = write(inside, [["part", cell]])
    (row,) = csv.reader(io.StringIO(text, newline=""))
    assert row == ["part", f"'{cell}"]
    assert cells(inside, text) == [["part", cell]]


def test_python_reads_what_is_written_and_the_other_way_round(inside: Page) -> None:
    random = Random(4180)
    alphabet = ["a", "B", "1", "é", "🏸", ",", ";", '"', '""', "\r\n", "\n", "\t", " ", "'", "x.y"]
    for _ in range(150):
        width = random.randint(2, 4)
        rows = [
            ["k", *("".join(random.choices(alphabet, k=random.randint(0, 5))) for _ in range(width))]
            for _ in range(random.randint(1, 5))
        ]
        guarded = [
            ["'" + cell if cell.lstrip("'")[:1] in ("\t", "\r") else cell for cell in row] for row in rows
        ]
        assert list(csv.reader(io.StringIO(write(inside, rows), newline=""), strict=True)) == guarded
        assert cells(inside, write(inside, rows)) == rows
        other = io.StringIO(newline="")
        csv.writer(other, quoting=csv.QUOTE_ALL).writerows(guarded)
        assert cells(inside, other.getvalue()) == rows
