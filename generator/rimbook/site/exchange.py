"""What stands in for what over the whole book, made ready for the pages of parts. Worked out once a build."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from rimbook.bench.answers import Answers
from rimbook.bench.interchange import Interchange, from_places
from rimbook.bench.needs import Need
from rimbook.bench.part_index import index_parts
from rimbook.bench.thresholds import Thresholds
from rimbook.book.model import Catalogue
from rimbook.site.cross import Cross
from rimbook.site.summary import Summary

NAMED = 4
"""So many frames are named for one need."""


class Where(NamedTuple):
    """A frame that has holes of a need, how many, and the first of them."""

    frame: Summary
    holes: int
    first: str


class At(NamedTuple):
    """A need of the book, the frames that have it, all their holes, and some of the frames."""

    need: Need
    frames: int
    holes: int
    some: tuple[Where, ...]


@dataclass(frozen=True, slots=True)
class Exchange:
    """The interchange of a book with its answers. `at` tells of each need where it is asked.

    `fitted` tells it of each part and need for the places where the map says that it sits.
    `serves` names for each part the needs that it serves, best places in the ranking first.
    """

    found: Interchange
    answers: Answers
    at: Mapping[Need, At]
    fitted: Mapping[tuple[str, Need], At]
    serves: Mapping[str, Sequence[Need]]


def exchange(cross: Cross, catalogue: Catalogue, thresholds: Thresholds) -> Exchange:
    """Answer every need of the book once."""
    answers = Answers(index_parts(catalogue), thresholds)
    frames = cross.frames.values()
    found = from_places(((frame.slug, frame.asked) for frame in frames), answers)
    at, fitted = _where(frames)
    return Exchange(found, answers, at, fitted, _serves(found, at))


class _Tally:
    """Counts frames and holes, and keeps the first few frames. Frames come one after the other."""

    __slots__ = ("frames", "holes", "some")

    def __init__(self) -> None:
        self.frames, self.holes = 0, 0
        self.some: list[Where] = []

    def add(self, frame: Summary, holes: int, first: str) -> None:
        self.holes += holes
        if self.some and self.some[-1].frame is frame:
            last = self.some[-1]
            self.some[-1] = Where(frame, last.holes + holes, last.first)
            return
        self.frames += 1
        if len(self.some) < NAMED:
            self.some.append(Where(frame, holes, first))

    def told(self, need: Need) -> At:
        return At(need, self.frames, self.holes, tuple(self.some))


def _where(frames: Iterable[Summary]) -> tuple[dict[Need, At], dict[tuple[str, Need], At]]:
    at: defaultdict[Need, _Tally] = defaultdict(_Tally)
    fitted: defaultdict[tuple[str, Need], _Tally] = defaultdict(_Tally)
    for frame in frames:
        own: dict[Need, tuple[int, str]] = {}
        for asked in frame.asked:
            holes, first = own.get(asked.need, (0, asked.first))
            own[asked.need] = holes + asked.holes, first
            if asked.part is not None and not asked.covered:
                fitted[asked.part, asked.need].add(frame, asked.holes, asked.first)
        for need, (holes, first) in own.items():
            at[need].add(frame, holes, first)
    return (
        {need: tally.told(need) for need, tally in at.items()},
        {key: tally.told(key[1]) for key, tally in fitted.items()},
    )


def _serves(found: Interchange, at: Mapping[Need, At]) -> dict[str, list[Need]]:
    """The needs of each part: best places in the ranking first, then those of most frames."""
    ranked: defaultdict[str, list[tuple[int, int, int, Need]]] = defaultdict(list)
    for number, (need, answer) in enumerate(found.answers.items()):
        for place, part in enumerate(answer.serving):
            ranked[part].append((place, -at[need].frames, number, need))
    return {part: [need for *_, need in sorted(needs)] for part, needs in ranked.items()}
