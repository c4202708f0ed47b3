"""A strip covers holes of its own, and not nearly the whole rim."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.model import Address
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import counted, runs
from rimbook.book.text import shown

# A strip round more of the rim than this is rather one whose ends were swapped.
MOST_OF_RIM = 0.9


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    taken: dict[Address, str] = {}
    for strip, path in zip(frame.strips, where.of_strips(file), strict=True):
        path = (*path, "holes")
        both = [at for at in strip.holes if at in taken]
        if both:
            yield Finding(
                path,
                f"The strip {shown(strip.name)} covers {runs(both)}, "
                f"which {shown(taken[both[0]])} covers too.",
                hole=str(both[0]),
                tip="One hole takes one barrel.",
            )
        if not strip.holes:
            yield Finding(path, f"The strip {shown(strip.name)} covers no drilled hole.")
        if len(strip.holes) > MOST_OF_RIM * len(frame.drilled):
            yield Finding(
                path,
                f"The strip {shown(strip.name)} covers {len(strip.holes)} of "
                f"{counted(len(frame.drilled), 'hole')}.",
                severity="warning",
                tip="A strip is read clockwise from the first hole to the last; are the two swapped?",
            )
        taken |= dict.fromkeys(strip.holes, strip.name)


RULE = Rule(
    name="strip-holes",
    scope="map",
    severity="error",
    summary="A strip covers neighbouring holes that no other strip covers.",
    example="The strip “bumper” covers R2, which “crown strip” covers too.",
    check=check,
)
