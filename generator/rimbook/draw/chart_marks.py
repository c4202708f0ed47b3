"""The small marks that stand in a chart's lists, as drawings of their own."""

from __future__ import annotations

from collections.abc import Iterable

from rimbook.draw import palette, svg, symbols
from rimbook.draw.svg import Markup

_HALF = 6.5
_RADIUS = 4.2


def mark_drawings(styles: Iterable[str]) -> dict[str, str]:
    """SVG by style: of bores, and `shared`, `tie-off`, `undrilled`."""
    return {style: _drawing(_mark(style)) for style in dict.fromkeys(styles)}


def said(style: str) -> str:
    """What a mark looks like, in a word or two."""
    shapes = {known.style: known.shape for known in (*palette.CLASSES, palette.UNKNOWN)}
    return shapes.get(style) or {"shared": "ring", "tie-off": "knot", "undrilled": "cross"}[style]


def _mark(style: str) -> Markup:
    if style == "tie-off":
        return symbols.knot((-5.0, 0.0), (3.0, 0.0))
    if style == "shared":
        return svg.element(
            "circle",
            r=_RADIUS * symbols.RING * 0.85,
            stroke=palette.TEXT.light,
            stroke_width=1.4,
        )
    return symbols.mark(None, style, _RADIUS)


def _drawing(mark: Markup) -> str:
    return svg.element(
        "svg",
        mark,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"{-_HALF} {-_HALF} {2 * _HALF} {2 * _HALF}",
        fill="none",
    )
