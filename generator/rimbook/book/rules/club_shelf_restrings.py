"""A shelf is planned by restrings: where all are zero there is nothing to plan.

Where none are written down, the page of the shelf names each frame as one that cannot be planned.
"""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import ClubFile
from rimbook.book.rules.rule import Finding, Given, Rule


def check(file: ClubFile, _: Given) -> Iterator[Finding]:
    written = [each.restrings_per_year for each in file.club.frames if each.restrings_per_year is not None]
    if file.club.shelf is not None and written and not any(written):
        yield Finding(
            ("shelf",),
            "The club plans a shelf, but all its restrings a year are 0.",
            expected="restrings_per_year with one frame at least",
            tip="Count last season's, or leave the shelf out.",
            key=True,
        )


RULE = Rule(
    name="club-shelf-restrings",
    scope="club",
    severity="warning",
    summary="A club that plans a shelf has restrings.",
    example="The club plans a shelf, but all its restrings a year are 0.",
    check=check,
)
