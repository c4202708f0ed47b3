"""A club's stock names parts of the catalogue."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import ClubFile
from rimbook.book.problems import nearest
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.text import shown


def check(file: ClubFile, given: Given) -> Iterator[Finding]:
    if given.parts_unread or file.club.shelf is None:
        return
    for part in file.club.shelf.stock:
        if part not in given.book.parts:
            yield Finding(
                ("shelf", "stock", part),
                f"The stock has {shown(part)}, but the catalogue has no such part.",
                nearest=nearest(part, given.book.parts),
                key=True,
            )


RULE = Rule(
    name="club-stock",
    scope="club",
    severity="error",
    summary="A club's stock names parts of the catalogue.",
    example="The stock has “barel-21”, but the catalogue has no such part.",
    check=check,
)
