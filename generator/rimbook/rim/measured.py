"""A smooth closed line through measured points of a head."""

from __future__ import annotations

from collections.abc import Sequence
from math import ceil, dist, sqrt

from rimbook.rim.types import Point

_SAME = 1e-9
"""Points closer than this share of half the width are taken for one."""


def smooth(measured: Sequence[tuple[float, float]], pieces: int) -> tuple[Point, ...]:
    """About so many points on a smooth line through the measured ones, clockwise from the middle of the head.

    At each measured point the line runs as the circle through it and its two neighbours does, so that
    points on a circle give the circle, however unevenly they are spread. The origin moves to the middle of
    the line's box; the line starts where it crosses the centre line at the head, and has a point of x = 0
    exactly there and at the throat, nowhere else.
    """
    line = _centred(_spline(_distinct([Point(x, y) for x, y in measured]), pieces))
    if _turns_left(line):
        line = line[::-1]
    close = _SAME * max(point.x for point in line)
    line = _distinct([point for point in line if abs(point.x) > close], close)
    crossings = [
        (start.y + (end.y - start.y) * start.x / (start.x - end.x), index)
        for index, (start, end) in enumerate(zip(line, (*line[1:], line[0]), strict=True))
        if (start.x > 0) != (end.x > 0)
    ]
    (head, start), (throat, end) = max(crossings), min(crossings)
    rest = line[start + 1 :] + line[: start + 1]
    half = (end - start) % len(line)
    return (Point(0.0, head), *rest[:half], Point(0.0, throat), *rest[half:])


def _distinct(points: Sequence[Point], close: float = 0.0) -> list[Point]:
    """The points of a closed line without those that repeat the one before, or come so close to it."""
    return [point for index, point in enumerate(points) if dist(point, points[index - 1]) > close]


def _spline(points: list[Point], pieces: int) -> list[Point]:
    ends = [*points[1:], points[0]]
    step = sum(map(dist, points, ends)) / pieces
    ways = [
        _way(points[index - 1], point, end)
        for index, (point, end) in enumerate(zip(points, ends, strict=True))
    ]
    spans = zip(points, ends, ways, [*ways[1:], ways[0]], strict=True)
    return [point for span in spans for point in _span(*span, ceil(dist(*span[:2]) / step))]


def _way(before: Point, point: Point, after: Point) -> Point:
    """The unit tangent of the circle through three points at the middle one."""
    into, out = point.minus(before), after.minus(point)
    return into.times(out.length / into.length).plus(out.times(into.length / out.length)).unit


def _span(start: Point, end: Point, leaving: Point, arriving: Point, pieces: int) -> list[Point]:
    """Points from `start` up to `end` on a Hermite cubic with such tangents.

    It is as fast at its ends as the usual cubic for an arc of a circle: chord / cos²(turn / 4).
    """
    cosine = leaving.x * arriving.x + leaving.y * arriving.y
    speed = 2 * dist(start, end) / (1 + sqrt(max(1 + cosine, 0.0) / 2))
    line = []
    for piece in range(pieces):
        t = piece / pieces
        rest = 1 - t
        a, c = (1 + 2 * t) * rest * rest, t * t * (3 - 2 * t)
        b, d = t * rest * rest * speed, -t * t * rest * speed
        line.append(
            Point(
                a * start.x + b * leaving.x + c * end.x + d * arriving.x,
                a * start.y + b * leaving.y + c * end.y + d * arriving.y,
            )
        )
    return line


def _centred(line: list[Point]) -> list[Point]:
    xs, ys = [point.x for point in line], [point.y for point in line]
    middle = Point((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)
    return [point.minus(middle) for point in line]


def _turns_left(line: list[Point]) -> bool:
    ends = (*line[1:], line[0])
    return sum(p.x * q.y - q.x * p.y for p, q in zip(line, ends, strict=True)) > 0
