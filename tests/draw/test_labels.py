"""Labels find room: pushed or left out, never on top of each other."""

from __future__ import annotations

from itertools import combinations
from math import cos, sin

from hypothesis import given, settings
from hypothesis import strategies as st

from rimbook.draw.labels import Label, Stand, Wanted, placed, shortened, text_width


def overlap(one: Label, other: Label) -> bool:
    (a, b, c, d), (e, f, g, h) = one.box, other.box
    return a < g and e < c and b < h and f < d


def stand(x: float, y: float, across: float = 0.0, down: float = -1.0) -> Stand:
    return Stand((x, y), (across, down), (x, y))


def crowd(count: int, *, needed: bool) -> list[Wanted]:
    return [
        Wanted(f"R{index}", (stand(index * 2.0, 0.0),), 10, "address", needed=needed)
        for index in range(count)
    ]


def test_a_lone_label_stands_just_outside_its_spot() -> None:
    (label,) = placed([Wanted("R9", (stand(10, 20, 1, 0),), 10, "address")])
    assert label.box[0] > 10
    assert label.middle[1] == 20
    assert not label.moved


def test_needed_labels_are_pushed_outwards_and_all_stay() -> None:
    labels = placed(crowd(30, needed=True))
    assert [label.text for label in labels] == [f"R{index}" for index in range(30)]
    assert not [pair for pair in combinations(labels, 2) if overlap(*pair)]
    assert any(label.moved for label in labels)


def test_what_names_several_holes_stands_where_there_is_room() -> None:
    first = Wanted("R9", (stand(0, 0),), 10, "address")
    run = Wanted("2.7", (stand(0, 0), stand(60, 0)), 10, "bore-label")
    labels = placed([first, run])
    assert [label.spot for label in labels] == [(0, 0), (60, 0)]
    assert not labels[1].moved


def test_other_labels_are_left_out_where_there_is_no_room() -> None:
    labels = placed(crowd(30, needed=False))
    assert 1 < len(labels) < 30
    assert not [pair for pair in combinations(labels, 2) if overlap(*pair)]


@settings(max_examples=50, deadline=None)
@given(st.lists(st.tuples(st.floats(-100, 100), st.floats(-100, 100), st.floats(0, 6.28)), max_size=12))
def test_no_two_labels_ever_overlap(spots: list[tuple[float, float, float]]) -> None:
    wanted = [Wanted("2.75", (stand(x, y, cos(turn), sin(turn)),), 9.6, "bore-label") for x, y, turn in spots]
    assert not [pair for pair in combinations(placed(wanted), 2) if overlap(*pair)]


def test_a_label_without_a_direction_goes_up() -> None:
    labels = placed([Wanted("R9", (stand(0, 0, 0, 0),), 10, "address")] * 3)
    assert [label.middle[1] < 0 for label in labels] == [True] * 3


def test_text_that_is_too_long_is_cut() -> None:
    long = "A very long name of a frame " * 4
    cut = shortened(long, 10, 200)
    assert text_width(cut, 10) <= 200
    assert cut.endswith("…")
    assert shortened("Short", 10, 200) == "Short"
