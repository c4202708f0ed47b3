"""Packs, counts and words of the shelf in the browser, each as the build has it."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from types import SimpleNamespace
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.bench.shelf_files import read_used
from rimbook.bench.shelf_packs import packs_for
from rimbook.site import shelf_words
from rimbook.site.words import listed
from tests.browser.shelf_cases import open_shelf
from tests.watch import watched_page

PACKS = """(cases) => cases.map(([pieces, sizes, prices]) =>
  inside.packsFor(pieces, sizes, prices && Object.fromEntries(prices)))"""


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        open_shelf(page)
        yield page
    assert faults == []


def bought(page: Page, cases: list[Any]) -> list[Any]:
    return [[tuple(each) for each in found] for found in page.evaluate(PACKS, cases)]


def test_packs(inside: Page) -> None:
    """Worked out by hand, as in the test of the build."""
    prices = [[1, 0.5], [25, 6.0], [100, 20.0]]
    assert bought(
        inside,
        [
            [47, [1, 25, 100], None],
            [47, [25, 100], None],
            [47, [1, 25, 100], prices],
            [47, [1, 25], [[1, 0.1], [25, 6.0]]],
            [47, [1, 25], [[25, 6.0]]],
            [0, [1], None],
        ],
    ) == [[(25, 1), (1, 22)], [(25, 2)], [(25, 2)], [(1, 47)], [(25, 2)], []]


@pytest.mark.parametrize("money", ["none", "cents", "fractions"])
def test_packs_by_chance(inside: Page, money: str) -> None:
    """The same packs, also where two purchases cost the same or a sum has lost a little on the way."""
    chance = Random(11)
    cases: list[Any] = []
    for _ in range(200):
        sizes = chance.sample((1, 2, 3, 5, 8, 10, 12, 25, 50, 100), chance.randint(1, 5))
        prices: dict[int, float] | None = None
        if money == "cents":
            prices = {size: chance.randint(1, 30 + 20 * size) for size in sizes}
        elif money == "fractions":
            prices = {size: round(size * chance.choice((0.1, 0.3, 0.7)), 2) for size in sizes}
        cases.append((chance.randint(0, 400), sizes, prices))
    cases += [(1_000_003, [1, 100], None), (20_001, [7, 11], None)] if money == "none" else []
    told = bought(inside, [[pieces, sizes, prices and [*prices.items()]] for pieces, sizes, prices in cases])
    assert told == [[*packs_for(*case)] for case in cases]


GOOD = (
    "part,count,weeks\nbarrel-20,4,26\nbarrel-20,-1,\nbarrel-20,1,0\n",
    "part\n",
    "",
    "part,count,weeks\nplover-crown,20,52\nnix,3,\nbad row\n",
    "\ufeffPart;Count;Weeks\r\nbarrel-21-short;7;10,5\r\n\r\nBarrel-21-SHORT; 3 ;\r\n",
    "part\tcount\nplover-crown\t5\n",
    "weeks,count,part\n1.5,1,a\n,0,b-2\n5200,1000000,c\n5200.1,1,d\n1,1000001,e\n1,1.0,f\n1,,g\n12345,1,h\n",
    "part,count\n\u0663,\u0663\nx,\u0663\n-a,1\na--b,1\n,1\n",
    'part,count\n"barrel-20",4\n"a,b",1\n"say ""no""",1\n',
    "count,weeks\n1,2\n",
    "name,price\na,1\n",
    "part,count,part\na,1,b\n",
)
"""Tables that both sides read alike, row by row: good rows and bad ones."""


@pytest.mark.parametrize("text", GOOD)
def test_counts_are_read_as_the_build_reads_them(inside: Page, text: str) -> None:
    used, faults = read_used(text)
    told: Any = inside.evaluate("(text) => inside.readUsed(text)", text)
    assert told["used"] == [{"part": each.part, "count": each.count, "years": each.years} for each in used]
    assert [each["row"] for each in told["faults"]] == [each.row for each in faults]
    for own, other in zip(told["faults"], faults, strict=True):
        assert own["message"].translate(QUOTES) == other.message.translate(QUOTES)


QUOTES = str.maketrans({"“": "'", "”": "'", '"': "'"})
"""The browser puts what was typed into “ ”, a terminal into plain quotes."""


def test_a_broken_quote_costs_a_row_and_no_more(inside: Page) -> None:
    told: Any = inside.evaluate("(text) => inside.readUsed(text)", 'part,count\na,1\nb,x"y\nc,2\n')
    assert [each["part"] for each in told["used"]] == ["a", "c"]
    assert [each["row"] for each in told["faults"]] == [3]


def test_too_many_rows_are_told(inside: Page) -> None:
    text = "part,count\n" + "a,1\n" * 5001
    told: Any = inside.evaluate("(text) => inside.readUsed(text)", text)
    used, faults = read_used(text)
    assert len(told["used"]) == len(used) == 4999
    assert [each["row"] for each in told["faults"]] == [each.row for each in faults] == [5001]


def test_names_are_in_the_order_of_the_build(inside: Page) -> None:
    """By letter, large or small; characters beyond the first plane come last, as their numbers do."""
    ordered = ["Elan", "elan 2", "plover", "Straße", "Zander", "ÀB", "Élan", "élan", "\uff30b", "\U0001d513a"]
    names = {str(at): name for at, name in enumerate(reversed(ordered))}
    asked = [SimpleNamespace(frame=frame) for frame in names]
    drawer: Any = SimpleNamespace(filled=SimpleNamespace(asked=asked))
    told = inside.evaluate(
        """([frames, names]) =>
          inside.serves({ filled: { asked: frames.map((frame) => ({ frame })) } }, names)""",
        [[*names], names],
    )
    assert told == shelf_words.serves(drawer, names) == listed(ordered)


def test_numbers_in_words(inside: Page) -> None:
    """Also where the last digit is half way between two: it goes to the even one."""
    chance = Random(3)
    values = [eighth / 16 for eighth in range(400)] + [chance.uniform(0, 200) for _ in range(2000)]
    values += [0.0, 0.0005, 0.05, 0.0999, 0.1, 9.95, 9.995, 10.05, 99.95, 1e-9, 12345.25]
    assert inside.evaluate("(all) => all.map(inside.yearly)", values) == [
        shelf_words.yearly(each) for each in values
    ]
    assert inside.evaluate("(all) => all.map(inside.weeks)", values) == [
        shelf_words.weeks(each) for each in values
    ]
    chances = [each / 1600 for each in range(1601)] + [chance.random() for _ in range(2000)]
    chances += [0.9994999, 0.9995, 0.99950001, 0.9999999999]
    assert inside.evaluate("(all) => all.map(inside.percent)", chances) == [
        shelf_words.percent(each) for each in chances
    ]
