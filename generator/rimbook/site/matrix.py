"""Frames against bores or parts: counts in tables that fit a screen and a sheet, however large the book."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby
from typing import NamedTuple

from rimbook.site.summary import Summary

COLUMNS = 12
MOST_TABLES = 3

Counts = Mapping[str, int]


class Row(NamedTuple):
    """A frame and its counts in the columns of a block, 0 where it has none."""

    frame: Summary
    counts: Sequence[int]


class Block(NamedTuple):
    """A table of a few columns, with its rows by maker. Every frame is in the first block of a page.

    A later block leaves out frames that have nothing in it. `frames` counts its rows.
    """

    columns: Sequence[str]
    makers: Sequence[tuple[str, Sequence[Row]]]
    frames: int


@dataclass(frozen=True, slots=True)
class Matrix:
    """What stands on one page: the tables, and by frame what has no column."""

    blocks: Sequence[Block]
    rest: Sequence[tuple[Summary, Counts]]


def matrix(
    frames: Sequence[Summary],
    counts: Callable[[Summary], Counts],
    order: Callable[[Sequence[str]], Sequence[str]],
    least: int = 1,
) -> Matrix:
    """Lay out some frames, which come maker by maker.

    What most of them have is in the first columns, and `order` puts those of a block in order. Where there
    would be more than `MOST_TABLES`, what fewer than `least` frames have gets no column.
    """
    found = [(frame, counts(frame)) for frame in frames]
    used = Counter(name for _, each in found for name in each)
    if len(used) <= MOST_TABLES * COLUMNS:
        least = 1
    names = sorted((name for name in used if used[name] >= least), key=lambda name: (-used[name], name))
    chunks = [names[at : at + COLUMNS] for at in range(0, len(names), COLUMNS)] or [[]]
    blocks = [_block(found, order(chunk), everybody=chunk is chunks[0]) for chunk in chunks]
    rest = [
        (frame, own)
        for frame, each in found
        if (own := {name: count for name, count in each.items() if used[name] < least})
    ]
    return Matrix(blocks, rest)


def _block(found: Sequence[tuple[Summary, Counts]], columns: Sequence[str], *, everybody: bool) -> Block:
    rows = [
        Row(frame, [each.get(name, 0) for name in columns])
        for frame, each in found
        if everybody or any(name in each for name in columns)
    ]
    makers = [(maker, list(own)) for maker, own in groupby(rows, key=lambda row: row.frame.maker)]
    return Block(columns, makers, len(rows))
