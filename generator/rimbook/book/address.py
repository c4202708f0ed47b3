"""Addresses and the short forms in which a map names several holes at once."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from rimbook.book.model import Address, Side

SIDES: tuple[Side, Side] = ("R", "L")

_SELECTOR = re.compile(r"([RL]?)([1-9][0-9]{0,3})(?:-([RL]?)([1-9][0-9]{0,3}))?")


@dataclass(frozen=True, slots=True)
class Selector:
    """`9` and `9-13` on both sides, `R9`, `R9-R13` on one."""

    sides: tuple[Side, ...]
    first: int
    last: int


def selector(word: object) -> Selector | None:
    """Read a selector, or None where the word is none."""
    match = _SELECTOR.fullmatch(str(word)) if not isinstance(word, bool) else None
    if not match:
        return None
    side, first, other_side, last = match.groups()
    if last is not None and other_side != side:
        return None
    sides = tuple(known for known in SIDES if not side or known == side)
    return Selector(sides, int(first), int(last or first))


def address(word: object) -> Address | None:
    """Read one hole's address with its side, as `R9`."""
    found = selector(word)
    if found is None or len(found.sides) != 1 or found.first != found.last or "-" in str(word):
        return None
    return Address(found.sides[0], found.first)


def clockwise(counts: Mapping[Side, int]) -> tuple[Address, ...]:
    """All addresses of a frame with so many places a side: R1 … Rn, Lm … L1."""
    return _ring(counts["R"], counts["L"])


@lru_cache(maxsize=256)
def _ring(right: int, left: int) -> tuple[Address, ...]:
    down = tuple(Address("R", number) for number in range(1, right + 1))
    return down + tuple(Address("L", number) for number in range(left, 0, -1))


def span(first: Address, last: Address, counts: Mapping[Side, int]) -> tuple[Address, ...]:
    """The places from the first clockwise to the last, both counted."""
    ring = clockwise(counts)
    start, end = ring.index(first), ring.index(last)
    return ring[start : end + 1] if start <= end else ring[start:] + ring[: end + 1]
