"""A shelf covers some time, and no more restrings than a shelf can serve."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import ClubFile
from rimbook.book.rules.rule import Finding, Given, Rule

MOST_RESTRINGS = 100_000
"""In the time from order to order; more is no shelf but a factory, and no count is exact any more."""

_WEEKS = 52


def check(file: ClubFile, _: Given) -> Iterator[Finding]:
    shelf = file.club.shelf
    if shelf is None:
        return
    lead, review = shelf.lead_time_weeks, shelf.review_weeks
    if lead == 0 and review == 0:
        yield Finding(
            ("shelf", "review_weeks"),
            "Lead time and review interval are both 0 weeks, so nothing would ever be kept.",
            expected="more than 0 weeks for one of them",
        )
    weeks = (2 if lead is None else lead) + (4 if review is None else review)
    restrings = sum(each.restrings_per_year or 0 for each in file.club.frames) * weeks / _WEEKS
    if restrings > MOST_RESTRINGS:
        yield Finding(
            ("shelf",),
            f"The shelf would have to serve {restrings:,.0f} restrings between two orders.",
            expected=f"at most {MOST_RESTRINGS:,}",
            key=True,
        )


RULE = Rule(
    name="club-shelf-time",
    scope="club",
    severity="error",
    summary=f"A club's shelf covers some time, and at most {MOST_RESTRINGS:,} restrings.",
    example="Lead time and review interval are both 0 weeks, so nothing would ever be kept.",
    check=check,
)
