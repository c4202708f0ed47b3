"""A share belongs to a kind that sits in holes: a set is opened, never renewed."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import ClubFile
from rimbook.book.rules.rule import Finding, Given, Rule


def check(file: ClubFile, _: Given) -> Iterator[Finding]:
    if file.club.shelf is not None and "set" in file.club.shelf.shares:
        yield Finding(
            ("shelf", "shares", "set"),
            "A set has no share of its own.",
            expected="single, wide, twin-even, twin-uneven or strip",
            tip="How often a set is opened follows from the shares of what is in it.",
            key=True,
        )


RULE = Rule(
    name="club-shelf-shares",
    scope="club",
    severity="error",
    summary="A club's shelf gives shares for parts that sit in holes, not for sets.",
    example="A set has no share of its own.",
    check=check,
)
