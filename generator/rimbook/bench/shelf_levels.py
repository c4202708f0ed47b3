"""How much to keep in a drawer, when to order, and what runs short all the same.

Demands that are independent and Poisson add up to one that is Poisson with the sum of their means, so a
drawer looks only at sums. An order has to last until the one after it arrives: over lead time and review
interval. S = the least S with P(D ≤ S) ≥ service (for instance L. V. Snyder and Z.-J. M. Shen, Fundamentals
of Supply Chain Theory). A set is enough as long as each of its parts is:  P = Π P(D_i ≤ S·n_i + loose_i).
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field

from rimbook.bench.shelf_poisson import at_most, enough, exactly, shortfall
from rimbook.bench.shelf_terms import Terms

SURE = 1 - 1e-12
"""So sure that a count is taken for the most that is ever asked for."""


@dataclass(frozen=True, slots=True)
class Spare:
    """Pieces of other parts, used up first at the places where they serve: so much is asked there a year."""

    count: int
    a_year: float


@dataclass(frozen=True, slots=True)
class Load:
    """What is asked of one drawer in a year: pieces by part, and how many of each one unit holds.

    A drawer of single pieces has one part, one a unit; `spares` lie beside it, and what their places ask for
    is not in `a_year`. Of spares in one row each also serves the places of those before it. `loose` are
    pieces that lie beside whole sets.
    """

    a_year: Mapping[str, float]
    a_unit: Mapping[str, int]
    loose: Mapping[str, int] = field(default_factory=dict)
    spares: tuple[tuple[Spare, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Levels:
    """Units of one drawer.

    `reorder`: with fewer than that an order cannot wait for the next review. `up_to`: what an order brings it
    back to. `chance` that it does not run short between two orders, and `without`, the same with one unit
    less. `short_a_year`: pieces that are asked for and not there, on average.
    """

    reorder: int
    up_to: int
    chance: float
    without: float
    short_a_year: float


def lasts(units: int, load: Load, years: float) -> float:
    """The chance that so many units last for a time. What its spares lack is taken out of the drawer."""
    if load.spares:
        (rest,) = load.a_year.values()
        lacking = _lacking(load.spares, years)
        return math.fsum(chance * at_most(units - n, rest * years) for n, chance in enumerate(lacking))
    return math.prod(
        at_most(units * load.a_unit[part] + load.loose.get(part, 0), yearly * years)
        for part, yearly in load.a_year.items()
    )


def least_units(load: Load, years: float, service: float) -> int:
    """The least number of units that lasts for a time with at least this chance."""
    units = max(
        (
            math.ceil((enough(yearly * years, service) - load.loose.get(part, 0)) / load.a_unit[part])
            for part, yearly in load.a_year.items()
        ),
        default=0,
    )
    units = max(0, units)
    if len(load.a_year) > 1 or load.spares:
        asked = (*load.a_year.values(), *(spare.a_year for row in load.spares for spare in row))
        most = units + sum(enough(yearly * years, SURE) for yearly in asked)
        while units < most and lasts(units, load, years) < service:
            units += 1
    return units


def _lacking(spares: tuple[tuple[Spare, ...], ...], years: float) -> list[float]:
    """The chances that the spares lack 0, 1, 2 … pieces in all."""
    found = [1.0]
    for row in spares:
        found = _joined(found, _beyond(row, years))
    return found


def _beyond(row: tuple[Spare, ...], years: float) -> list[float]:
    """The chances that one row lacks 0, 1, 2 … pieces. What a spare lacks is taken out of the next one."""
    lacking = [1.0]
    for spare in row:
        mean = spare.a_year * years
        asked = [exactly(count, mean) for count in range(enough(mean, SURE) + 1)]
        wanted = _joined(lacking, asked)
        lacking = [math.fsum(wanted[: spare.count + 1]), *wanted[spare.count + 1 :]]
    return lacking


def _joined(some: list[float], others: list[float]) -> list[float]:
    """The chances of the sum of two counts that have nothing to do with each other."""
    joined = [0.0] * (len(some) + len(others) - 1)
    for at, chance in enumerate(some):
        for more, other in enumerate(others):
            joined[at + more] += chance * other
    return joined


def levels(load: Load, terms: Terms) -> Levels:
    """The levels of a drawer."""
    up_to = least_units(load, terms.cover_years, terms.service)
    return Levels(
        least_units(load, terms.lead_years, terms.service),
        up_to,
        lasts(up_to, load, terms.cover_years),
        lasts(up_to - 1, load, terms.cover_years) if up_to else 0.0,
        math.fsum(
            short_a_year(up_to * load.a_unit[part], yearly, terms) for part, yearly in load.a_year.items()
        ),
    )


def short_a_year(pieces: int, yearly: float, terms: Terms) -> float:
    """Pieces a year that are asked for and not there, where each review fills up to so many pieces.

    What is lacking at the end of a cycle less what was lacking at its beginning, times cycles a year. Looked
    at all the time, it is the chance that the drawer is empty times the demand.
    """
    lead, review = terms.lead_years, terms.cover_years - terms.lead_years
    if review == 0:
        return yearly * (1 - at_most(pieces - 1, yearly * lead)) if pieces else yearly
    lacking = shortfall(pieces, yearly * (lead + review)) - shortfall(pieces, yearly * lead)
    return max(0.0, lacking) / review
