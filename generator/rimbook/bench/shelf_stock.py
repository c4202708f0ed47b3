"""What of the stock counts for which drawer: every piece once.

First come the pieces of the part that is bought for a drawer, and of parts that serve all of its places. Of
what is left, a part that serves some of the places is used up there first, as far as it surely lasts.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from rimbook.bench.shelf_choice import Choice
from rimbook.bench.shelf_drawers import Filled
from rimbook.bench.shelf_levels import Load, least_units
from rimbook.bench.shelf_poisson import at_most
from rimbook.bench.shelf_terms import Terms
from rimbook.book.model import Catalogue

_MOST_SPARES = 5
_SURELY = 0.1
"""A spare part may lack with a tenth of the chance that is left to the drawer."""


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
    """The same with parts set aside for some of the places."""
    if catalogue[filled.item].kind == "set":
        return own
    surely = 1 - _SURELY * (1 - terms.service)
    rest = sorted(filled.choices, key=lambda choice: -choice.a_year)
    whole = sum(choice.a_year for choice in rest)
    scale = filled.load.a_year[filled.item] / whole if whole else 1.0
    aside: dict[str, float] = {}
    for part in sorted(spare, key=lambda name: (-spare[name], name)):
        if part == filled.item or len(aside) == _MOST_SPARES:
            continue
        yearly = 0.0
        for choice in [each for each in rest if _serves(part, each)]:
            more = yearly + choice.a_year * scale
            if at_most(spare[part], more * terms.cover_years) >= surely:
                yearly = more
                rest.remove(choice)
        if yearly:
            aside[part] = yearly
    spares = {part: spare.pop(part) for part in aside}
    load = Load(
        {filled.item: sum(choice.a_year for choice in rest) * scale, **aside},
        {filled.item: 1, **dict.fromkeys(aside, 0)},
        spares,
    )
    return replace(own, load=load, spares=spares) if spares else own


def _serves(part: str, choice: Choice) -> bool:
    return part in choice.items or all(each.part == part for each in choice.asked)
