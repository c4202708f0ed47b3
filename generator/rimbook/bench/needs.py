"""What the holes of a frame ask of a part, alike holes once.

The same need comes back in hundreds of holes and frames, so all that is worked out is worked out by need.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal, NamedTuple

from rimbook.bench.thresholds import Thresholds
from rimbook.bench.uncertainty import resolution_of
from rimbook.book.model import Address, Catalogue, Frame, Sport
from rimbook.rim.once import once


class HoleNeed(NamedTuple):
    """One hole: its bore and how finely it was measured, the rim depth there (mm), and how many strings."""

    sport: Sport
    bore_mm: float | None
    resolution_mm: float | None
    depth_mm: float | None
    strings: int


class PieceNeed(NamedTuple):
    """A place for a two-post part or a strip: its holes (of a strip: each kind once), posts and pitch (mm).

    `bumper` is None where nobody knows whether the strip has one.
    """

    kind: Literal["twin", "strip"]
    holes: tuple[HoleNeed, ...]
    posts: int
    pitch_mm: float | None = None
    bumper: bool | None = None


Need = HoleNeed | PieceNeed


class Place(NamedTuple):
    """Holes with the same need and the same part, clockwise.

    `covered` marks single holes under a strip or a two-post part: the piece has a place of its own, and
    what serves the hole alone would stand in for a part of it.
    """

    need: Need
    part: str | None
    covered: bool
    holes: tuple[Address, ...]


@once
def hole_needs(frame: Frame) -> Mapping[Address, HoleNeed]:
    """What each drilled hole asks, clockwise. At a tie-off one more string goes through."""
    sport, resolution_mm = frame.sport, resolution_of(frame.measured)
    return {
        hole.address: HoleNeed(
            sport, hole.bore_mm, resolution_mm, hole.rim_depth_mm, len(hole.passes) + hole.tie_off
        )
        for hole in frame.holes
        if hole.drilled
    }


@once
def places(frame: Frame, catalogue: Catalogue) -> tuple[Place, ...]:
    """Every need of a frame with what sits there: of each hole alone, then of twins and strips.

    Alike needs with the same part are one place.
    """
    by_hole = hole_needs(frame)
    found: dict[tuple[Need, str | None, bool], list[Address]] = {}
    for hole in frame.holes:
        need = by_hole.get(hole.address)
        if need is not None:
            covered = hole.strip is not None or hole.twin is not None
            found.setdefault((need, hole.part, covered), []).append(hole.address)
    for twin in frame.twins:
        if all(address in by_hole for address in twin.holes):
            part = catalogue.get(twin.part)
            pair = tuple(by_hole[address] for address in twin.holes)
            piece = PieceNeed("twin", pair, 2, part.pitch_mm if part else None)
            found.setdefault((piece, twin.part, False), []).extend(twin.holes)
    for strip in frame.strips:
        drilled = [by_hole[address] for address in strip.holes if address in by_hole]
        if drilled:
            part = catalogue.get(strip.part or "")
            kinds = tuple(sorted(set(drilled), key=_order))
            piece = PieceNeed("strip", kinds, len(drilled), None, part.bumper if part else None)
            found.setdefault((piece, strip.part, False), []).extend(strip.holes)
    return tuple(Place(*key, tuple(addresses)) for key, addresses in found.items())


def strings_of(need: HoleNeed, thresholds: Thresholds) -> tuple[float, ...]:
    """The strings a hole must take, in mm: the thickest usual ones of the sport."""
    return (thresholds.string_mm.of(need.sport)[-1],) * need.strings


def _order(need: HoleNeed) -> tuple[float, float, int]:
    return need.bore_mm or 0.0, need.depth_mm or 0.0, need.strings
