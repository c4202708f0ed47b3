"""A measured place lies on its own side of the rim."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.tally import halves
from rimbook.book.rules.words import mm
from rimbook.rim.outline import throat_mm
from rimbook.rim.rules.placed import PlacedMap


def check(placed: PlacedMap, given: Given) -> Iterator[Finding]:
    frame, line = placed.frame, placed.rim.curve
    right = throat_mm(line)
    lengths = {"R": right, "L": line.length_mm - right}
    for side in halves(frame):
        for hole in frame.holes:
            if hole.address.side != side or hole.place_mm is None or hole.place_mm < lengths[side]:
                continue
            yield Finding(
                where.of_place(frame, hole.address),
                f"{hole.address} is measured at {mm(hole.place_mm)}, but half the rim is only "
                f"{mm(round(lengths[side], 1))} long.",
                hole=str(hole.address),
                expected=f"less than {mm(round(lengths[side], 1))}",
                tip="Either the place or the size of the head is wrong. Both belong to the line of holes.",
            )
            break


RULE = Rule(
    name="place-on-rim",
    scope="map",
    severity="error",
    summary="A measured place is no farther along the rim than the middle of the throat.",
    example="R10 is measured at 350 mm, but half the rim is only 339.3 mm long.",
    check=check,
)
