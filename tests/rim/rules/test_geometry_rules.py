"""Where holes lie: on the rim, apart from each other, and on the line of their string."""

from __future__ import annotations

import pytest

from rimbook.bench.check import check
from tests.book.rules.small_book import TODAY, found, map_with, said


def with_places(*places: object) -> tuple[str, str]:
    """A change that adds measured places for the first holes of the walk."""
    words = [str(place) for place in places] + ["unknown"] * (10 - len(places))
    return ("stringing:", f"places_mm: [{', '.join(words)}]\nstringing:")


def test_places_that_a_rim_can_have_are_welcome() -> None:
    book = map_with(with_places(3.5, 10.5, 17.7, 60, 104, 148, 190, 234, 278, 320))
    assert said("place-on-rim", book) == said("hole-gaps", book) == []


def test_the_first_place_beyond_the_throat_is_told_and_not_all_after_it() -> None:
    book = map_with(with_places(*["unknown"] * 7, 340, 341, 342))
    (problem,) = found("place-on-rim", book)
    assert problem.hole == "R8"
    assert problem.expected == "less than 339.3 mm"


def test_a_place_beyond_the_throat_is_not_told_as_a_gap_too() -> None:
    book = map_with(with_places(3.5, 10.5, 500))
    assert [problem.rule for problem in check(book, TODAY)] == ["place-on-rim"]


def test_holes_that_would_run_into_each_other_are_doubted() -> None:
    (problem,) = found("hole-gaps", map_with(with_places(3.5, 5.5)))
    assert problem.message == "R1 and R2 lie 2 mm apart along the rim."
    assert (problem.severity, problem.expected) == ("warning", "3.5 mm to 45 mm")


@pytest.mark.parametrize(("sport", "told"), [("badminton", 1), ("squash", 0), ("tennis", 0)])
def test_the_gap_that_is_doubted_depends_on_the_sport(sport: str, told: int) -> None:
    book = map_with(("sport: badminton", f"sport: {sport}"), with_places(3.5, 10.5, 17.7, 75))
    gaps = [message for message in said("hole-gaps", book) if message.startswith("R3")]
    assert len(gaps) == told


def test_worked_out_places_are_nobodys_fault() -> None:
    """The pattern of the small book spreads its few crosses 50 mm and more apart."""
    assert said("hole-gaps", map_with()) == []


@pytest.mark.parametrize(("off", "told"), [(0.8, 0), (1.0, 1)])
def test_a_pitch_may_be_off_by_what_a_post_gives_and_the_tool_shows(off: float, told: int) -> None:
    """0.8 mm of give and twice the resolution of 0.05 mm, on a chord of about 7 mm."""
    book = map_with(with_places(*["unknown"] * 8, 328.7 - off, 335.8))
    assert len(said("twin-pitch", book)) == told


def test_only_the_worst_holes_of_a_wrong_order_are_told() -> None:
    book = map_with(("m1 m2 m3 c1 c2\n  c3 c4 m3+c5", "m1 c1 c2 c3 c4\n  m2 m3 m3+c5"))
    assert len(said("strings-run-straight", book)) == 3
