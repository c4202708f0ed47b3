"""The marks of a drawing, each drawn once and used by name."""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import cache, lru_cache
from typing import NamedTuple

from rimbook.book.model import Frame, Hole
from rimbook.draw import palette, svg, words
from rimbook.draw.palette import BoreClass
from rimbook.draw.svg import Markup, Spot
from rimbook.rim.once import once

RING = 1.5
"""Radius of the ring round a shared hole, in symbol radii."""

_BY_STYLE = {known.style: known for known in palette.ALL}
_NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)")
_QUESTION = "M-.4-.28C-.4-.95 .5-.85 .36-.2C.3 .08 0 .05 0 .36"


def mark_name(hole: Hole) -> str:
    """The name of the mark of one place: its bore class, and whether two strings pass."""
    if not hole.drilled:
        return "undrilled"
    name = palette.bore_style(hole.bore_mm)
    return f"{name}-shared" if hole.shared else name


def spread(hole: Hole) -> float:
    """How far the mark of a place reaches from its middle, in symbol radii."""
    return 0.5 if not hole.drilled else RING if hole.shared else 1.1


def style_names(hole: Hole) -> str:
    """The classes by which a page can reach a hole."""
    if not hole.drilled:
        return "place undrilled"
    names = f"hole {palette.bore_style(hole.bore_mm)}"
    if hole.shared:
        names += " shared"
    if hole.tie_off:
        names += " tie-off"
    if hole.twin is not None:
        names += " twin"
    if hole.strip is not None:
        names += " strip"
    return names if hole.passes else f"{names} unstrung"


def marks(prefix: str, frame: Frame, radius: float, reach: tuple[float, float] | None = None) -> Markup:
    """Definitions of every mark that a frame needs, and no other, in the order of the classes.

    `reach` is half the width and half the height of the area that answers a finger.
    """
    names = sorted({place.mark for place in _places(frame)})
    drawn = [mark(f"{prefix}-{name}", name, radius, reach) for name in names]
    return svg.element("defs", *drawn) if drawn else svg.NOTHING


def holes(name: str, frame: Frame, spots: Sequence[Spot]) -> Markup:
    """All places at their spots. Each can be reached by keyboard and reads itself out.

    Only the first is in the tab order: a page moves on from it with the arrow keys.
    """
    name = svg.escape(name)
    uses = [
        f'<use href="#{name}-{mark}" id="{name}-{address}" class="{styles}" '
        f'x="{svg.number(x)}" y="{svg.number(y)}" role="img" tabindex="{-1 if index else 0}" '
        f'data-address="{address}" aria-label="{spoken}"/>'
        for index, ((address, mark, styles, spoken), (x, y)) in enumerate(
            zip(_places(frame), spots, strict=True)
        )
    ]
    return svg.layer(
        "bores",
        Markup("".join(uses)),
        role="group",
        aria_label="Holes along the walk",
        stroke_linejoin="round",
    )


class _Place(NamedTuple):
    """What every drawing says of a place: its address, its mark, its classes, and what reads it out."""

    address: str
    mark: str
    styles: str
    spoken: str


@once
def _places(frame: Frame) -> list[_Place]:
    spoken = svg.escaped([words.hole_words(frame, hole) for hole in frame.holes])
    return [
        _Place(str(hole.address), mark_name(hole), style_names(hole), said)
        for hole, said in zip(frame.holes, spoken, strict=True)
    ]


@lru_cache(maxsize=1 << 9)
def mark(ident: str | None, name: str, radius: float, reach: tuple[float, float] | None = None) -> Markup:
    """One mark round the origin, as a group."""
    area = svg.NOTHING
    if reach:
        area = svg.element(
            "rect",
            x=-reach[0],
            y=-reach[1],
            width=2 * reach[0],
            height=2 * reach[1],
            class_="reach",
            pointer_events="all",
        )
    if name == "undrilled":
        return svg.element("g", area, _undrilled(radius), id=ident)
    known = _BY_STYLE[name.removesuffix("-shared")]
    ring = (
        svg.element(
            "circle",
            r=radius * RING,
            class_="rim-mark-ring",
            fill=palette.PAGE.light,
            stroke=palette.TEXT.light,
            stroke_width=max(1.0, radius * 0.3),
        )
        if name.endswith("-shared")
        else svg.NOTHING
    )
    return svg.element("g", area, ring, _shape(known, radius), id=ident)


def _shape(known: BoreClass, radius: float) -> Markup:
    if known is palette.UNKNOWN:
        return svg.group(
            svg.element(
                "circle",
                r=radius,
                stroke_dasharray=f"{svg.number(radius * 0.5)} {svg.number(radius * 0.285)}",
                fill=palette.PAGE.light,
                class_="rim-mark-hollow",
            ),
            svg.path(scaled(_QUESTION, radius * 0.9)),
            svg.path(scaled("M0 .72V.74", radius * 0.9), stroke_linecap="round"),
            class_="rim-mark-unknown",
            stroke=known.light,
            stroke_width=max(0.9, radius * 0.24),
        )
    return svg.path(scaled(known.outline, radius), class_=f"rim-mark {known.style}", fill=known.light)


def knot(hole: Spot, end: Spot) -> Markup:
    """A tie-off: the end of the string from its hole to a knot inside the head."""
    return svg.group(
        svg.path(svg.polyline([hole, end]), class_="knot-end", stroke=palette.TEXT.light, stroke_width=1.4),
        svg.element("circle", cx=end[0], cy=end[1], r=2.4, class_="knot", fill=palette.TEXT.light),
        class_="tie-off-mark",
    )


def _undrilled(radius: float) -> Markup:
    arm = svg.number(radius * 0.5)
    return svg.path(
        f"M-{arm}-{arm}L{arm} {arm}M-{arm} {arm}L{arm}-{arm}",
        class_="rim-mark-undrilled",
        stroke=palette.QUIET.light,
        stroke_width=0.9,
    )


def scaled(outline: str, factor: float) -> str:
    """Path data with every length multiplied."""
    return "".join(
        [piece if isinstance(piece, str) else svg.number(piece * factor) for piece in _pieces(outline)]
    )


@cache
def _pieces(outline: str) -> tuple[str | float, ...]:
    """Path data as lengths and what stands between them, the flags of arcs among it: they are no lengths."""
    pieces: list[str | float] = []
    for command in re.findall(r"[A-Za-z][^A-Za-z]*", outline):
        letter = command[0]
        pieces.append(letter)
        for index, value in enumerate(_NUMBER.findall(command)):
            if index:
                pieces.append(" ")
            pieces.append(value if letter == "A" and index % 7 in (2, 3, 4) else float(value))
    return tuple(pieces)
