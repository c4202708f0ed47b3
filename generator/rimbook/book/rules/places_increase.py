"""Measured places grow along the walk."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from rimbook.book.load import MapFile
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.tally import halves
from rimbook.book.rules.words import mm


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    for side in halves(frame):
        places = sorted(
            (hole.address.number, hole.place_mm, hole.address)
            for hole in frame.holes
            if hole.address.side == side and hole.place_mm is not None
        )
        for (_, before, first), (_, after, second) in pairwise(places):
            if before >= after:
                yield Finding(
                    where.of_place(frame, second),
                    f"{second} is measured at {mm(after)}, but {first} before it at {mm(before)}.",
                    hole=str(second),
                    expected=f"more than {mm(before)}",
                    tip="Places are measured along the rim from the middle of the head.",
                )


RULE = Rule(
    name="places-increase",
    scope="map",
    severity="error",
    summary="Measured places grow from hole to hole along the walk.",
    example="R3 is measured at 14 mm, but R2 before it at 41 mm.",
    check=check,
)
