"""The outline as every later step relies on it."""

from __future__ import annotations

from itertools import pairwise
from math import cos, dist, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.book.model import Head
from rimbook.rim.outline import at, curve, nearest_along, throat_mm
from rimbook.rim.types import Curve, Point

sizes = st.floats(60, 400)
symmetric_heads = (
    st.builds(Head, st.just("ellipse"), sizes, sizes)
    | st.builds(Head, st.just("superellipse"), sizes, sizes, exponent=st.floats(1.5, 6))
    | st.builds(Head, st.just("teardrop"), sizes, sizes, taper=st.floats(0, 1))
)
SQUASH = Head("teardrop", 190, 320, taper=0.6)
UNEVEN = tuple(
    (sin(pi * turn / 15) * (90 if turn < 15 else 94), 120 * cos(pi * turn / 15) + 3 * sin(pi * turn / 10))
    for turn in range(30)
)
HEADS = [
    Head("ellipse", 186, 244),
    Head("superellipse", 186, 244, exponent=2.35),
    SQUASH,
    Head("points", 184, 244, points_mm=UNEVEN),
]


def signed_area(line: Curve) -> float:
    ends = (*line.points[1:], line.points[0])
    return sum(p.x * q.y - q.x * p.y for p, q in zip(line.points, ends, strict=True)) / 2


@pytest.mark.parametrize("head", HEADS, ids=lambda head: head.outline)
def test_runs_clockwise_from_the_middle_of_the_head(head: Head) -> None:
    line = curve(head)
    assert line.points[0].x == 0
    assert line.points[0].y > 100
    assert line.points[1].x > 0
    assert signed_area(line) < 0


@pytest.mark.parametrize("head", HEADS, ids=lambda head: head.outline)
def test_origin_is_the_middle_of_the_box(head: Head) -> None:
    xs, ys = zip(*curve(head).points, strict=True)
    assert max(xs) == pytest.approx(-min(xs), abs=1e-9)
    assert max(ys) == pytest.approx(-min(ys), abs=1e-9)


@pytest.mark.parametrize("head", HEADS, ids=lambda head: head.outline)
def test_lengths_are_those_of_the_pieces(head: Head) -> None:
    line = curve(head)
    for (p, q), (start, end) in zip(pairwise(line.points), pairwise(line.along_mm), strict=True):
        assert end - start == pytest.approx(dist(p, q), abs=1e-9)
    closing = dist(line.points[-1], line.points[0])
    assert line.length_mm - line.along_mm[-1] == pytest.approx(closing, abs=1e-9)


@pytest.mark.parametrize("head", HEADS, ids=lambda head: head.outline)
def test_the_middle_of_the_throat(head: Head) -> None:
    line = curve(head)
    point, outward = at(line, throat_mm(line))
    assert point.x == pytest.approx(0, abs=1e-9)
    assert point.y < -100
    assert outward.y < -0.99


@given(symmetric_heads)
def test_size_and_symmetry(head: Head) -> None:
    line = curve(head)
    xs, ys = zip(*line.points, strict=True)
    assert max(xs) == pytest.approx(head.width_mm / 2, rel=5e-5)
    assert max(ys) - min(ys) == pytest.approx(head.height_mm)
    assert set(line.points) == {Point(-x, y) for x, y in line.points}
    assert throat_mm(line) == line.length_mm / 2


@given(symmetric_heads, st.floats(0, 1, exclude_max=True))
def test_a_place_is_found_again(head: Head, share: float) -> None:
    line = curve(head)
    along = share * line.length_mm
    point, outward = at(line, along)
    assert outward.length == pytest.approx(1)
    found = nearest_along(line, point.plus(outward.times(0.01)))
    away = abs(found - along)
    assert min(away, line.length_mm - away) < 0.01


def test_lengths_wrap_round_the_rim() -> None:
    line = curve(SQUASH)
    assert at(line, -5)[0] == pytest.approx(at(line, line.length_mm - 5)[0])
    assert at(line, line.length_mm + 5)[0] == pytest.approx(at(line, 5)[0])


def test_a_teardrop_narrows_towards_the_throat() -> None:
    """Nobody's sides are hollow up to taper 1; beyond it they are."""

    def hollow(taper: float) -> bool:
        points = curve(Head("teardrop", 190, 320, taper=taper)).points
        turns = zip(points, points[1:], points[2:], strict=False)
        return any((q.x - p.x) * (r.y - q.y) - (q.y - p.y) * (r.x - q.x) > 1e-9 for p, q, r in turns)

    def width(taper: float, share: float) -> float:
        points = curve(Head("teardrop", 190, 320, taper=taper)).points
        return 2 * min(points, key=lambda point: abs(point.y - share * 160) + (point.x < 0) * 999).x

    assert not hollow(1.0)
    assert hollow(1.1)
    assert width(0.0, -0.8) == pytest.approx(width(0.0, 0.8), abs=2)
    assert width(0.6, -0.8) < width(0.3, -0.8) < width(0.0, -0.8)


def test_measured_points_lie_on_the_curve() -> None:
    line = curve(Head("points", 184, 244, points_mm=UNEVEN))
    xs, ys = zip(*line.points, strict=True)
    box = zip(*UNEVEN, strict=True)
    shift = Point(*((max(axis) + min(axis)) / 2 for axis in box))
    assert max(xs) - min(xs) == pytest.approx(184, abs=0.5)
    assert max(ys) - min(ys) == pytest.approx(244, abs=1.5)
    for x, y in UNEVEN:
        point = Point(x, y).minus(shift)
        assert dist(at(line, nearest_along(line, point))[0], point) < 0.6


coordinates = st.tuples(st.integers(-3, 3).map(float), st.integers(-3, 3).map(float))


@given(st.lists(coordinates, min_size=6, max_size=20))
def test_any_measured_points_give_a_closed_curve(points: list[tuple[float, float]]) -> None:
    """Doubled points, crossings and spikes are a matter for the rules: the curve must still be one."""
    width, height = (max(axis) - min(axis) for axis in zip(*points, strict=True))
    if not width or not height:
        return
    line = curve(Head("points", width, height, points_mm=tuple(points)))
    assert [point.x for point in line.points].count(0) == 2
    assert all(start < end for start, end in pairwise((*line.along_mm, line.length_mm)))
    for along in (*line.along_mm[::50], throat_mm(line)):
        assert at(line, along)[1].length == pytest.approx(1)
