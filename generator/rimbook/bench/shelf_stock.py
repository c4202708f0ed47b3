"""What of the stock counts for which drawer: every piece once.

First come the pieces of the part that is bought for a drawer, and of parts that serve all of its places. Of
what is left, a part that serves some of the places is used up there first. Where several do, that which
serves fewer places comes first at them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import fsum
from typing import NamedTuple

from rimbook.bench.shelf_choice import Choice
from rimbook.bench.shelf_drawers import Filled
from rimbook.bench.shelf_levels import Load, Spare, lasts, least_units
from rimbook.bench.shelf_terms import Terms
from rimbook.book.model import Catalogue

MOST_SPARES = 5
LARGEST_MEAN = 1000.0
"""Spares of which more is asked for than that are not counted: they would hardly matter."""


@dataclass(frozen=True, slots=True)
class Stock:
    """What lies in a drawer.

    `units`: whole units, of these `others` under the id of other parts that serve all its places. `loose`:
    pieces out of opened sets. `spares`: pieces of parts that serve some of its places and are used up there
    first. `load`: what is asked of the drawer until they are used up.
    """

    units: int
    load: Load
    others: Mapping[str, int] = field(default_factory=dict)
    loose: Mapping[str, int] = field(default_factory=dict)
    spares: Mapping[str, int] = field(default_factory=dict)


def shared_out(
    filled: Sequence[Filled], stock: Mapping[str, int], catalogue: Catalogue, terms: Terms
) -> tuple[tuple[Stock, ...], dict[str, int]]:
    """The stock of each drawer, and what no drawer counts."""
    left = {part: count for part, count in stock.items() if count}
    bought = {each.item for each in filled}
    held = [_whole(each, left, bought, catalogue) for each in filled]
    spare = dict(left)
    for each, own in zip(filled, held, strict=True):
        surplus = own.units - least_units(each.load, terms.cover_years, terms.service)
        if surplus > 0 and catalogue[each.item].kind != "set" and not own.others:
            spare[each.item] = surplus
    for at, each in enumerate(filled):
        held[at] = _with_spares(each, held[at], spare, catalogue, terms)
    used = {part for own in held for part in own.spares}
    return tuple(held), {part: count for part, count in left.items() if part not in used}


def _whole(filled: Filled, left: dict[str, int], bought: Iterable[str], catalogue: Catalogue) -> Stock:
    own = left.pop(filled.item, 0)
    if catalogue[filled.item].kind == "set":
        loose = {part: left.pop(part) for part in filled.load.a_year if part in left}
        return Stock(own, replace(filled.load, loose=loose), loose=loose)
    able = set(filled.choices[0].items).intersection(*(choice.items for choice in filled.choices))
    others = {part: left.pop(part) for part in sorted(able.difference(bought)) if part in left}
    return Stock(own + sum(others.values()), filled.load, others)


class _Aside(NamedTuple):
    """Spares by part, and places where they are used up first."""

    counts: Mapping[str, int]
    places: tuple[Choice, ...]


_Row = tuple[_Aside, ...]
"""Spares of which each also serves the places of those before it: what these lack comes out of it."""


class _Way(NamedTuple):
    """What is used up where, and the places that are left to the drawer."""

    rows: tuple[_Row, ...]
    rest: tuple[Choice, ...]


def _with_spares(
    filled: Filled, own: Stock, spare: dict[str, int], catalogue: Catalogue, terms: Terms
) -> Stock:
    """The same with parts that are used up first at some of the places. What is used leaves `spare`."""
    if catalogue[filled.item].kind == "set":
        return own

    def chance(way: _Way) -> float:
        return lasts(own.units, _load(filled, way), terms.cover_years)

    now, used = _Way((), tuple(filled.choices)), 0
    for part in sorted(spare, key=lambda name: (-spare[name], name)):
        if part != filled.item and used < MOST_SPARES:
            ways = tuple(_ways(now, part, spare[part], terms))
            if ways:
                now, used = max(ways, key=chance) if len(ways) > 1 else ways[0], used + 1
                del spare[part]
    if not now.rows:
        return own
    spares = {part: count for row in now.rows for each in row for part, count in each.counts.items()}
    return replace(own, load=_load(filled, now), spares=spares)


def _ways(now: _Way, part: str, count: int, terms: Terms) -> Iterator[_Way]:
    """Where a further part may be used up: at places that are left, or together with others."""
    served = _served(part, now.rest)
    if not 0 < _yearly(served) * terms.cover_years <= LARGEST_MEAN:
        served = ()
    new = _Aside({part: count}, served)
    if served:
        yield _Way((*now.rows, (new,)), _without(now.rest, served))
    for at, row in enumerate(now.rows):
        before, after = now.rows[:at], now.rows[at + 1 :]
        if all(_served(part, each.places) == each.places for each in row):
            longer = (*row, new) if served else _more(row, len(row) - 1, new)
            yield _Way((*before, longer, *after), _without(now.rest, served))
        elif within := _within(row, part, count):
            yield _Way((*before, within, *after), now.rest)


def _within(row: _Row, part: str, count: int) -> _Row | None:
    """A row with a further part that does not serve all of it: before those that serve more.

    None where it does not serve the first places.
    """
    at = next(at for at, each in enumerate(row) if _served(part, each.places) != each.places)
    counts, places = row[at]
    new = _Aside({part: count}, _served(part, places))
    if new.places:
        return (*row[:at], new, _Aside(counts, _without(places, new.places)), *row[at + 1 :])
    return _more(row, at - 1, new) if at else None


def _more(row: _Row, at: int, new: _Aside) -> _Row:
    """A row in which one place has further spares."""
    counts, places = row[at]
    return (*row[:at], _Aside({**counts, **new.counts}, places), *row[at + 1 :])


def _load(filled: Filled, way: _Way) -> Load:
    spares = tuple(
        tuple(Spare(sum(counts.values()), _yearly(places)) for counts, places in row) for row in way.rows
    )
    return replace(filled.load, a_year={filled.item: _yearly(way.rest)}, spares=spares)


def _served(part: str, places: Iterable[Choice]) -> tuple[Choice, ...]:
    return tuple(
        choice for choice in places if part in choice.items or all(each.part == part for each in choice.asked)
    )


def _without(places: Iterable[Choice], others: tuple[Choice, ...]) -> tuple[Choice, ...]:
    return tuple(choice for choice in places if choice not in others)


def _yearly(places: Iterable[Choice]) -> float:
    return fsum(choice.a_year for choice in places)
