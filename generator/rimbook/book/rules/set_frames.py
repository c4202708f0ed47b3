"""A set names frames of the book."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import PartsFile
from rimbook.book.problems import nearest
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.text import shown


def check(file: PartsFile, given: Given) -> Iterator[Finding]:
    frames = given.book.frames
    for part in file.parts.values():
        for index, slug in enumerate(part.frames):
            if slug not in frames and slug not in given.unread_maps:
                yield Finding(
                    ("parts", part.id, "frames", index),
                    f"The set {part.id} is for {shown(slug)}, but there is no such map.",
                    nearest=nearest(slug, frames),
                    tip="The name is that of the map's file, without .yaml.",
                )


RULE = Rule(
    name="set-frames",
    scope="parts",
    severity="error",
    summary="A set names frames that have a map.",
    example="The set lapwing-set is for “lapwin-20”, but there is no such map.",
    check=check,
)
