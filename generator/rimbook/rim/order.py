"""Places put in order with the least shift: the walk's order always holds."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

Slot = tuple[float, float]
"""A place on the walk and its millimetres along the rim.

The middles of head and throat stand half a place before the first hole and after the last.
"""


def in_order(wanted: Sequence[Slot], first: Slot, last: Slot, gap_mm: float) -> list[Slot]:
    """The places nearest to those wanted that keep a gap to each other and to both ends.

    `wanted` comes in order of the walk. Nearest means the least sum of squared shifts: isotonic
    regression by pooling adjacent violators (Barlow and others, *Statistical Inference under Order
    Restrictions*, 1972), after `gap_mm` for each step of the walk has been taken
    off, and held between the ends. Where there is not so much room, the gap shrinks to an even share.
    """
    (start, low), (end, high) = first, last
    gap = min(gap_mm, max(high - low, 0.0) / (end - start))
    floor, ceiling = low - start * gap, high - end * gap
    pools: list[tuple[float, int]] = []
    for slot, place in wanted:
        total, size = place - slot * gap, 1
        while pools and pools[-1][0] * size >= total * pools[-1][1]:
            before, more = pools.pop()
            total, size = total + before, size + more
        pools.append((total, size))
    level = [min(max(total / size, floor), ceiling) for total, size in pools for _ in range(size)]
    return [(slot, value + slot * gap) for (slot, _), value in zip(wanted, level, strict=True)]


def filled(known: Sequence[Slot], slots: Sequence[float]) -> dict[float, float]:
    """The known places by slot, and all other slots spread evenly between their known neighbours."""
    places: dict[float, float] = dict(known)
    waiting = iter(slots)
    slot = next(waiting, None)
    for (start, low), (end, high) in pairwise(known):
        while slot is not None and slot <= end:
            places.setdefault(slot, low + (high - low) * (slot - start) / (end - start))
            slot = next(waiting, None)
    return places
