"""The rim tape on sheets of paper, as a PDF true to scale."""

from __future__ import annotations

from dataclasses import replace
from math import isfinite
from pathlib import Path

from rimbook.book.model import Catalogue
from rimbook.draw import glyphs
from rimbook.draw import tape_words as words
from rimbook.draw.labels import shortened
from rimbook.draw.legend import legend
from rimbook.draw.paper import PAPERS, Paper
from rimbook.draw.tape import Tape, lay
from rimbook.draw.tape_bar import BAR_EDGE_MM, BAR_MM, bar_drawing
from rimbook.draw.tape_drawing import piece_drawing, piece_size_mm
from rimbook.draw.tape_layout import EDGE_MM
from rimbook.draw.tape_pieces import Piece, pieces
from rimbook.draw.typeset import FONT, document, families, font_folder, literal, typeset
from rimbook.rim.types import Rim

MARGIN_MM = 12.0
"""No printer leaves more than this white of itself (common practice, no published source)."""
LEAST_MEASURED_MM, MOST_MEASURED_MM = 90.0, 110.0
"""What the proof bar may have measured: a printer that is off by more fits the page to its paper."""

_NARROW_MM = 250.0
_HEADS_MM = (37.0, 47.0)
"""Room for what every sheet carries, on a wide sheet and on one narrower than that."""

_POINT_MM = 25.4 / 72
_LEGEND_MM = 360 / 4
"""The width at which a legend has the marks as large as on the tape."""


def tape_pdf(
    rim: Rim,
    catalogue: Catalogue,
    *,
    paper: Paper = PAPERS["A4"],
    measured_mm: float = BAR_MM,
    outside_mm: float | None = None,
    fonts: tuple[Path, ...] = (),
) -> bytes:
    """The tape of a frame on sheets of this paper, laid across.

    `measured_mm` is what the 100 mm of the proof bar measured on a first print. `outside_mm` is how far
    outside the line of the holes the tape is to lie; None is inside the head, on that line. Raises
    ValueError for a number that cannot be, and TooNarrow, which is one, for a paper that is too small.
    """
    if not (isfinite(measured_mm) and LEAST_MEASURED_MM <= measured_mm <= MOST_MEASURED_MM):
        raise ValueError(
            f"A bar of {measured_mm:g} mm cannot be put right; expected {LEAST_MEASURED_MM:g} to "
            f"{MOST_MEASURED_MM:g} mm. Print at 100 % first, never fitted to the page."
        )
    scale = BAR_MM / measured_mm
    tape = lay(rim, catalogue, outside_mm=outside_mm)
    sheet = paper.turned(landscape=True)
    cut = pieces(tape, (sheet.width_mm - 2 * MARGIN_MM) / scale - 2 * EDGE_MM)
    files = {
        f"piece-{piece.number}": piece_drawing(tape, piece, name=f"piece-{piece.number}") for piece in cut
    }
    files["bar"] = bar_drawing()
    # A tape shows no strings.
    files["legend"] = legend(replace(rim, paths=()), catalogue, drawing="face")
    body = "\n".join([_page(rim, sheet, scale, measured_mm), _words(rim, tape), *_rows(tape, cut, scale)])
    known, more = glyphs.printable((font_folder(), *fonts)), families(fonts)
    letters = ", ".join((FONT, *more))
    return typeset(
        glyphs.replaced(document(words.title(rim.frame), body, families=more), known),
        {
            name: glyphs.replaced(drawing.replace("sans-serif", letters, 1), known).encode()
            for name, drawing in files.items()
        },
        fonts=fonts,
    )


def _picture(name: str, width_mm: float, alt: str) -> str:
    return (
        f'image(bytes(sys.inputs.at("{name}")), format: "svg", width: {width_mm:.4f}mm, alt: {literal(alt)})'
    )


def _page(rim: Rim, sheet: Paper, scale: float, measured_mm: float) -> str:
    """The page with what every sheet carries: title, proof bar, and the box to measure it."""
    frame = rim.frame
    bar = _picture("bar", (BAR_MM + 2 * BAR_EDGE_MM) * scale, "Proof bar of 100 mm")
    steps = "\n        ".join(f"box(text({literal(each)}))" for each in words.bar_words(frame, measured_mm))
    title = shortened(words.title(frame), 15 * _POINT_MM, sheet.width_mm - 100)
    maker = f"{shortened(frame.maker, 9 * _POINT_MM, 40)}, {frame.sport}"
    heads = _HEADS_MM[sheet.width_mm < _NARROW_MM]
    count = "context [sheet #counter(page).display() of #counter(page).final().first()]"
    return f"""\
#set page(width: {sheet.width_mm}mm, height: {sheet.height_mm}mm,
  margin: (x: {MARGIN_MM}mm, top: {heads}mm, bottom: 13mm),
  header-ascent: 3mm, footer-descent: 2mm,
  header: [
    #set text(size: 9pt)
    #grid(columns: (auto, 1fr, auto), column-gutter: 4mm, align: bottom,
      text(size: 15pt, weight: "bold", {literal(title)}),
      text({literal(maker)}), {count})
    #grid(columns: (auto, 1fr), column-gutter: 5mm, align: horizon,
      move(dx: -{BAR_EDGE_MM - EDGE_MM}mm, {bar}),
      rect(width: 100%, stroke: 0.8pt, inset: 2mm, {{
        set text(size: 8.5pt)
        strong[Measure this. ]
        text({literal(words.MEASURE + " ")})
        {steps}
        h(1fr)
        box[I measured #box(width: 16mm, stroke: (bottom: 0.5pt)) mm.]
      }}))
  ],
  footer: text(size: 8pt, {literal(words.source_words(frame))}))
#set text(size: 9pt)
#set par(leading: 0.45em, spacing: 0.6em)"""


def _words(rim: Rim, tape: Tape) -> str:
    """How the tape is used and what its signs mean, side by side above the pieces."""
    steps = ", ".join(f"[#text({literal(step)})]" for step in words.use_words(tape))
    alt = "What the signs mean"
    return f"""\
#grid(columns: (1fr, {_LEGEND_MM}mm), column-gutter: 6mm,
  [
    #strong[#text({literal(words.line_words(tape))})]

    #text({literal(words.doubt_words(rim))})

    #strong[#text({literal(words.CUT)})]

    #enum(tight: true, {steps})
  ],
  {_picture("legend", _LEGEND_MM, alt)})
#v(1mm)"""


def _rows(tape: Tape, cut: tuple[Piece, ...], scale: float) -> list[str]:
    rows = []
    for piece in cut:
        alt = f"Rim tape of {tape.frame.name}, piece {piece.number} of {piece.count}"
        width = piece_size_mm(piece)[0] * scale
        rows.append(
            f"#block(breakable: false, spacing: 2mm, {_picture(f'piece-{piece.number}', width, alt)})"
        )
    return rows
