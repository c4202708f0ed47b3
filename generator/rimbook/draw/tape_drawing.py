"""A piece of the rim tape as SVG, four units to a millimetre."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import ceil, floor

from rimbook.book.model import Address
from rimbook.draw import bands, labels, palette, svg, symbols
from rimbook.draw import tape_layout as layout
from rimbook.draw.svg import Markup, Spot
from rimbook.draw.tape import Mark, Span, Tape
from rimbook.draw.tape_edge import edge_words
from rimbook.draw.tape_joins import joins
from rimbook.draw.tape_pieces import Piece
from rimbook.draw.words import bore_words


def piece_drawing(tape: Tape, piece: Piece, *, name: str) -> str:
    """One piece as SVG text, of the size that `piece_size_mm` says. Every id in it starts with `name`."""
    width = layout.units(piece.end_mm - piece.start_mm)
    reach = layout.units(piece.tab_mm)
    shown = [mark for mark in tape.marks if piece.start_mm <= mark.at_mm <= piece.end_mm]
    spots = {mark.hole.address: layout.units(mark.at_mm - piece.start_mm) for mark in shown}
    edge = layout.units(layout.EDGE_MM)
    return svg.drawing(
        symbols.marks(name, tape.frame, layout.RADIUS),
        _outline(width, reach),
        _scale(tape, piece),
        _ends(tape, piece, width),
        _ticks(shown, piece),
        _parts(tape.spans, piece, width),
        _marks(name, shown, spots),
        _rows(
            "addresses",
            [(spots[mark.hole.address], str(mark.hole.address)) for mark in shown],
            layout.ADDRESSES,
        ),
        _rows(
            "bore-numbers",
            [(spots[m.hole.address], bore_words(m.hole.bore_mm)) for m in shown if m.hole.drilled],
            layout.BORES,
        ),
        joins(piece, width),
        edge_words(tape, piece, width),
        name=name,
        title=f"{tape.frame.name}: rim tape, piece {piece.number} of {piece.count}",
        description=", ".join(_said(mark) for mark in shown),
        box=(-edge, -edge, width + reach + 2 * edge, layout.HEIGHT + 2 * edge),
    )


def piece_size_mm(piece: Piece) -> tuple[float, float]:
    """Width and height (mm) at which a piece's drawing is true to scale."""
    return (
        piece.end_mm - piece.start_mm + piece.tab_mm + 2 * layout.EDGE_MM,
        layout.HEIGHT_MM + 2 * layout.EDGE_MM,
    )


def _outline(width: float, reach: float) -> Markup:
    """Where to cut, and the hatched tab for the glue."""
    step = 10
    lines = [
        ((x, layout.HEIGHT), (x + 8, 0.0))
        for x in range(ceil(width / step) * step, int(width + reach - 8), step)
    ]
    return svg.layer(
        "cut",
        svg.path(svg.segments(lines), class_="hatch", stroke=palette.EDGE.light, stroke_width=0.5),
        svg.path(
            layout.box(0, 0, width + reach, layout.HEIGHT),
            class_="wall",
            stroke=palette.TEXT.light,
            stroke_width=0.8,
        ),
    )


def _scale(tape: Tape, piece: Piece) -> Markup:
    """Millimetres from the middle of the head both ways, along the lower edge."""
    first = ceil((piece.start_mm - tape.head_mm) / 10)
    last = floor((piece.end_mm - tape.head_mm) / 10)
    tens = {
        step * 10: layout.units(tape.head_mm + step * 10 - piece.start_mm) for step in range(first, last + 1)
    }
    room = layout.units(piece.end_mm - piece.start_mm) - 14
    return svg.layer(
        "scale",
        svg.path(
            layout.upright((x for mm, x in tens.items() if mm % 50), layout.HEIGHT - 4, layout.HEIGHT)
            + layout.upright((x for mm, x in tens.items() if mm % 50 == 0), layout.HEIGHT - 7, layout.HEIGHT),
            class_="tick",
            stroke=palette.TEXT.light,
            stroke_width=0.6,
        ),
        *[
            svg.text(str(abs(mm)), x, layout.NUMBERS)
            for mm, x in tens.items()
            if mm % 50 == 0 and 26 < x < room
        ],
        font_size=layout.SMALL,
        text_anchor="middle",
        fill=palette.QUIET.light,
    )


def _ends(tape: Tape, piece: Piece, width: float) -> Markup:
    """The line on which the holes stand, and the middles of the head and of the throat."""
    middles = []
    if piece.start_mm <= tape.head_mm < piece.end_mm:
        middles.append(layout.units(tape.head_mm - piece.start_mm))
    throats = [*([0.0] if piece.number == 1 else []), *([width] if piece.number == piece.count else [])]
    return svg.layer(
        "middles",
        svg.path(
            f"M0 {layout.MIDDLE:g}H{svg.number(width + layout.units(piece.tab_mm))}",
            class_="axis",
            stroke=palette.EDGE.light,
            stroke_width=0.6,
            stroke_dasharray="8 2 2 2",
        ),
        svg.path(
            layout.upright(middles, 12.0, 84.0)
            + layout.upright(middles, layout.HEIGHT - 6, layout.HEIGHT)
            + layout.upright(throats, 0.0, layout.HEIGHT),
            class_="wall",
            stroke=palette.TEXT.light,
            stroke_width=1.8,
        ),
    )


def _ticks(shown: Sequence[Mark], piece: Piece) -> Markup:
    """A line through each hole: whole where its place is measured, broken where it is worked out."""

    def lines(known: str) -> str:
        places = (layout.units(mark.at_mm - piece.start_mm) for mark in shown if mark.known == known)
        return layout.upright(places, *layout.TICK)

    ink = palette.TEXT.light
    return svg.layer(
        "places",
        svg.path(lines("measured"), class_="wall", stroke=ink, stroke_width=0.8),
        svg.path(lines("derived"), class_="wall", stroke=ink, stroke_width=0.8, stroke_dasharray="2.2 1.6"),
    )


def _parts(spans: Sequence[Span], piece: Piece, width: float) -> Markup:
    """Strips as bands and two-post parts as brackets, each with its letter."""
    drawn: list[Markup] = []
    for span in spans:
        start = max(layout.units(span.start_mm - piece.start_mm), 0.0)
        end = min(layout.units(span.end_mm - piece.start_mm), width)
        if end - start < 1:
            continue
        ends = (
            span.ends[0] and span.start_mm >= piece.start_mm,
            span.ends[1] and span.end_mm <= piece.end_mm,
        )
        drawn.append(
            _staple(span.kind, start, end, ends) if span.is_twin else _strip(span.kind, start, end, ends)
        )
        room = end - start + (24.0 if span.is_twin else -2.0)
        words = f"{span.letter} {span.name}".strip()
        if labels.text_width(words, layout.SMALL, bold=True) > room:
            words = span.letter
        half = labels.text_width(words, layout.SMALL, bold=True) / 2 + 2
        middle = min(max((start + end) / 2, half), width - half)
        drawn.append(svg.text(words, middle, layout.LETTERS))
    return svg.layer(
        "parts",
        *drawn,
        stroke_linejoin="round",
        font_size=layout.SMALL,
        font_weight="bold",
        text_anchor="middle",
        fill=palette.TEXT.light,
    )


def _strip(kind: str, start: float, end: float, ends: tuple[bool, bool]) -> Markup:
    """A band with caps where the strip ends, none where a join or the throat cuts it."""
    caps = [x for x, is_end in zip((start, end), ends, strict=True) if is_end]
    return svg.group(
        bands.strip_band([(start, layout.SPANS), (end, layout.SPANS)], kind),
        bands.caps([((x, layout.SPANS - 4), (x, layout.SPANS + 4)) for x in caps]),
        fill="none",
    )


def _staple(kind: str, start: float, end: float, ends: tuple[bool, bool]) -> Markup:
    """A bracket below its holes, its legs as unequal as the posts; open where it is cut in two."""
    spots: list[Spot] = [(start, layout.SPANS + 3), (end, layout.SPANS + 3)]
    if ends[0]:
        spots.insert(0, (start, layout.SPANS - (6 if kind == "twin-long-first" else 2)))
    if ends[1]:
        spots.append((end, layout.SPANS - (6 if kind == "twin-long-last" else 2)))
    return svg.group(bands.staple(spots, kind), fill="none")


def _marks(name: str, shown: Sequence[Mark], spots: Mapping[Address, float]) -> Markup:
    drawn = []
    for mark in shown:
        x = spots[mark.hole.address]
        drawn.append(svg.element("use", href=f"#{name}-{symbols.mark_name(mark.hole)}", x=x, y=layout.MIDDLE))
        if mark.hole.tie_off:
            drawn.append(
                symbols.knot((x, layout.MIDDLE + symbols.RING * layout.RADIUS), (x, layout.TICK[1] - 2))
            )
    return svg.layer("bores", *drawn, stroke_linejoin="round")


def _rows(name: str, words: Sequence[tuple[float, str]], baselines: tuple[float, ...]) -> Markup:
    """Words centred on their holes, in the first row where they do not touch the ones before."""
    ends = [float("-inf")] * len(baselines)
    drawn = []
    for x, text in words:
        half = labels.text_width(text, layout.FONT, bold=True) / 2
        row = next((row for row, end in enumerate(ends) if end <= x - half), ends.index(min(ends)))
        ends[row] = x + half
        drawn.append(svg.text(text, x, baselines[row]))
    weight = "bold" if name == "addresses" else None
    return svg.layer(
        name,
        *drawn,
        font_size=layout.FONT,
        font_weight=weight,
        text_anchor="middle",
        fill=palette.TEXT.light,
    )


def _said(mark: Mark) -> str:
    return f"{mark.hole.address} at {mark.at_mm:.1f} mm"
