"""A club has at least one frame, and not more than a chart can carry."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import ClubFile
from rimbook.book.rules.rule import Finding, Given, Rule

MOST_FRAMES = 200
"""So many frames are a hundred sheets already: more are several clubs."""


def check(file: ClubFile, _: Given) -> Iterator[Finding]:
    count = len(file.club.frames)
    if not count:
        yield Finding(
            ("frames",),
            "The club has no frames.",
            expected=f"1 to {MOST_FRAMES} frames",
            tip="Name at least one frame, by its map's file without .yaml.",
        )
    elif count > MOST_FRAMES:
        yield Finding(
            ("frames",),
            f"The club has {count} frames; at most {MOST_FRAMES} go on one chart.",
            expected=f"1 to {MOST_FRAMES} frames",
            tip="Make two files, each with its own chart.",
        )


RULE = Rule(
    name="club-size",
    scope="club",
    severity="error",
    summary=f"A club has from 1 to {MOST_FRAMES} frames.",
    example="The club has no frames.",
    check=check,
)
