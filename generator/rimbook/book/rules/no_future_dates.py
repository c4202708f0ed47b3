"""Nobody measured anything tomorrow."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from rimbook.book.load import Loaded
from rimbook.book.model import Measured
from rimbook.book.reader import Path
from rimbook.book.rules.rule import Finding, Given, Rule

# Somewhere it is tomorrow already, and next year's frames come out in autumn.
A_DAY = timedelta(days=1)
YEARS_AHEAD = 1


def check(loaded: Loaded, given: Given) -> Iterator[Finding]:
    for map_file in loaded.maps.values():
        frame, file = map_file.frame, map_file.document.file
        yield from _measured(frame.measured, (), file, given)
        for index, person in enumerate(frame.confirmed):
            if person.on and person.on > given.today + A_DAY:
                yield _finding(("confirmed", index, "on"), f"{person.on} is yet to come.", file)
        if frame.year and frame.year > given.today.year + YEARS_AHEAD:
            yield _finding(("year",), f"The year {frame.year} is far off.", file)
    for parts_file in loaded.parts_files:
        for part in parts_file.parts.values():
            yield from _measured(part.measured, ("parts", part.id), parts_file.document.file, given)


def _measured(measured: Measured | None, path: Path, file: str, given: Given) -> Iterator[Finding]:
    if measured and measured.on and measured.on > given.today + A_DAY:
        yield _finding((*path, "measured", "on"), f"{measured.on} is yet to come.", file)


def _finding(path: Path, message: str, file: str) -> Finding:
    return Finding(path, message, file=file, tip="A date is written year-month-day.")


RULE = Rule(
    name="no-future-dates",
    scope="book",
    severity="error",
    summary="No map or part was measured or confirmed in the future.",
    example="2031-01-01 is yet to come.",
    check=check,
)
