"""Fresh positions of a worn grommet."""

from __future__ import annotations

from itertools import pairwise
from math import asin, degrees, pi, sin, sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.bench.turns import Turns, turns

SIZES = st.floats(0.3, 4, allow_nan=False)


# Common practice, no published source: a worn grommet is turned by about 90°.
@pytest.mark.parametrize(
    ("groove", "bore", "strings", "positions", "step"),
    [
        (0.875, 1.3, 1, 4, 1),  # 84.6°
        (0.95, 1.3, 1, 2, 2),  # 93.9°: a quarter turn would cut into the old groove
        (1.3, 1.3, 1, 2, 2),
        (1.4, 1.3, 1, 1, 1),
        (0.875, 1.9, 2, 2, 1),
        (0.875, 1.9, 3, 1, 1),
        (1.625, 1.9, 1, 2, 2),
        (1.625, 1.9, 2, 1, 2),
        (0.875, 1.3, 0, 4, 1),
    ],
)
def test_positions(groove: float, bore: float, strings: int, positions: int, step: int) -> None:
    found = turns(groove, bore, 4.2, strings)
    assert (found.positions, found.step) == (positions, step)


def test_the_angle_of_a_groove() -> None:
    """A chord of w in a circle of diameter b takes 2·asin(w/b): a right angle at w = b/√2."""
    assert turns(1.3 / sqrt(2), 1.3, 4.2).groove_deg == pytest.approx(90)
    assert turns(0.65, 1.3, 4.2).groove_deg == pytest.approx(60)
    assert turns(0.875, 1.3, 4.2).groove_deg == pytest.approx(degrees(2 * asin(0.875 / 1.3)))
    assert turns(1.3 * sin(pi / 4), 1.3, 4.2).positions == 4


def test_what_is_left() -> None:
    quarter, half = Turns(4, 1), Turns(2, 2)
    assert [quarter.left(k) for k in range(6)] == [3, 2, 1, 0, 0, 0]
    assert [half.left(k) for k in range(4)] == [1, 0, 0, 0]
    assert Turns(1).left(0) == 0
    assert Turns().left(2) is None


@pytest.mark.parametrize("spent", [-1, 0.5, True])
def test_quarter_turns_are_counted(spent: int) -> None:
    with pytest.raises(ValueError, match="quarter turns"):
        Turns(4, 1).left(spent)


def test_what_cannot_turn_has_one_position() -> None:
    assert turns(0.875, 1.3, None, can_turn=False) == Turns(1)


def test_a_flange_too_narrow_to_carry_the_string() -> None:
    assert turns(0.875, 1.3, 1.9).positions == 1
    assert turns(0.875, 1.3, 2.0).positions == 4


def test_unknown_stays_unknown() -> None:
    assert turns(0.875, None, 4.2).missing == ("inner bore",)
    assert turns(0.875, 1.3, None).missing == ("flange",)
    assert turns(None, 1.3, 4.2).missing == ("string diameter",)


@pytest.mark.parametrize(
    ("groove", "bore", "flange", "message"),
    [
        (0.0, 1.3, 4.2, "groove is 0.0"),
        (0.9, -1.0, 4.2, "inner bore is -1.0"),
        (0.9, 1.3, 1.3, "flange of 1.3 mm is no wider than the inner bore of 1.3 mm"),
    ],
)
def test_sizes_that_are_none(groove: float, bore: float, flange: float, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        turns(groove, bore, flange)


@given(SIZES, SIZES, st.floats(0.1, 4), st.integers(0, 4), st.integers(0, 8))
def test_a_turn_never_adds_fresh_positions(
    groove: float, bore: float, more: float, strings: int, spent: int
) -> None:
    found = turns(groove, bore, bore + more, strings)
    left = [found.left(k) for k in range(spent + 2)]
    assert all(a is not None and b is not None and b <= a for a, b in pairwise(left))


@given(SIZES, st.floats(0, 2), SIZES, st.integers(1, 4))
def test_a_wider_groove_or_one_more_string_never_adds_any(
    groove: float, more: float, bore: float, strings: int
) -> None:
    narrow, wide = turns(groove, bore, bore + 9, strings), turns(groove + more, bore, bore + 9, strings)
    assert (wide.positions or 0) <= (narrow.positions or 0)
    assert (turns(groove, bore, bore + 9, strings + 1).positions or 0) <= (narrow.positions or 0)
