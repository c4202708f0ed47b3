"""In the order of the walk, every string can run straight."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.tally import halves
from rimbook.book.rules.words import listed, mm
from rimbook.rim.places import bends
from rimbook.rim.rules.placed import PlacedMap

MOST_TOLD = 3

# A hole is drilled a little aside where the pattern is tight, but less than to the next hole.
# Common practice, no published source.
BEND_MM = 4.0


def check(placed: PlacedMap, given: Given) -> Iterator[Finding]:
    frame = placed.frame
    moved = bends(frame)
    for side in halves(frame):
        far = [hole for hole in frame.drilled if hole.address.side == side and moved[hole.address] > BEND_MM]
        worst = sorted(far, key=lambda hole: -round(moved[hole.address], 1))
        for hole in worst[:MOST_TOLD]:
            strings = listed(hole.passes) or "nothing"
            yield Finding(
                where.on_walk(frame, hole.address),
                f"{hole.address} takes {strings}, but in the order of the walk it lies "
                f"{mm(round(moved[hole.address], 1))} from where a straight string meets the rim.",
                hole=str(hole.address),
                expected=f"within {mm(BEND_MM)}",
                tip="Look at the order of mains and crosses here, at the outline and at the spacing.",
            )


RULE = Rule(
    name="strings-run-straight",
    scope="map",
    severity="warning",
    summary="In the order of the walk each hole lies about where its string, drawn straight, meets the rim.",
    example="R3 takes c1, but in the order of the walk it lies 24.8 mm from where a straight string "
    "meets the rim.",
    check=check,
)
