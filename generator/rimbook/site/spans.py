"""Many holes in few words: `1-8 R10 L12-L14`, in the selectors a map itself uses."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache
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
    return " ".join([_word(side, run) for side, run in _sided(holes)])


@lru_cache(maxsize=4096)
def spans(words: str) -> tuple[Span, ...]:
    """Selectors as a reader sees them: `1–8` on both sides, `R10`, `L12–L14`."""
    found = []
    for word in words.split():
        read = selector(word)
        if read is not None:
            found.append(_span("" if len(read.sides) == 2 else read.sides[0], (read.first, read.last)))
    return tuple(found)


def spans_of(holes: Iterable[Address]) -> tuple[Span, ...]:
    """The spans of the selectors that name the holes."""
    return tuple([_span(side, run) for side, run in _sided(holes)])


def plain(found: Sequence[Span]) -> str:
    """Runs of holes as text: `1–8 and 12 on both sides, R10`."""
    both = listed([span.text for span in found if span.both])
    single = [span.text for span in found if not span.both]
    return ", ".join([f"{both} on both sides", *single] if both else single)


def _sided(holes: Iterable[Address]) -> list[tuple[str, tuple[int, int]]]:
    """Runs with their side, which is empty for those that both have."""
    numbers: dict[str, list[int]] = {"R": [], "L": []}
    for side, number in holes:
        numbers[side].append(number)
    right, left = _runs(numbers["R"]), _runs(numbers["L"])
    if right == left:
        return [("", run) for run in right]
    both = [run for run in right if run in left]
    found = [("", run) for run in both]
    found += [("R", run) for run in right if run not in both]
    found += [("L", run) for run in left if run not in both]
    return found


def _runs(numbers: Iterable[int]) -> list[tuple[int, int]]:
    runs: list[tuple[int, int]] = []
    for number in sorted(set(numbers)):
        if runs and number == runs[-1][1] + 1:
            runs[-1] = (runs[-1][0], number)
        else:
            runs.append((number, number))
    return runs


def _span(side: str, run: tuple[int, int]) -> Span:
    first, last = run
    text = f"{side}{first}" + (f"–{side}{last}" if last != first else "")
    return Span(text, f"{side or 'R'}{first}", not side)


def _word(side: str, run: tuple[int, int]) -> str:
    first, last = run
    return f"{side}{first}" + (f"-{side}{last}" if last != first else "")
