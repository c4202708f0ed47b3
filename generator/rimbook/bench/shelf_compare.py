"""What pooling saves, and what each further per cent of service costs."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from math import fsum

from rimbook.bench.shelf_drawers import Filled, by_frame, by_part
from rimbook.bench.shelf_levels import levels
from rimbook.bench.shelf_plan import ShelfPlan
from rimbook.bench.shelf_terms import Terms
from rimbook.book.model import Catalogue

SERVICES = (0.80, 0.85, 0.90, 0.925, 0.95, 0.975, 0.99, 0.995)

Worth = Callable[[str], float | None]
"""What one unit of an item costs, or None where no price is known."""


@dataclass(frozen=True, slots=True)
class Size:
    """How large a shelf is: drawers, those of which something is kept, units in all when it is full.

    `short_a_year` are pieces asked for and not there. `worth` is what the units cost, of `unpriced` drawers
    without.
    """

    drawers: int
    kept: int
    units: int
    short_a_year: float
    worth: float = 0.0
    unpriced: int = 0


@dataclass(frozen=True, slots=True)
class Comparison:
    """The same demand in three shelves: each frame its own parts, each part one drawer, fewest drawers."""

    by_frame: Size
    by_part: Size
    pooled: Size


@dataclass(frozen=True, slots=True)
class Step:
    """Units of the full shelf at one service level: one drawer a part, and fewest drawers."""

    service: float
    by_part: Size
    pooled: Size


def _unpriced(_: str) -> float | None:
    return None


def size(filled: Iterable[Filled], terms: Terms, worth: Worth = _unpriced) -> Size:
    """How large a shelf of these drawers is."""
    found = [(each.item, levels(each.load, terms)) for each in filled]
    prices = [(worth(item), level.up_to) for item, level in found]
    return Size(
        len(found),
        sum(level.up_to > 0 for _, level in found),
        sum(level.up_to for _, level in found),
        fsum(level.short_a_year for _, level in found),
        fsum(price * units for price, units in prices if price is not None),
        sum(price is None and units > 0 for price, units in prices),
    )


def compared(shelf: ShelfPlan, catalogue: Catalogue, worth: Worth = _unpriced) -> Comparison:
    """What pooling saves."""
    return Comparison(
        size(by_frame(shelf.choices, catalogue), shelf.terms, worth),
        size(by_part(shelf.choices, catalogue), shelf.terms, worth),
        size([drawer.filled for drawer in shelf.drawers], shelf.terms, worth),
    )


def curve(
    shelf: ShelfPlan, catalogue: Catalogue, worth: Worth = _unpriced, services: Iterable[float] = SERVICES
) -> tuple[Step, ...]:
    """How the shelf grows with the service level, its drawers as they are."""
    apart = by_part(shelf.choices, catalogue)
    own = [drawer.filled for drawer in shelf.drawers]
    return tuple(
        Step(service, size(apart, at, worth), size(own, at, worth))
        for service in services
        for at in (replace(shelf.terms, service=service),)
    )
