"""Every part that a map names is in the catalogue."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.problems import nearest
from rimbook.book.reader import Path
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import runs
from rimbook.book.text import shown


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    if given.parts_unread:
        return
    named: list[tuple[Path, str | None, str | None]] = [
        (line.path, line.part, runs(line.kept) or None) for line in where.fitted_lines(file)
    ]
    for index, strip in enumerate(file.document.at(("strips",)) or []):
        named.append((("strips", index, "part"), strip["part"], None))
    for path, part, holes in named:
        if part in (None, "unknown") or part in given.book.parts:
            continue
        yield Finding(
            path,
            f"The catalogue has no part {shown(part)}.",
            hole=shown(holes, quote=False) if holes else None,
            nearest=nearest(str(part), given.book.parts) or "unknown",
        )


RULE = Rule(
    name="part-exists",
    scope="map",
    severity="error",
    summary="Every part that a map names is in the catalogue.",
    example="The catalogue has no part “barel-21”.",
    check=check,
)
