"""One half of the rim, and where lines of the string bed meet it."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import accumulate, islice
from operator import le

from rimbook.book.model import End, Head
from rimbook.rim.outline import curve


@dataclass(frozen=True, slots=True)
class Stretch:
    """A stretch of the rim on which one coordinate, the key, never falls.

    Where the outline doubles back, the farthest reach so far stands for it, so that a line always
    meets the stretch once. A line beyond either end meets it there.
    """

    keys: tuple[float, ...]
    along_mm: Sequence[float]
    heights: Sequence[float]

    def along(self, key: float) -> float:
        """Where the line meets the stretch, in mm from the middle of the head."""
        return _between(self.along_mm, *self._meet(key))

    def height(self, key: float) -> tuple[float, float]:
        """The y where the line meets the stretch, and how steep the rim is there (|dy| / length)."""
        index, share = self._meet(key)
        rise = self.heights[index] - self.heights[index - 1]
        run = self.along_mm[index] - self.along_mm[index - 1]
        return _between(self.heights, index, share), abs(rise / run) if run else 1.0

    def _meet(self, key: float) -> tuple[int, float]:
        """The piece that ends at `index`, and the share of it before the line."""
        keys = self.keys
        index = min(max(bisect_left(keys, key), 1), len(keys) - 1)
        step = keys[index] - keys[index - 1]
        share = (key - keys[index - 1]) / step if step else 0.0
        return index, min(max(share, 0.0), 1.0)


def _between(values: Sequence[float], index: int, share: float) -> float:
    return values[index - 1] + share * (values[index] - values[index - 1])


@dataclass(frozen=True, slots=True)
class Half:
    """One side of the rim, from the middle of the head to the middle of the throat.

    Lengths run from the middle of the head down this side. A main is found by its distance from the
    centre line, at the head or at the throat; a cross by its distance below the origin.
    """

    length_mm: float
    mains: dict[End, Stretch]
    crosses: Stretch


@lru_cache(maxsize=256)
def halves(head: Head) -> tuple[Half, Half]:
    """The right and the left half of a head. They are one and the same where it is symmetric."""
    line = curve(head)
    along = line.along_mm
    xs, ys = [x for x, _ in line.points], [y for _, y in line.points]
    turn = xs.index(0.0, 1)
    right = _half(xs[: turn + 1], ys[: turn + 1], along[: turn + 1])
    if head.outline != "points":
        return right, right
    left = _half(
        [0.0, *(-x for x in xs[: turn - 1 : -1])],
        [ys[0], *ys[: turn - 1 : -1]],
        [0.0, *(line.length_mm - place for place in along[: turn - 1 : -1])],
    )
    return right, left


def _half(xs: Sequence[float], ys: Sequence[float], along: Sequence[float]) -> Half:
    widest = max(range(1, len(xs) - 1), key=xs.__getitem__)
    head = slice(None, widest + 1)
    throat = slice(None, widest - 1, -1)
    mains: dict[End, Stretch] = {
        "head": Stretch(_growing(xs[head]), along[head], ys[head]),
        "throat": Stretch(_growing(xs[throat]), along[throat], ys[throat]),
    }
    crosses = Stretch(_growing([-y for y in ys]), along, ys)
    return Half(along[-1], mains, crosses)


def _growing(values: Sequence[float]) -> tuple[float, ...]:
    """The values, and the largest so far in place of each that falls behind."""
    never_falls = all(map(le, values, islice(values, 1, None)))
    return tuple(values if never_falls else accumulate(values, max))
