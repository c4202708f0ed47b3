"""Count the passes of each string on each half of a walk."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rimbook.book.address import SIDES
from rimbook.book.model import Address, Frame, Pass, Side


@dataclass(frozen=True, slots=True)
class Tally:
    """The holes in which one string passes on one half, in order of the walk, and how many it needs."""

    side: Side
    string: Pass
    seen: tuple[Address, ...]
    wanted: int


def halves(frame: Frame) -> tuple[Side, ...]:
    """The sides worth looking at: one where the left is only the mirror image."""
    return ("R",) if frame.mirrored else SIDES


def walk_of(frame: Frame, side: Side) -> tuple[tuple[Address, tuple[Pass, ...]], ...]:
    """What passes where on one half, from the middle of the head to the middle of the throat."""
    half = sorted((hole for hole in frame.holes if hole.address.side == side), key=lambda h: h.address.number)
    return tuple((hole.address, hole.passes) for hole in half)


def wanted_passes(frame: Frame) -> Mapping[Pass, int]:
    """How often each string must pass on a half: a main at both ends, a cross once."""
    mains = {Pass("m", number): 2 for number in range(1, frame.mains // 2 + 1)}
    crosses = {Pass("c", number): 1 for number in range(1, frame.crosses + 1)}
    return mains | crosses


def tally(frame: Frame, side: Side) -> Mapping[Pass, Tally]:
    """Every string that is wanted or seen on a half: mains first, by number."""
    wanted = wanted_passes(frame)
    seen: dict[Pass, list[Address]] = {string: [] for string in wanted}
    for at, passes in walk_of(frame, side):
        for string in passes:
            seen.setdefault(string, []).append(at)
    ordered = sorted(seen, key=lambda string: (string.kind == "c", string.number))
    return {string: Tally(side, string, tuple(seen[string]), wanted.get(string, 0)) for string in ordered}
