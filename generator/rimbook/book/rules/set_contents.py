"""A set holds parts of the catalogue, and no other set."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import PartsFile
from rimbook.book.problems import nearest
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.text import shown


def check(file: PartsFile, given: Given) -> Iterator[Finding]:
    parts = given.book.parts
    loose = [part.id for part in parts.values() if part.kind != "set"]
    for part in file.parts.values():
        if part.kind != "set":
            continue
        if not part.contains:
            yield Finding(
                ("parts", part.id),
                f"The set {part.id} contains nothing.",
                key=True,
                expected="contains: {a part: how many}",
            )
        for inside in part.contains:
            path = ("parts", part.id, "contains", inside)
            if inside not in parts and not given.parts_unread:
                yield Finding(
                    path,
                    f"The set {part.id} contains {shown(inside)}, which is not in the catalogue.",
                    key=True,
                    nearest=nearest(inside, loose),
                )
            elif inside in parts and parts[inside].kind == "set":
                yield Finding(
                    path,
                    f"The set {part.id} contains the set {inside}.",
                    key=True,
                    tip="Name the parts themselves.",
                )


RULE = Rule(
    name="set-contents",
    scope="parts",
    severity="error",
    summary="A set contains parts of the catalogue, and no other set.",
    example="The set lapwing-set contains “barel-21”, which is not in the catalogue.",
    check=check,
)
