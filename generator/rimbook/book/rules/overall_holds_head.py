"""The whole racket is larger than its head."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    if frame.overall_mm is None:
        return
    head = (("length", frame.head.height_mm), ("width", frame.head.width_mm))
    for index, (what, inside) in enumerate(head):
        overall = frame.overall_mm[index]
        if overall <= inside:
            yield Finding(
                ("overall_mm", index),
                f"The whole frame has a {what} of {mm(overall)}, but its line of holes has {mm(inside)}.",
                expected=f"more than {mm(inside)}",
                tip="overall_mm is [length, width]; inside_mm is [width, height].",
            )


RULE = Rule(
    name="overall-holds-head",
    scope="map",
    severity="error",
    summary="The frame as a whole is longer and wider than its line of holes.",
    example="The whole frame has a length of 206 mm, but its line of holes has 244 mm.",
    check=check,
)
