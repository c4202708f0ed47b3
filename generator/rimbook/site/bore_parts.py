"""The parts for holes of one bore: those that sit there in the book, and others of about that size."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from typing import NamedTuple

from rimbook.bench.fit import FIT_WORDS, FitWord, fit_word
from rimbook.bench.thresholds import DEFAULT, Thresholds
from rimbook.book.model import Catalogue, Part
from rimbook.site.summary import Summary

SEATED: tuple[FitWord, ...] = FIT_WORDS[1:-1]
"""A barrel that neither drops out nor fails to seat is about as thick as the hole."""

MOST_OTHERS = 60
"""So many parts that sit in no such hole are named, those nearest to the bore."""


class BorePart(NamedTuple):
    """A part and a bore. `holes` and `frames` say where it sits so in the book: nowhere for the same size.

    `clearance_mm` is bore less barrel, `word` what the bench says of it; both None where either is unknown.
    """

    part: Part
    holes: int
    frames: int
    clearance_mm: float | None
    word: FitWord | None


def bore_parts(
    bore_mm: float | None,
    bore: str,
    frames: Iterable[Summary],
    catalogue: Catalogue,
    thresholds: Thresholds = DEFAULT,
) -> list[BorePart]:
    """First what sits there, the most first; then what has the same size, the nearest first.

    `bore_mm` is None for unknown bores, and `bore` is the size as pages write it.
    """
    holes: Counter[str] = Counter()
    times: Counter[str] = Counter()
    for frame in frames:
        for part_id, count in frame.uses[bore].parts.items():
            holes[part_id] += count
            times[part_id] += 1
    sitting = [
        _row(catalogue[part_id], bore_mm, holes[part_id], times[part_id], thresholds)
        for part_id in sorted(holes, key=lambda part_id: (-holes[part_id], part_id))
        if part_id in catalogue
    ]
    others = [row for row in _others(bore_mm, holes, catalogue, thresholds) if row.word in SEATED]
    others.sort(key=lambda row: (abs(row.clearance_mm or 0.0), row.part.id))
    return sitting + others[:MOST_OTHERS]


def _others(
    bore_mm: float | None, sitting: Counter[str], catalogue: Catalogue, thresholds: Thresholds
) -> Iterator[BorePart]:
    for part in catalogue.values():
        if part.id not in sitting and part.kind != "set":
            yield _row(part, bore_mm, 0, 0, thresholds)


def _row(part: Part, bore_mm: float | None, holes: int, frames: int, thresholds: Thresholds) -> BorePart:
    if bore_mm is None or part.barrel_mm is None:
        return BorePart(part, holes, frames, None, None)
    clearance_mm = round(bore_mm - part.barrel_mm, 6) + 0.0  # no −0.00
    return BorePart(part, holes, frames, clearance_mm, fit_word(clearance_mm, thresholds))
