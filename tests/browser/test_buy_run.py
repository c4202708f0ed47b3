"""The purchase beside the page: in a Worker from a server, in slices from a folder, and ended early."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from random import Random

import pytest
from playwright.sync_api import Page

from rimbook.browser.bundle import bundle, module_sources
from tests.browser.buy_cases import affine_case, shop_case
from tests.serving import served

PROBE = """
import { plan } from "./buy_run.js";
import { solve } from "./buy_solver.js";
globalThis.inside = { plan, solve };
"""
WATCHED = """async (problem) => {
  let longest = 0, before = performance.now(), on = true;
  const look = () => {
    longest = Math.max(longest, performance.now() - before);
    before = performance.now();
    if (on) setTimeout(look);
  };
  look();
  const start = before;
  const found = await inside.plan(problem, { script: "worker.js" });
  on = false;
  return [found.cheapest.price, longest, performance.now() - start];
}"""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("run")
    sources = module_sources()
    (folder / "probe.js").write_text(bundle("probe", {**sources, "probe": PROBE}), "utf-8")
    (folder / "worker.js").write_text(bundle("buy_worker", sources), "utf-8")
    head = '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">'
    page = f'{head}<script src="probe.js"></script>'
    (folder / "index.html").write_text(page, "utf-8")
    return folder


@pytest.fixture(scope="module", params=["file", "http"])
def address(request: pytest.FixtureRequest, folder: Path) -> Iterator[str]:
    if request.param == "file":
        yield (folder / "index.html").as_uri()
        return
    with served(folder) as top:
        yield f"{top}/index.html"


def test_both_ways_give_the_same_plan(page: Page, address: str) -> None:
    page.goto(address)
    problem = shop_case(Random(3))
    beside, at_once = page.evaluate(
        "async (problem) => [await inside.plan(problem, { script: 'worker.js' }), inside.solve(problem)]",
        problem,
    )
    assert beside == at_once
    assert len(page.workers) == (1 if address.startswith("http") else 0)


def test_the_page_stays_free_meanwhile(page: Page, address: str) -> None:
    """AG(3, 3) is more work than any frame. The longest wait is measured by the whole: machines are busy."""
    page.goto(address)
    price, longest, whole = page.evaluate(WATCHED, affine_case(3))
    assert price == 18
    assert longest < whole / 4


def test_several_plans_at_once_keep_apart(page: Page, address: str) -> None:
    page.goto(address)
    problems = [shop_case(Random(seed), holes=30, offers=20) for seed in range(4)]
    beside, alone = page.evaluate(
        """async (problems) => [
          await Promise.all(problems.map((each) => inside.plan(each, { script: "worker.js" }))),
          problems.map((each) => inside.solve(each)),
        ]""",
        problems,
    )
    assert beside == alone


def test_a_plan_can_be_ended(page: Page, address: str) -> None:
    page.goto(address)
    ended, after = page.evaluate(
        """async ([hard, easy]) => {
          const stop = new AbortController();
          const plan = inside.plan(hard, { script: "worker.js", signal: stop.signal });
          setTimeout(() => stop.abort(), 30);
          return [await plan, (await inside.plan(easy, { script: "worker.js" })).cheapest.price];
        }""",
        [affine_case(3), affine_case(2)],
    )
    assert ended is None
    assert after == 5


def test_without_a_script_the_page_does_the_work(page: Page, address: str) -> None:
    page.goto(address)
    assert (
        page.evaluate("async (problem) => (await inside.plan(problem)).cheapest.price", affine_case(2)) == 5
    )
    assert page.workers == []
