"""Amounts of money: minor units, what people type, rounding, and shares that add up."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from math import floor
from pathlib import Path
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.small_site import look_inside
from tests.watch import watched_page

ISO_4217 = Path(__file__).parents[1] / "cases" / "iso4217.txt"


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "currencies": ["CURRENCIES", "digitsOf"],
                "money": ["readAmount", "written", "shown", "share", "split", "MOST_AMOUNT"],
            },
        )
        yield page
    assert faults == []


def read(page: Page, typed: str, currency: str = "EUR") -> Any:
    return page.evaluate("([typed, currency]) => inside.readAmount(typed, currency)", [typed, currency])


def test_minor_units_are_those_of_iso_4217(inside: Page) -> None:
    lines = [line.split() for line in ISO_4217.read_text("utf-8").splitlines() if not line.startswith("#")]
    listed = {code: int(digits) for code, digits in lines}
    assert len(listed) == 165
    assert (
        inside.evaluate("Object.fromEntries(inside.CURRENCIES.map((code) => [code, inside.digitsOf(code)]))")
        == listed
    )
    assert inside.evaluate("['XAU', 'XXX', 'eur', ''].map(inside.digitsOf)") == [None] * 4


@pytest.mark.parametrize(
    ("typed", "currency", "amount"),
    [
        ("12.50", "EUR", 1250),
        ("12,5", "EUR", 1250),
        ("12", "EUR", 1200),
        ("0", "EUR", 0),
        (" € 12,50 ", "EUR", 1250),
        ("12.50 eur", "EUR", 1250),
        ("1,250.00", "EUR", 125000),
        ("1.250,00", "EUR", 125000),
        ("1 250", "EUR", 125000),
        ("1\u202f250,5", "EUR", 125050),
        ("1’250.50", "CHF", 125050),
        ("1,234,567", "EUR", 123456700),
        ("12.5000", "EUR", 1250),
        ("1250", "JPY", 1250),
        ("1,250,000", "JPY", 1250000),
        ("1.250", "KWD", 1250),
        ("1.25", "KWD", 1250),
        ("1,250.5", "KWD", 1250500),
        ("１２．５", "EUR", 1250),
    ],
)
def test_an_amount_is_read(inside: Page, typed: str, currency: str, amount: int) -> None:
    assert read(inside, typed, currency) == {"amount": amount}


@pytest.mark.parametrize(
    ("typed", "currency", "word"),
    [
        ("", "EUR", "no amount"),
        ("free", "EUR", "no amount"),
        ("1.2.3", "EUR", "no amount"),
        ("12,34,56", "EUR", "no amount"),
        ("1e5", "EUR", "no amount"),
        ("-1", "EUR", "below zero"),
        ("−0.01", "EUR", "below zero"),
        ("1,250", "EUR", "two ways: write 1250 or 1.00"),
        ("1.250", "EUR", "two ways"),
        ("1,250", "KWD", "two ways"),
        ("1.250", "JPY", "two ways"),
        ("0.125", "EUR", "two ways"),
        ("0.1255", "EUR", "EUR has 2"),
        ("12.5", "JPY", "JPY has none"),
        ("99999999999", "EUR", "more than any price"),
        ("5", "EURO", "no currency"),
    ],
)
def test_what_is_no_amount_is_told_in_words(inside: Page, typed: str, currency: str, word: str) -> None:
    assert word in read(inside, typed, currency)["problem"]


@pytest.mark.parametrize("currency", ["EUR", "JPY", "KWD", "CLF"])
def test_what_is_written_is_read_again(inside: Page, currency: str) -> None:
    amounts = [0, 1, 9, 10, 99, 100, 999, 1000, 1234, 12345, 999999, 1_000_000_000]
    found = inside.evaluate(
        "([all, code]) => all.map((each) => inside.readAmount(inside.written(each, code), code).amount)",
        [amounts, currency],
    )
    assert found == amounts


def test_amounts_are_shown_with_the_digits_of_iso_4217(inside: Page) -> None:
    def shown(amount: int, currency: str, locale: str) -> str:
        text: str = inside.evaluate("(all) => inside.shown(...all)", [amount, currency, locale])
        return text.replace("\u00a0", " ").replace("\u202f", " ")

    assert shown(123456, "EUR", "en") == "€1,234.56"
    assert shown(123456, "EUR", "de") == "1.234,56 €"
    assert shown(123456, "JPY", "en") == "¥123,456"
    assert shown(123456, "KWD", "en") == "KWD 123.456"
    assert shown(123456, "HUF", "en") == "HUF 1,234.56"
    assert shown(-5, "EUR", "en") == "-€0.05"
    assert shown(123456, "EUR", "not a locale") == "EUR 1234.56"


@pytest.mark.parametrize(
    ("product", "away", "even"),
    [
        ((5, 1, 2), 3, 2),
        ((3, 1, 2), 2, 2),
        ((1, 1, 2), 1, 0),
        ((-5, 1, 2), -3, -2),
        ((7, 1, 4), 2, 2),
        ((5, 1, 4), 1, 1),
    ],
)
def test_half_a_unit_goes_where_it_is_sent(
    inside: Page, product: tuple[int, int, int], away: int, even: int
) -> None:
    """IEEE 754-2019, 4.3.1: roundTiesToAway and roundTiesToEven."""
    ways = inside.evaluate(
        "(all) => ['away', 'even'].map((half) => inside.share(...all, half))", list(product)
    )
    assert ways == [away, even]


def test_shares_are_exact_and_add_up(inside: Page) -> None:
    random = Random(4217)
    products = [
        (random.randint(0, 10**9), random.randint(0, 10**6), random.randint(1, 10**5)) for _ in range(500)
    ]
    found = inside.evaluate("(all) => all.map((each) => inside.share(...each))", products)
    assert found == [floor(Fraction(a * b, c) + Fraction(1, 2)) for a, b, c in products]
    splits = [(random.randint(0, 10**6), [random.randint(1, 999) for _ in range(9)]) for _ in range(200)]
    shares = inside.evaluate("(all) => all.map(([amount, weights]) => inside.split(amount, weights))", splits)
    for (amount, weights), parts in zip(splits, shares, strict=True):
        assert sum(parts) == amount
        fair = [Fraction(amount * weight, sum(weights)) for weight in weights]
        assert all(abs(part - share) <= 1 for part, share in zip(parts, fair, strict=True))
