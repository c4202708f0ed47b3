"""A barrel and the bore it sits in are about as wide as each other."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.model import Address
from rimbook.book.reader import Path
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm, runs

# No fit at all beyond these; how tight a real fit is, the bench says. From memory.
LOOSE_MM = 0.6
TIGHT_MM = 0.5


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    paths: dict[Address, Path] = {at: line.path for line in where.fitted_lines(file) for at in line.kept}
    for strip, path in zip(frame.strips, where.of_strips(file), strict=True):
        paths |= dict.fromkeys(strip.holes, (*path, "part"))
    groups: defaultdict[tuple[Path, str, float, float], list[Address]] = defaultdict(list)
    for hole in frame.drilled:
        part = given.book.parts.get(hole.part or "")
        if part is None or part.barrel_mm is None or hole.bore_mm is None:
            continue
        if not -TIGHT_MM <= hole.bore_mm - part.barrel_mm <= LOOSE_MM:
            groups[paths[hole.address], part.id, part.barrel_mm, hole.bore_mm].append(hole.address)
    for (path, part_id, barrel, bore), holes in groups.items():
        fault = "falls out of" if bore > barrel else "cannot enter"
        yield Finding(
            path,
            f"{part_id} has a barrel of {mm(barrel)} and {fault} a bore of {mm(bore)}.",
            hole=runs(holes),
            expected=f"a barrel from {mm(bore - LOOSE_MM)} to {mm(bore + TIGHT_MM)}",
        )


RULE = Rule(
    name="barrel-in-bore",
    scope="map",
    severity="warning",
    summary="The barrel of a part and the bore it sits in differ by less than half a millimetre or so.",
    example="barrel-21 has a barrel of 2.05 mm and falls out of a bore of 3.2 mm.",
    check=check,
)
