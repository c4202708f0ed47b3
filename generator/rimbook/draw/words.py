"""What a drawing says to those who hear it."""

from __future__ import annotations

from itertools import groupby

from rimbook.book.model import Frame, Hole, Pass
from rimbook.draw.svg import number
from rimbook.rim.types import Rim

_STRINGS = {"m": "main", "c": "cross"}


def pass_words(passing: Pass) -> str:
    """`main 9`, `cross 1`."""
    return f"{_STRINGS[passing.kind]} {passing.number}"


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
    said = [" and ".join(map(pass_words, hole.passes)) or "no string"]
    if hole.shared:
        said.append("shared")
    said.append("bore unknown" if hole.bore_mm is None else f"bore {bore_words(hole.bore_mm)}")
    said.append(_fitted(frame, hole))
    if hole.twin is not None:
        said[-1] += " with " + " and ".join(
            str(at) for at in frame.twins[hole.twin].holes if at != hole.address
        )
    if hole.tie_off:
        said.append("tie-off")
    return f"{hole.address}: {', '.join(said)}"


def _fitted(frame: Frame, hole: Hole) -> str:
    part = hole.part or "part unknown"
    return part if hole.strip is None else f"{frame.strips[hole.strip].name}, {part}"


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


def walk_words(frame: Frame) -> str:
    """The walk as text: runs of places with the same bore and part, each with what passes."""
    said = []
    for _, run in groupby(frame.holes, key=_alike):
        holes = list(run)
        first, last = holes[0], holes[-1]
        name = str(first.address) if first is last else f"{first.address} to {last.address}"
        if not first.drilled:
            said.append(f"{name}: not drilled.")
            continue
        bore = "bore unknown" if first.bore_mm is None else f"bore {bore_words(first.bore_mm)} mm"
        strings = " ".join("+".join(map(str, hole.passes)) or "none" for hole in holes)
        said.append(f"{name}: {bore}, {_fitted(frame, first)}: {strings}.")
    ties = ", ".join(str(hole.address) for hole in frame.holes if hole.tie_off)
    return " ".join(said) + (f" Tie-offs: {ties}." if ties else "")


def _alike(hole: Hole) -> tuple[object, ...]:
    return hole.address.side, hole.drilled, hole.bore_mm, hole.part, hole.strip, hole.twin
