"""Along the walk the mains go outward and come back, and the crosses go down."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from rimbook.book.load import MapFile
from rimbook.book.model import Address, Pass
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.tally import Tally, halves, tally

MOST_TOLD = 3


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    for side in halves(frame):
        right = [line for line in tally(frame, side).values() if line.wanted == len(line.seen)]
        turned = [(*pair, end) for passes, end in _sequences(right) for pair in pairwise(sorted(passes))]
        wrong = [item for item in turned if not _in_order(*item)]
        for (first, before), (second, after), end in wrong[:MOST_TOLD]:
            yield Finding(
                where.on_walk(frame, second),
                f"{after} comes after {before} {end}: {first} has {before} and {second} has {after}.",
                hole=str(second),
                expected=f"{after} before {before}",
            )


def _sequences(lines: list[Tally]) -> Iterator[tuple[list[tuple[Address, Pass]], str]]:
    mains = [line for line in lines if line.string.kind == "m"]
    crosses = [line for line in lines if line.string.kind == "c"]
    yield [(line.seen[0], line.string) for line in mains], "at the head"
    yield [(line.seen[1], line.string) for line in mains], "at the throat"
    yield [(line.seen[0], line.string) for line in crosses], "on the way down"


def _in_order(first: tuple[Address, Pass], second: tuple[Address, Pass], end: str) -> bool:
    if first[0] == second[0]:
        return True
    rises = second[1].number > first[1].number
    return not rises if end == "at the throat" else rises


RULE = Rule(
    name="walk-in-order",
    scope="map",
    severity="error",
    summary="From the middle of the head the mains are met going outward, the crosses going down, "
    "and the mains again coming back to the middle of the throat.",
    example="c1 comes after c2 on the way down: R4 has c2 and R5 has c1.",
    check=check,
)
