"""A club names frames of the book."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import ClubFile
from rimbook.book.problems import nearest
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.where import of_club_frame
from rimbook.book.text import shown


def check(file: ClubFile, given: Given) -> Iterator[Finding]:
    frames = given.book.frames
    for index, each in enumerate(file.club.frames):
        if each.frame not in frames and each.frame not in given.unread_maps:
            yield Finding(
                of_club_frame(file, index),
                f"The club has {shown(each.frame)}, but there is no such map.",
                nearest=nearest(each.frame, frames),
                tip="The name is that of the map's file, without .yaml.",
            )


RULE = Rule(
    name="club-frames",
    scope="club",
    severity="error",
    summary="A club names frames that have a map.",
    example="The club has “lapwin-20”, but there is no such map.",
    check=check,
)
