"""Every part can be bought: by itself, or inside a set."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import PartsFile
from rimbook.book.rules.rule import Finding, Given, Rule


def check(file: PartsFile, given: Given) -> Iterator[Finding]:
    inside = {part for each in given.book.parts.values() for part in each.contains}
    for part in file.parts.values():
        if part.sold_alone or part.id in inside:
            continue
        yield Finding(
            ("parts", part.id),
            f"{part.id} is sold neither by itself nor in a set.",
            key=True,
            expected="packs: [1, 25]" if part.kind == "set" else "packs: [1, 25], or a set that contains it",
        )


RULE = Rule(
    name="sold-somewhere",
    scope="parts",
    severity="note",
    summary="Every part is sold in packs by itself, or comes in a set.",
    example="lapwing-crown is sold neither by itself nor in a set.",
    check=check,
)
