"""From marks to a purchase, on a frame with three split places, one of them in a strip sold only in a set."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.sheet_frames import small_frame
from tests.browser.small_site import look_inside
from tests.watch import watched_page

PRICES = """kind,part,count,price,currency,seller
sold,post-a,1,0.60,EUR,
sold,post-a,25,9.00,EUR,
sold,post-b,1,0.20,EUR,
sold,wide-a,5,4.00,EUR,
sold,kit-a,1,14.50,EUR,
shelf,pair-a,1,,EUR,
"""
WAY = """([frame, marks, prices, accept, way]) => {
  const { EMPTY, mark, work, judge, needsOf, solve, picks, refreshes, withRefreshes } = inside;
  const { readPriceList, offersOf, shelfOf } = inside;
  let sheet = work(EMPTY, way, null);
  for (const [seen, addresses] of Object.entries(marks)) sheet = mark(sheet, addresses, { seen, turns: 0 });
  const { verdicts } = judge(frame, sheet);
  const { list } = readPriceList(prices, "EUR");
  const needs = needsOf(frame, verdicts, accept);
  const plan = solve({ needs, offers: offersOf(list, frame.sets), shelf: shelfOf(list) });
  const refreshed = refreshes(frame, verdicts, plan.cheapest.left, accept);
  return {
    needs,
    plan,
    bought: plan.cheapest.lines.map(({ offer, times }) => {
      const { part, count } = list.sold[Number(offer)];
      return [part, count, times];
    }),
    picks: picks(needs, plan.cheapest.uses),
    refreshes: refreshed,
    after: withRefreshes(verdicts, refreshed).flatMap(({ act, piece }) => (act === "replace" ? [piece] : [])),
  };
}"""


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "sheet_state": ["EMPTY", "mark", "work"],
                "sheet_verdict": ["judge"],
                "buy_needs": ["needsOf", "picks", "refreshes", "withRefreshes"],
                "buy_solver": ["solve"],
                "buy_prices": ["readPriceList"],
                "buy_list": ["offersOf", "shelfOf"],
            },
        )
        yield page
    assert faults == []


def repair(
    page: Page, accept: str = "serves", way: str = "unhurried", prices: str = PRICES, **marks: Any
) -> Any:
    return page.evaluate(WAY, [small_frame(), marks, prices, accept, way])


def test_a_strip_that_comes_only_in_a_set_forces_the_set(inside: Page) -> None:
    """The set also holds the two single posts that are split, so nothing else is bought."""
    found = repair(inside, split=["L1", "R4", "R5"])
    assert found["bought"] == [["kit-a", 1, 1]]
    plan = found["plan"]
    assert plan["proven"]
    assert plan["cheapest"]["price"] == 1450
    (line,) = plan["cheapest"]["lines"]
    assert line["forcedBy"] == ["crown-a"]
    assert sorted(line["serves"]) == ["crown-a", "post-a"]
    assert plan["cheapest"]["left"] == {"post-a": 2, "wide-a": 2}
    assert found["picks"] == [
        {"piece": 0, "part": "crown-a"},
        {"piece": 2, "part": "post-a"},
        {"piece": 3, "part": "post-a"},
    ]


def test_spare_parts_of_the_set_refresh_what_is_worn(inside: Page) -> None:
    """A worn part in a shared hole would stay, but now a new one costs only the work."""
    found = repair(inside, split=["L1", "R4", "R5"], grooved=["R3", "L3", "R6"])
    assert found["bought"] == [["kit-a", 1, 1]]
    assert found["refreshes"] == [{"piece": 1, "part": "wide-a"}, {"piece": 7, "part": "wide-a"}]
    assert found["after"] == [0, 1, 2, 3, 7]


def test_against_the_clock_they_refresh_what_would_be_turned(inside: Page) -> None:
    found = repair(inside, way="against the clock", split=["L1", "R4"], grooved=["R5", "L5"])
    assert found["refreshes"] == [{"piece": 3, "part": "post-a"}, {"piece": 5, "part": "post-a"}]


def test_the_shelf_comes_free(inside: Page) -> None:
    found = repair(inside, split=["R6"])
    assert found["bought"] == []
    assert found["plan"]["cheapest"]["taken"] == {"pair-a": 1}
    assert found["picks"] == [{"piece": 4, "part": "pair-a"}]


@pytest.mark.parametrize(
    ("accept", "bought"),
    [("own", [["post-a", 1, 2]]), ("serves", [["post-a", 1, 2]]), ("may serve", [["post-b", 1, 2]])],
)
def test_substitutes_count_only_as_far_as_they_are_accepted(inside: Page, accept: str, bought: Any) -> None:
    assert repair(inside, accept, split=["R4", "R5"])["bought"] == bought


def test_a_place_whose_part_nobody_knows_takes_what_serves(inside: Page) -> None:
    assert repair(inside, "serves", split=["L4"])["picks"] == [{"piece": 6, "part": "post-a"}]
    own = repair(inside, "own", split=["L4", "R4"])
    assert own["plan"]["unmet"] == [{"need": "piece 6", "pieces": 1, "why": "nothing serves"}]
    assert own["picks"] == [{"piece": 2, "part": "post-a"}, {"piece": 6, "part": None}]


def test_what_nothing_repairs_is_named_with_the_reason(inside: Page) -> None:
    without = "\n".join(line for line in PRICES.splitlines() if "kit-a" not in line)
    found = repair(inside, prices=without, split=["L1", "R4"])
    assert found["plan"]["unmet"] == [{"need": "crown-a", "pieces": 1, "why": "not to be had"}]
    assert found["bought"] == [["post-a", 1, 1]]
    few = "kind,part,count,price\nshelf,post-a,1,\n"
    short = repair(inside, prices=few, split=["R4", "R5"])["plan"]
    assert short["unmet"] == [{"need": "post-a", "pieces": 1, "why": "too few left"}]


def test_an_unmarked_frame_needs_nothing(inside: Page) -> None:
    found = repair(inside)
    assert found["needs"] == []
    assert found["plan"]["cheapest"]["price"] == 0
    assert found["plan"]["proven"]
