"""A two-post part fills two neighbouring holes."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import MapFile
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import KINDS, counted, runs


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame = file.frame
    for line in where.fitted_lines(file):
        part = given.book.parts.get(line.part or "")
        if part is None or part.kind not in ("twin-even", "twin-uneven"):
            continue
        whole = {
            at
            for twin in frame.twins
            if twin.part == part.id and all(frame.hole(at).drilled for at in twin.holes)
            for at in twin.holes
        }
        alone = [at for at in line.kept if at not in whole]
        if alone:
            yield Finding(
                line.path,
                f"{part.id} is {KINDS[part.kind]}; of these holes none has a neighbour to share it with: "
                f"{runs(alone)}.",
                hole=str(alone[0]),
                found=counted(len(alone), "single hole"),
                expected="a run of two, as R7-R8",
                key=True,
            )


RULE = Rule(
    name="twin-holes",
    scope="map",
    severity="error",
    summary="A two-post part fills two drilled holes side by side.",
    example="twin-21 is an even twin; of these holes none has a neighbour to share it with: 7.",
    check=check,
)
