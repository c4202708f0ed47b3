"""The shelf in the browser is that of the book: the same drawers, numbers and words, to the last digit."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from json import dumps
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.bench.answers import Answers
from rimbook.bench.part_index import index_parts
from rimbook.bench.shelf_compare import SERVICES
from rimbook.bench.shelf_plan import stocked
from rimbook.bench.shelf_terms import Terms, terms_of
from rimbook.bench.shelf_update import Used, learn
from rimbook.book.model import Club, ClubFrame, Shelf
from tests.browser.shelf_cases import (
    Case,
    open_shelf,
    plain_learned,
    plain_plan,
    plain_sizes,
    plain_words,
    random_case,
)
from tests.site.sample import demo_book
from tests.watch import watched_page

PRICES = {1: 0.37, 7: 2.05, 25: 6.5}
PLAN = """([given, names, prices, unit, services]) => {
  const plan = inside.planShelf(...JSON.parse(given));
  const worth = (item) => unit[item] ?? null;
  return {
    plan: inside.plainPlan(plan),
    words: inside.wordsOf(plan, names, prices),
    sizes: [inside.compared(plan, worth), inside.curve(plan, worth, services)],
  };
}"""
LEARN = """([given, used]) => {
  const { plan, learned, unknown } = inside.learn(inside.planShelf(...JSON.parse(given)), used);
  return { plan: inside.plainPlan(plan), learned, unknown };
}"""


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        open_shelf(page)
        yield page
    assert faults == []


def demo_case() -> Case:
    club = demo_book().clubs["weir-lane"]
    return Case(club, terms_of(club), demo_book().frames, Answers(index_parts(demo_book().parts)))


def alike(told: dict[str, Any], expected: dict[str, Any]) -> None:
    """The same, looked at piece by piece: what differs is then told in a few lines."""
    assert told.keys() == expected.keys()
    for name, value in expected.items():
        if isinstance(value, list):
            assert len(told[name]) == len(value), name
            for one, other in zip(told[name], value, strict=True):
                assert one == other
        else:
            assert told[name] == value, name


def agree(page: Page, case: Case) -> dict[str, Any]:
    """Plan a shelf on both sides, and hold one to the other."""
    shelf, catalogue = case.plan(), case.catalogue
    unit = {name: 0.01 * len(name) * len(part.name) for name, part in catalogue.items() if len(name) % 3}
    told: Any = page.evaluate(PLAN, [dumps(case.given()), case.names(), PRICES, unit, list(SERVICES)])
    alike(told["plan"], plain_plan(shelf, catalogue))
    alike(told["words"], plain_words(shelf, catalogue, case.names(), PRICES))
    assert told["sizes"] == plain_sizes(shelf, catalogue, unit)
    return dict(told["plan"])


def test_the_club_of_the_demo(inside: Page) -> None:
    told = agree(inside, demo_case())
    assert len(told["drawers"]) > 5
    assert told["unplanned"]


def test_every_frame_of_the_demo(inside: Page) -> None:
    """Each by itself, and all of them together, by the terms and the stock of the club."""
    case = demo_case()
    every = tuple(ClubFrame(slug, 1, 30.0) for slug in case.frames)
    for frames in (*((one,) for one in every), every):
        agree(inside, case._replace(club=replace(case.club, frames=frames)))


@pytest.mark.parametrize("seed", range(16))
def test_shelves_by_chance(inside: Page, seed: int) -> None:
    """Restrings unknown and none, stock with sets, loose parts and substitutes, parts sold in other ways."""
    chance = Random(seed)
    for _ in range(12):
        agree(inside, random_case(chance))


def test_the_shelves_by_chance_hold_all_that_can_be() -> None:
    """Else the test above would look at less than it says."""
    seen: set[str] = set()
    for seed in range(16):
        chance = Random(seed)
        for _ in range(12):
            case = random_case(chance)
            shelf = case.plan()
            seen |= {each.why for each in shelf.unplanned}
            for drawer in shelf.drawers:
                kind = case.catalogue[drawer.item].kind
                seen |= {kind, "urgent" if drawer.order and drawer.order.urgent else ""}
                seen |= {name for name in ("others", "loose", "spares") if getattr(drawer.stock, name)}
                if len(drawer.filled.load.a_year) > 1:
                    seen.add("a set for two parts")
                if len(drawer.filled.choices) > 1:
                    seen.add("pooled")
            seen |= {"idle"} if shelf.idle else set()
    assert seen >= {
        "restrings unknown", "part unknown", "bore unknown", "not sold", "single", "wide", "strip", "set",
        "urgent", "others", "loose", "spares", "a set for two parts", "pooled", "idle",
    }  # fmt: skip


@pytest.mark.parametrize("seed", range(8))
def test_seasons_by_chance(inside: Page, seed: int) -> None:
    """What was counted is learned alike, and leads to the same shelf."""
    chance = Random(500 + seed)
    for _ in range(6):
        case = random_case(chance)
        shelf, names = case.plan(), [*sorted(case.catalogue), "no-such-part"]
        used = [
            Used(chance.choice(names), chance.choice((0, 1, 5, 41)), chance.choice((0.5, 1.0, 2.25)))
            for _ in range(chance.randint(0, 8))
        ]
        named = sorted({each.part for drawer in shelf.drawers for each in drawer.filled.asked})
        used += [Used(part, 2, 1.0) for part in named if chance.random() < 0.5]
        used += [Used(each.item, 3, 1.0) for each in shelf.drawers[:3]]
        filled, learned, unknown = learn(shelf.drawers, used, case.terms)
        after = stocked(shelf, filled, case.stock, case.catalogue)
        told: Any = inside.evaluate(LEARN, [dumps(case.given()), [_used(each) for each in used]])
        assert told["learned"] == plain_learned(learned)
        assert told["unknown"] == [_used(each) for each in unknown]
        alike(told["plan"], plain_plan(after, case.catalogue))


def _used(each: Used) -> dict[str, Any]:
    return {"part": each.part, "count": each.count, "years": each.years}


def test_a_shelf_of_nothing(inside: Page) -> None:
    case = demo_case()
    empty = case._replace(club=Club("test", "Test", (), shelf=Shelf(stock={"barrel-20": 3})))
    told = agree(inside, empty)
    assert told["drawers"] == []
    assert told["idle"] == [["barrel-20", 3]]


def test_ids_that_mean_something_to_javascript_are_ids(inside: Page) -> None:
    """A part may be called `constructor`, and a file may hold anything."""
    case = demo_case()
    parts = {
        **demo_book().parts,
        "constructor": replace(demo_book().parts["barrel-21-short"], id="constructor"),
    }
    stock = {"constructor": 2, "__proto__": 3, "tostring": 1}
    one = Club("test", "Test", (ClubFrame("plover-76", 1, 40.0),), shelf=Shelf(stock=stock))
    told = agree(inside, case._replace(club=one, answers=Answers(index_parts(parts))))
    assert "constructor" in {each for items, _, _ in told["choices"] for each in items}


def test_more_than_a_shelf_can_serve_is_known_before(inside: Page) -> None:
    """The same bound as the rule on a club's file: 100,000 restrings between two orders."""
    ask = """([restrings, lead]) =>
      inside.canBePlanned([{ restrings }, { restrings: null }], { lead, review: 4 })"""
    assert inside.evaluate(ask, [100_000, 48]) is True
    assert inside.evaluate(ask, [100_001, 48]) is False
    assert Terms(48, 4, 0.95, {}).cover_years == 1
