"""A string end is tied off in a hole through which a string already passes."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.address import address
from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    seen: set[str] = set()
    for index, word in enumerate(file.document.at(("stringing", "tie_offs")) or []):
        path = ("stringing", "tie_offs", index)
        at = address(word)
        if at is None:
            continue
        hole = frame.hole(at)
        if word in seen:
            yield Finding(path, f"{word} is a tie-off twice.", hole=word, tip="Keep one of the two.")
        elif not hole.drilled:
            yield Finding(path, f"{word} is a tie-off, but no hole is drilled there.", hole=word)
        elif not hole.passes:
            yield Finding(
                path,
                f"{word} is a tie-off, but no string passes there to tie to.",
                hole=word,
                expected="a hole with a string",
            )
        seen.add(word)


RULE = Rule(
    name="tie-offs",
    scope="map",
    severity="error",
    summary="Each tie-off is a drilled hole through which a string passes, and is named once.",
    example="R4 is a tie-off, but no string passes there to tie to.",
    check=check,
)
