"""The key to the drawings of one frame: every symbol that occurs there, and no other."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from rimbook.book.model import Catalogue, Frame
from rimbook.draw import bands, labels, palette, svg, symbols
from rimbook.draw.key import Key, key
from rimbook.draw.svg import Markup
from rimbook.draw.words import bore_words
from rimbook.rim.types import Rim

WIDTH = 360.0
FONT = 10.0
ROW = 17.0
_RADIUS = 4.2
_SYMBOL, _WORDS = 16.0, 36.0

Drawing = Literal["face", "unrolled", "both"]


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of a legend: what it explains, in words, and how it is drawn round a spot."""

    symbol: str
    words: str
    draw: Callable[[float, float], Markup]


def legend(rim: Rim, catalogue: Catalogue, *, drawing: Drawing = "both", name: str = "legend") -> str:
    """The legend as SVG text. Every id in it starts with `name`."""
    entries = legend_entries(rim, catalogue, drawing=drawing)
    rows = []
    for index, entry in enumerate(entries):
        y = ROW * (index + 0.7)
        rows.append(
            svg.element(
                "g",
                entry.draw(_SYMBOL, y),
                svg.text(
                    labels.shortened(entry.words, FONT, WIDTH - _WORDS - 4),
                    _WORDS,
                    y + FONT * 0.36,
                    fill=palette.TEXT.light,
                ),
                class_="entry",
                data_symbol=entry.symbol,
            )
        )
    return svg.drawing(
        svg.layer("legend", *rows, font_size=FONT),
        name=name,
        title=f"{rim.frame.name}: what the signs mean",
        description=" ".join(f"{entry.words}." for entry in entries),
        box=(0.0, 0.0, WIDTH, ROW * len(entries) + 6),
    )


def legend_entries(rim: Rim, catalogue: Catalogue, *, drawing: Drawing = "both") -> tuple[Entry, ...]:
    """The lines of the legend, in the order in which a reader needs them."""
    frame, known = rim.frame, key(rim.frame, catalogue)
    return (*_bores(known), *_marks(frame, known), *_parts(known, drawing), *_strings(rim, drawing))


def _bores(known: Key) -> list[Entry]:
    entries = []
    for bores in known.bores:
        sizes = [
            (_size(bore), f"{count} {'hole' if count == 1 else 'holes'}") for bore, count in bores.counts
        ]
        style = bores.known.style
        entries.append(Entry(style, "; ".join(f"{size}: {holes}" for size, holes in sizes), _mark(style)))
    return entries


def _size(bore_mm: float | None) -> str:
    return "bore unknown" if bore_mm is None else f"bore {bore_words(bore_mm)} mm"


def _mark(style: str) -> Callable[[float, float], Markup]:
    def draw(x: float, y: float) -> Markup:
        return svg.group(
            symbols.mark(None, style, _RADIUS), transform=f"translate({svg.number(x)} {svg.number(y)})"
        )

    return draw


def _marks(frame: Frame, known: Key) -> list[Entry]:
    entries = []
    if known.shared:
        entries.append(Entry("shared", "ring: shared hole, two strings pass", _ring))
    if known.tie_offs:
        entries.append(Entry("tie-off", "tie-off", _knot))
    if known.undrilled:
        entries.append(Entry("undrilled", "not drilled", _mark("undrilled")))
    return entries


def _ring(x: float, y: float) -> Markup:
    return svg.element(
        "circle",
        cx=x,
        cy=y,
        r=_RADIUS * symbols.RING,
        class_="rim-mark-ring",
        stroke=palette.TEXT.light,
        stroke_width=1.3,
    )


def _knot(x: float, y: float) -> Markup:
    return symbols.knot((x - 8, y), (x + 4, y))


def _parts(known: Key, drawing: Drawing) -> list[Entry]:
    entries = []
    kinds = {"twin-uneven" if part.kind.startswith("twin-long") else part.kind for part in known.parts}
    if known.unknown_part:
        kinds.add("loose")
    for kind, words in _KINDS.items():
        if kind in kinds and (kind != "loose" or drawing != "face"):
            entries.append(Entry(kind, words, _sample(kind)))
    entries += [
        Entry(f"letter-{part.letter}", f"{part.count} × {part.called}", _letter(part.letter))
        for part in known.parts
        if part.kind != "loose" or drawing != "face"
    ]
    if known.unknown_part and drawing != "face":
        entries.append(Entry("letter-?", "part unknown", _letter("?")))
    return entries


_KINDS = {
    "loose": "parts with one post, alike as far as the line goes",
    "twin-even": "two-post part, equal posts",
    "twin-uneven": "two-post part: the longer leg is the longer post",
    "twin-unsaid": "two-post part, lengths unknown",
    "strip": "strip",
    "bumper": "bumper strip",
    "strip-unknown": "strip, part unknown",
}


def _letter(letter: str) -> Callable[[float, float], Markup]:
    def draw(x: float, y: float) -> Markup:
        return svg.text(
            letter,
            x,
            y + FONT * 0.36,
            class_="part-letter",
            font_weight="bold",
            text_anchor="middle",
            fill=palette.TEXT.light,
        )

    return draw


def _sample(kind: str) -> Callable[[float, float], Markup]:
    def draw(x: float, y: float) -> Markup:
        ends = [(x - 9, y), (x + 9, y)]
        if kind == "loose":
            return svg.path(
                svg.polyline(ends), class_="part-run", stroke=palette.EDGE.light, stroke_width=1.4
            )
        if kind.startswith("twin"):
            longer = 6.0 if kind == "twin-uneven" else 2.0
            return bands.staple([(x - 5, y + 2), (x - 5, y - 4), (x + 5, y - 4), (x + 5, y + longer)], kind)
        return svg.group(
            bands.strip_band(ends, kind),
            bands.caps([((x + side, y - 4), (x + side, y + 4)) for side in (-9, 9)]),
        )

    return draw


def _strings(rim: Rim, drawing: Drawing) -> list[Entry]:
    if not rim.paths:
        return []
    lines = [("main", "main", palette.MAIN.light), ("cross", "cross", palette.CROSS.light)]
    entries = []
    for style, words, ink in lines:

        def draw(x: float, y: float, style: str = style, ink: str = ink) -> Markup:
            return svg.path(
                svg.polyline([(x - 9, y), (x + 9, y)]), class_=style, stroke=ink, stroke_width=1.3
            )

        entries.append(Entry(style, words, draw))
    return entries
