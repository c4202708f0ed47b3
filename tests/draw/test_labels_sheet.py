"""Drawer labels: on their grid, readable by a scanner, and never more than fits."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from itertools import pairwise
from math import nan
from typing import Any

import pdfplumber
import pypdfium2
import pytest
import zxingcpp
from pypdf import PdfReader

from rimbook.book.model import LabelSheet, PaperName
from rimbook.draw.labels import text_width
from rimbook.draw.labels_grid import cells
from rimbook.draw.labels_sheet import DrawerLabel, Kept, labels_pdf
from rimbook.draw.labels_words import level_line, paired, served_lines, size_lines
from rimbook.site.drawer_labels import drawer_labels, parts_of
from tests.draw.drawn import SIGNS, book

MM_PER_POINT = 25.4 / 72
SHEETS = [
    LabelSheet(),
    LabelSheet(rows=5, columns=2, margins_mm=(12, 8, 12, 8), gap_mm=(2, 0)),
    LabelSheet("Letter", 10, 3, (12.7, 4.8, 12.7, 4.8), (3.2, 0)),
    LabelSheet(rows=13, columns=4, margins_mm=(10.7, 9.7, 10.7, 9.7), gap_mm=(2.5, 0)),
]


def labels(site_url: str | None = None) -> tuple[DrawerLabel, ...]:
    """Every part of the book."""
    known = book("frames")
    return drawer_labels(known.parts, list(known.frames.values()), known.parts, site_url)


def read(pdf: bytes) -> list[str]:
    """The words of each page."""
    return [" ".join(page.extract_text().split()) for page in PdfReader(io.BytesIO(pdf)).pages]


def bordered(pdf: bytes) -> list[tuple[list[float], list[list[float]]]]:
    """Of each page its size, and left, top, width and height of every label with a border, in mm."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        return [
            (
                [side * MM_PER_POINT for side in (page.width, page.height)],
                [
                    [each[side] * MM_PER_POINT for side in ("x0", "top", "width", "height")]
                    for each in page.rects
                    if each["width"] * MM_PER_POINT > 30
                ],
            )
            for page in document.pages
        ]


@pytest.mark.parametrize("sheet", SHEETS)
def test_labels_lie_on_their_grid(sheet: LabelSheet) -> None:
    """Where the margins and gaps put them, by hand: a column is a width and a gap further on."""
    pdf = labels_pdf(labels()[:30], book("frames").parts, sheet, borders=True)
    top, right, bottom, left = sheet.margins_mm
    paper = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}[sheet.paper]
    width = (paper[0] - left - right - sheet.gap_mm[0] * (sheet.columns - 1)) / sheet.columns
    height = (paper[1] - top - bottom - sheet.gap_mm[1] * (sheet.rows - 1)) / sheet.rows
    ((size, found),) = bordered(pdf)[:1]
    assert size == pytest.approx(paper, abs=0.1)
    count = min(sheet.rows * sheet.columns, 30)
    assert len(found) == count
    for at, box in enumerate(found):
        row, column = divmod(at, sheet.columns)
        x, y = left + column * (width + sheet.gap_mm[0]), top + row * (height + sheet.gap_mm[1])
        assert box == pytest.approx([x, y, width, height], abs=0.1)


@pytest.mark.parametrize("sheet", SHEETS[:2])
def test_codes_are_read_from_a_picture(sheet: LabelSheet) -> None:
    wanted = labels("https://rimbook.example/book")
    page = pypdfium2.PdfDocument(labels_pdf(wanted, book("frames").parts, sheet))[0]
    found = {code.text for code in zxingcpp.read_barcodes(page.render(scale=300 / 72).to_pil().convert("L"))}
    shown = wanted[: sheet.rows * sheet.columns]
    assert found == {f"https://rimbook.example/book/parts/{label.part.id}/" for label in shown}


def test_a_code_too_fine_for_its_label_is_left_out() -> None:
    long = replace(labels()[0], url="https://rimbook.example/" + "a" * 400)
    pdf = labels_pdf([long], book("frames").parts, SHEETS[3])
    picture = pypdfium2.PdfDocument(pdf)[0].render(scale=300 / 72).to_pil().convert("L")
    assert zxingcpp.read_barcodes(picture) == []
    assert long.part.name in read(pdf)[0]


@pytest.mark.parametrize("sheet", SHEETS)
def test_names_and_sizes_are_text(sheet: LabelSheet) -> None:
    pages = read(labels_pdf(labels(), book("frames").parts, sheet))
    assert "barrel 2.05" in pages[0]
    assert all("…" in " ".join(pages) or label.part.name in " ".join(pages) for label in labels())


def test_used_labels_are_skipped() -> None:
    pdf = labels_pdf(labels()[:3], book("frames").parts, LabelSheet(rows=2, columns=2), skip=2, borders=True)
    assert [[round(box[1], 1) for box in boxes] for _, boxes in bordered(pdf)] == [[148.5, 148.5], [8.5]]


@pytest.mark.parametrize("skip", [-1, 24])
def test_skipping_a_whole_sheet_is_refused(skip: int) -> None:
    with pytest.raises(ValueError, match="expected 0 to 23"):
        labels_pdf(labels(), book("frames").parts, LabelSheet(), skip=skip)


@pytest.mark.parametrize(
    ("changes", "told"),
    [
        ({"rows": 20}, "at most 15 rows and 5 columns"),
        ({"columns": 7}, "too small"),
        ({"margins_mm": (200.0, 0, 200.0, 0)}, "leave no room on A4"),
        ({"rows": 0}, "expected 1 to 400 labels"),
        ({"rows": 401, "columns": 1}, "expected 1 to 400 labels"),
        ({"gap_mm": (nan, 0)}, "0 mm or more"),
        ({"margins_mm": (-1.0, 0, 0, 0)}, "0 mm or more"),
    ],
)
def test_a_grid_that_does_not_go_on_the_paper_is_refused(changes: dict[str, Any], told: str) -> None:
    with pytest.raises(ValueError, match=told):
        cells(replace(LabelSheet(), **changes))


def test_no_label_is_no_sheet() -> None:
    with pytest.raises(ValueError, match="no part"):
        labels_pdf([], {}, LabelSheet())


def test_frames_are_named_as_many_as_fit() -> None:
    names = [f"Plover {number}" for number in range(70, 90)]
    lines = served_lines(names, 2.5, 60, 2)
    assert len(lines) == 2
    assert all(text_width(line, 2.5) <= 60 for line in lines)
    said = " ".join(lines)
    shown = said.count("Plover")
    assert said.endswith(f"and {20 - shown} more")
    assert 1 < shown < 20
    assert served_lines(names[:2], 2.5, 60, 2) == ("For Plover 70 and Plover 71",)
    assert served_lines([], 2.5, 60, 2) == ("For no frame of this book",)
    (cut,) = served_lines(["W" * 200, "Plover 71"], 2.5, 60, 1)
    assert cut.endswith("… and 1 more")
    assert text_width(cut, 2.5) <= 61


def test_levels_are_said_in_fewer_words_where_there_is_no_room() -> None:
    assert level_line(3, 8, 2.5, 60) == "Reorder below 3, fill up to 8"
    assert level_line(3, 8, 2.5, 30) == "Below 3, up to 8"
    assert level_line(0, 1, 2.5, 60) == "Fill up to 1"  # there is nothing below none
    assert text_width("Below 999, up to 999", 0.9 * 6.5 * MM_PER_POINT, bold=True) < 30


@pytest.mark.parametrize("sheet", [*SHEETS, LabelSheet(rows=15, columns=5, margins_mm=(5, 5, 5, 5))])
def test_levels_stand_at_the_foot_and_on_nothing_else(sheet: LabelSheet) -> None:
    """Lines of one label, as an independent reader finds them: none lies on another, all on their label."""
    wanted = [replace(label, kept=Kept(3, 8)) for label in labels()[: sheet.rows * sheet.columns]]
    with pdfplumber.open(io.BytesIO(labels_pdf(wanted, book("frames").parts, sheet))) as document:
        page = document.pages[0]
        for place in cells(sheet)[: len(wanted)]:
            left, top = place.left_mm / MM_PER_POINT, place.top_mm / MM_PER_POINT
            right, bottom = left + place.width_mm / MM_PER_POINT, top + place.height_mm / MM_PER_POINT
            lines = page.crop((left, top, right, bottom)).extract_text_lines()
            assert re.fullmatch("Reorder below 3, fill up to 8|Below 3, up to 8", lines[-1]["text"])
            for above, below in pairwise(lines):
                assert above["bottom"] <= below["top"] + 1.5  # of the room for descenders
            assert bottom - lines[-1]["bottom"] > 1.0 / MM_PER_POINT


def test_unknown_sizes_say_so_and_pairs_keep_their_units() -> None:
    parts = book("frames").parts
    assert size_lines(parts["barrel-21-short"], parts) == (
        "barrel 2.05 mm",
        "bore 1.3 mm",
        "length 10.5 mm",
        "flange 4.2 mm",
    )
    unknown = replace(parts["barrel-21-short"], bore_mm=None, length_mm=None)
    assert size_lines(unknown, parts)[1:3] == ("bore unknown", "length unknown")
    assert paired(("length 12.0 mm", "14 posts")) == ("length 12.0 mm, 14 posts",)
    assert paired(("barrel 2.0 mm", "bore 1.3 mm", "pitch 7.0 mm")) == (
        "barrel 2.0, bore 1.3 mm",
        "pitch 7.0 mm",
    )


def test_a_club_s_frames_give_its_parts() -> None:
    known = book("frames")
    frames = [known.frames["plover-76"], known.frames["pipit-76"]]
    parts = parts_of(frames, known.parts)
    assert "barrel-21-short" in parts
    served = {label.part.id: label.frames for label in drawer_labels(parts, frames, known.parts)}
    assert served["barrel-21-short"] == ("Plover 76", "Pipit 76")
    assert served["plover-crown"] == ("Plover 76",)


@pytest.mark.parametrize("paper", ["A4", "Letter", "A3"])
def test_odd_words_stay_on_their_label(paper: PaperName) -> None:
    part = replace(book(SIGNS).parts["twin-uneven"], name='#"\\[ ' + "鶴 name " * 40)
    odd = DrawerLabel(part, ("ไม้" * 60, "]" * 200), "https://rimbook.example/%22/")
    (page,) = read(labels_pdf([odd], {part.id: part}, LabelSheet(paper)))
    assert '#"\\[' in page
    assert "…" in page


def test_the_same_bytes_twice() -> None:
    made = [labels_pdf(labels("https://x.example"), book("frames").parts, LabelSheet()) for _ in range(2)]
    assert made[0] == made[1]
