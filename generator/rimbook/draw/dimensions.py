"""Dimension lines: arrows between helper lines, with a number beside them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from rimbook.draw import palette, svg
from rimbook.draw.svg import Markup, Spot

FONT = 10.0

_HOLDS_ARROWS = 14.0
"""The least length of a line whose arrow heads stand within it."""

_ARROW, _HALF_ARROW = 5.0, 1.6
_BEYOND = 2.0


@dataclass(frozen=True, slots=True)
class Dimension:
    """A size: the line from end to end, what it is measured from, and its words where they start or end."""

    line: tuple[Spot, Spot]
    helpers: tuple[tuple[Spot, Spot], ...]
    words: str
    at: Spot
    anchor: str | None = None


def across(left: float, right: float, y: float, from_y: float, words: str) -> Dimension:
    """A width, measured at `from_y` and written to the right of its line at `y`."""
    beyond = _BEYOND if y > from_y else -_BEYOND
    helpers = tuple(((x, from_y), (x, y + beyond)) for x in (left, right))
    gap = 5.0 if right - left > _HOLDS_ARROWS else 5.0 + _ARROW
    return Dimension(((left, y), (right, y)), helpers, words, (right + gap, y + FONT * 0.35))


def down(top: float, bottom: float, x: float, from_x: float, words: str) -> Dimension:
    """A height, measured at `from_x` and written on the far side of its line at `x`."""
    away = 1 if x > from_x else -1
    helpers = tuple(((from_x, y), (x + away * _BEYOND, y)) for y in (top, bottom))
    at = (x + away * 4, (top + bottom) / 2 + FONT * 0.35)
    return Dimension(((x, top), (x, bottom)), helpers, words, at, None if away > 0 else "end")


def drawn(sizes: Sequence[Dimension]) -> Markup:
    """All dimensions as a layer."""
    helpers = svg.segments(helper for size in sizes for helper in size.helpers)
    lines = svg.segments(size.line for size in sizes)
    arrows = "".join(_arrows(size.line) for size in sizes)
    return svg.layer(
        "sizes",
        svg.path(helpers, class_="helper", stroke=palette.EDGE.light, stroke_width=0.6),
        svg.path(lines, class_="dimension", stroke=palette.TEXT.light, stroke_width=0.8),
        svg.path(arrows, class_="arrow", fill=palette.TEXT.light),
        *[svg.text(size.words, *size.at, text_anchor=size.anchor, fill=palette.TEXT.light) for size in sizes],
        font_size=FONT,
    )


def _arrows(line: tuple[Spot, Spot]) -> str:
    """Heads at both ends, pointing in from outside where the line is too short to hold them."""
    (ax, ay), (bx, by) = line
    length = ((bx - ax) ** 2 + (by - ay) ** 2) ** 0.5 or 1.0
    ux, uy = (bx - ax) / length, (by - ay) / length
    side = 1 if length > _HOLDS_ARROWS else -1
    heads = []
    for (x, y), turn in (((ax, ay), side), ((bx, by), -side)):
        back_x, back_y = x + ux * _ARROW * turn, y + uy * _ARROW * turn
        wing_x, wing_y = -uy * _HALF_ARROW, ux * _HALF_ARROW
        heads.append(
            svg.polyline(
                [(x, y), (back_x + wing_x, back_y + wing_y), (back_x - wing_x, back_y - wing_y)], closed=True
            )
        )
    return "".join(heads)
