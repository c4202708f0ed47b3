"""What a full regrommet of a frame takes."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from typing import get_args

from rimbook.book.model import Address, Catalogue, Frame, PartKind

_KINDS: tuple[str, ...] = get_args(PartKind)


@dataclass(frozen=True, slots=True)
class Needed:
    """So many of one part, and the holes they fill, clockwise from the middle of the head.

    `part` is None where nobody knows what is fitted; `strip` then names the strip, if it is one.
    """

    part: str | None
    count: int
    holes: tuple[Address, ...]
    strip: str | None = None


def regrommet(frame: Frame, catalogue: Catalogue) -> tuple[Needed, ...]:
    """Everything to fit when every hole gets a new part: strips and two-post parts count once.

    Single parts come first and strips last; what is unknown ends the list.
    """
    counts: Counter[tuple[str | None, str | None]] = Counter()
    filled: defaultdict[tuple[str | None, str | None], list[Address]] = defaultdict(list)
    for part, strip, holes in _pieces(frame):
        piece = (part, strip if part is None else None)
        counts[piece] += 1
        filled[piece] += holes
    needed = (Needed(part, counts[part, strip], tuple(filled[part, strip]), strip) for part, strip in counts)
    return tuple(sorted(needed, key=lambda line: _order(line, catalogue)))


def _pieces(frame: Frame) -> Iterator[tuple[str | None, str | None, tuple[Address, ...]]]:
    """Each piece that is pushed in: its part, the name of the strip it is, and its holes."""
    for hole in frame.drilled:
        if hole.strip is None and hole.twin is None:
            yield hole.part, None, (hole.address,)
    for twin in frame.twins:
        yield twin.part, None, twin.holes
    for strip in frame.strips:
        yield strip.part, strip.name, strip.holes


def _order(line: Needed, catalogue: Catalogue) -> tuple[int, str, str]:
    if line.part is None:
        return len(_KINDS) + 1, "", line.strip or ""
    part = catalogue.get(line.part)
    return (_KINDS.index(part.kind) if part else len(_KINDS)), line.part, ""
