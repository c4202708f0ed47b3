"""The whole racket keeps within the published limits of its sport."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.limits import LIMITS, over
from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    if frame.overall_mm is None:
        return
    for index, what in enumerate(("frame length", "frame width")):
        limit = LIMITS.get((frame.sport, what))
        if limit and over(frame.overall_mm[index], limit):
            swapped = frame.overall_mm[0] < frame.overall_mm[1]
            yield Finding(
                ("overall_mm", index),
                f"The {what} is {mm(frame.overall_mm[index])}; {limit.rule} allows {mm(limit.most)}.",
                expected=f"at most {mm(limit.most)}",
                tip="The length comes first, then the width." if swapped else None,
            )


RULE = Rule(
    name="frame-within-law",
    scope="map",
    severity="error",
    summary="The frame as a whole is no longer and no wider than the rules of its sport allow.",
    example="The frame length is 680.1 mm; BWF Law 4.1 allows 680 mm.",
    check=check,
)
