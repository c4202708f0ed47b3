"""Whoever confirms a map is not whoever measured it, and says so once."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    seen: set[str] = set()
    for index, person in enumerate(frame.confirmed):
        path = ("confirmed", index, "by")
        if frame.measured and person.by == frame.measured.by:
            yield Finding(
                path,
                f"{person.by} measured this map and cannot confirm it as well.",
                tip="A second pair of eyes is what confirms a map.",
            )
        elif person.by in seen:
            yield Finding(path, f"{person.by} confirmed this map already.", tip="Keep the later one.")
        seen.add(person.by)


RULE = Rule(
    name="someone-else-confirmed",
    scope="map",
    severity="warning",
    summary="A map is confirmed by other people than the one who measured it, each once.",
    example="a-handle measured this map and cannot confirm it as well.",
    check=check,
)
