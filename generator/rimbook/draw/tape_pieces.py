"""A tape cut into pieces that fit on paper, each with a tab on which the next one is glued."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from rimbook.draw.tape import Tape

TAB_MM = 12.0
LEAST_MM = 60.0
"""A shorter piece has more glue than tape."""
_ASIDE_MM = 10.0
"""How far from its even share a join may move to find a wide gap between holes."""
_HEAD_MM = 7.0
"""So near the middle of the head there is no join where it can be helped: there the tape is laid on."""
_CLEAR_MM = 2.0
"""So far from a hole a join leaves its mark whole."""


@dataclass(frozen=True, slots=True)
class Piece:
    """A piece of the tape from join to join, in mm from the tape's left end. The last has no tab."""

    number: int
    count: int
    start_mm: float
    end_mm: float

    @property
    def tab_mm(self) -> float:
        """How far its paper reaches beyond its right join."""
        return TAB_MM if self.number < self.count else 0.0


class TooNarrow(ValueError):
    """The paper leaves no room for a piece that is worth cutting."""


def pieces(tape: Tape, room_mm: float) -> tuple[Piece, ...]:
    """Pieces of about the same length, none longer than the room with its tab, joined midway between holes.

    Raises TooNarrow where the room is less than 60 mm and a tab.
    """
    most = room_mm - TAB_MM
    if most < LEAST_MM:
        raise TooNarrow(
            f"There is room for {room_mm:.0f} mm; a piece of tape takes {LEAST_MM + TAB_MM:.0f} mm."
        )
    length = tape.length_mm
    count = 1 if length <= room_mm else ceil(length / (most - _ASIDE_MM))
    busy = sorted([0.0, tape.head_mm, *(mark.at_mm for mark in tape.marks), length])
    joins = [0.0]
    for left in range(count - 1, 0, -1):
        share = joins[-1] + (length - joins[-1]) / (left + 1)
        low = max(share - _ASIDE_MM, length - left * most)
        high = min(share + _ASIDE_MM, joins[-1] + most)
        joins.append(_widest_gap(busy, tape.head_mm, low, high, share))
    joins.append(length)
    return tuple(Piece(index + 1, count, *ends) for index, ends in enumerate(pairwise(joins)))


def _widest_gap(busy: list[float], head: float, low: float, high: float, share: float) -> float:
    """Where between two places to join: clear of holes, off the middle of the head, near the even share."""

    def merit(place: float) -> tuple[float, ...]:
        clear = min(abs(place - each) for each in busy)
        return min(clear, _CLEAR_MM), min(abs(place - head), _HEAD_MM), round(clear, 1), -abs(place - share)

    middles = [(start + end) / 2 for start, end in pairwise(busy)]
    return max([low, share, high, *(place for place in middles if low <= place <= high)], key=merit)
