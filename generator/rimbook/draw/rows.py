"""Where the places of the walk stand on the two rulers of the unrolled rim."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from rimbook.book.address import SIDES
from rimbook.book.model import Side
from rimbook.draw.ring import places
from rimbook.draw.svg import Spot
from rimbook.rim.types import Rim

WIDTH = 360.0
TOP = 44.0
JOIN = 13.0
"""How far beyond its ends the rulers are joined."""

RULER = 70.0
"""From the middle of the page to either ruler."""

ROW = 15.6
"""Units of height for each place, on the mean."""

TIGHT = 11.6
"""The least distance between two lines of words."""


@dataclass(frozen=True, slots=True)
class Rows:
    """Each place by its index in `frame.holes`: how far down its mark stands, and how far down its words."""

    sides: tuple[Side, ...]
    marks: tuple[float, ...]
    lines: tuple[float, ...]
    scale: float
    bottom: float

    def mark(self, index: int, away: float = RULER) -> Spot:
        """The spot level with a mark, so far from the middle of the page on its own side."""
        return across(self.sides[index], away), self.marks[index]

    def line(self, index: int, away: float) -> Spot:
        """The same, level with the words."""
        return across(self.sides[index], away), self.lines[index]

    def lane(self, run: Sequence[int], away: float, overhang: float) -> list[Spot]:
        """The line that follows a run of places beside the rulers, round head or throat from side to side."""
        beyond = JOIN + (away - RULER) * 0.12
        spots = [self.mark(run[0], away)]
        for before, after in pairwise(run):
            side, other = self.sides[before], self.sides[after]
            if side != other:
                edge = self.bottom + beyond if side == "R" else TOP - beyond
                spots += [(across(side, away), edge), (across(other, away), edge)]
            spots.append(self.mark(after, away))
        first, last = (1 if self.sides[index] == "R" else -1 for index in (run[0], run[-1]))
        (ax, ay), (bx, by) = spots[0], spots[-1]
        return [(ax, ay - first * overhang), *spots, (bx, by + last * overhang)]


def across(side: Side, away: float) -> float:
    """The place across the page, so far from its middle."""
    return WIDTH / 2 + (away if side == "R" else -away)


def rows(rim: Rim) -> Rows:
    """Marks at true distances along the rim, words beside them as far as they leave room for each other."""
    addresses, half = [hole.address for hole in rim.frame.holes], rim.curve.length_mm / 2
    scale = ROW * max([number for _, number in addresses], default=1) / half
    marks = [TOP + down * scale for down in _down(rim)]
    lines = list(marks)
    for side in SIDES:
        here = [index for index, address in enumerate(addresses) if address.side == side]
        here.sort(key=lambda index: addresses[index].number)
        for index, line in zip(here, spread([marks[index] for index in here], TIGHT), strict=True):
            lines[index] = line
    bottom = max([TOP + half * scale, *lines, *marks])
    return Rows(tuple([side for side, _ in addresses]), tuple(marks), tuple(lines), scale, bottom)


def spread(wanted: Sequence[float], gap: float) -> list[float]:
    """The heights nearest to those wanted, in the same order, at least a gap apart.

    Pooling adjacent violators (Barlow and others, *Statistical Inference under Order
    Restrictions*, 1972): neighbours that are too close move apart about their mean.
    """
    pools: list[tuple[float, int]] = []
    for index, height in enumerate(wanted):
        total, size = height - index * gap, 1
        while pools and pools[-1][0] * size > total * pools[-1][1]:
            before, more = pools.pop()
            total, size = total + before, size + more
        pools.append((total, size))
    level = [total / size for total, size in pools for _ in range(size)]
    return [value + index * gap for index, value in enumerate(level)]


def _down(rim: Rim) -> list[float]:
    """How far down its own side each place is, in mm from the middle of the head, less than 0 beyond it."""
    length = rim.curve.length_mm
    return [
        ((along if hole.address.side == "R" else -along) + length / 4) % length - length / 4
        for hole, along in zip(rim.frame.holes, places(rim).values(), strict=True)
    ]
