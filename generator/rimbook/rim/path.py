"""The way of the string: every pass inside the head and every leg outside the rim, from end to end."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from typing import Literal

from rimbook.book.address import SIDES
from rimbook.book.model import Address, Frame, Pass, Side
from rimbook.rim.types import Curve, Leg, Placed, StringPath

Name = Literal["mains", "crosses", "whole"]
Found = dict[tuple[Pass, Side], list[Address]]
Run = tuple[Address, Address]
"""One pass through the head, from the hole where it enters to the hole where it leaves."""


class NotDrawable(ValueError):
    """The walk leaves no way for the string: the message names the pass and what it lacks."""


def paths(frame: Frame, holes: Mapping[Address, Placed], line: Curve) -> tuple[StringPath, ...]:
    """The mains and the crosses of a two-piece job, or the whole string of a one-piece job.

    Raises NotDrawable where a pass has too few holes or too many, or is not one of the frame's.
    """
    found = _holes_of_passes(frame)
    mains, crosses = _mains(frame, found), _crosses(frame, found)
    order = frame.stringing
    if order.pieces == 1:
        if order.first_cross == "L":
            mains = [(end, start) for start, end in reversed(mains)]
        pieces: list[tuple[Name, list[Run]]] = [("whole", mains + crosses)]
    else:
        pieces = [("mains", mains), ("crosses", crosses)]
    ends = [end for _, runs in pieces for end in (runs[0][0], runs[-1][1])]
    knots = _knots(ends, [hole for hole in order.tie_offs if hole in holes], holes, line.length_mm)
    ties = iter([knots.get(index, end) for index, end in enumerate(ends)])
    return tuple(StringPath(name, _thread(next(ties), runs, next(ties))) for name, runs in pieces)


def _passes(frame: Frame) -> list[Pass]:
    """The passes that each half of the frame must have."""
    mains = [Pass("m", number) for number in range(1, frame.mains // 2 + 1)]
    return mains + [Pass("c", number) for number in range(1, frame.crosses + 1)]


def _holes_of_passes(frame: Frame) -> Found:
    """The holes of each pass on each side, in order of the walk."""
    if frame.mains % 2:
        raise NotDrawable(f"{frame.mains} mains do not make two equal halves.")
    found: Found = {(each, side): [] for each in _passes(frame) for side in SIDES}
    for hole in frame.holes:
        side = hole.address.side
        for each in hole.passes:
            if (each, side) not in found:
                raise NotDrawable(f"{each} is on the walk at {hole.address}, but the frame has no such pass.")
            found[each, side].append(hole.address)
    for (each, side), holes in found.items():
        need = 2 if each.kind == "m" else 1
        if len(holes) != need:
            has = f"{len(holes)} hole{'' if len(holes) == 1 else 's'}"
            raise NotDrawable(
                f"{each} passes {has} on the {'right' if side == 'R' else 'left'} side, not {need}."
            )
        if side == "L":
            holes.reverse()
    return found


def _mains(frame: Frame, found: Found) -> list[Run]:
    """From the outermost on the left to the outermost on the right, through head and throat by turns."""
    half = frame.mains // 2
    order: list[tuple[Side, int]] = [("L", number) for number in range(half, 0, -1)]
    order += [("R", number) for number in range(1, half + 1)]
    runs = []
    for index, (side, number) in enumerate(order):
        head, throat = found[Pass("m", number), side]
        # The two centre mains are joined at `mains_start`: the left one runs up to it.
        up = ((half - index) % 2 == 1) == (frame.stringing.mains_start == "head")
        runs.append((throat, head) if up else (head, throat))
    return runs


def _crosses(frame: Frame, found: Found) -> list[Run]:
    """From the end where they begin to the other, from side to side by turns."""
    order: Iterable[int] = range(1, frame.crosses + 1)
    if frame.stringing.crosses_start == "throat":
        order = reversed(range(1, frame.crosses + 1))
    runs = []
    for index, number in enumerate(order):
        right, left = found[Pass("c", number), "R"][0], found[Pass("c", number), "L"][0]
        from_right = (index % 2 == 0) == (frame.stringing.first_cross == "R")
        runs.append((right, left) if from_right else (left, right))
    return runs


def _thread(start: Address, runs: Sequence[Run], end: Address) -> tuple[Leg, ...]:
    """All legs from one end of the string to the other; none outside where it turns back in one hole."""
    legs = []
    here = start
    for enters, leaves in runs:
        if here != enters:
            legs.append(Leg(here, enters, "outside"))
        legs.append(Leg(enters, leaves, "inside"))
        here = leaves
    if here != end:
        legs.append(Leg(here, end, "outside"))
    return tuple(legs)


def _knots(
    ends: Sequence[Address], tie_offs: Sequence[Address], holes: Mapping[Address, Placed], round_mm: float
) -> dict[int, Address]:
    """Which tie-off hole each end of string takes, by index of the end.

    As many ends as there are holes for are tied off, with the least length of string along the rim in all.
    Exact: the best choice for every set of ends, one hole at a time.
    """
    best: dict[frozenset[int], tuple[float, dict[int, Address]]] = {frozenset(): (0.0, {})}
    for hole in tie_offs:
        ways = [_apart(holes[end], holes[hole], round_mm) for end in ends]
        for taken, (length, chosen) in list(best.items()):
            for index, way in enumerate(ways):
                if index not in taken:
                    total = length + way
                    more = taken | {index}
                    if more not in best or total < best[more][0]:
                        best[more] = (total, {**chosen, index: hole})
    most = max(map(len, best))
    return min((option for taken, option in best.items() if len(taken) == most), key=lambda o: o[0])[1]


def _apart(one: Placed, other: Placed, round_mm: float) -> float:
    """The shorter way along the rim, to a micrometre, so that equal ways count as equal."""
    away = abs(one.along_mm - other.along_mm)
    return round(min(away, round_mm - away), 3)
