"""A first walk for a frame that nobody has walked yet: where strings drawn straight would meet the rim.

A person then corrects it with the racket in hand. It is a start, never a fact.
"""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from rimbook.book.model import Head, Pass
from rimbook.book.walk import Place
from rimbook.rim.half import halves
from rimbook.rim.places import DERIVED_GAP_MM
from rimbook.rim.spacing import usual_spacing

SHARE_WITHIN_MM = DERIVED_GAP_MM
"""A main and a cross that would meet the rim nearer than this share a hole: two parts would not fit."""


@dataclass(frozen=True, slots=True)
class _Arrival:
    """A string where it meets the rim, in mm from the middle of the head."""

    along_mm: float
    string: Pass


def propose(head: Head, mains: int, crosses: int, holes: int | None = None) -> tuple[Place, ...]:
    """A walk down one side for so many mains (both halves together) and crosses.

    `holes` is how many the whole frame has, where somebody has counted: then that many pairs share a
    hole, the nearest first, as far as there are pairs. Without it, whatever comes too near shares.
    """
    arrivals = _arrivals(head, mains, crosses)
    gaps = sorted(
        (there.along_mm - here.along_mm, at)
        for at, (here, there) in enumerate(pairwise(arrivals))
        if here.string.kind != there.string.kind
    )
    most = None if holes is None else max(0, len(arrivals) - (holes + 1) // 2)
    shared: set[int] = set()
    for gap, at in gaps:
        if len(shared) == most or (most is None and gap > SHARE_WITHIN_MM):
            break
        if not shared & {at - 1, at + 1}:
            shared.add(at)
    places, at = [], 0
    while at < len(arrivals):
        here = arrivals[at : at + (2 if at in shared else 1)]
        # A shared hole is written main first, whichever string would come first.
        places.append(Place(tuple(sorted((each.string for each in here), reverse=True))))
        at += len(here)
    return tuple(places)


def _arrivals(head: Head, mains: int, crosses: int) -> list[_Arrival]:
    half = halves(head)[0]
    even = usual_spacing(head, mains, crosses)
    found = [
        _Arrival(half.mains[end].along(even.main(number)), Pass("m", number))
        for end in ("head", "throat")
        for number in range(1, mains // 2 + 1)
    ]
    found += [
        _Arrival(half.crosses.along(-even.cross(number)), Pass("c", number))
        for number in range(1, crosses + 1)
    ]
    return sorted(found, key=lambda arrival: (arrival.along_mm, arrival.string))
