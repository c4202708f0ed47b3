"""Where one two-post part could take the place of two neighbouring single ones, and what it would gain.

The posts must meet the holes: pitch against the straight distance of the hole places, within the play
of the posts and the uncertainty of both. Then fit, room and reach as for any barrel. That a pair at the
throat spreads the load of a high tension is common practice, no published source; what is worked out is
the nominal pressure under the worse hole before and after.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain, pairwise
from typing import NamedTuple

from rimbook.bench.answers import Answers, Fitting
from rimbook.bench.marks import Mark, of_pitch
from rimbook.bench.needs import HoleNeed, hole_needs
from rimbook.bench.part_index import Profile
from rimbook.bench.pressure import projected_area
from rimbook.bench.serves import NO, Rank, Seat, Served, serve, verdict_of
from rimbook.bench.thresholds import Thresholds
from rimbook.bench.uncertainty import combined, of_resolution, of_tolerance, resolution_of
from rimbook.book.model import Address, Frame, Hole, Part
from rimbook.rim.types import Point, Rim

ASSUMES: tuple[str, ...] = (
    "The bridge between the posts is stiff, so both posts share the pull of both holes.",
    "Each post carries in proportion to its area seen from the side: barrel times the length in the rim.",
    "The string has one tension before it meets the holes, and runs straight from hole to hole.",
    "The pressure is nominal: force over projected area, as if it were even.",
)


@dataclass(frozen=True, slots=True)
class Spread:
    """Nominal pressure in MPa: under the worse hole of two single parts, and under a two-post part."""

    before_mpa: float
    after_mpa: float

    @property
    def share(self) -> float:
        """What is left of the pressure: below 1 the two-post part spreads the load."""
        return self.after_mpa / self.before_mpa if self.before_mpa else 1.0


@dataclass(frozen=True, slots=True)
class TwinAdvice:
    """One two-post part for two neighbouring holes (clockwise).

    `off_mm` is the distance of the holes less the pitch, known to within `give_mm` either way, or not
    at all where that is None. `spread` is None where a length is missing.
    """

    holes: tuple[Address, Address]
    distance_mm: float
    served: Served
    off_mm: float
    give_mm: float | None
    spread: Spread | None


BEST = 3
"""So many two-post parts are named for a pair of holes."""


def twin_advice(
    rim: Rim, answers: Answers, forces: Mapping[Address, Point], tension_n: float
) -> tuple[TwinAdvice, ...]:
    """For each pair of neighbouring loose parts, the best two-post parts that serve or nearly do.

    `forces` are the pulls on the holes divided by the tension (N), as vectors. Pairs come clockwise, the
    best part first.
    """
    asked = hole_needs(rim.frame)
    known = _places_known(rim.frame, answers.thresholds)
    found: list[TwinAdvice] = []
    for one, other in _pairs(rim):
        needs = (asked[one.address], asked[other.address])
        if needs[0].bore_mm is None or needs[1].bore_mm is None:
            continue
        pair = (one.address, other.address)
        placed = (rim.holes[pair[0]], rim.holes[pair[1]])
        distance_mm = placed[0].at.minus(placed[1].at).length
        place_u_mm = _both(known[placed[0].place], known[placed[1].place])
        meets = sorted(_meeting(answers, needs, distance_mm, place_u_mm))[:BEST]
        if meets:
            pulls = (forces[pair[0]].times(tension_n), forces[pair[1]].times(tension_n))
            areas = (_area_now(answers, one, needs[0]), _area_now(answers, other, needs[1]))
            for each in meets:
                seats = answers.seats(needs, each.fitting.profile)
                spread = _spread(pulls, areas, [_area(each.fitting.profile, seat) for seat in seats])
                served = serve(each.part, seats, each.fitting.marks, each.more)
                found.append(TwinAdvice(pair, distance_mm, served, each.off_mm, each.give_mm, spread))
    return tuple(found)


class _Meets(NamedTuple):
    """A two-post part laid on two holes: the better one sorts first."""

    rank: Rank
    part: str
    off_mm: float
    give_mm: float | None
    fitting: Fitting
    more: tuple[Mark, ...]


def _pairs(rim: Rim) -> Iterator[tuple[Hole, Hole]]:
    """Neighbouring places that are both drilled, strung, and hold a part of their own."""
    holes = rim.frame.holes
    for one, other in pairwise((*holes, *holes[:1])):
        if one.address != other.address and _loose(one) and _loose(other):
            yield one, other


def _loose(hole: Hole) -> bool:
    return hole.drilled and bool(hole.passes) and hole.strip is None and hole.twin is None


def _meeting(
    answers: Answers, needs: tuple[HoleNeed, HoleNeed], distance_mm: float, place_u_mm: float | None
) -> Iterator[_Meets]:
    """The two-post parts whose posts suit both holes and reach them, or nearly."""
    limits = answers.thresholds
    reach_mm = limits.pitch_play_mm + limits.near_pitch_mm + limits.coverage * (place_u_mm or 0.0)
    for each in answers.pitched(needs, distance_mm - reach_mm, distance_mm + reach_mm):
        off_mm = distance_mm - each.pitch_mm
        give_mm = _give(each.part, place_u_mm, limits.coverage)
        more = (of_pitch(off_mm, give_mm, limits),)
        verdict = verdict_of((*more, *chain.from_iterable(each.marks)))
        if verdict != NO:
            rank = (verdict, *each.aspects, more[0].off)
            yield _Meets(rank, each.part.id, off_mm, give_mm, each, more)


def _give(part: Part, place_u_mm: float | None, coverage: float) -> float | None:
    """How far pitch and distance may be off together (mm), or None where one of them is not known."""
    resolution_mm = resolution_of(part.measured)
    known = [of_tolerance(part.tolerance_mm)] if part.tolerance_mm else []
    if resolution_mm:
        known.append(of_resolution(resolution_mm))
    return coverage * combined(place_u_mm, *known) if known and place_u_mm is not None else None


def _places_known(frame: Frame, thresholds: Thresholds) -> Mapping[str, float | None]:
    """Standard uncertainty (mm) of a measured hole place and of a derived one, None where nobody knows it."""
    resolution_mm = resolution_of(frame.measured)
    return {
        "derived": of_tolerance(thresholds.derived_place_mm),
        "measured": None if resolution_mm is None else of_resolution(resolution_mm),
    }


def _both(one: float | None, other: float | None) -> float | None:
    return None if one is None or other is None else combined(one, other)


def _spread(
    pulls: Sequence[Point], before: Sequence[float | None], after: Sequence[float | None]
) -> Spread | None:
    """The pressure under the worse of two holes, and under both posts together; areas in mm²."""
    alone, joined = [a for a in before if a is not None], [a for a in after if a is not None]
    if len(alone) < len(before) or len(joined) < len(after):
        return None
    worse = max(pull.length / area for pull, area in zip(pulls, alone, strict=True))
    return Spread(worse, pulls[0].plus(pulls[1]).length / sum(joined))


def _area_now(answers: Answers, hole: Hole, need: HoleNeed) -> float | None:
    """The area (mm²) of the part that sits in a hole now."""
    profile = answers.index.profiles.get(hole.part or "")
    return _area(profile, answers.seats((need,), profile)[0]) if profile else None


def _area(profile: Profile, seat: Seat) -> float | None:
    engaged_mm = seat.reach.engaged_mm
    return None if engaged_mm is None else projected_area(profile.barrel.mm, engaged_mm)
