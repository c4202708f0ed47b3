"""The price list and the shelf: good rows are kept, bad ones are named, nothing absurd gets in."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.small_site import look_inside
from tests.watch import watched_page

GOOD = """kind,part,count,price,currency,seller
sold,barrel-21-short,25,9.50,EUR,Tidewater Supply
sold,plover-set,1,"18,90",EUR,Tidewater Supply
shelf,barrel-27-short,12,0.80,EUR,
shelf,twin-21-even-70,2,,,
"""
SETS = {"plover-set": {"barrel-21-short": 40, "plover-crown": 1}}


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "buy_prices": ["readPriceList", "writePriceList", "readRow"],
                "buy_list": ["offersOf", "shelfOf"],
            },
        )
        yield page
    assert faults == []


def read(page: Page, text: str, currency: str = "EUR") -> Any:
    return page.evaluate("(all) => inside.readPriceList(...all)", [text, currency])


def faults_of(page: Page, *rows: str) -> list[tuple[int, str]]:
    text = "\n".join(["kind,part,count,price,currency,seller", *rows])
    return [(fault["row"], fault["message"]) for fault in read(page, text)["faults"]]


def test_a_list_is_read(inside: Page) -> None:
    found = read(inside, GOOD)
    assert found["faults"] == []
    assert found["list"] == {
        "currency": "EUR",
        "sold": [
            {"part": "barrel-21-short", "count": 25, "price": 950, "seller": "Tidewater Supply"},
            {"part": "plover-set", "count": 1, "price": 1890, "seller": "Tidewater Supply"},
        ],
        "shelf": [
            {"part": "barrel-27-short", "count": 12, "price": 80},
            {"part": "twin-21-even-70", "count": 2, "price": None},
        ],
    }


def test_a_list_becomes_offers_and_a_shelf(inside: Page) -> None:
    found = read(inside, GOOD.replace("plover-set,1", "plover-set,2"))["list"]
    assert inside.evaluate("(all) => inside.offersOf(...all)", [found, SETS]) == [
        {"id": "0", "price": 950, "holds": {"barrel-21-short": 25}},
        {"id": "1", "price": 1890, "holds": {"barrel-21-short": 80, "plover-crown": 2}},
    ]
    assert inside.evaluate("(list) => inside.shelfOf(list)", found) == {
        "barrel-27-short": 12,
        "twin-21-even-70": 2,
    }


@pytest.mark.parametrize("currency", ["EUR", "JPY", "KWD"])
def test_what_is_exported_comes_back(inside: Page, currency: str) -> None:
    given = {
        "currency": currency,
        "sold": [
            {"part": "a", "count": 1, "price": 5, "seller": "=HYPERLINK(1)"},
            {"part": "b-2", "count": 100, "price": 123456, "seller": 'O"Malley, sons\r\nand daughters'},
        ],
        "shelf": [{"part": "a", "count": 0, "price": None}, {"part": "c", "count": 7, "price": 1250}],
    }
    text = inside.evaluate("(list) => inside.writePriceList(list)", given)
    assert ",=HYPERLINK" not in text
    assert read(inside, text, "CHF") == {"list": given, "settings": [], "faults": []}


def test_a_list_of_two_columns_is_enough(inside: Page) -> None:
    found = read(inside, "Part;Count;Price\nbarrel-21-short;1;0,60\n", "CHF")
    assert found["faults"] == []
    assert found["list"]["currency"] == "CHF"
    assert found["list"]["sold"] == [{"part": "barrel-21-short", "count": 1, "price": 60, "seller": ""}]


@pytest.mark.parametrize(
    ("row", "word"),
    [
        ("sold,a,1,-5,EUR,", "below zero"),
        ("sold,a,-1,5,EUR,", "“-1” is below zero"),
        ("sold,a,0,5,EUR,", "packs of none"),
        ("sold,a,1.5,5,EUR,", "no count"),
        ("sold,a,99999,5,EUR,", "absurd"),
        ("sold,a,1,99999999999,EUR,", "more than any price"),
        ("sold,a,1,,EUR,", "price of a is missing"),
        ("sold,,1,5,EUR,", "part is missing"),
        ("sold,<b>,1,5,EUR,", "no id of a part"),
        ("gift,a,1,5,EUR,", "expected sold or shelf"),
        ("sold,a,1,5,EURO,", "“EURO” is no currency"),
        ("sold,a,1,5,USD,", "in USD; expected EUR"),
        ("sold,a,1,5,EUR", "5 cells; expected 6"),
        ("sold,x,2,6,EUR,", "about the same as row 2"),
        ('sold,a,1,"5"0,EUR,', "closing quote"),
    ],
)
def test_a_bad_row_is_named_and_the_good_ones_stay(inside: Page, row: str, word: str) -> None:
    text = "\n".join(["kind,part,count,price,currency,seller", "sold,x,2,5,EUR,", row, "sold,y,1,5,EUR,"])
    found = read(inside, text)
    ((number, message),) = [(fault["row"], fault["message"]) for fault in found["faults"]]
    assert number == 3
    assert word in message
    assert [each["part"] for each in found["list"]["sold"]] == ["x", "y"]


def test_all_bad_rows_are_named_in_order(inside: Page) -> None:
    found = faults_of(
        inside, "sold,a,1,-1,EUR,", "sold", 'sold,b,"1"2,1,EUR,', "sold,c,1,5,EUR,", "shelf,d,x,,,"
    )
    assert [row for row, _ in found] == [2, 3, 4, 6]


def test_the_first_currency_holds_for_rows_above_it(inside: Page) -> None:
    found = read(inside, "part,count,price,currency\na,1,500,\nb,1,700,JPY\n", "EUR")
    assert found["list"]["currency"] == "JPY"
    assert [each["price"] for each in found["list"]["sold"]] == [500, 700]


@pytest.mark.parametrize("text", ["", "1,2,3\n4,5,6", "price,currency\n1,EUR"])
def test_a_table_without_its_heading_is_refused(inside: Page, text: str) -> None:
    (fault,) = read(inside, text)["faults"]
    assert fault["row"] == 1
    assert "expected kind, part, count, price, currency, seller" in fault["message"]
