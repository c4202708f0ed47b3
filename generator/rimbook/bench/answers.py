"""Every part of the catalogue that would serve a need, ranked, with the reason for each near miss.

What is worked out once is kept: a fit by bore and barrel, a room by inner bore and strings, a reach by
post and depth, an answer by need. So the work grows with distinct needs, not with holes. An answer holds
only the ids in order; the reasons of each are put together when somebody asks.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import chain, groupby
from operator import attrgetter, itemgetter
from typing import NamedTuple

from rimbook.bench.fit import Fit, fit
from rimbook.bench.kept import Kept
from rimbook.bench.length import Reach, reaches
from rimbook.bench.marks import Mark, failing, of_fit, of_pitch, of_reach, of_room
from rimbook.bench.needs import HoleNeed, Need, PieceNeed, strings_of
from rimbook.bench.part_index import PartIndex, Profile
from rimbook.bench.reasons import Missing, Reason
from rimbook.bench.room import Room, room
from rimbook.bench.serves import NEAR_MISS, NO, Marks, Rank, Seat, Served, aspects, rank_of, serve, verdict_of
from rimbook.bench.thresholds import CLOSE_MM, DEFAULT, Thresholds
from rimbook.bench.uncertainty import Size, bore_size
from rimbook.book.model import Part

_UNRECORDED = Mark((Reason("spacing unrecorded"),), doubt=True)
_KINDS = {"hole": ("single", "wide"), "twin": ("twin-even", "twin-uneven"), "strip": ("strip",)}

_Ranked = tuple[Rank, tuple[tuple[bool, str], ...]]


@dataclass(frozen=True, slots=True)
class Answer:
    """The ids of the parts that serve a need, the best first, and of those that miss it by little.

    Where `missing` names what to measure first, nothing is claimed.
    """

    need: Need
    serving: tuple[str, ...]
    near: tuple[str, ...]
    missing: tuple[Missing, ...] = ()


class Fitting(NamedTuple):
    """A two-post part whose posts suit two holes, or nearly. `aspects` are those of its marks."""

    pitch_mm: float
    part: Part
    profile: Profile
    marks: tuple[Marks, ...]
    aspects: tuple[int, ...]


class Candidate(NamedTuple):
    """The parts of one profile, and the mark of their fit in some bore.

    Of each part: whether it is not sold by itself, and its id.
    """

    profile: Profile
    parts: tuple[tuple[bool, str], ...]
    fit: Mark


class Answers:
    """Answers needs from one catalogue, and keeps what it has worked out."""

    def __init__(self, index: PartIndex, thresholds: Thresholds = DEFAULT) -> None:
        self.index = index
        self.thresholds = thresholds
        self._answers = Kept(self._answer)
        self._candidates = Kept(self._candidates_for)
        self._twins = Kept(self._twins_for)
        self._fits = Kept(self._fits_in)
        self._rooms = Kept(self._rooms_for)
        self._reaches = Kept(self._reaches_through)

    def of(self, need: Need) -> Answer:
        """The answer to one need."""
        return self._answers[need]

    def detail(self, need: Need, part_id: str) -> Served | None:
        """What there is to say of one part for a need: verdict, reasons, and each barrel in its hole.

        None where a size is missing, and for a part of another kind than the need asks for.
        """
        part, profile = self.index.catalogue.get(part_id), self.index.profiles.get(part_id)
        if part is None or profile is None or part.kind not in _KINDS[_kind(need)]:
            return None
        marks, more = self._marks(_holes(need), profile), self._of_piece(need, part)
        if marks is None or more is None:
            return None
        return serve(part_id, self.seats(_holes(need), profile), marks, more)

    def seats(self, holes: tuple[HoleNeed, ...], profile: Profile) -> tuple[Seat, ...]:
        """How the barrels of one part sit in the holes that it fills."""
        posts = self._reaches[_depths(holes)][profile.posts_mm]
        return tuple(
            Seat(
                self._fits[hole.bore_mm, hole.resolution_mm][profile.barrel][0],
                self._rooms[strings_of(hole, self.thresholds)][profile.bore_mm][0],
                post,
            )
            for hole, (post, _) in zip(holes, posts, strict=True)
        )

    def pitched(self, holes: tuple[HoleNeed, ...], least_mm: float, most_mm: float) -> tuple[Fitting, ...]:
        """The two-post parts with a pitch between two lengths whose posts suit two holes, or nearly."""
        pitches, fitting = self._twins[holes]
        first = bisect_left(pitches, least_mm - CLOSE_MM)
        return fitting[first : bisect_right(pitches, most_mm + CLOSE_MM, first)]

    def _answer(self, need: Need) -> Answer:
        missing: list[Missing] = ["bore"] if any(hole.bore_mm is None for hole in _holes(need)) else []
        if isinstance(need, PieceNeed) and need.kind == "twin" and need.pitch_mm is None:
            missing.append("pitch")
        if missing:
            return Answer(need, (), (), tuple(missing))
        if isinstance(need, HoleNeed):
            found = self._singles(need)
        else:
            found = self._pairs(need) if need.kind == "twin" else self._strips(need)
        serving: list[str] = []
        near: list[str] = []
        for rank, alike in groupby(sorted(found, key=itemgetter(0)), key=itemgetter(0)):
            parts = sorted(chain.from_iterable(parts for _, parts in alike))
            (near if rank[0] == NEAR_MISS else serving).extend(part for _, part in parts)
        return Answer(need, tuple(serving), tuple(near))

    def _singles(self, need: HoleNeed) -> Iterator[_Ranked]:
        """One-barrel parts. Most of the work is done here, so it is done profile by profile."""
        posts = self._reaches[(need.depth_mm,)]
        rooms = self._rooms[strings_of(need, self.thresholds)]
        for profile, parts, fit_mark in self._candidates[need.bore_mm, need.resolution_mm]:
            post_mark = posts[profile.posts_mm][0][1]
            if post_mark.fails is None or post_mark.near:
                marks = Marks(fit_mark, rooms[profile.bore_mm][1], post_mark)
                verdict = verdict_of(marks)
                if verdict != NO:
                    yield rank_of(verdict, (marks,)), parts

    def _pairs(self, need: PieceNeed) -> Iterator[_Ranked]:
        wanted_mm = need.pitch_mm or 0.0
        reach_mm = self.thresholds.pitch_play_mm + self.thresholds.near_pitch_mm
        for each in self.pitched(need.holes, wanted_mm - reach_mm, wanted_mm + reach_mm):
            yield from self._piece(need, each.part, each.marks)

    def _strips(self, need: PieceNeed) -> Iterator[_Ranked]:
        for part, profile in self.index.strips.get(need.posts, ()):
            if marks := self._marks(need.holes, profile):
                yield from self._piece(need, part, marks)

    def _piece(self, need: PieceNeed, part: Part, marks: tuple[Marks, ...]) -> Iterator[_Ranked]:
        more = self._of_piece(need, part)
        verdict = NO if more is None else verdict_of((*more, *chain.from_iterable(marks)))
        if verdict != NO:
            yield rank_of(verdict, marks, more or ()), ((not part.sold_alone, part.id),)

    def _of_piece(self, need: Need, part: Part) -> tuple[Mark, ...] | None:
        """What is said of a piece as a whole: its pitch or its bumper. None where it has other posts."""
        if isinstance(need, HoleNeed):
            return ()
        if need.kind == "strip":
            if part.posts != need.posts:
                return None
            if need.bumper is None or part.bumper == need.bumper:
                return (_UNRECORDED,)
            return _UNRECORDED, failing(Reason("bumper" if part.bumper else "no bumper"), 0.0)
        if need.pitch_mm is None or part.pitch_mm is None:
            return None
        return (of_pitch(part.pitch_mm - need.pitch_mm, 0.0, self.thresholds),)

    def _marks(self, holes: tuple[HoleNeed, ...], profile: Profile) -> tuple[Marks, ...] | None:
        """What is said of each barrel of a part, or None where a bore is unknown."""
        posts = self._reaches[_depths(holes)][profile.posts_mm]
        marks = []
        for hole, (_, post_mark) in zip(holes, posts, strict=True):
            if hole.bore_mm is None:
                return None
            fit_mark = self._fits[hole.bore_mm, hole.resolution_mm][profile.barrel][1]
            room_mark = self._rooms[strings_of(hole, self.thresholds)][profile.bore_mm][1]
            marks.append(Marks(fit_mark, room_mark, post_mark))
        return tuple(marks)

    def _candidates_for(self, key: tuple[float | None, float | None]) -> tuple[Candidate, ...]:
        bore_mm, resolution_mm = key
        if bore_mm is None:
            return ()
        fits = self._fits[bore_mm, resolution_mm]
        near = self.index.near(*self._window(bore_mm, bore_mm))
        return tuple(Candidate(profile, parts, fits[profile.barrel][1]) for profile, parts in near)

    def _twins_for(self, holes: tuple[HoleNeed, ...]) -> tuple[tuple[float, ...], tuple[Fitting, ...]]:
        """The two-post parts whose posts suit two holes, or nearly, the shortest pitch first; and pitches."""
        bores = [hole.bore_mm for hole in holes if hole.bore_mm is not None]
        if len(bores) < len(holes):
            return (), ()
        near = self.index.twins_near(*self._window(max(bores), min(bores)))
        marked = ((part, profile, self._marks(holes, profile)) for part, profile in near)
        found = sorted(
            (
                Fitting(part.pitch_mm or 0.0, part, profile, marks, aspects(marks))
                for part, profile, marks in marked
                if marks and verdict_of(chain.from_iterable(marks)) != NO
            ),
            key=attrgetter("pitch_mm", "part.id"),
        )
        return tuple(each.pitch_mm for each in found), tuple(found)

    def _window(self, widest_mm: float, narrowest_mm: float) -> tuple[float, float]:
        """The thinnest and the thickest barrel that could serve bores between two widths, or nearly."""
        limits = self.thresholds
        return (
            widest_mm - limits.drops_out_over_mm - limits.near_fit_mm - CLOSE_MM,
            narrowest_mm - limits.seats_down_to_mm + limits.near_fit_mm + CLOSE_MM,
        )

    def _fits_in(self, key: tuple[float | None, float | None]) -> Kept[Size, tuple[Fit, Mark]]:
        bore = bore_size(*key)

        def work(barrel: Size) -> tuple[Fit, Mark]:
            fitted = fit(bore, barrel, self.thresholds)
            return fitted, of_fit(fitted, self.thresholds)

        return Kept(work)

    def _rooms_for(self, string_mm: tuple[float, ...]) -> Kept[float | None, tuple[Room, Mark]]:
        def work(bore_mm: float | None) -> tuple[Room, Mark]:
            strings = room(bore_mm, string_mm, self.thresholds)
            return strings, of_room(strings, self.thresholds)

        return Kept(work)

    def _reaches_through(
        self, depths_mm: tuple[float | None, ...]
    ) -> Kept[tuple[float, ...] | None, tuple[tuple[Reach, Mark], ...]]:
        def work(posts_mm: tuple[float, ...] | None) -> tuple[tuple[Reach, Mark], ...]:
            posts = reaches(posts_mm, depths_mm, self.thresholds)
            return tuple((post, of_reach(post, self.thresholds)) for post in posts)

        return Kept(work)


def _kind(need: Need) -> str:
    return "hole" if isinstance(need, HoleNeed) else need.kind


def _holes(need: Need) -> tuple[HoleNeed, ...]:
    return (need,) if isinstance(need, HoleNeed) else need.holes


def _depths(holes: tuple[HoleNeed, ...]) -> tuple[float | None, ...]:
    return tuple([hole.depth_mm for hole in holes])
