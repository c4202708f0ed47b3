"""A club strings no frame above the limit that its maker printed."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.limits import over_printed
from rimbook.book.load import ClubFile
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.tension_plausible import NEWTON


def check(file: ClubFile, given: Given) -> Iterator[Finding]:
    for index, each in enumerate(file.club.frames):
        frame = given.book.frames.get(each.frame)
        limit = frame.tension_limit if frame else None
        if each.tension is None or limit is None:
            continue
        tension_n, most_n = (force.value * NEWTON[force.unit] for force in (each.tension, limit))
        if over_printed(tension_n, most_n):
            yield Finding(
                ("frames", index, "tension"),
                f"The tension {each.tension.value:g} {each.tension.unit} is above the "
                f"{limit.value:g} {limit.unit} printed on {each.frame}.",
                expected=f"at most {limit.value:g} {limit.unit}",
                tip="The maker's printed limit comes first: the frame may break.",
            )


RULE = Rule(
    name="club-tension",
    scope="club",
    severity="warning",
    summary="A club's usual tension of a frame is not above the limit that the maker printed on it.",
    example="The tension 29 lb is above the 28 lb printed on lapwing-20.",
    check=check,
)
