"""What the places of a frame ask of a shelf, for the browser: what may be kept for each, and what that is.

`browser/shelf_demand.js` goes through them as `bench/shelf_demand.py` goes through the places themselves, and
says the same. What depends on a reader, restrings, shares and stock, is not in it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import Any, NamedTuple

from rimbook.bench.answers import Answers
from rimbook.bench.needs import Need, Place
from rimbook.bench.shelf_choice import items_for
from rimbook.bench.shelf_demand import Why, bore_unknown, pieces_of
from rimbook.book.model import Address, Catalogue, Frame
from rimbook.site.spans import plain, spans_of


class _Lost(NamedTuple):
    """Places of one part that cannot be planned for one reason: they are told together."""

    place: dict[str, Any]
    holes: list[Address]


def shelf_places(frame: Frame, places: Iterable[Place], answers: Answers) -> dict[str, Any]:
    """The `shelf` of a frame's card, in plain values.

    `places` are those of the frame. Each has its part and the kind of that, null where nobody knows it, how
    many pieces fill it, and ids of what may be kept for it, the best first. Where it cannot be planned, `why`
    says the reason and `holes` where. `items` has every part that is named, of those that only lie in a
    named set the name alone.
    """
    catalogue = answers.index.catalogue
    found: list[dict[str, Any]] = []
    lost: dict[tuple[Why, str | None], _Lost] = {}
    named: dict[str, None] = {}
    for place in places:
        if place.covered:
            continue
        part, pieces = catalogue.get(place.part or ""), pieces_of(place, frame)
        why, items = _kept(place.need, part.id, answers) if part else ("part unknown", ())
        if why in ("part unknown", "bore unknown") and (told := lost.get((why, place.part))):
            told.place["pieces"] += pieces
            told.holes.extend(place.holes)
            continue
        one = {"part": place.part, "kind": part.kind if part else None, "pieces": pieces, "items": items}
        found.append(one)
        named |= dict.fromkeys((part.id, *items) if part else ())
        if why == "not sold":
            one |= {"holes": plain(spans_of(place.holes)), "why": why}
        elif why is not None:
            lost[why, place.part] = _Lost(one, [*place.holes])
    for (why, _), each in lost.items():
        each.place.update(holes=plain(spans_of(each.holes)), why=why)
    return {"places": found, "items": _items(named, catalogue)}


# Frames of a kind ask the same again and again; the limit keeps the memory of a large book small.
@lru_cache(maxsize=2048)
def _kept(need: Need, own: str, answers: Answers) -> tuple[Why | None, tuple[str, ...]]:
    """What may be kept for a place, or why nothing can be."""
    if bore_unknown(need):
        return "bore unknown", ()
    items = items_for(need, own, answers)
    return (None, items) if items else ("not sold", ())


def _items(named: Iterable[str], catalogue: Catalogue) -> Mapping[str, Mapping[str, Any]]:
    found: dict[str, Mapping[str, Any]] = {}
    inside: dict[str, None] = {}
    for each in named:
        part = catalogue[each]
        found[each] = {"name": part.name, "kind": part.kind, "packs": part.packs}
        if part.kind == "set":
            found[each] = {**found[each], "contains": part.contains}
            inside |= dict.fromkeys(part.contains)
    for each in inside:
        if each not in found and each in catalogue:
            found[each] = {"name": catalogue[each].name}
    return found
