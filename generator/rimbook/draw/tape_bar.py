"""The proof bar: whoever measures it knows whether the printer keeps to scale."""

from __future__ import annotations

from rimbook.draw import palette, svg
from rimbook.draw import tape_layout as layout

BAR_MM = 100.0
"""The length of the proof bar."""
BAR_EDGE_MM = 3.0
"""Room beside the bar for its numbers."""


def bar_drawing(*, name: str = "tape-bar") -> str:
    """The proof bar, 100 mm from end to end, in a drawing 106 mm wide and 9 mm high."""
    tenth, end = layout.units(BAR_MM / 10), svg.number(layout.units(BAR_MM) - 0.3)
    black = "".join(layout.box(index * tenth, 12.0 + 6 * (index % 2), tenth, 6.0) for index in range(10))
    numbers = [svg.text(str(step), step * layout.PER_MM, 8.0) for step in range(0, 101, 50)]
    return svg.drawing(
        svg.path(black, class_="bar-black", fill=palette.TEXT.light),
        svg.path(
            f"M.3 10V27M{end} 10V27M.3 12.3H{end}M.3 23.7H{end}",
            class_="wall",
            stroke=palette.TEXT.light,
            stroke_width=0.6,
        ),
        svg.group(*numbers, font_size=layout.SMALL, text_anchor="middle", fill=palette.TEXT.light),
        name=name,
        title="Proof bar",
        description="100 mm from end to end",
        box=(-layout.units(BAR_EDGE_MM), 0.0, layout.units(BAR_MM + 2 * BAR_EDGE_MM), layout.units(9.0)),
    )
