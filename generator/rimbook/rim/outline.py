"""The head outline: the closed line in millimetres on which the holes sit."""

from __future__ import annotations

from bisect import bisect_right
from functools import lru_cache
from itertools import accumulate
from math import cos, dist, hypot, pi, sin, sqrt
from operator import neg
from typing import NamedTuple

from rimbook.book.model import Head
from rimbook.rim.measured import smooth
from rimbook.rim.once import once
from rimbook.rim.types import Curve, Point

STEPS = 360
"""Pieces from the middle of the head to the middle of the throat.

A polygon of 2 × 360 pieces falls short of a tennis head's perimeter by less than 0.005 mm.
"""

_QUARTER = [pi * step / STEPS for step in range(STEPS // 2)]
_SIN = [*map(sin, _QUARTER), 1.0, *map(sin, reversed(_QUARTER))]
_COS = [*map(cos, _QUARTER), 0.0, *(-cos(turn) for turn in reversed(_QUARTER))]


@lru_cache(maxsize=256)
def curve(head: Head) -> Curve:
    """The outline of a head: clockwise from the middle of the head, origin at its middle.

    An ellipse and a superellipse |x/a|^n + |y/b|^n = 1 are walked by the polar angle of the unit
    figure, which spreads the points evenly for every exponent.
    """
    half_width, half_height = head.width_mm / 2, head.height_mm / 2
    if head.outline == "points":
        return _measured(head)
    if head.outline == "teardrop":
        return _mirrored(*_teardrop(half_width, half_height, head.taper or 0.0))
    exponent = head.exponent if head.outline == "superellipse" and head.exponent else 2.0
    return _mirrored(*_superellipse(half_width, half_height, exponent))


def _superellipse(a: float, b: float, exponent: float) -> tuple[list[float], list[float]]:
    if exponent == 2:
        return [a * s for s in _SIN], [b * c for c in _COS]
    reach = [
        (s**exponent + c**exponent) ** (-1 / exponent)
        for s, c in zip(_SIN[: STEPS // 2 + 1], _COS, strict=False)
    ]
    reach += reach[-2::-1]
    return (
        [a * r * s for r, s in zip(reach, _SIN, strict=True)],
        [b * r * c for r, c in zip(reach, _COS, strict=True)],
    )


def _teardrop(a: float, b: float, taper: float) -> tuple[list[float], list[float]]:
    """The pear-shaped curve x = A sin t (1 + k cos t), y = b cos t, with A such that the width is right.

    Between the ellipse (k = 0) and the piriform (k = 1; Weisstein, "Piriform", MathWorld). Its curvature
    has the sign of 1 + k cos t (3 - 2 cos² t), so the sides turn hollow beyond k = 1/√2: that is
    taper 1. The area is π A b for every k.
    """
    k = taper / sqrt(2)
    widest = 2 * k / (1 + sqrt(1 + 8 * k * k))  # cos t where dx/dt = 0
    scale = a / (sqrt(1 - widest * widest) * (1 + k * widest))
    return [scale * s * (1 + k * c) for s, c in zip(_SIN, _COS, strict=True)], [b * c for c in _COS]


def _mirrored(xs: list[float], ys: list[float]) -> Curve:
    """The whole curve from its right half, head to throat: the left half is its exact mirror image."""
    right = list(map(Point._make, zip(xs, ys, strict=True)))
    left = map(Point._make, zip(map(neg, xs[-2:0:-1]), ys[-2:0:-1], strict=True))
    along = [0.0, *accumulate(map(dist, right, right[1:]))]
    length = 2 * along[-1]
    along += [length - place for place in along[-2:0:-1]]
    return Curve((*right, *left), tuple(along), length)


def _measured(head: Head) -> Curve:
    points = smooth(head.points_mm, 2 * STEPS)
    along = list(accumulate(map(dist, points, (*points[1:], points[0]))))
    return Curve(points, (0.0, *along[:-1]), along[-1])


def throat_mm(line: Curve) -> float:
    """The length from the middle of the head clockwise to the middle of the throat."""
    return line.along_mm[[point.x for point in line.points].index(0.0, 1)]


def at(line: Curve, along_mm: float) -> tuple[Point, Point]:
    """The point so many millimetres clockwise from the middle of the head, and the unit way out of the head.

    The way out is at right angles to the curve: it turns evenly from one
    sampled point to the next. Any number is taken, and wraps round the rim.
    """
    place = along_mm % line.length_mm
    points, along = line.points, line.along_mm
    index = bisect_right(along, place) - 1
    count = len(points)
    (before_x, before_y), (x, y) = points[index - 1], points[index]
    (after_x, after_y), (beyond_x, beyond_y) = points[(index + 1) % count], points[(index + 2) % count]
    ux, uy = x - before_x, y - before_y
    vx, vy = after_x - x, after_y - y
    wx, wy = beyond_x - after_x, beyond_y - after_y
    u, v, w = hypot(ux, uy), hypot(vx, vy), hypot(wx, wy)
    share = (place - along[index]) / v
    # At each end of the piece the tangent of the circle through three points, then the mean by distance.
    first, last = (1 - share) * v / (u + v) / u, share * v / (v + w) / w
    middle = ((1 - share) * u / (u + v) + share * w / (v + w)) / v
    tx = first * ux + middle * vx + last * wx
    ty = first * uy + middle * vy + last * wy
    size = hypot(tx, ty)
    if not size:  # the line doubles back on itself here
        tx, ty, size = vx, vy, v
    return Point(x + share * vx, y + share * vy), Point(-ty / size, tx / size)


def nearest_along(line: Curve, point: Point) -> float:
    """The place on the curve, in mm along it, that lies nearest to a point."""
    best, nearest = float("inf"), 0.0
    ends = (*line.points[1:], line.points[0])
    for start, end, along in zip(line.points, ends, line.along_mm, strict=True):
        dx, dy = end.x - start.x, end.y - start.y
        size = dx * dx + dy * dy
        share = ((point.x - start.x) * dx + (point.y - start.y) * dy) / size if size else 0.0
        share = min(max(share, 0.0), 1.0)
        away = hypot(start.x + share * dx - point.x, start.y + share * dy - point.y)
        if away < best:
            best, nearest = away, along + share * sqrt(size)
    return nearest % line.length_mm


class Extent(NamedTuple):
    """How far a line reaches on each side, in mm."""

    left: float
    right: float
    low: float
    high: float


@once
def extent(line: Curve) -> Extent:
    """The box round a curve."""
    xs, ys = [x for x, _ in line.points], [y for _, y in line.points]
    return Extent(min(xs), max(xs), min(ys), max(ys))


def area(line: Curve) -> float:
    """The area within the curve in mm², by the shoelace formula."""
    ends = (*line.points[1:], line.points[0])
    twice = sum([px * qy - qx * py for (px, py), (qx, qy) in zip(line.points, ends, strict=True)])
    return abs(twice) / 2
