"""A club of the small book, as text: each test breaks it in one place."""

from __future__ import annotations

from dataclasses import replace

from rimbook.book.load import Loaded, club_from
from rimbook.book.problems import Problem
from rimbook.book.reader import read
from tests.book.rules.small_book import changed, loaded

CLUB = """\
format: 1
name: Reed Street Club
edition: spring 2027
on: 2027-03-01
units: metric
paper: A2
orientation: portrait
ink: colour
distance_m: 2
FRAMES- lapwing-20
labels: {paper: A4, rows: 8, columns: 3, margins_mm: [8.5, 7, 8.5, 7], gap_mm: [2.5, 0]}
shelf:
  lead_time_weeks: 3
  review_weeks: 4
  service_level: 0.95
  shares: {single: 0.04, strip: 0.1}
  stock:
    barrel-21: 40
"""


def club_with(*swaps: tuple[str, str], frames: str = "frames:\n  ") -> Loaded:
    """The small book with a club that has these changes; the club must still have the right shape."""
    text = changed(CLUB, *swaps).replace("FRAMES", frames)
    file, problems = club_from(read(text, "frames/clubs/reed-street.yaml"), "reed-street")
    assert file, problems
    return replace(loaded(), clubs={file.club.slug: file})


def refused(*swaps: tuple[str, str]) -> tuple[Problem, ...]:
    """The problems of a club that has lost its shape."""
    text = changed(CLUB, *swaps).replace("FRAMES", "frames:\n  ")
    file, problems = club_from(read(text, "frames/clubs/reed-street.yaml"), "reed-street")
    assert file is None
    return problems
