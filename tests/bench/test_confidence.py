"""The score of a map: each point by itself, and the sum. The weights are a choice, no published source."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.bench.confidence import MOST, WORDS, Vouched, age_years, confidence, newest
from rimbook.book.model import Confirmed, Measured

DAY = date(2026, 10, 4)
GOOD = Measured("a-handle", DAY, "calliper", 0.05)


def score(measured: Measured | None, *others: str, places: int = 0, on: date | None = DAY) -> int:
    confirmed = tuple(Confirmed(each, on) for each in others)
    return confidence(Vouched(measured, confirmed, 76, places), DAY).score


def test_a_map_of_nobody_has_none() -> None:
    assert score(None) == 0
    assert confidence(Vouched(None, (), 76, 0), None).word == "none"


def test_each_answer_gives_its_points() -> None:
    assert score(Measured("a-handle", DAY)) == 1
    assert score(GOOD) == 2
    assert score(GOOD, places=76) == 3
    assert score(GOOD, "b-handle", places=76) == 4
    assert score(GOOD, "b-handle", "c-handle", places=76) == MOST


@pytest.mark.parametrize(
    ("tool", "step", "points"),
    [("calliper", 0.1, 2), ("ruler", 0.5, 1), ("calliper", None, 1), (None, 0.05, 1)],
)
def test_a_fine_tool_has_a_name_and_a_step(tool: str | None, step: float | None, points: int) -> None:
    assert score(Measured("a-handle", DAY, tool, step)) == points


@pytest.mark.parametrize(("places", "points"), [(37, 2), (38, 3), (39, 3)])
def test_half_of_the_places_is_enough(places: int, points: int) -> None:
    assert score(GOOD, places=places) == points


def test_more_than_two_others_are_as_good_as_two_and_nobody_counts_twice() -> None:
    assert score(GOOD, "b", "c", "d", "e") == score(GOOD, "b", "c") == 4
    assert score(GOOD, "b", "b", "b") == 3
    assert score(GOOD, "a-handle") == 2


def test_an_old_map_and_one_without_a_day_lose_a_point() -> None:
    old = Vouched(Measured("a-handle", date(2019, 1, 1), "calliper", 0.05), (), 76, 0)
    assert confidence(old, DAY).score == 1
    assert confidence(old, date(2023, 12, 30)).score == 2
    assert confidence(old).score == 2, "beside no other map it is the newest"
    assert score(Measured("a-handle", None, "calliper", 0.05)) == 1
    looked_at = Vouched(old.measured, (Confirmed("b", date(2026, 1, 1)),), 76, 0)
    assert confidence(looked_at, DAY).score == 3


def test_ages_are_counted_to_the_newest_day_of_the_book() -> None:
    dated = [Vouched(GOOD, (Confirmed("b", date(2026, 11, 2)),), 76, 0), Vouched(GOOD, (), 76, 0)]
    assert newest(dated) == date(2026, 11, 2)
    assert newest([Vouched(None, (), 1, 0)]) is None


def test_a_year_is_the_mean_year_of_the_calendar() -> None:
    """400 years of the Gregorian calendar have 146,097 days (ISO 8601-1:2019)."""
    assert age_years(date(1600, 1, 1), date(2000, 1, 1)) == pytest.approx(400)


DAYS = st.none() | st.dates(date(1990, 1, 1), date(2030, 1, 1))
MEASURED = st.builds(
    Measured,
    st.sampled_from("abc"),
    DAYS,
    st.none() | st.just("calliper"),
    st.none() | st.floats(0.001, 5),
)


@given(
    st.none() | MEASURED,
    st.lists(st.builds(Confirmed, st.sampled_from("abcde"), DAYS)),
    st.integers(0, 76),
    DAYS,
)
def test_the_score_is_always_one_of_those_with_a_word(
    measured: Measured | None, confirmed: list[Confirmed], places: int, day: date | None
) -> None:
    found = confidence(Vouched(measured, tuple(confirmed), 76, places), day)
    assert 0 <= found.score <= MOST
    assert found.word == WORDS[found.score]
    assert sum(reason.most for reason in found.reasons) == MOST
