"""What a club's restrings ask of its shelf in a year, place by place.

At a share of all restrings one part of a kind is renewed, at any of the places of that kind alike. So a
place asks for restrings · share / places of the kind in a year. One broken hole of a strip takes the strip.
That breakages come by themselves, and so make a Poisson process, is an assumption.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from rimbook.bench.needs import Need, PieceNeed, Place, places
from rimbook.bench.shelf_terms import Terms
from rimbook.book.model import Address, Catalogue, ClubFrame, Frame

Why = Literal["restrings unknown", "part unknown", "bore unknown", "not sold"]


@dataclass(frozen=True, slots=True)
class Asked:
    """Places of a frame with the same need and the same part: so many pieces, renewed so often a year."""

    frame: str
    need: Need
    part: str
    pieces: int
    holes: tuple[Address, ...]
    a_year: float


@dataclass(frozen=True, slots=True)
class Unplanned:
    """Places of a frame for which nothing can be kept, and why. No holes: all of the frame.

    `part` is what the map names, where it does.
    """

    frame: str
    why: Why
    pieces: int = 0
    holes: tuple[Address, ...] = ()
    part: str | None = None


@dataclass(frozen=True, slots=True)
class Demand:
    """All that is asked, in order of the club's frames, and all that cannot be planned."""

    asked: tuple[Asked, ...]
    unplanned: tuple[Unplanned, ...]


def demand(
    club: Sequence[ClubFrame], frames: Mapping[str, Frame], catalogue: Catalogue, terms: Terms
) -> Demand:
    """The demand of a club's frames. Raises KeyError for a frame that has no map."""
    asked: list[Asked] = []
    unplanned: list[Unplanned] = []
    for each in club:
        for found in _of_frame(each, frames[each.frame], catalogue, terms):
            (asked if isinstance(found, Asked) else unplanned).append(found)  # type: ignore[arg-type]
    return Demand(tuple(asked), tuple(unplanned))


def _of_frame(
    club: ClubFrame, frame: Frame, catalogue: Catalogue, terms: Terms
) -> Iterator[Asked | Unplanned]:
    if club.restrings_per_year is None:
        yield Unplanned(frame.slug, "restrings unknown")
        return
    own = [(place, pieces_of(place, frame)) for place in places(frame, catalogue) if not place.covered]
    of_kind: Counter[str] = Counter()
    for place, pieces in own:
        if (part := catalogue.get(place.part or "")) is not None:
            of_kind[part.kind] += pieces
    lost: defaultdict[tuple[Why, str | None], list[tuple[Place, int]]] = defaultdict(list)
    for place, pieces in own:
        part = catalogue.get(place.part or "")
        if part is None:
            lost["part unknown", place.part].append((place, pieces))
        elif bore_unknown(place.need):
            lost["bore unknown", place.part].append((place, pieces))
        else:
            share = terms.shares.get(part.kind, 0.0)
            yearly = club.restrings_per_year * share * pieces / of_kind[part.kind]
            yield Asked(frame.slug, place.need, part.id, pieces, place.holes, yearly)
    for (why, name), found in lost.items():
        holes = tuple(hole for place, _ in found for hole in place.holes)
        yield Unplanned(frame.slug, why, sum(pieces for _, pieces in found), holes, name)


def pieces_of(place: Place, frame: Frame) -> int:
    """How many pieces fill the holes of a place."""
    if not isinstance(place.need, PieceNeed):
        return len(place.holes)
    if place.need.kind == "twin":
        return len(place.holes) // 2
    held = set(place.holes)
    return sum(strip.part == place.part and strip.holes[0] in held for strip in frame.strips)


def bore_unknown(need: Need) -> bool:
    """Whether a bore of a place is not measured, so that nothing can be kept for it."""
    holes = need.holes if isinstance(need, PieceNeed) else (need,)
    return any(hole.bore_mm is None for hole in holes)
