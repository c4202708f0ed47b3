"""The shelf in the browser against values from outside: printed tables, textbook examples, other solvers."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Error, Page
from scipy import stats

from rimbook.bench.shelf_poisson import enough
from rimbook.bench.shelf_pool import pool
from tests.bench.shelf_oracle import SERVICE, few_places, lines, solved
from tests.browser.shelf_cases import open_shelf
from tests.checks.poisson_table import LEAST, MEANS, PRINTED
from tests.watch import watched_page

# The levels of drawers by their mean demand, as the working-out of a plan asks for them.
POOL = """([options, means, service]) => {
  const mean = (places) => places.reduce((sum, place) => sum + means[place], 0);
  const level = (item, places) => inside.enough(mean(places), service);
  return inside.pool(options, level);
}"""
COUNTED = "(options) => inside.pool(options, (item, places) => places.length)"


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        open_shelf(page)
        yield page
    assert faults == []


def ask(page: Page, name: str, *cases: Sequence[Any]) -> list[float]:
    found: list[float] = page.evaluate(f"(cases) => cases.map((each) => inside.{name}(...each))", [*cases])
    return found


@pytest.mark.parametrize("mean", PRINTED)
def test_the_printed_table(inside: Page, mean: int) -> None:
    """https://www.scribd.com/document/96601458/Poisson-Table, to four places."""
    printed = [float(each) for each in PRINTED[mean].split()]
    found = ask(inside, "atMost", *((count, mean) for count in range(len(printed))))
    assert [round(each, 4) for each in found] == printed


@pytest.mark.parametrize("service", LEAST)
def test_the_least_that_is_enough(inside: Page, service: float) -> None:
    """From the printed table; the first at 90 % is the edge: P(D ≤ 0) = 0.9048 for a mean of 0.1."""
    assert tuple(ask(inside, "enough", *((mean, service) for mean in MEANS))) == LEAST[service]


def test_the_edge_where_nothing_is_enough(inside: Page) -> None:
    """P(D = 0) = e^−m, so nothing is enough for 90 % up to m = −ln 0.9 and not beyond."""
    edge = -math.log(0.9)
    means = [0.0, 0.1, edge * (1 - 1e-9), edge * (1 + 1e-9)]
    assert ask(inside, "enough", *((mean, 0.9) for mean in means)) == [0, 0, 0, 1]


@pytest.mark.parametrize(
    ("hold", "lack", "mean", "least", "cost"),
    [
        # L. V. Snyder and Z.-J. M. Shen, Fundamentals of Supply Chain Theory, example 4.7
        (1, 4, 6, 8, 3.5701069457709416),
        # the newsvendor of the library stockpyl (MIT), its documentation
        (0.18, 0.70, 50, 56, 1.797235211809178),
    ],
)
def test_the_newsvendor(inside: Page, hold: float, lack: float, mean: float, least: int, cost: float) -> None:
    assert ask(inside, "enough", (mean, lack / (hold + lack))) == [least]
    short = ask(inside, "shortfall", *((count, mean) for count in (least - 1, least, least + 1)))
    below, found, above = (
        hold * (count - mean + each) + lack * each
        for count, each in zip((least - 1, least, least + 1), short, strict=True)
    )
    assert found == pytest.approx(cost, rel=1e-12)
    assert found <= min(below, above)


def test_the_newsvendor_with_too_little(inside: Page) -> None:
    """The same example 4.7 with 5 in place of 8."""
    (short,) = ask(inside, "shortfall", (5, 6))
    assert (5 - 6 + short) + 4 * short == pytest.approx(6.590296024616343, rel=1e-12)


def test_quantiles_against_another_implementation(inside: Page) -> None:
    """scipy.stats.poisson over a grid of means and services."""
    means = [10 ** (step / 4) for step in range(-36, 21)]
    services = (0.001, 0.1, 0.5, 0.8, 0.9, 0.95, 0.975, 0.995, 0.999999)
    grid = [(mean, service) for mean in means for service in services]
    counts = ask(inside, "enough", *grid)
    assert counts == [stats.poisson(mean).ppf(service) for mean, service in grid]
    pairs = [(count, mean) for (mean, _), count in zip(grid, counts, strict=True)]
    told = ask(inside, "atMost", *pairs)
    assert told == pytest.approx([stats.poisson(mean).cdf(count) for count, mean in pairs], rel=1e-9)
    just = ask(inside, "exactly", *pairs)
    assert just == pytest.approx([stats.poisson(mean).pmf(count) for count, mean in pairs], rel=1e-8)


def test_just_enough_is_enough(inside: Page) -> None:
    """The least S with P(D ≤ S) ≥ service, where the two are the same number."""
    for mean in (0.3, 1, 4.5, 60):
        count = math.ceil(mean)
        (service,) = ask(inside, "atMost", (count, mean))
        assert ask(inside, "enough", (mean, service), (mean, math.nextafter(service, 1))) == [
            count,
            count + 1,
        ]


def test_counts_beyond_the_table(inside: Page) -> None:
    assert ask(inside, "exactly", (-1, 2), (10_000, 2), (0, 0), (1, 0)) == [0, 0, 1, 0]
    assert ask(inside, "atMost", (-1, 2), (10_000, 2), (0, 1e5)) == [0, 1, 0]
    assert ask(inside, "shortfall", (-3, 2), (0, 1e5), (10_000, 2)) == [5, 1e5, 0]


@pytest.mark.parametrize(
    ("call", "told"),
    [
        ("inside.enough(1, 1)", "expected a number between 0 and 1"),
        ("inside.enough(1, NaN)", "expected a number between 0 and 1"),
        ("inside.atMost(1, -1)", "expected a number from 0"),
        ("inside.atMost(1, Infinity)", "expected a number from 0"),
        ("inside.atMost(1, NaN)", "expected a number from 0"),
        ("inside.pool([['a'], []], () => 0)", "no options"),
        ("inside.packsFor(3, [])", "no pack"),
        ("inside.takeRules({ format: 0 })", "another edition"),
        ("inside.takeRules(null)", "another edition"),
    ],
)
def test_what_cannot_be_is_refused(inside: Page, call: str, told: str) -> None:
    with pytest.raises(Error, match=told):
        inside.evaluate(call)


def test_sums_lose_nothing_on_the_way(inside: Page) -> None:
    """The same as math.fsum, which is correctly rounded; a plain sum of the first is 0."""
    chance = Random(5)
    cases = [[1e100, 1.0, -1e100], [0.1] * 10, [], [1.0, 2.0**-53, 2.0**-106], [1.0, 2.0**-53]]
    for _ in range(300):
        size = chance.choice((3, 20, 200))
        cases.append([chance.uniform(-1, 1) * 10 ** chance.randint(-12, 12) for _ in range(size)])
    assert ask(inside, "exactSum", *([case] for case in cases)) == [math.fsum(case) for case in cases]


@pytest.mark.parametrize("seed", range(25))
def test_the_fewest_drawers_against_another_solver(inside: Page, seed: int) -> None:
    """HiGHS, on places by chance."""
    options, means = few_places(Random(1000 + seed))
    found: Any = inside.evaluate(POOL, [options, means, SERVICE])
    assert (found["fewest"], found["least"]) == (True, True)
    dealt: dict[str, float] = {}
    for place, item in enumerate(found["items"]):
        assert item in options[place]
        dealt[item] = dealt.get(item, 0.0) + means[place]
    total = sum(enough(mean, SERVICE) for mean in dealt.values())
    assert (len(dealt), total) == solved(options, means)


# Steiner triple coverings: 3^n less the size of a largest cap set, 1, 2, 4, 9 … (https://oeis.org/A090245).
@pytest.mark.parametrize(("dimension", "least"), [(1, 1), (2, 5)])
def test_steiner_triples(inside: Page, dimension: int, least: int) -> None:
    found: Any = inside.evaluate("(options) => inside.pool(options, () => 0)", lines(dimension))
    assert (len(set(found["items"])), found["fewest"], found["least"]) == (least, True, True)


def test_searches_that_are_cut_off_end_where_those_of_the_build_end(inside: Page) -> None:
    """More places than a word of the machine has bits, and more steps than are taken."""
    chance = Random(7)
    names = [f"part-{number:02}" for number in range(40)]
    wide = [sorted(chance.sample(names, 4)) for _ in range(160)]
    loose = [["a"], ["b"], *[["a", "b"]] * 20]
    many = [["a"], ["b"], *[["a", "b"]] * 401]
    for options in (wide, loose, many):
        told: Any = inside.evaluate(COUNTED, options)
        found = pool(options, lambda _, places: len(places))
        assert told == {"items": list(found.items), "fewest": found.fewest, "least": found.least}
        assert not (found.fewest and found.least)


def test_more_places_hold_no_less(inside: Page) -> None:
    """A plain property: levels never fall when the mean or the service grows."""
    means = [step / 7 for step in range(200)]
    for service in (0.8, 0.95, 0.995):
        counts = ask(inside, "enough", *((mean, service) for mean in means))
        assert all(one <= other for one, other in pairwise(counts))
