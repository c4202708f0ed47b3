"""The rim unrolled at true scale: where each hole comes to lie on a paper tape laid along the rim.

The tape is cut where the frame is open to it, at the middle of the throat, so that its two ends meet there
and the middle of the head lies inside it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import atan2, isfinite, pi
from typing import Literal

from rimbook.book.model import Catalogue, Frame, Hole
from rimbook.draw import bands, ring
from rimbook.draw.key import key, kind_of
from rimbook.rim.outline import at, throat_mm
from rimbook.rim.types import Curve, Rim

MOST_OUTSIDE_MM = 60.0
"""No rim is so deep: a longer way outside is a slip of the finger."""

OVERHANG_MM = 2.0
"""How far a strip is drawn beyond its last holes: no catalogue says."""


@dataclass(frozen=True, slots=True)
class Mark:
    """A place of the walk: how far it lies from the left end of the tape, and how that is known."""

    hole: Hole
    at_mm: float
    known: Literal["measured", "derived", "undrilled"]


@dataclass(frozen=True, slots=True)
class Span:
    """A strip or a two-post part, or the half of one that the ends of the tape cut in two.

    `kind` is that of the drawings' key. `ends` says on which side the part really ends: not where it goes
    on at the other end of the tape.
    """

    letter: str
    kind: str
    name: str
    start_mm: float
    end_mm: float
    ends: tuple[bool, bool] = (True, True)

    @property
    def is_twin(self) -> bool:
        """Whether it is a two-post part."""
        return self.kind.startswith("twin")


@dataclass(frozen=True, slots=True)
class Tape:
    """The whole tape in millimetres from its left end, marks and spans from the left.

    `outside_mm` is None for a tape that lies on the line of the holes itself, inside the head: its left end
    is the left side. Otherwise it goes round the outside, so far from that line, and its left end is the
    right side. Either way the upper edge lies on the face of the frame.
    """

    frame: Frame
    length_mm: float
    line_mm: float
    head_mm: float
    marks: tuple[Mark, ...]
    spans: tuple[Span, ...]
    outside_mm: float | None = None


def lay(rim: Rim, catalogue: Catalogue, *, outside_mm: float | None = None) -> Tape:
    """The tape of a frame. Raises ValueError where the way outside is no number from 0 to 60 mm."""
    if outside_mm is not None and not (isfinite(outside_mm) and 0 <= outside_mm <= MOST_OUTSIDE_MM):
        raise ValueError(
            f"{outside_mm:g} mm outside the line of the holes is not possible; "
            f"expected 0 to {MOST_OUTSIDE_MM:g} mm."
        )
    line, frame = rim.curve, rim.frame
    where = _unroll(line, outside_mm)
    along = {index: where(place) for index, place in ring.places(rim).items()}
    marks = [Mark(hole, along[index], _known(rim, hole)) for index, hole in enumerate(frame.holes)]
    return Tape(
        frame,
        length_mm=parallel_mm(line, outside_mm or 0.0),
        line_mm=line.length_mm,
        head_mm=where(0.0),
        marks=tuple(sorted(marks, key=lambda mark: mark.at_mm)),
        spans=tuple(sorted(_spans(rim, catalogue, along, outside_mm), key=lambda span: span.start_mm)),
        outside_mm=outside_mm,
    )


def parallel_mm(line: Curve, outside_mm: float) -> float:
    """The length (mm) of the closed curve that runs so far outside another: L + 2πd.

    J. Steiner's formula for parallel curves (Über parallele Flächen, 1840); E. W. Weisstein, “Parallel
    Curves”, MathWorld. It holds for every closed line without crossings.
    """
    return line.length_mm + 2 * pi * outside_mm


def outside_of(line: Curve, round_mm: float) -> float:
    """How far outside the line of the holes (mm) a way of this length (mm) runs: (P - L) / 2π."""
    return (round_mm - line.length_mm) / (2 * pi)


def turned(line: Curve, along_mm: float) -> float:
    """By how much (radians, clockwise) the way out has turned from straight up, whole turns counted.

    A head is an oval, so the direction never strays half a turn from the one on a circle.
    """
    outward = at(line, along_mm)[1]
    turn = atan2(outward.x, outward.y)
    return turn + 2 * pi * round(along_mm / line.length_mm - turn / (2 * pi))


def _unroll(line: Curve, outside_mm: float | None) -> Callable[[float], float]:
    """From a place along the line of the holes to one on the tape, both in mm.

    A piece ds of the line that turns by dθ is ds + d·dθ long at the distance d: marks move by the angle
    turned since the middle of the head, not evenly.
    """
    distance = outside_mm or 0.0
    start = turned(line, 0.0)
    whole = parallel_mm(line, distance)

    def beside(along_mm: float) -> float:
        return along_mm + distance * (turned(line, along_mm) - start)

    throat = beside(throat_mm(line))

    def where(along_mm: float) -> float:
        place = (beside(along_mm) - throat) % whole
        return place if outside_mm is None else whole - place

    return where


def _known(rim: Rim, hole: Hole) -> Literal["measured", "derived", "undrilled"]:
    return rim.holes[hole.address].place if hole.drilled else "undrilled"


def _spans(
    rim: Rim, catalogue: Catalogue, along: dict[int, float], outside_mm: float | None
) -> Iterator[Span]:
    frame, known = rim.frame, key(rim.frame, catalogue)
    half = parallel_mm(rim.curve, outside_mm or 0.0) / 2
    for run in (*bands.strip_runs(frame), *bands.twin_runs(frame)):
        hole = frame.holes[run[0]]
        kind = kind_of(frame, catalogue, hole)
        if outside_mm is not None:
            kind = _TURNED.get(kind, kind)
        name = frame.strips[hole.strip].name if hole.strip is not None else ""
        over = 0.0 if hole.twin is not None else OVERHANG_MM
        pieces = _broken([along[index] for index in run], half)
        for piece in pieces:
            start, end, ends = max(min(piece) - over, 0.0), min(max(piece) + over, 2 * half), (True, True)
            if len(pieces) > 1:
                start, end, ends = (
                    (0.0, end, (False, True)) if end < half else (start, 2 * half, (True, False))
                )
            yield Span(known.letter(frame, hole), kind, name, start, end, ends)


_TURNED = {"twin-long-first": "twin-long-last", "twin-long-last": "twin-long-first"}
"""Round the outside, clockwise runs from right to left."""


def _broken(places: Sequence[float], half: float) -> list[list[float]]:
    """The places of a run in order, parted where it leaves one end of the tape and enters the other."""
    pieces: list[list[float]] = [[]]
    for place in places:
        if pieces[-1] and abs(place - pieces[-1][-1]) > half:
            pieces.append([])
        pieces[-1].append(place)
    return pieces
