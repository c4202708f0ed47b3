"""What a drawing says to those who hear it."""

from __future__ import annotations

from functools import lru_cache
from itertools import groupby
from operator import attrgetter

from rimbook.book.model import Frame, Hole, Pass
from rimbook.draw.svg import number
from rimbook.rim.once import once
from rimbook.rim.types import Rim

_STRINGS = {"m": "main", "c": "cross"}

_SORT = attrgetter("address.side", "drilled", "bore_mm", "part", "strip", "twin")
"""In what two holes are alike that the walk in words takes together."""


@lru_cache(maxsize=1 << 10)
def _strings_words(passes: tuple[Pass, ...]) -> str:
    """`main 9`, `main 9 and cross 1`, `no string`."""
    return " and ".join([f"{_STRINGS[each.kind]} {each.number}" for each in passes]) or "no string"


@lru_cache(maxsize=1 << 10)
def passes_words(passes: tuple[Pass, ...], between: str) -> str:
    """`m9`, `m9+c1`, `none`: the passes as the walk writes them, short."""
    return between.join(map(str, passes)) or "none"


@lru_cache(maxsize=1 << 10)
def bore_words(bore_mm: float | None) -> str:
    """`2.0`, `2.75`, or `?` where nobody has measured."""
    if bore_mm is None:
        return "?"
    text = number(bore_mm)
    return text if "." in text else f"{text}.0"


def hole_words(frame: Frame, hole: Hole) -> str:
    """One place read out, as `R9: main 9 and cross 1, shared, bore 2.7, barrel-27-short`."""
    if not hole.drilled:
        return f"{hole.address}: not drilled"
    shared = ", shared" if hole.shared else ""
    bore = "unknown" if hole.bore_mm is None else bore_words(hole.bore_mm)
    said = f"{hole.address}: {_strings_words(hole.passes)}{shared}, bore {bore}, {_fitted(frame, hole)}"
    if hole.twin is not None:
        others = [str(at) for at in frame.twins[hole.twin].holes if at != hole.address]
        said += f" with {' and '.join(others)}"
    return f"{said}, tie-off" if hole.tie_off else said


def _fitted(frame: Frame, hole: Hole) -> str:
    part = hole.part or "part unknown"
    return part if hole.strip is None else f"{frame.strips[hole.strip].name}, {part}"


@once
def summary(rim: Rim) -> str:
    """The frame in two sentences."""
    frame = rim.frame
    drilled = frame.drilled
    shared = sum(hole.shared for hole in drilled)
    said = f"{len(drilled)} holes, {shared} of them shared; {frame.mains} mains and {frame.crosses} crosses."
    return f"{said} {places_words(rim)}."


def places_words(rim: Rim) -> str:
    """Whether the places of the holes are measured or worked out."""
    derived = sum(place.place == "derived" for place in rim.holes.values())
    if not derived:
        return "All places are measured"
    which = "All places are" if derived == len(rim.holes) else f"{derived} of {len(rim.holes)} places are"
    return f"{which} worked out from the pattern, not measured"


@once
def walk_words(frame: Frame) -> str:
    """The walk as text: runs of places with the same bore and part, each with what passes."""
    said = []
    for _, run in groupby(frame.holes, key=_SORT):
        holes = list(run)
        first, last = holes[0], holes[-1]
        name = str(first.address) if first is last else f"{first.address} to {last.address}"
        if not first.drilled:
            said.append(f"{name}: not drilled.")
            continue
        bore = "bore unknown" if first.bore_mm is None else f"bore {bore_words(first.bore_mm)} mm"
        strings = " ".join([passes_words(hole.passes, "+") for hole in holes])
        said.append(f"{name}: {bore}, {_fitted(frame, first)}: {strings}.")
    ties = ", ".join(str(hole.address) for hole in frame.holes if hole.tie_off)
    return " ".join(said) + (f" Tie-offs: {ties}." if ties else "")
