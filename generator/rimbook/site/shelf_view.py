"""A shelf plan as its page shows it: rows of plain words, in the order in which a hand needs them."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from rimbook.bench.answers import Answers
from rimbook.bench.shelf_compare import Comparison, Size, Step, compared, curve
from rimbook.bench.shelf_plan import Drawer, ShelfPlan, plan
from rimbook.bench.shelf_terms import Terms, terms_of
from rimbook.book.model import Catalogue, Club, Frame
from rimbook.draw.shelf_curve import Point, shelf_curve
from rimbook.site import shelf_words
from rimbook.site.words import KIND_NAMES, number


class OrderRow(NamedTuple):
    """One line of what to order: how many, in which packs, whether it can wait, what is here, and why."""

    item: str
    name: str
    units: int
    packs: str
    urgent: bool
    here: str
    why: str


class DrawerRow(NamedTuple):
    """One drawer: what it is, what it serves, its levels, and whether to keep any."""

    item: str
    name: str
    kind: str
    serves: str
    stands_in: str
    opened_for: str
    a_year: str
    reorder: int
    up_to: int
    here: str
    chance: str
    short_a_year: str
    advice: str
    piece: bool


class Lost(NamedTuple):
    """A frame of which something cannot be planned."""

    slug: str
    name: str
    words: tuple[str, ...]


class Term(NamedTuple):
    """One thing the plan goes by, and whether nobody wrote it down."""

    name: str
    key: str
    value: str
    assumed: bool


class SizeRow(NamedTuple):
    """One way to keep a shelf, and how large it is."""

    name: str
    size: Size


def club_plan(club: Club, frames: Mapping[str, Frame], answers: Answers) -> ShelfPlan:
    """The plan of a club by its own terms."""
    return plan(club, frames, answers, terms_of(club))


def orders(shelf: ShelfPlan, catalogue: Catalogue) -> list[OrderRow]:
    """What to order today, what cannot wait first, then what is asked for most."""
    wanted = [drawer for drawer in shelf.drawers if drawer.order]
    wanted.sort(key=lambda drawer: (not _urgent(drawer), -drawer.a_year, drawer.item))
    return [
        OrderRow(
            drawer.item,
            catalogue[drawer.item].name,
            drawer.order.units if drawer.order else 0,
            shelf_words.packs(drawer, catalogue),
            _urgent(drawer),
            shelf_words.here(drawer, catalogue),
            shelf_words.why_order(drawer, shelf.terms),
        )
        for drawer in wanted
    ]


def drawers(shelf: ShelfPlan, catalogue: Catalogue, names: Mapping[str, str]) -> list[DrawerRow]:
    """All drawers, those first of which most is kept."""
    ordered = sorted(shelf.drawers, key=lambda drawer: (-drawer.levels.up_to, -drawer.a_year, drawer.item))
    return [
        DrawerRow(
            drawer.item,
            catalogue[drawer.item].name,
            KIND_NAMES[catalogue[drawer.item].kind],
            shelf_words.serves(drawer, names),
            shelf_words.stands_in(drawer, catalogue),
            shelf_words.opened_for(drawer, catalogue),
            shelf_words.yearly(drawer.a_year),
            drawer.levels.reorder,
            drawer.levels.up_to,
            shelf_words.here(drawer, catalogue),
            shelf_words.percent(drawer.levels.chance),
            shelf_words.yearly(drawer.levels.short_a_year),
            shelf_words.advice(drawer, shelf.terms),
            catalogue[drawer.item].kind in ("strip", "set"),
        )
        for drawer in ordered
    ]


def lost(shelf: ShelfPlan, catalogue: Catalogue, names: Mapping[str, str]) -> list[Lost]:
    """What cannot be planned, a frame at a time."""
    found: dict[str, list[str]] = {}
    for each in shelf.unplanned:
        found.setdefault(each.frame, []).append(shelf_words.unplanned(each, catalogue))
    return [Lost(slug, names[slug], tuple(words)) for slug, words in found.items()]


def sizes(found: Comparison) -> tuple[SizeRow, ...]:
    """Three ways to keep the same promise."""
    return (
        SizeRow("Every frame its own parts", found.by_frame),
        SizeRow("One drawer for every part on the maps", found.by_part),
        SizeRow("The fewest drawers (this shelf)", found.pooled),
    )


def terms(found: Terms) -> list[Term]:
    """What the plan goes by."""
    rows = [
        Term("From order to delivery", "lead_time_weeks", shelf_words.weeks(found.lead_weeks), False),
        Term(
            "Between two reviews of the shelf", "review_weeks", shelf_words.weeks(found.review_weeks), False
        ),
        Term("Service level", "service_level", shelf_words.percent(found.service), False),
    ]
    rows += [
        Term(
            f"Restrings that renew one part of kind {KIND_NAMES[kind]}",
            kind,
            f"{number(100 * share, 1)} %",
            False,
        )
        for kind, share in found.shares.items()
        if kind != "set"
    ]
    return [row._replace(assumed=row.key in found.assumed) for row in rows]


def picture(steps: tuple[Step, ...]) -> str:
    """The curve as SVG."""
    return shelf_curve(
        [Point(number(100 * step.service, 1), step.by_part.units, step.pooled.units) for step in steps]
    )


def view(
    club: Club, frames: Mapping[str, Frame], answers: Answers, names: Mapping[str, str]
) -> dict[str, object]:
    """All that the template is given of a plan."""
    catalogue = answers.index.catalogue
    shelf = club_plan(club, frames, answers)
    steps = curve(shelf, catalogue)
    rows = drawers(shelf, catalogue, names)
    return {
        "orders": orders(shelf, catalogue),
        "drawers": rows,
        "pieces": [row for row in rows if row.piece],
        "lost": lost(shelf, catalogue, names),
        "idle": [(catalogue[part].name if part in catalogue else part, n) for part, n in shelf.idle.items()],
        "sizes": sizes(compared(shelf, catalogue)),
        "steps": [(shelf_words.percent(step.service), step) for step in steps],
        "curve": picture(steps),
        "terms": terms(shelf.terms),
        "caution": shelf_words.CAUTION,
        "service": shelf_words.percent(shelf.terms.service),
        "span": shelf_words.weeks(shelf.terms.lead_weeks + shelf.terms.review_weeks),
        "lead": shelf_words.weeks(shelf.terms.lead_weeks),
        "review": shelf_words.weeks(shelf.terms.review_weeks),
        "proven": shelf.fewest and shelf.least,
        "kept": sum(row.up_to > 0 for row in rows),
    }


def _urgent(drawer: Drawer) -> bool:
    return drawer.order is not None and drawer.order.urgent
