"""Labels for the drawers of parts, on sheets of labels, as a PDF."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import NamedTuple

from rimbook.book.model import Catalogue, LabelSheet, Part
from rimbook.draw import glyphs
from rimbook.draw.labels import shortened, text_width
from rimbook.draw.labels_grid import Cell, cells
from rimbook.draw.labels_words import level_line, paired, served_lines, size_lines
from rimbook.draw.paper import PAPERS
from rimbook.draw.qr import qr
from rimbook.draw.section import bare_section
from rimbook.draw.typeset import document, families, font_folder, literal, typeset

PAD_MM = 2.5
"""White round the words: printers place a sheet no better than to a millimetre or two (common practice)."""
LEAST_MODULE_MM = 0.25
"""A code with smaller squares is left out: few cameras read it (from memory)."""
_MOST_CODE_MM = 26.0
_LEAST_SECTION_MM = 5.0

_POINT_MM = 25.4 / 72
_SMALLEST_PT, _LARGEST_PT, _PT_PER_MM = 6.5, 11.0, 0.21
_LEADING = 1.22
_NAME = 1.25
"""The name in sizes of the other words."""


class Kept(NamedTuple):
    """The levels of a drawer: with less than `reorder` in it one orders at once, and fills it to `up_to`."""

    reorder: int
    up_to: int


@dataclass(frozen=True, slots=True)
class DrawerLabel:
    """A part, the names of the frames it serves, and the address of its page where the site is known.

    `kept` where a shelf plan says how much of it is kept.
    """

    part: Part
    frames: tuple[str, ...] = ()
    url: str | None = None
    kept: Kept | None = None


def labels_pdf(
    wanted: Sequence[DrawerLabel],
    catalogue: Catalogue,
    sheet: LabelSheet,
    *,
    skip: int = 0,
    borders: bool = False,
    fonts: tuple[Path, ...] = (),
) -> bytes:
    """Labels row by row, the first `skip` places of the first sheet left free.

    `borders` draws the edge of every label, to try a grid on plain paper. Raises ValueError where there is
    no label, where the grid does not go on the paper, or where all places are skipped.
    """
    places = cells(sheet)
    if not wanted:
        raise ValueError("There is no part to label.")
    if not 0 <= skip < len(places):
        raise ValueError(
            f"{skip} labels cannot be skipped on sheets of {len(places)}; expected 0 to {len(places) - 1}."
        )
    files: dict[str, bytes] = {}
    sheets: list[list[str]] = []
    for at, label in enumerate(wanted, start=skip):
        if at % len(places) == 0 or not sheets:
            sheets.append([])
        drawn = _label(label, catalogue, places[at % len(places)], f"label-{at}", files, borders=borders)
        sheets[-1].append(drawn)
    paper = PAPERS[sheet.paper]
    known, more = glyphs.printable((font_folder(), *fonts)), families(fonts)
    page = f"#set page(width: {paper.width_mm}mm, height: {paper.height_mm}mm, margin: 0mm)\n"
    body = page + "\n#pagebreak()\n".join("\n".join(labels) for labels in sheets)
    return typeset(glyphs.replaced(document("Drawer labels", body, families=more), known), files, fonts=fonts)


def no_labels_pdf(sheet: LabelSheet) -> bytes:
    """What stands in the place of labels where there is nothing to label yet."""
    paper = PAPERS[sheet.paper]
    page = f"#set page(width: {paper.width_mm}mm, height: {paper.height_mm}mm, margin: 20mm)\n"
    words = literal("Nothing is kept in any drawer yet, so there is nothing to label.")
    return typeset(document("Drawer labels", f"{page}#text({words})"))


def _label(
    label: DrawerLabel, catalogue: Catalogue, cell: Cell, name: str, files: dict[str, bytes], *, borders: bool
) -> str:
    """One label: name on top, section, sizes and code below it, frames and levels at its foot."""
    part = label.part
    size = min(max(cell.height_mm * _PT_PER_MM, _SMALLEST_PT), _LARGEST_PT)
    line = size * _POINT_MM * _LEADING
    width, height = cell.width_mm - 2 * PAD_MM, cell.height_mm - 2 * PAD_MM
    foot = served_lines(label.frames, 0.9 * size * _POINT_MM, width, 2 if height > 9 * line else 1)
    levels = [level_line(*label.kept, 0.9 * size * _POINT_MM, width)] if label.kept else []
    rise = 0.9 * line * (len(foot) + len(levels))
    middle = height - _NAME * line - rise - 1.0
    title = shortened(part.name, _NAME * size * _POINT_MM * 1.1, width)
    pictures, sizes = _beside(label, catalogue, name, size * _POINT_MM, (width, middle, line), files)
    left = sum(each.width_mm + 2 for each in pictures if not each.at_right)
    pieces = [
        _line(0.0, title, _NAME * size, bold=True),
        *_lines(_NAME * line + 0.8, left, sizes, size, line),
        *_lines(height - rise, 0.0, foot, 0.9 * size, 0.9 * line),
        *(_line(height - 0.9 * line, each, 0.9 * size, bold=True) for each in levels),
        *(each.source(width, _NAME * line + 0.8) for each in pictures),
    ]
    stroke = "0.25pt" if borders else "none"
    return (
        f"#place(dx: {cell.left_mm:.4f}mm, dy: {cell.top_mm:.4f}mm, block(width: {cell.width_mm:.4f}mm, "
        f"height: {cell.height_mm:.4f}mm, stroke: {stroke}, inset: {PAD_MM}mm, clip: true, {{\n"
        + "\n".join(pieces)
        + "\n}))"
    )


@dataclass(frozen=True, slots=True)
class _Picture:
    """A drawing on a label, at its left or at its right."""

    file: str
    width_mm: float
    alt: str
    at_right: bool = False

    def source(self, width_mm: float, top_mm: float) -> str:
        left = width_mm - self.width_mm if self.at_right else 0.0
        image = f'image(bytes(sys.inputs.at("{self.file}")), format: "svg", width: {self.width_mm:.3f}mm'
        return f"place(dx: {left:.3f}mm, dy: {top_mm:.3f}mm, {image}, alt: {literal(self.alt)}))"


def _beside(
    label: DrawerLabel,
    catalogue: Catalogue,
    name: str,
    letter: float,
    room: tuple[float, float, float],
    files: dict[str, bytes],
) -> tuple[list[_Picture], list[str]]:
    """Section, sizes and code side by side: the section gives way where the sizes would be cut."""
    width, height, line = room
    lines = size_lines(label.part, catalogue)
    most = int(height / line)
    if len(lines) > most and label.part.kind != "set":
        lines = paired(lines)
    widest = max((text_width(each, letter) for each in lines), default=0.0)
    pictures = list(_code(label, name, height, files))
    room_mm = width - sum(each.width_mm + 2 for each in pictures)
    section = _section(label.part, name, height, room_mm - widest - 2, files)
    pictures += section
    room_mm -= sum(each.width_mm + 2 for each in section)
    if len(lines) > most:
        kept = max(most - 1, 0)
        rest = f"and {len(lines) - kept} more"
        lines = (*lines[:kept], rest) if kept else (f"{lines[0]} …",)
    return pictures, [shortened(each, letter, room_mm) for each in lines]


def _section(
    part: Part, name: str, height: float, width: float, files: dict[str, bytes]
) -> tuple[_Picture, ...]:
    """The section in a box, or nothing where it would come out too small to tell what it is."""
    drawing = bare_section(part, name=name)
    box = re.search(r'viewBox="\S+ \S+ (\S+) (\S+)"', drawing)
    if not box:
        return ()
    wide, high = float(box[1]), float(box[2])
    scale = min(height / high, width / wide)
    if high * scale < _LEAST_SECTION_MM:
        return ()
    files[f"{name}-section"] = drawing.encode()
    return (_Picture(f"{name}-section", wide * scale, f"{part.name} in section"),)


def _code(label: DrawerLabel, name: str, height: float, files: dict[str, bytes]) -> Iterator[_Picture]:
    if label.url:
        code, side = qr(label.url), min(height, _MOST_CODE_MM)
        if side / _modules(code) >= LEAST_MODULE_MM:
            files[f"{name}-code"] = code
            yield _Picture(f"{name}-code", side, f"Code to scan: {label.url}", at_right=True)


def _modules(code: bytes) -> int:
    found = re.search(rb'width="(\d+)"', code)
    return int(found[1]) if found else 1


def _lines(top: float, left: float, lines: Iterable[str], size_pt: float, step: float) -> Iterator[str]:
    for index, words in enumerate(lines):
        yield _line(top + index * step, words, size_pt, left=left)


def _line(top: float, words: str, size_pt: float, *, left: float = 0.0, bold: bool = False) -> str:
    weight = '"bold"' if bold else '"regular"'
    return (
        f"place(dx: {left:.3f}mm, dy: {top:.3f}mm, "
        f'text(size: {size_pt:.2f}pt, weight: {weight}, top-edge: "ascender", {literal(words)}))'
    )
