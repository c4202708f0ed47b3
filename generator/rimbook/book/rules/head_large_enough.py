"""A head far smaller than any racket's was rather measured in centimetres or in inches."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.limits import SMALLEST_HEAD_MM
from rimbook.book.load import MapFile
from rimbook.book.reader import Path
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm

IN_MM = "Lengths are in mm: 18.4 cm are 184 mm, 7.25 inches are 184.15 mm."


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    head = file.frame.head
    for index, (size, way) in enumerate(((head.width_mm, "wide"), (head.height_mm, "high"))):
        path: Path = ("head", "points_mm") if head.outline == "points" else ("head", "inside_mm", index)
        if size < SMALLEST_HEAD_MM:
            yield Finding(
                path,
                f"The line of holes is {mm(size)} {way}: less than any racket's.",
                expected=f"at least {mm(SMALLEST_HEAD_MM)}",
                tip=IN_MM,
            )


RULE = Rule(
    name="head-large-enough",
    scope="map",
    severity="error",
    summary="The line of holes is as large as a racket's, so that cm or inches were not taken for mm.",
    example="The line of holes is 18.6 mm wide: less than any racket's.",
    check=check,
)
