"""Shelves by chance, worked out in Python, and the same in the browser: both as the same plain values."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import replace
from random import Random
from typing import Any, NamedTuple

from playwright.sync_api import Page

from rimbook.bench.answers import Answers
from rimbook.bench.needs import places
from rimbook.bench.part_index import index_parts
from rimbook.bench.shelf_compare import SERVICES, Size, compared, curve
from rimbook.bench.shelf_levels import Levels, Load
from rimbook.bench.shelf_plan import Drawer, ShelfPlan, plan
from rimbook.bench.shelf_terms import Terms
from rimbook.bench.shelf_update import Learned
from rimbook.book.model import Book, Catalogue, Club, ClubFrame, Frame, Part, Shelf
from rimbook.site import shelf_words
from rimbook.site.handover import json_text
from rimbook.site.shelf_places import shelf_places
from rimbook.site.shelf_rules import shelf_rules
from rimbook.site.spans import plain, spans_of
from tests.bench import big_book
from tests.browser.small_site import look_inside
from tests.site.sample import demo_book

MODULES = {
    "shelf_terms": ["takeRules", "canBePlanned"],
    "shelf_sum": ["exactSum"],
    "shelf_poisson": ["atMost", "exactly", "enough", "shortfall"],
    "shelf_pool": ["pool"],
    "shelf_packs": ["packsFor"],
    "shelf_plan": ["planShelf"],
    "shelf_compare": ["compared", "curve"],
    "shelf_update": ["learn"],
    "shelf_used": ["readUsed"],
    "shelf_words": [
        "percent", "weeks", "yearly", "serves", "standsIn", "openedFor", "here", "countsToo", "packs",
        "whyOrder", "advice", "unplanned",
    ],
}  # fmt: skip

# Plans as plain values: maps as lists of their entries, in their order.
PLAIN = """
inside.plainLoad = ({ aYear, aUnit, loose, spares }) =>
  ({ aYear: [...aYear], aUnit: [...aUnit], loose: [...loose], spares });
inside.plainPlan = ({ drawers, unplanned, choices, idle, fewest, least }) => ({
  drawers: drawers.map(({ item, aYear, filled, levels, stock, order }) => ({
    item,
    aYear,
    load: inside.plainLoad(filled.load),
    asked: filled.asked.map(({ frame, part, kind, pieces, aYear }) => [frame, part, kind, pieces, aYear]),
    levels,
    stock: {
      units: stock.units,
      load: inside.plainLoad(stock.load),
      others: [...stock.others],
      loose: [...stock.loose],
      spares: [...stock.spares],
    },
    order,
  })),
  unplanned,
  choices: choices.map(({ items, part, asked }) => [items, part, asked.length]),
  idle: Object.entries(idle),
  fewest,
  least,
});
inside.wordsOf = ({ drawers, unplanned, items, terms }, names, prices) => ({
  drawers: drawers.map((drawer) => [
    inside.serves(drawer, names),
    inside.standsIn(drawer, items),
    inside.openedFor(drawer, items),
    inside.here(drawer, items),
    inside.countsToo(drawer, items),
    inside.packs(drawer, items),
    inside.packs(drawer, items, prices),
    inside.whyOrder(drawer, terms),
    inside.advice(drawer, terms),
    inside.yearly(drawer.aYear),
    inside.yearly(drawer.levels.shortAYear),
    inside.percent(drawer.levels.chance),
  ]),
  unplanned: unplanned.map((each) => inside.unplanned(each, items)),
});
"""


class Case(NamedTuple):
    """One shelf: a club with its stock, the terms, the frames it may have, and their answers."""

    club: Club
    terms: Terms
    frames: Mapping[str, Frame]
    answers: Answers

    @property
    def catalogue(self) -> Catalogue:
        return self.answers.index.catalogue

    @property
    def stock(self) -> dict[str, int]:
        return dict(self.club.shelf.stock) if self.club.shelf else {}

    def plan(self) -> ShelfPlan:
        """As the book works it out."""
        return plan(self.club, self.frames, self.answers, self.terms)

    def given(self) -> list[Any]:
        """What the browser's `planShelf` is given: cards as the site has them."""
        return [
            [
                {
                    "slug": each.frame,
                    "name": self.frames[each.frame].name,
                    "restrings": each.restrings_per_year,
                    "shelf": card_of(self.frames[each.frame], self.answers),
                }
                for each in self.club.frames
            ],
            {
                "lead": self.terms.lead_weeks,
                "review": self.terms.review_weeks,
                "service": self.terms.service,
                "shares": dict(self.terms.shares),
            },
            self.stock,
        ]

    def names(self) -> dict[str, str]:
        """Names of frames; some differ only in the size of a letter, or have rare ones."""
        return {slug: frame.name for slug, frame in self.frames.items()}


def open_shelf(page: Page) -> None:
    """A page with the modules of the shelf, to which the numbers are handed over."""
    look_inside(page, MODULES)
    page.evaluate(f"() => {{ {PLAIN} }}")
    page.evaluate("(rules) => inside.takeRules(rules)", json.loads(json_text(shelf_rules())))


def card_of(frame: Frame, answers: Answers) -> Any:
    """The `shelf` of a frame's card, as it comes out of its file."""
    return json.loads(json_text(shelf_places(frame, places(frame, answers.index.catalogue), answers)))


def random_case(chance: Random) -> Case:
    """A shelf of frames of the demo or of a made-up book, whose parts are sold in other ways than there."""
    book = demo_book() if chance.random() < 0.6 else _made_up(chance)
    parts = _sold_anew(book.parts, chance)
    frames = {slug: _blinded(frame, chance) for slug, frame in book.frames.items()}
    picked = chance.sample(sorted(frames), chance.randint(1, min(9, len(frames))))
    terms = Terms(
        chance.choice((0.0, 0.5, 1, 2, 3, 6.5)),
        chance.choice((0.0, 1, 4, 13)),
        chance.choice((0.5, 0.8, 0.9, 0.95, 0.975, 0.995)),
        {
            kind: chance.choice((0.0, 0.05, 0.25, 0.5, 1.0))
            for kind in ("single", "wide", "twin-even", "twin-uneven", "strip")
            if chance.random() < 0.9
        },
    )
    restrings = [chance.choice((None, 0, 4, 12.5, 40, 333, round(chance.uniform(1, 90), 1))) for _ in picked]
    club = Club(
        "test",
        "Test",
        tuple(ClubFrame(slug, 1, often) for slug, often in zip(picked, restrings, strict=True)),
        shelf=Shelf(stock=_stock(parts, chance)),
    )
    return Case(club, terms, frames, Answers(index_parts(parts)))


def _made_up(chance: Random) -> Book:
    parts = big_book.parts(chance.choice((30, 60, 120)), chance.randrange(1000))
    frames = big_book.frames(8, parts, chance.randrange(1000))
    return replace(demo_book(), parts=parts, frames={frame.slug: frame for frame in frames})


def _blinded(frame: Frame, chance: Random) -> Frame:
    """Now and then a bore that nobody measured, or a name that puts an order to the test."""
    if chance.random() < 0.15:
        holes = tuple(replace(hole, bore_mm=None) if chance.random() < 0.2 else hole for hole in frame.holes)
        frame = replace(frame, holes=holes)
    if chance.random() < 0.2:
        name = chance.choice(("plover 76", "Élan Ø", "élan ø", "𝔓lover", "\uff30lover", "Zander", "Straße"))
        frame = replace(frame, name=name)
    return frame


def _sold_anew(parts: Catalogue, chance: Random) -> Catalogue:
    """Parts that are sold in other packs, or only in sets, or not at all."""
    found = {}
    for name, part in parts.items():
        packs = part.packs
        if chance.random() < 0.3 and part.kind != "set":
            packs = chance.choice(((), (1,), (2, 25), (5, 12, 100)))
        found[name] = replace(part, packs=packs)
    for number in range(chance.randint(0, 4)):
        inside = chance.sample(sorted(parts), chance.randint(1, 4))
        own = {each: chance.randint(1, 6) for each in inside if parts[each].kind != "set"}
        name = f"set-{number}"
        found[name] = Part(
            name, f"Set {number}", "set", contains=own, packs=chance.choice(((), (1,), (1, 5)))
        )
    return found


def _stock(parts: Catalogue, chance: Random) -> dict[str, int]:
    held = [name for name in sorted(parts) if chance.random() < 0.35]
    chance.shuffle(held)
    found = {name: chance.choice((0, 1, 2, 7, 30)) for name in held}
    if chance.random() < 0.3:
        found["no-such-part"] = 4
    return found


def plain_plan(shelf: ShelfPlan, catalogue: Catalogue) -> dict[str, Any]:
    """As `inside.plainPlan` tells a plan."""
    return {
        "drawers": [_drawer(drawer, catalogue) for drawer in shelf.drawers],
        "unplanned": [
            {
                "frame": each.frame,
                "why": each.why,
                "pieces": each.pieces,
                "holes": plain(spans_of(each.holes)),
                "part": each.part,
            }
            for each in shelf.unplanned
        ],
        "choices": [[list(each.items), each.part, len(each.asked)] for each in shelf.choices],
        "idle": _pairs(shelf.idle),
        "fewest": shelf.fewest,
        "least": shelf.least,
    }


def plain_words(
    shelf: ShelfPlan, catalogue: Catalogue, names: Mapping[str, str], prices: Mapping[int, float]
) -> dict[str, Any]:
    """As `inside.wordsOf` says it."""
    return {
        "drawers": [
            [
                shelf_words.serves(drawer, names),
                shelf_words.stands_in(drawer, catalogue),
                shelf_words.opened_for(drawer, catalogue),
                shelf_words.here(drawer, catalogue),
                shelf_words.counts_too(drawer, catalogue),
                shelf_words.packs(drawer, catalogue),
                shelf_words.packs(drawer, catalogue, prices),
                shelf_words.why_order(drawer, shelf.terms),
                shelf_words.advice(drawer, shelf.terms),
                shelf_words.yearly(drawer.a_year),
                shelf_words.yearly(drawer.levels.short_a_year),
                shelf_words.percent(drawer.levels.chance),
            ]
            for drawer in shelf.drawers
        ],
        "unplanned": [shelf_words.unplanned(each, catalogue) for each in shelf.unplanned],
    }


def plain_sizes(shelf: ShelfPlan, catalogue: Catalogue, prices: Mapping[str, float]) -> list[Any]:
    """`compared` and `curve` as the browser gives them."""
    found, steps = compared(shelf, catalogue, prices.get), curve(shelf, catalogue, prices.get, SERVICES)
    return [
        {"byFrame": _size(found.by_frame), "byPart": _size(found.by_part), "pooled": _size(found.pooled)},
        [
            {"service": each.service, "byPart": _size(each.by_part), "pooled": _size(each.pooled)}
            for each in steps
        ],
    ]


def plain_learned(found: Iterable[Learned]) -> list[Any]:
    """`learned` as the browser gives it."""
    return [
        {
            "item": each.item,
            "part": each.part,
            "used": {"part": each.used.part, "count": each.used.count, "years": each.used.years},
            "prior": each.prior._asdict(),
            "posterior": each.posterior._asdict(),
            "old": _levels(each.old),
            "new": _levels(each.new),
        }
        for each in found
    ]


def _drawer(drawer: Drawer, catalogue: Catalogue) -> dict[str, Any]:
    order, stock = drawer.order, drawer.stock
    return {
        "item": drawer.item,
        "aYear": drawer.a_year,
        "load": _load(drawer.filled.load),
        "asked": [
            [each.frame, each.part, catalogue[each.part].kind, each.pieces, each.a_year]
            for each in drawer.filled.asked
        ],
        "levels": _levels(drawer.levels),
        "stock": {
            "units": stock.units,
            "load": _load(stock.load),
            "others": _pairs(stock.others),
            "loose": _pairs(stock.loose),
            "spares": _pairs(stock.spares),
        },
        "order": order
        and {"units": order.units, "urgent": order.urgent, "before": order.before, "after": order.after},
    }


def _load(load: Load) -> dict[str, Any]:
    return {
        "aYear": _pairs(load.a_year),
        "aUnit": _pairs(load.a_unit),
        "loose": _pairs(load.loose),
        "spares": [[{"count": each.count, "aYear": each.a_year} for each in row] for row in load.spares],
    }


def _levels(found: Levels) -> dict[str, Any]:
    return {
        "reorder": found.reorder,
        "upTo": found.up_to,
        "chance": found.chance,
        "without": found.without,
        "shortAYear": found.short_a_year,
    }


def _size(found: Size) -> dict[str, Any]:
    return {
        "drawers": found.drawers,
        "kept": found.kept,
        "units": found.units,
        "shortAYear": found.short_a_year,
        "worth": found.worth,
        "unpriced": found.unpriced,
    }


def _pairs(found: Mapping[str, float]) -> list[list[Any]]:
    return [[name, value] for name, value in found.items()]
