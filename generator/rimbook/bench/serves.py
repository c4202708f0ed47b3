"""Whether a part serves a hole, in one verdict with its reasons, and which part serves best.

Order: the verdict, then how well it fits, how free the strings run, what must be cut, how near the
clearance is to the middle of snug, how thick a wall the room leaves, how near the end is to where a cut
would leave it; then parts sold by themselves, then the id. Common practice, no published source.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import chain
from typing import Literal, NamedTuple, get_args

from rimbook.bench import given
from rimbook.bench.fit import Fit, fit
from rimbook.bench.length import Reach, reach
from rimbook.bench.marks import Mark, of_fit, of_reach, of_room
from rimbook.bench.reasons import Missing, Reason
from rimbook.bench.room import Room, room
from rimbook.bench.sound import DEEPEST_RIM_MM, LARGEST_BORE_MM, THICKEST_STRING_MM, part_cautions
from rimbook.bench.thresholds import DEFAULT, Thresholds
from rimbook.bench.uncertainty import barrel_size, bore_size
from rimbook.book.model import Part

Verdict = Literal["serves", "may serve", "near miss", "no"]
Rank = tuple[int, ...]

VERDICTS: tuple[Verdict, ...] = get_args(Verdict)
NEAR_MISS, NO = 2, 3


class Seat(NamedTuple):
    """How one barrel sits in one hole: its fit, the room for the strings, its reach."""

    fit: Fit
    room: Room
    reach: Reach


class Marks(NamedTuple):
    """What these three say."""

    fit: Mark
    room: Mark
    reach: Mark


@dataclass(frozen=True, slots=True)
class Served:
    """One part of the catalogue for a hole, or for the holes that one piece fills.

    `seats` are its barrels in the order of the holes. `rank` sorts, the best first.
    """

    part: str
    verdict: Verdict
    reasons: tuple[Reason, ...]
    rank: Rank
    seats: tuple[Seat, ...]


@dataclass(frozen=True, slots=True)
class Wanted:
    """A hole as a reader measured it, in mm, and the strings that must go through, one diameter for each.

    None is what they could not measure. Raises ValueError for what no racket has.
    """

    bore_mm: float | None
    resolution_mm: float | None = None
    depth_mm: float | None = None
    string_mm: tuple[float, ...] | None = None

    def __post_init__(self) -> None:
        if self.bore_mm is not None:
            given.length("bore", self.bore_mm, most=LARGEST_BORE_MM)
        if self.resolution_mm is not None:
            given.length("resolution", self.resolution_mm, most=1.0)
        if self.depth_mm is not None:
            given.length("rim depth", self.depth_mm, most=DEEPEST_RIM_MM)
        for each in self.string_mm or ():
            given.length("string diameter", each, most=THICKEST_STRING_MM)

    @property
    def missing(self) -> tuple[Missing, ...]:
        """What to measure before an answer can be trusted."""
        measures: tuple[tuple[Missing, object], ...] = (
            ("bore", self.bore_mm),
            ("bore resolution", self.resolution_mm),
            ("rim depth", self.depth_mm),
            ("string diameter", self.string_mm),
        )
        return tuple(name for name, value in measures if value is None)


def ranked(wanted: Wanted, parts: Iterable[Part], thresholds: Thresholds = DEFAULT) -> tuple[Served, ...]:
    """The parts with one barrel that serve a measured hole, the best first, near misses at the end.

    Parts that miss by more, whose barrel nobody measured or whose sizes contradict each other are left
    out. Nothing serves a hole of unknown bore: no fit is claimed.
    """
    bore = bore_size(wanted.bore_mm, wanted.resolution_mm)
    found: list[tuple[Rank, bool, str, Served]] = []
    for part in parts:
        if (
            part.kind not in ("single", "wide")
            or part.barrel_mm is None
            or bore is None
            or part_cautions(part)
        ):
            continue
        seat = Seat(
            fit(bore, barrel_size(part), thresholds),
            room(part.bore_mm, wanted.string_mm, thresholds),
            reach(part.length_mm[0] if part.length_mm else None, wanted.depth_mm, thresholds),
        )
        served = serve(part.id, (seat,), (marks_of(seat, thresholds),))
        if served.verdict != "no":
            found.append((served.rank, not part.sold_alone, part.id, served))
    return tuple(served for *_, served in sorted(found, key=lambda each: each[:3]))


def marks_of(seat: Seat, thresholds: Thresholds = DEFAULT) -> Marks:
    """What fit, room and reach of one barrel say for or against it."""
    return Marks(
        of_fit(seat.fit, thresholds), of_room(seat.room, thresholds), of_reach(seat.reach, thresholds)
    )


def serve(part: str, seats: tuple[Seat, ...], marks: Sequence[Marks], more: tuple[Mark, ...] = ()) -> Served:
    """A part in all the holes it fills: it serves as well as the worst of them, and only if the rest suits.

    `more` are marks of the piece as a whole, as its pitch. Of alike reasons the worst is kept.
    """
    every = (*more, *chain.from_iterable(marks))
    worst: dict[tuple[str, str | None], Reason] = {}
    for reason in chain.from_iterable(mark.reasons for mark in every):
        old = worst.get((reason.code, reason.what))
        if old is None or (reason.mm or 0) > (old.mm or 0):
            worst[reason.code, reason.what] = reason
    verdict = verdict_of(every)
    return Served(part, VERDICTS[verdict], tuple(worst.values()), rank_of(verdict, marks, more), seats)


def verdict_of(marks: Iterable[Mark]) -> int:
    """The index in `VERDICTS`: serves with nothing against it, may serve in doubt, near miss, no.

    A near miss fails in one thing only, by little.
    """
    failed, doubt = None, False
    for mark in marks:
        if mark.fails is not None:
            if not mark.near or (failed is not None and failed != mark.fails):
                return NO
            failed = mark.fails
        doubt = doubt or mark.doubt
    if failed is not None:
        return NEAR_MISS
    return 1 if doubt else 0


def rank_of(verdict: int, marks: Sequence[Marks], more: tuple[Mark, ...] = ()) -> Rank:
    """The place in the ranking, by the worst of the holes in each aspect, then by the piece as a whole."""
    return (verdict, *aspects(marks), *(mark.off for mark in more))


def aspects(marks: Sequence[Marks]) -> tuple[int, ...]:
    """Fit, room and reach in the ranking: the worst grade of each, then by how much each is off at most."""
    if len(marks) == 1:
        fitted, strings, post = marks[0]
        return (fitted.grade, strings.grade, post.grade, fitted.off, strings.off, post.off)
    grades = (max(mark.grade for mark in aspect) for aspect in zip(*marks, strict=True))
    offs = (max(mark.off for mark in aspect) for aspect in zip(*marks, strict=True))
    return (*grades, *offs)
