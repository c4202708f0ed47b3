"""Singles, wide ones and twins sit in holes; strips lie under `strips`; sets come in a bag."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.problems import nearest
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import KINDS
from rimbook.book.text import shown

_TIPS = {
    "strip": "Name the strip and its first and last hole under strips.",
    "set": "Name the parts of the set, hole by hole; the set names its frames itself.",
}


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    parts = given.book.parts
    strips = [part.id for part in parts.values() if part.kind == "strip"]
    posts = [part.id for part in parts.values() if part.kind not in ("strip", "set")]
    for line in where.fitted_lines(file):
        part = parts.get(line.part or "")
        if part and part.kind in ("strip", "set"):
            yield Finding(
                line.path,
                f"{part.id} is {KINDS[part.kind]} and cannot sit in a hole.",
                hole=str(line.kept[0]) if line.kept else None,
                expected="a single, a wide one or a twin",
                nearest=nearest(part.id, posts),
                tip=_TIPS[part.kind],
            )
    for index, strip in enumerate(file.document.at(("strips",)) or []):
        part = parts.get(strip["part"])
        if part and part.kind != "strip":
            yield Finding(
                ("strips", index, "part"),
                f"{part.id} is {KINDS[part.kind]} and cannot be the strip {shown(strip['name'])}.",
                expected="a strip",
                nearest=nearest(part.id, strips),
                tip=_TIPS.get(part.kind, "Write it under fitted."),
            )


RULE = Rule(
    name="part-suits-place",
    scope="map",
    severity="error",
    summary="A hole takes a single, a wide one or a post of a twin; a strip is written under strips; "
    "a set sits nowhere.",
    example="lapwing-crown is a strip and cannot sit in a hole.",
    check=check,
)
