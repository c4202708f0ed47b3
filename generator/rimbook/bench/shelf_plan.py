"""The plan of a club's shelf: what to keep, what to order today and why, what cannot be planned."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from math import fsum

from rimbook.bench.answers import Answers
from rimbook.bench.shelf_choice import Choice, choices
from rimbook.bench.shelf_demand import Unplanned, demand
from rimbook.bench.shelf_drawers import Filled, pooled
from rimbook.bench.shelf_levels import Levels, lasts, least_units, levels
from rimbook.bench.shelf_stock import Stock, shared_out
from rimbook.bench.shelf_terms import Terms
from rimbook.book.model import Catalogue, Club, Frame


@dataclass(frozen=True, slots=True)
class Order:
    """What a drawer lacks, in units. `urgent`: it cannot wait for the next review.

    `before` and `after`: the chance that it lasts until the next order arrives, without and with this one.
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
        return fsum(self.filled.load.a_year.values())


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
    held, idle = shared_out(filled, stock, catalogue, shelf.terms)
    drawers = [
        Drawer(each, levels(each.load, shelf.terms), own, order_of(own, shelf.terms))
        for each, own in zip(filled, held, strict=True)
    ]
    dealt = tuple(choice for each in filled for choice in each.choices)
    return replace(shelf, drawers=tuple(drawers), choices=dealt, idle=idle)


def order_of(stock: Stock, terms: Terms) -> Order | None:
    """What a drawer lacks today, or None."""
    units = least_units(stock.load, terms.cover_years, terms.service) - stock.units
    if units <= 0:
        return None
    return Order(
        units,
        least_units(stock.load, terms.lead_years, terms.service) > stock.units,
        lasts(stock.units, stock.load, terms.cover_years),
        lasts(stock.units + units, stock.load, terms.cover_years),
    )
