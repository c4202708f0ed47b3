"""A club names each frame once."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import ClubFile
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.where import of_club_frame


def check(file: ClubFile, _: Given) -> Iterator[Finding]:
    seen: dict[str, int] = {}
    for index, each in enumerate(file.club.frames):
        if each.frame in seen:
            yield Finding(
                of_club_frame(file, index),
                f"The frame {each.frame} stands here again; it is number {seen[each.frame] + 1} already.",
                tip="Write how many there are as count.",
            )
        seen.setdefault(each.frame, index)


RULE = Rule(
    name="club-frame-once",
    scope="club",
    severity="error",
    summary="A club names each frame once and says how many there are.",
    example="The frame lapwing-20 stands here again; it is number 1 already.",
    check=check,
)
