"""The rim tape: pieces that fit, marks that are all there, words that do not lie on each other."""

from __future__ import annotations

import io
import os
import subprocess
import sys
from dataclasses import replace
from itertools import pairwise
from math import inf, nan
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader

from rimbook.draw.paper import PAPERS
from rimbook.draw.tape import lay
from rimbook.draw.tape_drawing import piece_drawing
from rimbook.draw.tape_pieces import LEAST_MM, TAB_MM, TooNarrow, pieces
from rimbook.draw.tape_sheet import tape_pdf
from rimbook.draw.tape_words import doubt_words
from rimbook.rim.trial import TRIAL_FRAMES, WORST_MM, WORST_ONE_IN_TWENTY_MM
from rimbook.site.numbers.topics import outline
from tests.draw.drawn import EVERY_FRAME, ROOT, SIGNS, book, parsed, rim, text_boxes, view_box


@pytest.mark.parametrize("outside_mm", [None, 9.4])
@pytest.mark.parametrize(("folder", "slug"), EVERY_FRAME)
def test_words_on_a_tape_do_not_meet(folder: str, slug: str, outside_mm: float | None) -> None:
    tape = lay(rim(folder, slug), book(folder).parts, outside_mm=outside_mm)
    for piece in pieces(tape, 271):
        tree = parsed(piece_drawing(tape, piece, name="piece"))
        left, top, right, bottom = view_box(tree)
        boxes = [each for each in text_boxes(tree) if not each[0].startswith("glue")]
        for at, (words, box) in enumerate(boxes):
            assert left <= box[0] <= box[2] <= right, words
            assert top <= box[1] <= box[3] <= bottom, words
            for other, there in boxes[at + 1 :]:
                apart = box[2] <= there[0] or there[2] <= box[0] or box[3] <= there[1] or there[3] <= box[1]
                assert apart, (words, other)


@pytest.mark.parametrize("room_mm", [LEAST_MM + TAB_MM, 120.0, 183.0, 252.6, 271.0, 2000.0])
@pytest.mark.parametrize(("folder", "slug"), EVERY_FRAME)
def test_pieces_make_up_the_tape(folder: str, slug: str, room_mm: float) -> None:
    tape = lay(rim(folder, slug), book(folder).parts)
    cut = pieces(tape, room_mm)
    assert cut[0].start_mm == 0
    assert cut[-1].end_mm == tape.length_mm
    for one, after in pairwise(cut):
        assert one.end_mm == after.start_mm
    for piece in cut:
        assert piece.end_mm - piece.start_mm + piece.tab_mm <= room_mm + 1e-9
    joins = [piece.end_mm for piece in cut[:-1]]
    assert min((abs(join - mark.at_mm) for join in joins for mark in tape.marks), default=inf) > 1.5


def test_a_paper_too_small_is_refused() -> None:
    tape = lay(rim("frames", "plover-76"), book("frames").parts)
    with pytest.raises(TooNarrow, match="There is room for 71 mm; a piece of tape takes 72 mm"):
        pieces(tape, 71)


@pytest.mark.parametrize("outside_mm", [-0.1, 60.1, nan, inf])
def test_a_way_outside_that_cannot_be_is_refused(outside_mm: float) -> None:
    with pytest.raises(ValueError, match="expected 0 to 60 mm"):
        lay(rim("frames", "plover-76"), {}, outside_mm=outside_mm)


@pytest.mark.parametrize("measured_mm", [0.0, 89.9, 110.1, nan, inf])
def test_a_bar_that_cannot_be_put_right_is_refused(measured_mm: float) -> None:
    with pytest.raises(ValueError, match="expected 90 to 110 mm"):
        tape_pdf(rim("frames", "plover-76"), {}, measured_mm=measured_mm)


@pytest.mark.parametrize(("folder", "slug"), EVERY_FRAME)
def test_an_independent_reader_finds_every_address(folder: str, slug: str) -> None:
    found = rim(folder, slug)
    pages = PdfReader(io.BytesIO(tape_pdf(found, book(folder).parts))).pages
    words = " ".join(page.extract_text() for page in pages).split()
    for hole in found.frame.holes:
        assert str(hole.address) in words


def test_fonts_are_embedded_and_the_document_is_named() -> None:
    document = PdfReader(io.BytesIO(tape_pdf(rim("frames", "plover-76"), book("frames").parts)))
    assert document.metadata is not None
    assert document.metadata.title == "Plover 76: rim tape"
    root: Any = document.trailer["/Root"]
    assert root["/Lang"] == "en"
    assert root["/MarkInfo"]["/Marked"]
    resources: list[Any] = [page["/Resources"] for page in document.pages]
    fonts = [
        font.get_object()["/DescendantFonts"][0].get_object()["/FontDescriptor"]
        for each in resources
        for font in each["/Font"].values()
    ]
    assert fonts
    assert all({"/FontFile2", "/FontFile3"} & set(font) for font in fonts)


def test_every_sheet_has_the_bar_and_the_box() -> None:
    pages = PdfReader(io.BytesIO(tape_pdf(rim("frames", "sluice-66"), book("frames").parts))).pages
    assert len(pages) == 2
    for page in pages:
        words = " ".join(page.extract_text().split())
        assert "Measure this." in words
        assert "I measured" in words
        assert words.count("100 ") >= 1


def test_worked_out_places_are_marked_with_the_error_to_expect() -> None:
    derived = rim("frames", "plover-76")
    assert "3.4 mm off in the middle case, and 8.4 mm in one of twenty" in doubt_words(derived)
    tape = lay(derived, {})
    assert {mark.known for mark in tape.marks} == {"derived"}
    drawing = piece_drawing(tape, pieces(tape, 271)[0], name="piece")
    assert 'stroke-dasharray="2.2 1.6"' in drawing
    measured = lay(rim("frames", "sanderling-80"), {})
    assert {mark.known for mark in measured.marks} == {"measured"}
    assert 'stroke-dasharray="2.2 1.6"' not in piece_drawing(measured, pieces(measured, 271)[0], name="piece")
    assert doubt_words(rim("frames", "sanderling-80")) == "All places are measured."


def test_the_error_is_the_one_that_the_page_on_the_outline_names() -> None:
    page = " ".join(outline.TOPIC.stops)
    assert f"{TRIAL_FRAMES} made-up frames" in page
    assert f"{WORST_MM} mm off in the middle case, and {WORST_ONE_IN_TWENTY_MM} mm in one of twenty" in page


def test_a_strip_over_the_throat_is_cut_by_the_ends_of_the_tape() -> None:
    tape = lay(rim("frames", "sluice-66"), book("frames").parts)
    halves = [span for span in tape.spans if span.name == "throat strip"]
    assert [span.ends for span in halves] == [(False, True), (True, False)]
    assert halves[0].start_mm == 0
    assert halves[1].end_mm == tape.length_mm


def test_odd_names_stay_on_the_sheet() -> None:
    found = rim("frames", "plover-76")
    odd = replace(
        found, frame=replace(found.frame, name='#"\\[' + "wide name " * 19 + "鶴ไม้", maker="ø" * 200)
    )
    pages = PdfReader(io.BytesIO(tape_pdf(odd, book("frames").parts))).pages
    assert "middle of throat" in pages[0].extract_text()


@pytest.mark.parametrize("name", PAPERS)
def test_every_paper_takes_a_tape(name: str) -> None:
    found = rim(SIGNS, "every-sign")
    assert tape_pdf(found, book(SIGNS).parts, paper=PAPERS[name]).startswith(b"%PDF")  # type: ignore[index]


def test_the_same_bytes_in_another_process(tmp_path: Path) -> None:
    """Other seeds give sets and dictionaries another order."""
    made = []
    for seed in ("1", "2"):
        file = tmp_path / f"{seed}.pdf"
        command = [sys.executable, "-m", "rimbook", "tape", "sluice-66", "--out", str(file)]
        subprocess.run(
            command, cwd=ROOT, env={**os.environ, "PYTHONHASHSEED": seed}, check=True, capture_output=True
        )
        made.append(file.read_bytes())
    assert made[0] == made[1]
