"""Room for the strings: words, several diameters, and that a thicker string never needs less."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.bench.room import MOST_STRINGS, RATIOS, enclosing, in_hole, room, thickest, through

STRINGS = st.floats(0.3, 2.0, allow_nan=False)


@pytest.mark.parametrize(
    ("bore", "strings", "word"),
    [
        (1.3, (0.70,), "runs free"),
        (0.8, (0.70,), "runs free"),  # 0.1 to thread
        (0.79, (0.70,), "tight"),
        (0.70, (0.70,), "tight"),
        (0.69, (0.70,), "will not go"),
        (1.9, (0.70, 0.70), "runs free"),
        (1.3, (0.70, 0.70), "will not go"),
        (1.3, (0.62, 0.66), "tight"),
        (3.0, (1.3, 1.3, 1.3), "runs free"),  # 2.80
        (2.85, (1.3, 1.3, 1.3), "tight"),
    ],
)
def test_words(bore: float, strings: tuple[float, ...], word: str) -> None:
    assert room(bore, strings).word == word


def test_numbers() -> None:
    found = room(1.9, (0.62, 0.70))
    assert (found.strings, found.needs_mm, found.spare_mm) == pytest.approx((2, 1.32, 0.58))


def test_which_diameters_go_through() -> None:
    words = {each.string_mm: each.word for each in through(1.4, 2, (0.62, 0.66, 0.70, 0.73))}
    assert words == {0.62: "runs free", 0.66: "tight", 0.70: "tight", 0.73: "will not go"}


def test_the_thickest_that_runs_free() -> None:
    assert thickest(1.5, 2) == pytest.approx(0.7)
    assert thickest(0.05, 1) == 0
    assert thickest(1.3, 0) is None


def test_a_hole_without_a_string_has_room() -> None:
    assert room(1.3, ()).word == "runs free"
    assert room(None, ()).missing == ()


def test_unknown_stays_unknown() -> None:
    assert room(None, (0.7,)) == room(None, (0.7,))
    assert (room(None, (0.7,)).word, room(None, (0.7,)).missing) == (None, ("inner bore",))
    assert (room(1.3, None).word, room(1.3, None).missing) == (None, ("string diameter",))


@pytest.mark.parametrize(
    ("diameters", "count", "strings"),
    [
        ((0.7,), 2, (0.7, 0.7)),
        ((0.7, 0.66), 2, (0.66, 0.7)),
        ((0.66, 0.7), 3, (0.66, 0.7, 0.7)),
        ((0.7,), 0, ()),
    ],
)
def test_strings_of_a_hole(diameters: tuple[float, ...], count: int, strings: tuple[float, ...]) -> None:
    assert in_hole(diameters, count) == strings


@pytest.mark.parametrize(
    ("diameters", "count", "message"),
    [
        ((), 1, "0 string diameters"),
        ((0.6, 0.7), 1, "2 string diameters"),
        ((-0.7,), 1, "string diameter is -0.7"),
        ((0.7,), 9, "number of strings is 9"),
        ((0.7,), 1.5, "number of strings is 1.5"),
    ],
)
def test_strings_that_are_none(diameters: tuple[float, ...], count: int, message: str) -> None:
    with pytest.raises(ValueError, match=message):
        in_hole(diameters, count)


@pytest.mark.parametrize("bore", [0.0, -1.3, float("nan"), float("inf"), 1e6])
def test_bores_that_are_none(bore: float) -> None:
    with pytest.raises(ValueError, match="inner bore"):
        room(bore, (0.7,))


def test_nine_strings_are_too_many() -> None:
    with pytest.raises(ValueError, match="0 to 8"):
        enclosing((0.7,) * 9)


@given(st.lists(STRINGS, min_size=1, max_size=MOST_STRINGS), st.data())
def test_a_thicker_string_never_needs_less_room(strings: list[float], data: st.DataObject) -> None:
    which = data.draw(st.integers(0, len(strings) - 1))
    thicker = [*strings]
    thicker[which] += data.draw(st.floats(0, 1))
    assert enclosing(tuple(thicker)) >= enclosing(tuple(strings)) - 1e-12


@given(st.lists(STRINGS, min_size=1, max_size=MOST_STRINGS - 1), STRINGS)
def test_one_more_string_never_needs_less_room(strings: list[float], one: float) -> None:
    assert enclosing((*strings, one)) >= enclosing(tuple(strings)) - 1e-12


@given(st.lists(STRINGS, min_size=1, max_size=3))
def test_the_order_does_not_matter(strings: list[float]) -> None:
    assert enclosing(tuple(strings)) == enclosing(tuple(reversed(strings)))


@given(st.floats(0.5, 5), st.integers(1, MOST_STRINGS))
def test_the_thickest_string_just_runs_free(bore: float, strings: int) -> None:
    diameter = thickest(bore, strings)
    assert diameter
    assert room(bore, (diameter,) * strings).word == "runs free"
    assert room(bore, (diameter + 0.01,) * strings).word != "runs free"
    assert diameter * RATIOS[strings] == pytest.approx(bore - 0.1)
