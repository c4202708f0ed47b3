"""Mains come in pairs, one on each half."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    mains = file.frame.mains
    if mains % 2:
        yield Finding(
            ("mains",),
            f"{mains} mains cannot be shared out over two equal halves.",
            nearest=f"{mains - 1} or {mains + 1}",
            tip="Count the mains of the whole frame, left and right of the centre line.",
        )


RULE = Rule(
    name="even-mains",
    scope="map",
    severity="error",
    summary="The number of mains is even: as many on the left of the centre line as on the right.",
    example="5 mains cannot be shared out over two equal halves.",
    check=check,
)
