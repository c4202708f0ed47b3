"""Every part sits in some frame, or comes in some set."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import Loaded
from rimbook.book.rules.rule import Finding, Given, Rule


def check(loaded: Loaded, given: Given) -> Iterator[Finding]:
    if given.unread_maps:
        return
    book = given.book
    fitted = {hole.part for frame in book.frames.values() for hole in frame.holes}
    strips = {strip.part for frame in book.frames.values() for strip in frame.strips}
    inside = {part for each in book.parts.values() for part in each.contains}
    used = fitted | strips | inside
    for file in loaded.parts_files:
        for part in file.parts.values():
            if part.id not in used and part.kind != "set":
                yield Finding(
                    ("parts", part.id),
                    f"{part.id} sits in no frame and comes in no set.",
                    key=True,
                    file=file.document.file,
                )


RULE = Rule(
    name="unused-part",
    scope="book",
    severity="note",
    summary="Every part of the catalogue sits in a frame or comes in a set.",
    example="barrel-99 sits in no frame and comes in no set.",
    check=check,
)
