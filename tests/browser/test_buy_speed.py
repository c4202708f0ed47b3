"""A purchase for a frame with 100 holes out of 60 offers is there before a finger is lifted."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.buy_cases import Problem, cover_case, shop_case
from tests.browser.small_site import look_inside
from tests.watch import watched_page

MOST_MS = 50
SOLVE = """(problems) => problems.map((problem) => {
  let least = Infinity;
  let plan;
  for (let again = 0; again < 3; again++) {
    const start = performance.now();
    plan = inside.solve(problem);
    least = Math.min(least, performance.now() - start);
  }
  return [least, plan.proven && plan.runnerUpProven];
})"""


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"buy_solver": ["solve"]})
        yield page
    assert faults == []


@pytest.mark.parametrize(("kind", "most"), [("shop", 0.98), ("dense", 0.95)])
def test_a_plan_takes_at_most_50_ms(inside: Page, kind: str, most: float) -> None:
    """Nearly always: a few are hard by nature, and then the page shows that it is still at work.

    The least of three tries counts, since other programs run on the same machine.
    """
    random = Random(100)
    problems: list[Problem] = [
        shop_case(random, groups=4 + at % 3)
        if kind == "shop"
        else cover_case(random, density=0.3 + 0.1 * (at % 3))
        for at in range(100 if kind == "shop" else 40)
    ]
    found = inside.evaluate(SOLVE, problems)
    assert all(proven for _, proven in found)
    times = sorted(ms for ms, _ in found)
    assert times[round(len(times) * most) - 1] <= MOST_MS
