"""A set holds all that a full regrommet of its frames takes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from rimbook.book.load import PartsFile
from rimbook.book.model import Catalogue, Frame
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import listed


def check(file: PartsFile, given: Given) -> Iterator[Finding]:
    for part in file.parts.values():
        for index, slug in enumerate(part.frames):
            frame = given.book.frames.get(slug)
            if part.kind != "set" or not part.contains or frame is None:
                continue
            needed = _needed(frame, given.book.parts)
            short = [
                f"{count - part.contains.get(inside, 0)} × {inside}"
                for inside, count in sorted(needed.items())
                if part.contains.get(inside, 0) < count
            ]
            if short:
                yield Finding(
                    ("parts", part.id, "frames", index),
                    f"The set {part.id} does not fill {slug}: it lacks {listed(short)}.",
                    tip="Mend the set, the map, or the frames that the set is for.",
                )


def _needed(frame: Frame, parts: Catalogue) -> Counter[str]:
    """How many of each known part a full regrommet takes: a strip once, a twin once for two holes."""
    singles = (hole.part for hole in frame.drilled if hole.strip is None and hole.twin is None)
    pieces = [*singles, *(twin.part for twin in frame.twins), *(strip.part for strip in frame.strips)]
    return Counter(piece for piece in pieces if piece is not None and piece in parts)


RULE = Rule(
    name="set-holds-enough",
    scope="parts",
    severity="warning",
    summary="A set holds all the parts that a full regrommet of its frames takes.",
    example="The set lapwing-set does not fill lapwing-20: it lacks 4 × barrel-21.",
    check=check,
)
