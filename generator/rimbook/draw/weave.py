"""Strings over and under: two paths, broken where the other string passes above."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import dist

from rimbook.book.model import Address
from rimbook.draw.ring import Sight
from rimbook.draw.svg import Line, dashes
from rimbook.rim.types import Rim


def inside_lines(rim: Rim, at: Mapping[Address, Sight]) -> tuple[list[Line], list[Line]]:
    """The straight runs within the head as (mains, crosses), between spots of the page by address.

    A run that stays on its side is a main; one that changes sides is a cross.
    """
    mains: list[Line] = []
    crosses: list[Line] = []
    for way in rim.paths:
        for leg in way.legs:
            if leg.run == "inside":
                lines = mains if leg.start.side == leg.end.side else crosses
                lines.append((at[leg.start].out(0), at[leg.end].out(0)))
    mains.sort(key=lambda line: line[0][0] + line[1][0])
    crosses.sort(key=lambda line: line[0][1] + line[1][1])
    return mains, crosses


def weave(mains: Sequence[Line], crosses: Sequence[Line], gap: float) -> tuple[str, str]:
    """Path data of mains and of crosses, each broken by `gap` units on both sides where it goes under.

    Lines are in order across and down the head; they go under in turn, as a
    string bed is interlaced.
    """
    main_cuts: list[list[float]] = [[] for _ in mains]
    cross_cuts: list[list[float]] = [[] for _ in crosses]
    # Each cross as its start, its direction, and the turn between the two: the meeting of
    # a + t·m with c + s·k is t = (c×k - a×k) / m×k, s = (c×m - a×m) / m×k.
    courses = [(cx, cy, dx - cx, dy - cy, cx * (dy - cy) - cy * (dx - cx)) for (cx, cy), (dx, dy) in crosses]
    for i, ((ax, ay), (bx, by)) in enumerate(mains):
        mx, my = bx - ax, by - ay
        a_m = ax * my - ay * mx
        for j, (cx, cy, kx, ky, c_k) in enumerate(courses):
            turn = mx * ky - my * kx
            if turn:
                on_main = (c_k - ax * ky + ay * kx) / turn
                on_cross = (cx * my - cy * mx - a_m) / turn
                if 0.0 < on_main < 1.0 and 0.0 < on_cross < 1.0:
                    if (i + j) % 2:
                        main_cuts[i].append(on_main)
                    else:
                        cross_cuts[j].append(on_cross)
    return (
        "".join([_broken(line, cuts, gap) for line, cuts in zip(mains, main_cuts, strict=True)]),
        "".join([_broken(line, cuts, gap) for line, cuts in zip(crosses, cross_cuts, strict=True)]),
    )


def _broken(line: Line, cuts: list[float], gap: float) -> str:
    """A line with a piece left out about each cut."""
    length = dist(*line)
    if not length:
        return ""
    half = gap / length
    return dashes(line, [*[share for cut in sorted(cuts) for share in (cut - half, cut + half)], 1.0])
