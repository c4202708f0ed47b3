"""Where one piece of the rim tape is glued on another: line, tab, targets and letter."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.draw import palette, svg
from rimbook.draw import tape_layout as layout
from rimbook.draw.svg import Markup
from rimbook.draw.tape_pieces import TAB_MM, Piece

_TARGET = 5.0


def joins(piece: Piece, width: float) -> Markup:
    """Targets on each join: whole before the tab, half on the edge that is laid on it. And its letter."""
    drawn: list[Markup] = []
    if piece.number < piece.count:
        drawn += [_upright_line(width), *_targets(width, whole=True)]
        drawn.append(_letter(width + layout.units(TAB_MM / 2), f"glue {_join(piece.number)}"))
    if piece.number > 1:
        drawn += _targets(0.0, whole=False)
        drawn.append(
            svg.text(
                _join(piece.number - 1),
                11.0,
                layout.TARGETS[1] + 3,
                font_size=layout.SMALL,
                fill=palette.TEXT.light,
            )
        )
    return svg.layer("joins", *drawn)


def _join(number: int) -> str:
    """The letter of the join after a piece."""
    return chr(ord("A") + (number - 1) % 26)


def _upright_line(x: float) -> Markup:
    return svg.path(
        layout.upright([x], 0.0, layout.HEIGHT), class_="wall", stroke=palette.TEXT.light, stroke_width=0.5
    )


def _letter(x: float, words: str) -> Markup:
    return svg.text(
        words,
        0.0,
        0.0,
        transform=f"translate({svg.number(x + 3)} {svg.number(layout.MIDDLE)}) rotate(-90)",
        font_size=layout.FONT,
        font_weight="bold",
        text_anchor="middle",
        fill=palette.TEXT.light,
    )


def _targets(x: float, *, whole: bool) -> Iterator[Markup]:
    """A cross in a circle on the join, above and below the holes: its right half alone on the cut edge."""
    n, r = svg.number, _TARGET
    for y in layout.TARGETS:
        circle = f"M{n(x)} {n(y - r)}a{r:g} {r:g} 0 0 1 0 {n(2 * r)}"
        if whole:
            circle += f"a{r:g} {r:g} 0 0 1 0 {n(-2 * r)}"
        left = x - 1.6 * r if whole else x
        line = f"M{n(left)} {n(y)}H{n(x + 1.6 * r)}"
        yield svg.path(circle + line, class_="wall", stroke=palette.TEXT.light, stroke_width=0.5)
