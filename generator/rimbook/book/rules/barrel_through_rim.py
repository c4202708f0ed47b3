"""A barrel reaches through the rim, and not far beyond it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.model import Address, Frame, Hole
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm, runs

# Beyond these it is rather a slip of the pen: a barrel is trimmed by a few millimetres. From memory.
SHORT_MM = 2.0
PROUD_MM = 10.0


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    by_address = {hole.address: hole for hole in frame.holes}
    for line in where.fitted_lines(file):
        part = given.book.parts.get(line.part or "")
        if part is None or not part.length_mm or part.kind in ("strip", "set"):
            continue
        groups: defaultdict[tuple[float, float], list[Address]] = defaultdict(list)
        for at in line.kept:
            hole = by_address[at]
            reach, depth = _reach(frame, hole, part.length_mm), hole.rim_depth_mm
            if depth is not None and not depth - SHORT_MM <= reach <= depth + PROUD_MM:
                groups[reach, depth].append(at)
        for (reach, depth), holes in groups.items():
            yield Finding(
                line.path,
                f"{part.id} reaches {mm(reach)} under its flange; the rim is {mm(depth)} deep.",
                hole=runs(holes),
                tip="A barrel that is too short lets the string cut on the frame."
                if reach < depth
                else "Is this the length of a barrel, or of something else?",
            )


def _reach(frame: Frame, hole: Hole, lengths: tuple[float, ...]) -> float:
    """The post that sits in a hole: the long one of an uneven twin in the deeper of its two holes."""
    if hole.twin is None:
        return lengths[0]
    depths = [frame.hole(at).rim_depth_mm or 0.0 for at in frame.twins[hole.twin].holes]
    return max(lengths) if (hole.rim_depth_mm or 0.0) >= max(depths) else min(lengths)


RULE = Rule(
    name="barrel-through-rim",
    scope="map",
    severity="warning",
    summary="The barrel of a part is about as long as the rim is deep.",
    example="barrel-21 reaches 6 mm under its flange; the rim is 9.4 mm deep.",
    check=check,
)
