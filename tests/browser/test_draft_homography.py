"""The projective transform of the drafting page against a closed form and another solver."""

from __future__ import annotations

import math
from collections.abc import Iterator
from random import Random
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import Browser, Page

from tests.browser.small_site import look_inside
from tests.watch import watched_page

Quad = list[list[float]]
UNIT: Quad = [[0, 0], [1, 0], [1, 1], [0, 1]]


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"draft_homography": ["homography", "apply", "inverse", "stretch", "quadFault"]})
        yield page
    assert faults == []


def found(inside: Page, start: Quad, end: Quad) -> Any:
    return inside.evaluate("([start, end]) => inside.homography(start, end)", [start, end])


def heckbert(quad: Quad) -> list[float]:
    """From the unit square to any four corners: P. S. Heckbert, Fundamentals of Texture Mapping and Image
    Warping, 1989, section 2.2 (from memory)."""
    (x0, y0), (x1, y1), (x2, y2), (x3, y3) = quad
    dx1, dx2, sx = x1 - x2, x3 - x2, x0 - x1 + x2 - x3
    dy1, dy2, sy = y1 - y2, y3 - y2, y0 - y1 + y2 - y3
    whole = dx1 * dy2 - dx2 * dy1
    g = (sx * dy2 - dx2 * sy) / whole
    h = (dx1 * sy - sx * dy1) / whole
    return [x1 - x0 + g * x1, x3 - x0 + h * x3, x0, y1 - y0 + g * y1, y3 - y0 + h * y3, y0, g, h, 1]


def solved(start: Quad, end: Quad) -> list[float]:
    """The eight equations as they stand, by LAPACK."""
    rows, wanted = [], []
    for (x, y), (u, v) in zip(start, end, strict=True):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        wanted += [u, v]
    return [*np.linalg.solve(np.array(rows), np.array(wanted)).tolist(), 1.0]


def quads(count: int, size: float) -> list[Quad]:
    """Corners of a square, each moved by up to a fifth of its side each way."""
    draw = Random(1989)
    corners = [(0.0, 0.0), (1.0, 0.0), (1.0, 1.0), (0.0, 1.0)]
    shakes = iter([draw.uniform(-0.2, 0.2) for _ in range(8 * count)])
    return [
        [[size * (1 + x + next(shakes)), size * (1 + y + next(shakes))] for x, y in corners]
        for _ in range(count)
    ]


def test_the_closed_form_of_the_unit_square(inside: Page) -> None:
    for quad in [*quads(20, 1), *quads(20, 3000), [[2.0, 1.0], [7.0, 2.0], [6.0, 5.0], [1.0, 6.0]]]:
        matrix = np.array(found(inside, UNIT, quad))
        np.testing.assert_allclose(matrix / matrix[8], heckbert(quad), rtol=1e-9, atol=1e-9)


def test_another_solver_finds_the_same(inside: Page) -> None:
    for start, end in zip(quads(30, 2000), quads(60, 250)[30:], strict=True):
        matrix = np.array(found(inside, start, end))
        np.testing.assert_allclose(matrix / matrix[8], solved(start, end), rtol=1e-7, atol=1e-9)


def test_there_and_back(inside: Page) -> None:
    [start], [end] = quads(1, 2000), quads(2, 250)[1:]
    matrix = found(inside, start, end)
    for point, corner in zip(start, end, strict=True):
        there = inside.evaluate("([m, p]) => inside.apply(m, p)", [matrix, point])
        assert there == pytest.approx(corner, abs=1e-9)
        back = inside.evaluate("([m, p]) => inside.apply(inside.inverse(m), p)", [matrix, there])
        assert back == pytest.approx(point, abs=1e-7)


def test_a_step_of_one_is_stretched_at_most_so_far(inside: Page) -> None:
    [start], [end] = quads(1, 2000), quads(2, 250)[1:]
    matrix = found(inside, start, end)
    apply = "([m, p]) => inside.apply(m, p)"
    middle = [2900.0, 3100.0]
    here = inside.evaluate(apply, [matrix, middle])
    steps = []
    for degree in range(180):
        turn = math.radians(degree)
        other = [middle[0] + 0.01 * math.cos(turn), middle[1] + 0.01 * math.sin(turn)]
        there = inside.evaluate(apply, [matrix, other])
        steps.append(math.dist(here, there) / 0.01)
    assert inside.evaluate("([m, p]) => inside.stretch(m, p)", [matrix, middle]) == pytest.approx(
        max(steps), rel=1e-3
    )


def test_nothing_is_told_from_beyond_the_horizon(inside: Page) -> None:
    """A floor that narrows to half its width over its depth vanishes one more depth further on."""
    floor = [[0.0, 100.0], [100.0, 100.0], [75.0, 50.0], [25.0, 50.0]]
    matrix = found(inside, floor, [[0, 0], [1, 0], [1, 1], [0, 1]])
    apply = "([m, p]) => inside.apply(m, p)"
    assert inside.evaluate(apply, [matrix, [50, 1]])[1] > 40
    for height in (0, -10):
        assert inside.evaluate(apply, [matrix, [50, height]]) is None
        assert inside.evaluate("([m, p]) => 1 / inside.stretch(m, p)", [matrix, [50, height]]) == 0


@pytest.mark.parametrize(
    ("quad", "word"),
    [
        ([[0, 0], [5, 0], [10, 0], [0, 10]], "in one line"),
        ([[0, 0], [10, 0], [10, 10], [10.05, 20]], "in one line"),
        ([[0, 0], [0, 0], [10, 10], [0, 10]], "in one line"),
        ([[0, 0], [10, 10], [10, 0], [0, 10]], "cross"),
        ([[0, 0], [10, 0], [3, 3], [0, 10]], "between the other three"),
        ([[0, 0], [10, 0], [10, 10]], "Four points"),
    ],
)
def test_four_points_that_are_no_rectangle_are_refused(inside: Page, quad: Quad, word: str) -> None:
    assert word in inside.evaluate("quad => inside.quadFault(quad)", quad)
    assert word in found(inside, quad, UNIT)
    assert word in found(inside, UNIT, quad)


def test_either_way_round_is_a_rectangle(inside: Page) -> None:
    for quad in (UNIT, UNIT[::-1]):
        assert inside.evaluate("quad => inside.quadFault(quad)", quad) == ""
