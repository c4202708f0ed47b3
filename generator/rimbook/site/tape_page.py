"""The page from which a frame's rim tape is printed by the browser, corrected by a length that is typed."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import replace
from functools import partial
from typing import NamedTuple

from markupsafe import Markup

from rimbook.book.model import Catalogue, Frame
from rimbook.draw import tape_words as words
from rimbook.draw.legend import legend
from rimbook.draw.tape import lay
from rimbook.draw.tape_bar import BAR_EDGE_MM, BAR_MM, bar_drawing
from rimbook.draw.tape_drawing import piece_drawing, piece_size_mm
from rimbook.draw.tape_layout import EDGE_MM
from rimbook.draw.tape_pieces import pieces
from rimbook.draw.tape_sheet import LEAST_MEASURED_MM, MOST_MEASURED_MM
from rimbook.rim.place import place
from rimbook.site.links import tape_path
from rimbook.site.pages import Page, to_root
from rimbook.site.summary import Summary
from rimbook.site.templates import render

ROOM_MM = 165.0
"""So long are pieces at most: across A4 and Letter, upright, even where all is drawn a tenth larger."""


class Scaled(NamedTuple):
    """A drawing with its name, and the size at which it is true to scale."""

    label: str
    svg: Markup
    width_mm: float
    height_mm: float


def tape_pages(
    frames: Iterable[Summary], record: Callable[[str], Frame], catalogue: Catalogue
) -> Iterator[Page]:
    """The page of each frame's tape."""
    for frame in frames:
        yield Page(
            path=tape_path(frame.slug),
            kind="tape",
            title=f"{frame.full_name}: rim tape",
            description=f"The rim of {frame.full_name} as a paper tape, true to scale, to print and cut out.",
            make=partial(_body, frame, record, catalogue),
            edit=frame.source,
        )


def _body(frame: Summary, record: Callable[[str], Frame], catalogue: Catalogue) -> str:
    rim = place(record(frame.slug))
    tape = lay(rim, catalogue)
    cut = pieces(tape, ROOM_MM - 2 * EDGE_MM)
    drawn = [
        _sized(
            f"Piece {piece.number} of {piece.count}",
            piece_drawing(tape, piece, name=f"piece-{piece.number}"),
            *piece_size_mm(piece),
        )
        for piece in cut
    ]
    bar = _sized("Proof bar", bar_drawing(), BAR_MM + 2 * BAR_EDGE_MM, 9.0)
    return render(
        "tape.html",
        frame=frame,
        line=words.line_words(tape),
        doubt=words.doubt_words(rim),
        measure=words.MEASURE,
        cut=words.CUT,
        steps=words.use_words(tape),
        source=words.source_words(rim.frame),
        bar=bar,
        pieces=drawn,
        legend=Markup(legend(replace(rim, paths=()), catalogue, drawing="face")),  # noqa: S704
        least=LEAST_MEASURED_MM,
        most=MOST_MEASURED_MM,
        root=to_root(tape_path(frame.slug)),
    )


def _sized(label: str, drawing: str, width_mm: float, height_mm: float) -> Scaled:
    """A drawing with its true size written on it, so that it prints right without any script."""
    size = f'width="{width_mm:.3f}mm" height="{height_mm:.3f}mm"'
    return Scaled(label, Markup(drawing.replace("<svg ", f"<svg {size} ", 1)), width_mm, height_mm)  # noqa: S704
