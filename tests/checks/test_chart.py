"""The wall chart against standards of paper, lettering and codes, read by programs that are not ours."""

from __future__ import annotations

import re
from functools import cache

import numpy as np
import pypdfium2
import pytest
import zxingcpp

from rimbook.book.model import PaperName
from rimbook.draw.chart import TooSmall, chart_pdf
from rimbook.draw.chart_face import chart_face
from rimbook.draw.lettering import furthest_m, least_mm
from rimbook.draw.typeset import CAP_HEIGHT
from rimbook.rim.place import place
from tests.draw.colour import contrast
from tests.draw.printed import (
    MM_PER_POINT,
    SITE,
    catalog,
    fonts,
    frame,
    letter_heights_mm,
    look,
    parts,
    raster,
    reader,
    shown,
    words,
)

# ISO 216:2007 (A series) and ANSI/ASME Y14.1 (A: 8.5 × 11 in, B: 11 × 17 in), in mm.
SIZES: dict[PaperName, tuple[float, float]] = {
    "A0": (841, 1189),
    "A1": (594, 841),
    "A2": (420, 594),
    "A3": (297, 420),
    "A4": (210, 297),
    "Letter": (8.5 * 25.4, 11 * 25.4),
    "Tabloid": (11 * 25.4, 17 * 25.4),
}


@cache
def chart(
    slugs: tuple[str, ...], paper: PaperName, distance_m: float | None = None, black_and_white: bool = False
) -> bytes:
    asked = look(paper, distance_m=distance_m, black_and_white=black_and_white)
    return chart_pdf(shown(*slugs), parts(), asked)


@pytest.mark.parametrize("landscape", [False, True])
@pytest.mark.parametrize("paper", SIZES)
def test_a_sheet_has_the_size_of_its_standard(paper: PaperName, landscape: bool) -> None:
    pdf = chart_pdf(shown("alder-56"), parts(), look(paper, landscape=landscape))
    box = reader(pdf).pages[0].mediabox
    expected = sorted(SIZES[paper], reverse=landscape)
    found = (float(box.width) * MM_PER_POINT, float(box.height) * MM_PER_POINT)
    assert found == pytest.approx(expected, abs=0.1)


@pytest.mark.parametrize("slug", ["plover-76", "pipit-76", "weir-72", "treadle-60"])
def test_every_address_and_bore_of_the_drawing_is_text(slug: str) -> None:
    drawn = chart_face(place(frame(slug)), parts()).svg
    labels = set(re.findall(r"<text[^>]*>([^<]+)</text>", drawn))
    assert {"R1", "L1", "R5", "L5", "R10"} <= labels
    with pypdfium2.PdfDocument(chart((slug,), "A4")) as document:
        read = document[0].get_textpage().get_text_range()
    assert labels <= set(read.split())


def test_bores_parts_pins_limits_sources_and_cautions_are_on_the_chart() -> None:
    (page,) = words(chart(("plover-76",), "A2"))
    for said in (
        "2.1 mm: 60 holes",
        "2.7 mm: 16 holes",
        "shared: 9-11, 27, 30",
        "tie-offs: R8, R31, L31, L33",
        "40 × Short barrel 2.1",
        "2 × Even twin 2.1",
        "1 × Plover crown strip",
        "1.7 mm",
        "28 lb",
        "heron-bench, 4 October 2026",
        "All places are worked out from the pattern",
        "a cracked frame is not strung",
        "Cover your eyes",
        "life size",
        "A2 portrait",
    ):
        assert said in page, said


def test_what_nobody_measured_is_unknown() -> None:
    (page,) = words(chart(("pipit-76",), "A4"))
    assert "bore unknown: 54 holes" in page
    assert "46 × part unknown" in page
    assert "tie-offs: unknown" in page


# S. L. Smith, "Letter size and legibility", Human Factors 21(6), 1979: 0.003 of the distance. NUREG-0700,
# 11.4.1.5-1: 0.004 at least, 0.006 preferred, so that the rule used here is the laxer one by a quarter.
@pytest.mark.parametrize(("distance_m", "height_mm"), [(1, 3), (2, 6), (0.5, 1.5)])
def test_letters_grow_with_the_distance_as_the_rule_says(distance_m: float, height_mm: float) -> None:
    assert least_mm(distance_m) == pytest.approx(height_mm)
    assert furthest_m(height_mm) == pytest.approx(distance_m)
    arc_minutes = np.degrees(np.arctan(height_mm / 1000 / distance_m)) * 60
    assert arc_minutes == pytest.approx(10.3, abs=0.05)  # Smith's 0.003 rad


@pytest.mark.parametrize(
    ("slugs", "paper", "distance_m"),
    [
        (("plover-76",), "A2", 2.0),
        (("treadle-60",), "A2", 2.0),
        (("pipit-76",), "A0", 2.0),
        (("plover-76", "weir-72", "alder-56", "bittern-78"), "A1", 1.0),
    ],
)
def test_no_letter_is_lower_than_the_distance_asks(
    slugs: tuple[str, ...], paper: PaperName, distance_m: float
) -> None:
    heights = letter_heights_mm(chart(slugs, paper, distance_m), CAP_HEIGHT)
    lowest = min(heights)
    assert len(heights) > 50
    assert lowest[0] >= 3.0 * distance_m - 0.01, lowest


def test_the_chart_says_how_high_its_letters_are_and_from_where_they_are_read() -> None:
    pdf = chart(("weir-72",), "A3")
    (page,) = words(pdf)
    said = re.search(
        r"Letters from ([\d.]+) mm, to be read from ([\d.]+) m \(0\.003 of the distance, Smith 1979\)", page
    )
    assert said, page
    lowest = min(letter_heights_mm(pdf, CAP_HEIGHT))[0]
    assert lowest - 0.11 <= float(said[1]) <= lowest + 0.01
    assert float(said[2]) <= lowest / 3


def test_a_paper_too_small_is_refused_with_the_smallest_that_works() -> None:
    with pytest.raises(TooSmall) as refused:
        chart(("plover-76",), "A4", 2.0)
    assert refused.value.smallest is not None
    assert refused.value.smallest.words == "A2 portrait"
    assert 0.5 < refused.value.reach_m < 2
    chart(("plover-76",), "A2", 2.0)


def test_where_no_paper_is_enough_the_refusal_says_so() -> None:
    with pytest.raises(TooSmall, match="No paper works"):
        chart(("plover-76",), "A4", 20.0)


def test_the_code_opens_the_page() -> None:
    picture = raster(chart(("plover-76",), "A4"), dpi=300)
    assert [code.text for code in zxingcpp.read_barcodes(picture)] == [f"{SITE}frames/plover-76/index.html"]


def test_every_frame_of_a_collection_has_its_code() -> None:
    slugs = ("plover-76", "weir-72", "alder-56", "bittern-78")
    pdf = chart(slugs, "A1", 1.0)
    pages = range(len(reader(pdf).pages))
    found = {code.text for page in pages for code in zxingcpp.read_barcodes(raster(pdf, page, 150))}
    assert found == {f"{SITE}frames/{slug}/index.html" for slug in slugs}


def test_without_an_address_of_the_site_the_chart_says_where_the_page_lies() -> None:
    pdf = chart_pdf(shown("plover-76"), parts(), look(site_url=None))
    assert "Page: frames/plover-76/index.html" in words(pdf)[0].replace("/ ", "/")
    assert zxingcpp.read_barcodes(raster(pdf, dpi=150)) == []


def test_every_font_is_embedded_and_the_document_has_a_title_a_language_and_tags() -> None:
    pdf = chart(("plover-76", "weir-72", "alder-56", "bittern-78"), "A1", 1.0)
    document = reader(pdf)
    descriptors = [each for page in document.pages for each in fonts(page)]
    assert len(descriptors) >= 2  # regular and bold
    assert all(each and any(f"/FontFile{kind}" in each for kind in ("", "2", "3")) for each in descriptors)
    assert document.metadata is not None
    assert document.metadata.title == "Charts of the tests"
    assert catalog(pdf)["/Lang"] == "en"
    assert catalog(pdf)["/MarkInfo"]["/Marked"].value is True
    assert "/StructTreeRoot" in catalog(pdf)
    assert b"pdfuaid" in catalog(pdf)["/Metadata"].get_object().get_data()  # ISO 14289-1, clause 5


def test_the_same_input_gives_the_same_bytes() -> None:
    again = chart_pdf(shown("plover-76"), parts(), look("A4"))
    assert chart(("plover-76",), "A4") == again


@pytest.mark.parametrize("black_and_white", [False, True])
def test_marks_and_letters_stand_out_in_grey(black_and_white: bool) -> None:
    """WCAG 2.2, 1.4.3 and 1.4.11: 4.5 to 1 for text, 3 to 1 for graphical objects, of luminance alone."""
    drawn = chart_face(place(frame("bittern-78")), parts(), black_and_white=black_and_white).svg
    marks = re.findall(r'class="rim-mark bore-\w+" fill="(#\w{6})"', drawn)
    texts = re.findall(
        r'<g class="layer layer-(?:addresses|bore-numbers|part-letters)[^>]*fill="(#\w{6})"', drawn
    )
    assert len(marks) >= 2
    assert len(texts) == 3
    assert all(contrast(ink, "#ffffff") >= 3 for ink in marks)
    assert all(contrast(ink, "#ffffff") >= 4.5 for ink in texts)


def test_a_chart_in_black_and_white_has_no_colour() -> None:
    with pypdfium2.PdfDocument(chart(("bittern-78",), "A4", None, True)) as document:
        picture = document[0].render(scale=2).to_numpy().astype(int)
    assert np.abs(picture[..., 0] - picture[..., 2]).max() <= 2
    with pypdfium2.PdfDocument(chart(("bittern-78",), "A4")) as document:
        picture = document[0].render(scale=2).to_numpy().astype(int)
    assert np.abs(picture[..., 0] - picture[..., 2]).max() > 60
