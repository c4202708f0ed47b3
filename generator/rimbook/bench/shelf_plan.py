"""The plan of a club's shelf: what to keep, what to order today and why, what cannot be planned."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from rimbook.bench.answers import Answers
from rimbook.bench.shelf_choice import Choice, choices
from rimbook.bench.shelf_demand import Unplanned, demand
from rimbook.bench.shelf_drawers import Filled, pooled
from rimbook.bench.shelf_levels import Levels, Load, lasts, least_units, levels
from rimbook.bench.shelf_terms import Terms
from rimbook.book.model import Catalogue, Club, Frame


@dataclass(frozen=True, slots=True)
class Stock:
    """What lies in a drawer: whole units, of these so many under the id of other parts that serve as well.

    `loose` are pieces out of opened sets, by part.
    """

    units: int
    others: Mapping[str, int]
    loose: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Order:
    """What a drawer lacks, in units. `urgent`: it cannot wait for the next review.

    `before` and `after` are the chances that it lasts until the next order arrives, without and with this one.
    """

    units: int
    urgent: bool
    before: float
    after: float


@dataclass(frozen=True, slots=True)
class Drawer:
    """One drawer of the shelf. `order` is None where nothing is lacking."""

    filled: Filled
    levels: Levels
    stock: Stock
    order: Order | None

    @property
    def item(self) -> str:
        """The id of what is bought for it."""
        return self.filled.item

    @property
    def a_year(self) -> float:
        """Pieces a year."""
        return sum(self.filled.load.a_year.values())


@dataclass(frozen=True, slots=True)
class ShelfPlan:
    """A club's shelf. `idle` is stock that no drawer counts, by part.

    `fewest` and `least`: whether it is proven that no fewer drawers would do, and that as many hold no less.
    """

    terms: Terms
    drawers: tuple[Drawer, ...]
    unplanned: tuple[Unplanned, ...]
    choices: tuple[Choice, ...]
    idle: Mapping[str, int]
    fewest: bool = True
    least: bool = True


def plan(club: Club, frames: Mapping[str, Frame], answers: Answers, terms: Terms) -> ShelfPlan:
    """Plan the shelf of a club. `frames` has all that it names. Raises KeyError where one is missing."""
    catalogue = answers.index.catalogue
    found = demand(club.frames, frames, catalogue, terms)
    wanted, unsold = choices(found.asked, answers)
    filled, how = pooled(wanted, catalogue, terms)
    stock = dict(club.shelf.stock) if club.shelf else {}
    return stocked(
        ShelfPlan(terms, (), (*found.unplanned, *unsold), wanted, {}, how.fewest, how.least),
        filled,
        stock,
        catalogue,
    )


def stocked(
    shelf: ShelfPlan, filled: tuple[Filled, ...], stock: Mapping[str, int], catalogue: Catalogue
) -> ShelfPlan:
    """The same shelf with these drawers and this stock."""
    bought = {each.item for each in filled}
    left = dict(stock)
    drawers = []
    for each in filled:
        held = _take(each, left, bought, catalogue)
        drawers.append(
            Drawer(each, levels(each.load, shelf.terms), held, order_of(each.load, held, shelf.terms))
        )
    return replace(shelf, drawers=tuple(drawers), idle={part: n for part, n in left.items() if n})


def order_of(load: Load, stock: Stock, terms: Terms) -> Order | None:
    """What a drawer lacks today, or None."""
    here = replace(load, loose=stock.loose)
    units = least_units(here, terms.cover_years, terms.service) - stock.units
    if units <= 0:
        return None
    return Order(
        units,
        least_units(here, terms.lead_years, terms.service) > stock.units,
        lasts(stock.units, here, terms.cover_years),
        lasts(stock.units + units, here, terms.cover_years),
    )


def _take(filled: Filled, left: dict[str, int], bought: set[str], catalogue: Catalogue) -> Stock:
    """What of the stock lies in a drawer; each piece is counted once."""
    own = left.pop(filled.item, 0)
    if catalogue[filled.item].kind == "set":
        return Stock(own, {}, {part: left.pop(part) for part in filled.load.a_year if left.get(part)})
    able = set(filled.choices[0].items).intersection(*(choice.items for choice in filled.choices))
    also = {part: left.pop(part) for part in sorted(able - bought) if left.get(part)}
    return Stock(own + sum(also.values()), also, {})
