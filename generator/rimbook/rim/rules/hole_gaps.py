"""Neighbouring holes are neither nearer nor farther than a rim is drilled."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import pairwise

from rimbook.book.model import Address, Sport
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.tally import halves
from rimbook.book.rules.words import mm
from rimbook.rim.rules.placed import PlacedMap

# Centre to centre along the rim, the nearest and the farthest of any frame. From memory.
GAPS_MM: Mapping[Sport, tuple[float, float]] = {
    "badminton": (3.5, 45.0),
    "squash": (3.5, 60.0),
    "tennis": (4.0, 80.0),
    "racquetball": (3.5, 80.0),
}


def check(placed: PlacedMap, given: Given) -> Iterator[Finding]:
    frame, holes = placed.frame, placed.rim.holes
    least, most = GAPS_MM[frame.sport]
    for side in halves(frame):
        for first, second in pairwise(_walk(placed, side)):
            if "measured" not in (holes[first].place, holes[second].place):
                continue
            gap = abs(holes[second].along_mm - holes[first].along_mm)
            if least <= gap <= most:
                continue
            measured = [at for at in (second, first) if holes[at].place == "measured"]
            yield Finding(
                where.of_place(frame, measured[0]),
                f"{first} and {second} lie {mm(round(gap, 1))} apart along the rim.",
                hole=str(measured[0]),
                expected=f"{mm(least)} to {mm(most)}",
                tip="Is a place left out or written twice? Places count from the middle of the head.",
            )


def _walk(placed: PlacedMap, side: str) -> list[Address]:
    return sorted(at for at in placed.rim.holes if at.side == side)


RULE = Rule(
    name="hole-gaps",
    scope="map",
    severity="warning",
    summary="Measured holes lie as far apart along the rim as the sport's frames are drilled.",
    example="R4 and R5 lie 60 mm apart along the rim.",
    check=check,
)
