"""How a shelf grows with the service it gives: two lines over the service level, each told by its marks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from rimbook.draw.svg import Markup, Spot, drawing, element, group, path, polyline, segments, text

WIDTH, HEIGHT = 360.0, 246.0
LEFT, RIGHT, TOP, BOTTOM = 34.0, 12.0, 46.0, 40.0
MARK = 3.5


class Point(NamedTuple):
    """Pieces of both shelves at one service level, as the axis names it."""

    level: str
    apart: int
    pooled: int


def shelf_curve(points: Sequence[Point], name: str = "shelf-curve") -> str:
    """The drawing. Levels stand at equal distances, since each costs more than the one before."""
    most = max((max(point.apart, point.pooled) for point in points), default=1) or 1
    step = _step(most)
    top = step * -(-most // step)
    apart = [_spot(at, point.apart, len(points), top) for at, point in enumerate(points)]
    pooled = [_spot(at, point.pooled, len(points), top) for at, point in enumerate(points)]
    grid = [step * line for line in range(top // step + 1)]
    heights = [_spot(0, value, len(points), top)[1] for value in grid]
    return drawing(
        path(segments([((LEFT, y), (WIDTH - RIGHT, y)) for y in heights]), class_="helper", stroke_width=0.6),
        group(
            *(
                text(str(value), LEFT - 6, y + 3.5, text_anchor="end", font_size=10)
                for value, y in zip(grid, heights, strict=True)
            ),
            *(
                text(point.level, x, HEIGHT - BOTTOM + 16, text_anchor="middle", font_size=10)
                for point, (x, _) in zip(points, pooled, strict=True)
            ),
            text("pieces on the full shelf", 4, TOP - 12, font_size=10),
            text(
                "service level, %", (LEFT + WIDTH - RIGHT) / 2, HEIGHT - 6, text_anchor="middle", font_size=10
            ),
        ),
        _line(apart, "cross", round_mark=False),
        _line(pooled, "main", round_mark=True),
        _key(LEFT, "one drawer a part", "cross", round_mark=False),
        _key(LEFT + 140, "fewest drawers", "main", round_mark=True),
        name=name,
        title="Pieces on the full shelf by service level",
        description="; ".join(
            f"{point.level} %: {point.pooled} with the fewest drawers, {point.apart} with one drawer a part"
            for point in points
        ),
        box=(0, 0, WIDTH, HEIGHT),
    )


def _spot(at: int, value: int, count: int, top: int) -> Spot:
    across = (WIDTH - LEFT - RIGHT - 24) / max(1, count - 1)
    return LEFT + 12 + at * across, HEIGHT - BOTTOM - value / top * (HEIGHT - TOP - BOTTOM)


def _line(spots: Sequence[Spot], ink: str, *, round_mark: bool) -> Markup:
    return group(
        path(polyline(spots), class_=ink, stroke_width=1.8, stroke_dasharray=None if round_mark else "5 3"),
        *(_mark(spot, ink, round_mark=round_mark) for spot in spots),
    )


def _mark(spot: Spot, ink: str, *, round_mark: bool) -> Markup:
    x, y = spot
    if round_mark:
        return element("circle", cx=x, cy=y, r=MARK, class_=f"{ink} rim-mark-hollow", stroke_width=1.6)
    return element(
        "rect",
        x=x - MARK,
        y=y - MARK,
        width=2 * MARK,
        height=2 * MARK,
        class_=f"{ink} rim-mark-hollow",
        stroke_width=1.6,
    )


def _key(x: float, words: str, ink: str, *, round_mark: bool) -> Markup:
    return group(
        _line([(x, 12.0), (x + 24, 12.0)], ink, round_mark=round_mark),
        text(words, x + 32, 15.5, font_size=10),
    )


def _step(most: int) -> int:
    """A round distance of lines, so that there are three to six."""
    size = 1
    while True:
        for step in (size, 2 * size, 5 * size):
            if most <= 5 * step:
                return step
        size *= 10
