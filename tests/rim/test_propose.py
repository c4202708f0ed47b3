"""A proposed walk is a whole walk, with as many holes as were counted."""

from __future__ import annotations

from collections import Counter

from hypothesis import given
from hypothesis import strategies as st

from rimbook.book.model import Head, Pass
from rimbook.book.walk import write_place
from rimbook.rim.propose import propose

SMALL = Head("superellipse", 186, 244, exponent=2.15)

heads = st.builds(
    Head,
    st.sampled_from(["ellipse", "superellipse", "teardrop"]),
    st.floats(150, 290),
    st.floats(180, 390),
    exponent=st.floats(2, 3),
    taper=st.floats(0, 1),
)
half_mains = st.integers(5, 12)


def strings(places: tuple[object, ...]) -> Counter[Pass]:
    return Counter(each for place in places for each in place.passes)  # type: ignore[attr-defined]


@given(heads, half_mains, st.integers(14, 24))
def test_every_main_comes_twice_and_every_cross_once(head: Head, half: int, crosses: int) -> None:
    expected = {Pass("m", number): 2 for number in range(1, half + 1)}
    expected |= {Pass("c", number): 1 for number in range(1, crosses + 1)}
    assert strings(propose(head, 2 * half, crosses)) == expected


@given(heads, half_mains, st.integers(14, 24))
def test_crosses_come_in_order_and_mains_out_and_in_again(head: Head, half: int, crosses: int) -> None:
    passes = [each for place in propose(head, 2 * half, crosses) for each in place.passes]
    out_and_in = [*range(1, half + 1), *range(half, 0, -1)]
    assert [number for kind, number in passes if kind == "m"] == out_and_in
    assert [number for kind, number in passes if kind == "c"] == list(range(1, crosses + 1))


def test_seventy_six_holes_of_a_22_by_21_pattern_have_five_shared_holes_a_side() -> None:
    """Passes less holes are shared holes: 2 × 11 + 21 - 38 = 5 (common practice, no published source)."""
    places = propose(SMALL, 22, 21, holes=76)
    assert len(places) == 38
    assert sum(len(place.passes) == 2 for place in places) == 5


def test_shared_holes_fall_on_the_shoulders() -> None:
    places = propose(SMALL, 22, 21, holes=76)
    shared = [number for number, place in enumerate(places, start=1) if len(place.passes) == 2]
    assert all(8 <= number <= 13 or 26 <= number <= 32 for number in shared)


def test_more_holes_than_strings_leave_none_shared() -> None:
    places = propose(SMALL, 22, 21, holes=200)
    assert len(places) == 43


def test_a_shared_hole_is_written_main_first() -> None:
    words = [write_place(place) for place in propose(SMALL, 22, 21, holes=76)]
    assert [word for word in words if "+" in word]
    assert all(word.startswith("m") for word in words if "+" in word)
