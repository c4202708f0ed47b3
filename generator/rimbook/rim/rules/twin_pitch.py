"""The posts of a twin are as far apart as its two holes."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from math import dist

from rimbook.book.load import MapFile
from rimbook.book.model import Part, Twin
from rimbook.book.reader import Path
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm, runs
from rimbook.rim.rules.placed import PlacedMap

# A post gives way a little. Common practice asks for a pitch that fits and names no number: from memory.
GIVE_MM = 0.8
# Worked-out places are good for no more than a hint.
GIVE_DERIVED_MM = 3.0


def check(placed: PlacedMap, given: Given) -> Iterator[Finding]:
    frame, parts = placed.frame, given.book.parts
    off = [(twin, *found) for twin in frame.twins if (found := _off(placed, twin, parts.get(twin.part)))]
    if not off:
        return
    paths: dict[object, Path] = {
        at: line.path for line in where.fitted_lines(MapFile(frame, placed.document)) for at in line.kept
    }
    wrong: defaultdict[tuple[Path, float, bool], list[Twin]] = defaultdict(list)
    for twin, apart, measured in off:
        wrong[paths.get(twin.holes[0], ("fitted",)), round(apart, 1), measured].append(twin)
    for (path, apart, measured), twins in wrong.items():
        pitch = parts[twins[0].part].pitch_mm or 0.0
        first_hole, second_hole = twins[0].holes
        yield Finding(
            path,
            f"{twins[0].part} has its posts {mm(pitch)} apart, but {first_hole} and {second_hole} "
            f"{'are' if measured else 'are worked out to be'} {mm(apart)} apart.",
            hole=runs([at for twin in twins for at in twin.holes]),
            expected=f"a pitch of about {mm(apart)}",
            severity="error" if measured else "warning",
            tip=None if measured else "Measure the places of the two holes to be sure.",
        )


def _off(placed: PlacedMap, twin: Twin, part: Part | None) -> tuple[float, bool] | None:
    """How far apart (mm) the holes of a twin are that are off its pitch, and whether both were measured."""
    first, second = (placed.rim.holes.get(at) for at in twin.holes)
    if part is None or part.pitch_mm is None or first is None or second is None:
        return None
    apart = dist(first.at, second.at)
    measured = first.place == second.place == "measured"
    resolution = (placed.frame.measured.resolution_mm if placed.frame.measured else None) or 0.0
    give = GIVE_MM + 2 * resolution if measured else GIVE_DERIVED_MM
    return (apart, measured) if abs(apart - part.pitch_mm) > give else None


RULE = Rule(
    name="twin-pitch",
    scope="map",
    severity="error",
    summary="The posts of a twin are as far apart as the two holes it fills; a warning only where the "
    "holes were not measured.",
    example="twin-21 has its posts 7 mm apart, but R9 and R10 are 11.8 mm apart.",
    check=check,
)
