"""Places put in order with the least shift."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import isotonic_regression

from rimbook.rim.order import filled, in_order

millimetres = st.floats(-50, 450)


def ordered(wanted: list[float], gap_mm: float = 0.0, length_mm: float = 400.0) -> list[float]:
    slots = list(enumerate(wanted, start=1))
    return [place for _, place in in_order(slots, (0.5, 0.0), (len(wanted) + 0.5, length_mm), gap_mm)]


def test_published_example() -> None:
    """23, 27, 25, 28 becomes 23, 26, 26, 28: Robert and Casella, *Monte Carlo Statistical Methods*.

    An exercise on isotonic regression, as worked at https://mc.hohoweiya.xyz/misc
    """
    assert ordered([23, 27, 25, 28]) == [23, 26, 26, 28]


@given(st.lists(st.floats(1, 399), min_size=1, max_size=60))
def test_it_is_isotonic_regression(wanted: list[float]) -> None:
    assert ordered(wanted) == pytest.approx(isotonic_regression(wanted).x, abs=1e-6)


@given(st.lists(millimetres, min_size=1, max_size=300), st.floats(0.001, 60))
def test_places_grow_and_stay_between_the_ends(wanted: list[float], gap_mm: float) -> None:
    """A gap for which there is no room shrinks to an even share of the room."""
    found = ordered(wanted, gap_mm)
    gap = min(gap_mm, 400 / len(wanted))
    assert all(end - start > gap * (1 - 1e-6) for start, end in pairwise(found))
    assert found[0] > gap * 0.499
    assert found[-1] < 400 - gap * 0.499


def test_two_too_close_give_way_by_halves() -> None:
    assert ordered([20, 101, 102, 200], 4) == pytest.approx([20, 99.5, 103.5, 200])


def test_what_nobody_knows_is_spread_evenly() -> None:
    known = [(0.5, 0.0), (2, 30.0), (4, 50.0), (6.5, 100.0)]
    assert filled(known, [1, 2, 3, 4, 5, 6]) == pytest.approx(
        {0.5: 0, 1: 10, 2: 30, 3: 40, 4: 50, 5: 70, 6: 90, 6.5: 100}
    )
