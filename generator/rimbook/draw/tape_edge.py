"""The words along the upper edge of the rim tape, so that nobody lays it the wrong way round."""

from __future__ import annotations

from collections.abc import Sequence

from rimbook.draw import labels, palette, svg
from rimbook.draw import tape_layout as layout
from rimbook.draw.svg import Markup
from rimbook.draw.tape import Tape
from rimbook.draw.tape_pieces import Piece


def edge_words(tape: Tape, piece: Piece, width: float) -> Markup:
    """Which edge is up, whose tape it is, and where head and throat are."""
    first, last = piece.number == 1, piece.number == piece.count
    throat, head = "middle of throat", "middle of head"
    taken: list[tuple[float, float]] = []
    drawn: list[Markup] = []

    def put(text: str, x: float, anchor: str, *, bold: bool = False) -> None:
        size = labels.text_width(text, layout.SMALL, bold=bold)
        start = x if anchor == "start" else x - size if anchor == "end" else x - size / 2
        taken.append((start - 4, start + size + 4))
        weight = "bold" if bold else None
        drawn.append(svg.text(text, x, layout.WORDS, text_anchor=anchor, font_weight=weight))

    if first:
        put(throat, 4.0, "start", bold=True)
    if last:
        put(throat, width - 4.0, "end", bold=True)
    if piece.start_mm <= tape.head_mm < piece.end_mm:
        half = labels.text_width(head, layout.SMALL, bold=True) / 2 + 4
        at = min(max(layout.units(tape.head_mm - piece.start_mm), half), width - half)
        put(head, at, "middle", bold=True)
    whose = f"{tape.frame.name}, piece {piece.number} of {piece.count}"
    for text, arrow in (("this edge on the face", True), (whose, False)):
        size = labels.text_width(text, layout.SMALL) + (9.0 if arrow else 0.0)
        x = _free(taken, size, width)
        if x is not None:
            if arrow:
                drawn.append(_arrow(x))
            put(text, x + (9.0 if arrow else 0.0), "start")
            taken[-1] = (x - 4, taken[-1][1])
    return svg.layer("edge", *drawn, font_size=layout.SMALL, fill=palette.TEXT.light)


def _free(taken: Sequence[tuple[float, float]], size: float, width: float) -> float | None:
    """Where words of a size find room along the edge, as far left as can be."""
    for x in sorted([8.0, *(end for _, end in taken)]):
        if x + size <= width - 4 and all(x + size <= start or end <= x for start, end in taken):
            return x
    return None


def _arrow(x: float) -> Markup:
    n = svg.number
    return svg.path(
        f"M{n(x)} {n(layout.WORDS)}L{n(x + 3.5)} {n(layout.WORDS - 7)}L{n(x + 7)} {n(layout.WORDS)}Z",
        class_="arrow",
        fill=palette.TEXT.light,
    )
