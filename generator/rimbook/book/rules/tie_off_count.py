"""One piece of string has two ends, two pieces have four."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import counted


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    stringing = file.frame.stringing
    found, expected = len(stringing.tie_offs), 2 * stringing.pieces
    if found and found != expected:
        yield Finding(
            ("stringing", "tie_offs"),
            f"There are {counted(found, 'tie-off')} for {counted(stringing.pieces, 'piece')} of string.",
            found=counted(found, "tie-off"),
            expected=counted(expected, "tie-off"),
            tip="Leave the list out where the tie-offs are not known.",
        )


RULE = Rule(
    name="tie-off-count",
    scope="map",
    severity="warning",
    summary="A frame strung in one piece has two tie-offs, one strung in two pieces has four.",
    example="There are 3 tie-offs for 2 pieces of string.",
    check=check,
)
