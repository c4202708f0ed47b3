"""Hole places along the rim: measured where somebody did, otherwise derived from the pattern."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from rimbook.book.address import SIDES
from rimbook.book.model import Address, End, Frame, Hole
from rimbook.rim.half import Half, halves
from rimbook.rim.once import once
from rimbook.rim.order import Slot, filled, in_order
from rimbook.rim.outline import at, curve
from rimbook.rim.spacing import Spacing, Walk, spacing
from rimbook.rim.types import Placed

DERIVED_GAP_MM = 4.5
"""Derived places keep this far apart, clear of flanges (common practice, no published source)."""
MEASURED_GAP_MM = 0.01
"""Measured places out of order are set this far apart: finer than any calliper reads."""


@dataclass(frozen=True, slots=True)
class Laid:
    """Where a hole comes to lie down its own side, and how far that is from where it should (both mm)."""

    along_mm: float
    bend_mm: float


def places(frame: Frame) -> dict[Address, Placed]:
    """All drilled holes on the outline, clockwise from the middle of the head.

    A measured place wins and is never moved, unless the order of the walk would break. Derived places follow
    the measured ones beside them. Places always grow strictly along the walk.
    """
    line = curve(frame.head)
    laid = _laid(frame)
    found = {}
    for hole in frame.holes:
        if hole.drilled:
            down = laid[hole.address].along_mm
            along = down if hole.address.side == "R" else line.length_mm - down
            point, outward = at(line, along)
            found[hole.address] = Placed(
                hole.address, point, outward, along, "derived" if hole.place_mm is None else "measured"
            )
    return found


def bends(frame: Frame) -> Mapping[Address, float]:
    """How far (mm) each drilled hole had to move along the rim to keep the order of the walk.

    Zero where the measured place, or the line of the string, already falls in order.
    """
    laid = _laid(frame)
    return {hole.address: laid[hole.address].bend_mm for hole in frame.holes if hole.drilled}


def bed(frame: Frame) -> Spacing:
    """Where the strings of a frame run when drawn straight, as its derived places take them to."""
    return spacing(frame, _halves(frame))


@once
def _laid(frame: Frame) -> dict[Address, Laid]:
    walks = _halves(frame)
    even = spacing(frame, walks)
    laid = [_lay(half, holes, even) for half, holes in walks]
    return {
        Address(side, number): lay
        for side, numbers in zip(SIDES, (laid[0], laid[-1]), strict=True)
        for number, lay in numbers.items()
    }


def _halves(frame: Frame) -> list[Walk]:
    """The right and the left half of the rim with their holes, or one for both where they are alike."""
    right, left = halves(frame.head)
    down = [hole for hole in frame.holes if hole.address.side == "R"]
    other = [hole for hole in reversed(frame.holes) if hole.address.side == "L"]
    if right is left and _alike(down, other):
        return [(right, down)]
    return [(right, down), (left, other)]


def _alike(one: Sequence[Hole], other: Sequence[Hole]) -> bool:
    return len(one) == len(other) and all(
        a.passes == b.passes and a.place_mm == b.place_mm and a.drilled == b.drilled
        for a, b in zip(one, other, strict=True)
    )


def _lay(half: Half, holes: Sequence[Hole], even: Spacing) -> dict[int, Laid]:
    """One side's holes by number."""
    first: Slot = (0.5, 0.0)
    last: Slot = (len(holes) + 0.5, half.length_mm)
    numbers = [hole.address.number for hole in holes if hole.drilled]
    measured = [
        (hole.address.number, hole.place_mm) for hole in holes if hole.drilled and hole.place_mm is not None
    ]
    pattern = dict(_pattern(half, holes, even))
    fixed = [first, *in_order(measured, first, last, MEASURED_GAP_MM), last]
    wanted = _follow(pattern, fixed)
    known = [first]
    for start, end in pairwise(fixed):
        between = [slot for slot in wanted if start[0] < slot[0] < end[0]]
        known += in_order(between, start, end, DERIVED_GAP_MM)
        known.append(end)
    should = dict([*wanted, *measured])
    along = filled(known, numbers)
    return {
        number: Laid(along[number], abs(along[number] - should.get(number, along[number])))
        for number in numbers
    }


def _pattern(half: Half, holes: Sequence[Hole], even: Spacing) -> list[Slot]:
    """Where the strings of each hole, drawn straight, meet the rim: their mean where two pass."""
    seen: set[int] = set()
    found: list[Slot] = []
    for hole in holes:
        lines = []
        for kind, number in hole.passes:
            if kind == "c":
                lines.append(half.crosses.along(-even.cross(number)))
            else:
                end: End = "throat" if number in seen else "head"
                seen.add(number)
                lines.append(half.mains[end].along(even.main(number)))
        if lines:
            found.append((hole.address.number, sum(lines) / len(lines)))
    return found


def _follow(pattern: Mapping[float, float], fixed: Sequence[Slot]) -> list[Slot]:
    """The pattern's places, shifted as the measured holes on either side of them are."""
    shifts = [(slot, place - pattern[slot]) for slot, place in fixed if slot in pattern]
    if not shifts:
        return list(pattern.items())
    shifts = [(fixed[0][0], 0.0), *shifts, (fixed[-1][0], 0.0)]
    slots = [slot for slot, _ in shifts]
    taken = set(slots)
    wanted = []
    for slot, place in pattern.items():
        if slot not in taken:
            index = bisect_right(slots, slot)
            (start, low), (end, high) = shifts[index - 1], shifts[index]
            wanted.append((slot, place + low + (high - low) * (slot - start) / (end - start)))
    return wanted
