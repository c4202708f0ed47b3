"""Where the left side mirrors the right, bores and parts are mostly the same on both."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.model import Address, Hole
from rimbook.book.reader import Path
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    if not frame.mirrored:
        return
    by_address = {hole.address: hole for hole in frame.holes}
    both = [(hole, by_address[Address("L", hole.address.number)]) for hole in frame.holes if _right(hole)]
    pairs = [(right, left) for right, left in both if _given(right) != _given(left)]
    if not pairs:
        return
    for path, what, value in (
        (("bore_mm",), "bore", _bore),
        (("rim_depth_mm",), "rim depth", _depth),
        (_part_path(file), "part", _part),
    ):
        wrong = [(right, left) for right, left in pairs if value(right) != value(left)]
        if value is _part:
            # Where the bores differ already, the parts may follow them.
            wrong = [(right, left) for right, left in wrong if right.bore_mm == left.bore_mm]
        if wrong:
            right, left = wrong[0]
            more = f", and so do {len(wrong) - 1} more" if len(wrong) > 1 else ""
            yield Finding(
                path,
                f"The left side mirrors the right, but {right.address} and {left.address} differ in "
                f"{what}{more}.",
                hole=str(right.address),
                found=f"{right.address} {value(right)}, {left.address} {value(left)}",
                tip=f"Write {right.address.number} for both sides. If they do differ, say so with a walk "
                "under left.",
            )


def _given(hole: Hole) -> tuple[object, ...]:
    return hole.bore_mm, hole.rim_depth_mm, hole.part, hole.strip is None


def _right(hole: Hole) -> bool:
    return hole.address.side == "R"


def _bore(hole: Hole) -> str:
    return "unknown" if hole.bore_mm is None else mm(hole.bore_mm)


def _depth(hole: Hole) -> str:
    return "unknown" if hole.rim_depth_mm is None else mm(hole.rim_depth_mm)


def _part(hole: Hole) -> str:
    return f"{hole.part or 'unknown'}{'' if hole.strip is None else ' as a strip'}"


def _part_path(file: MapFile) -> Path:
    sided = [line for line in where.fitted_lines(file) if line.key[0] in "RL"]
    return sided[0].path if sided else ("strips",) if file.frame.strips else ("fitted",)


RULE = Rule(
    name="sides-agree",
    scope="map",
    severity="warning",
    summary="A left side without a walk of its own has the bores, rim depths and parts of the right.",
    example="The left side mirrors the right, but R4 and L4 differ in bore.",
    check=check,
)
