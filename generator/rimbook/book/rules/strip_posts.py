"""A strip has as many barrels as it covers holes."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import counted
from rimbook.book.text import shown


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    for strip, path in zip(frame.strips, where.of_strips(file), strict=True):
        part = given.book.parts.get(strip.part or "")
        if part is None or part.kind != "strip" or part.posts is None or part.posts == len(strip.holes):
            continue
        other_way_round = len(frame.drilled) - len(strip.holes) + 2
        yield Finding(
            (*path, "holes"),
            f"The strip {shown(strip.name)} covers {counted(len(strip.holes), 'hole')}, but {strip.part} has "
            f"{counted(part.posts, 'barrel')}.",
            found=counted(len(strip.holes), "hole"),
            expected=counted(part.posts, "hole"),
            tip="A strip is read clockwise from the first hole to the last; are the two swapped?"
            if part.posts == other_way_round
            else None,
        )


RULE = Rule(
    name="strip-posts",
    scope="map",
    severity="error",
    summary="A strip has one barrel for each hole that it covers.",
    example="The strip “crown strip” covers 6 holes, but lapwing-crown has 4 barrels.",
    check=check,
)
