"""Passes minus holes equals shared holes."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.tally import Tally, halves, tally
from rimbook.book.rules.words import counted, listed


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    if frame.mains % 2:
        return
    passes = sum(len(hole.passes) for hole in frame.holes)
    strung = sum(1 for hole in frame.holes if hole.passes)
    shared = sum(1 for hole in frame.holes if hole.shared)
    wanted = 2 * frame.mains + 2 * frame.crosses
    if wanted - strung == shared:
        return
    yield Finding(
        ("walk",),
        f"{frame.mains} mains and {frame.crosses} crosses pass {wanted} times; in {counted(strung, 'hole')} "
        f"with string {wanted - strung} would be shared, but the walk shares {shared}.",
        found=counted(passes, "pass"),
        expected=counted(wanted, "pass"),
        tip=_which([line for side in halves(frame) for line in tally(frame, side).values()], frame.mirrored),
    )


def _which(tallies: list[Tally], mirrored: bool) -> str:
    def side(line: Tally) -> str:
        return "" if mirrored else f" ({line.side})"

    short = [f"{line.string}{side(line)}" for line in tallies if len(line.seen) < line.wanted]
    extra = [f"{line.string}{side(line)}" for line in tallies if len(line.seen) > line.wanted]
    words = [
        f"{what} {listed(which)}" for what, which in (("missing:", short), ("too often:", extra)) if which
    ]
    text = "; ".join(words)
    return f"{text[0].upper()}{text[1:]}{' on each half' if mirrored else ''}."


RULE = Rule(
    name="passes-add-up",
    scope="map",
    severity="error",
    summary="The passes that the mains and crosses need, less the holes with string, are the shared holes.",
    example="6 mains and 5 crosses pass 22 times; in 18 holes with string 4 would be shared, "
    "but the walk shares 2.",
    check=check,
)
