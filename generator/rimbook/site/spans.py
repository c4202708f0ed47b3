"""Many holes in few words: `1-8 R10 L12-L14`, in the selectors a map itself uses."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple

from rimbook.book.address import selector
from rimbook.book.model import Address
from rimbook.site.words import listed


class Span(NamedTuple):
    """A run of holes for a reader, the first of them for a link, and whether both sides have it."""

    text: str
    first: str
    both: bool


def selectors(holes: Iterable[Address]) -> str:
    """The shortest selectors that name the holes: runs that both sides have in common come first."""
    holes = list(holes)
    right = _runs(hole.number for hole in holes if hole.side == "R")
    left = _runs(hole.number for hole in holes if hole.side == "L")
    both = [run for run in right if run in left]
    words = [_word("", run) for run in both]
    words += [_word("R", run) for run in right if run not in both]
    words += [_word("L", run) for run in left if run not in both]
    return " ".join(words)


def spans(words: str) -> list[Span]:
    """Selectors as a reader sees them: `1–8` on both sides, `R10`, `L12–L14`."""
    found = []
    for word in words.split():
        read = selector(word)
        if read is not None:
            both = len(read.sides) == 2
            side = "" if both else read.sides[0]
            text = f"{side}{read.first}" + (f"–{side}{read.last}" if read.last != read.first else "")
            found.append(Span(text, f"{read.sides[0]}{read.first}", both))
    return found


def plain(found: Sequence[Span]) -> str:
    """Runs of holes as text: `1–8 and 12 on both sides, R10`."""
    both = listed([span.text for span in found if span.both])
    single = [span.text for span in found if not span.both]
    return ", ".join([f"{both} on both sides", *single] if both else single)


def _runs(numbers: Iterable[int]) -> list[tuple[int, int]]:
    runs: list[tuple[int, int]] = []
    for number in sorted(set(numbers)):
        if runs and number == runs[-1][1] + 1:
            runs[-1] = (runs[-1][0], number)
        else:
            runs.append((number, number))
    return runs


def _word(side: str, run: tuple[int, int]) -> str:
    first, last = run
    return f"{side}{first}" + (f"-{side}{last}" if last != first else "")
