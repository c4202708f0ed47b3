"""What of the stock counts for which drawer: every piece once.

First come the pieces of the part that is bought for a drawer, and of parts that serve all of its places. Of
what is left, a part that serves some of the places is used up there first.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import fsum

from rimbook.bench.shelf_choice import Choice
from rimbook.bench.shelf_drawers import Filled
from rimbook.bench.shelf_levels import Load, Spare, least_units
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


def _with_spares(
    filled: Filled, own: Stock, spare: dict[str, int], catalogue: Catalogue, terms: Terms
) -> Stock:
    """The same with parts that are used up first at some of the places: each at all that it serves."""
    if catalogue[filled.item].kind == "set":
        return own
    rest = list(filled.choices)
    aside: dict[str, Spare] = {}
    for part in sorted(spare, key=lambda name: (-spare[name], name)):
        served = [choice for choice in rest if part != filled.item and _serves(part, choice)]
        yearly = fsum(choice.a_year for choice in served)
        if yearly and len(aside) < MOST_SPARES and yearly * terms.cover_years <= LARGEST_MEAN:
            aside[part] = Spare(spare.pop(part), yearly)
            rest = [choice for choice in rest if choice not in served]
    if not aside:
        return own
    left = fsum(choice.a_year for choice in rest)
    load = replace(filled.load, a_year={filled.item: left}, spares=tuple(aside.values()))
    return replace(own, load=load, spares={part: each.count for part, each in aside.items()})


def _serves(part: str, choice: Choice) -> bool:
    return part in choice.items or all(each.part == part for each in choice.asked)
