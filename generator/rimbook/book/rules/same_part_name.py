"""No two parts go by one name, nor by two that look alike."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import Loaded
from rimbook.book.model import Part
from rimbook.book.rules.look_alike import folded
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.text import shown


def check(loaded: Loaded, given: Given) -> Iterator[Finding]:
    first: dict[tuple[str, str], Part] = {}
    for file in loaded.parts_files:
        for part in file.parts.values():
            form = folded(part.name), folded(part.maker or "")
            other = first.setdefault(form, part)
            if other.id != part.id:
                yield Finding(
                    ("parts", part.id, "name"),
                    f"{shown(part.name)} is already the name of {other.id}.",
                    file=file.document.file,
                    tip="Say in the name what tells the two apart: the length, the bore, the posts.",
                )


RULE = Rule(
    name="same-part-name",
    scope="book",
    severity="warning",
    summary="No two parts of a maker share a name.",
    example="“BARREL 2.1” is already the name of barrel-21.",
    check=check,
)
