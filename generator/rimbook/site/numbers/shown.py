"""The frame and the hole of the book that worked examples are about."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import FrameNumbers, HoleNumbers, frame_numbers
from rimbook.bench.needs import HoleNeed, hole_needs
from rimbook.bench.part_index import index_parts
from rimbook.bench.thresholds import Thresholds
from rimbook.book.model import Address, Catalogue, Frame, Hole, Part
from rimbook.rim.place import place
from rimbook.rim.types import Rim

FIRST_CHOICE = ("plover-76", Address("R", 9))
"""A frame that is known all over, and a hole of it with two strings."""


@dataclass(frozen=True, slots=True)
class Shown:
    """A frame with all its numbers, and one hole of it. `part` is None where nobody knows what sits there."""

    rim: Rim
    hole: Hole
    part: Part | None
    numbers: FrameNumbers
    answers: Answers
    book_day: date | None = None

    @property
    def frame(self) -> Frame:
        return self.rim.frame

    @property
    def catalogue(self) -> Catalogue:
        return self.answers.index.catalogue

    @property
    def limits(self) -> Thresholds:
        return self.answers.thresholds

    @property
    def need(self) -> HoleNeed:
        """What the hole asks of a part."""
        return hole_needs(self.frame)[self.hole.address]

    @property
    def at_hole(self) -> HoleNumbers:
        """The numbers of the hole."""
        return self.numbers.holes[self.hole.address]

    @property
    def named(self) -> str:
        """`R9 of Plover 76`."""
        return f"{self.hole.address} of {self.frame.name}"


def shown(
    slugs: Iterable[str],
    record: Callable[[str], Frame],
    catalogue: Catalogue,
    thresholds: Thresholds,
    book_day: date | None = None,
) -> Shown | None:
    """The example out of a book, or None where no frame has a strung hole.

    `slugs` are those of the book, `record` fetches one of them, `book_day` is its newest day. The first
    choice is always the same frame, so that the pages stay as they are while the book grows; without it the
    first that will do.
    """
    known = sorted(slugs)
    for slug in sorted(known, key=lambda each: each != FIRST_CHOICE[0]):
        frame = record(slug)
        hole = _hole(frame, catalogue)
        if hole is not None:
            rim = place(frame)
            answers = Answers(index_parts(catalogue), thresholds)
            part = catalogue.get(hole.part or "")
            return Shown(rim, hole, part, frame_numbers(rim, answers), answers, book_day)
    return None


def _hole(frame: Frame, catalogue: Catalogue) -> Hole | None:
    """The hole of the first choice, or the one of which most is known."""
    strung = [hole for hole in frame.drilled if hole.passes]
    for hole in strung:
        if (frame.slug, hole.address) == FIRST_CHOICE:
            return hole
    return max(strung, key=lambda hole: _known(hole, catalogue), default=None)


def _known(hole: Hole, catalogue: Catalogue) -> int:
    return sum(
        (hole.bore_mm is not None, hole.rim_depth_mm is not None, catalogue.get(hole.part or "") is not None)
    )
