"""The figures on the pages of numbers are those of the code, and those that others published."""

from __future__ import annotations

from math import pi, radians

import pytest

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import HoleNumbers, frame_numbers
from rimbook.bench.head_pull import head_pull
from rimbook.bench.load import resultant
from rimbook.bench.needs import hole_needs
from rimbook.bench.part_index import index_parts
from rimbook.bench.parts_list import regrommet
from rimbook.bench.pins import pin
from rimbook.bench.pressure import bearing_pressure
from rimbook.bench.room import enclosing
from rimbook.bench.tension import capstan
from rimbook.bench.thresholds import DEFAULT
from rimbook.bench.units import convert, newtons
from rimbook.book.model import Address, Head
from rimbook.rim.outline import curve
from rimbook.rim.place import place
from rimbook.site.numbers.figures import fig
from rimbook.site.numbers.topics.fit import PRINTED as PRINTED_FITS
from rimbook.site.numbers.topics.fit import iso_fit
from rimbook.site.pages import Page
from rimbook.site.words import percent
from tests.site.numbers_pages import SLUGS, trees, words
from tests.site.sample import demo_book, published, small_book

# What somebody else printed, and where it was printed: each stands on its page beside what the code gives.
PRINTED = {
    "outline": ("25.526999", "published calculator of the perimeter of an ellipse"),
    "units": ("28 kg (274 N or about 62 lb)", "Cross and R. Bower"),
    "pull": ("1810 lb", "Angle Factor Multipliers"),
    "friction": ("382.26 N", "exercise 27, rope friction"),
    "pressure": ("23.7 MPa", "Machine Elements in Mechanical Design, question 3-18"),
    "head": ("274", "Cross and R. Bower"),
    "uncertainty": ("0.29", "JCGM 100:2008"),
    "fit": ("−20 to 0, interference", "ISO 286-2"),
    "room": ("2.154", "Circle packing in a circle"),
    "shelf": ("printed: 8", "Fundamentals of Supply Chain Theory, example 4.7"),
}


def r9() -> HoleNumbers:
    """The numbers of the hole that the pages show, worked out once more."""
    book = demo_book()
    rim = place(book.frames["plover-76"])
    return frame_numbers(rim, Answers(index_parts(book.parts))).holes[Address("R", 9)]


@pytest.mark.parametrize("slug", PRINTED)
def test_a_published_example_is_named(slug: str) -> None:
    said = words(slug, "//section[@id='example']")
    for printed in PRINTED[slug]:
        assert printed in said
    assert "No published example" not in said


@pytest.mark.parametrize("slug", [slug for slug in SLUGS if slug not in PRINTED])
def test_where_nothing_is_published_the_page_says_so(slug: str) -> None:
    assert "No published example was found" in words(slug, "//section[@id='example']")
    assert "no published source" in words(slug, "//section[@id='source']") or slug == "completeness"


def test_published_figures_are_those_of_the_code() -> None:
    """The sources are named on the pages, and beside the same values in the checks of the bench."""
    assert fig(curve(Head("ellipse", 6, 10)).length_mm, digits=6) in words("outline")
    assert capstan(100 * 9.81, 0.2, 1.5 * pi) == pytest.approx(382.26, abs=0.01)
    assert f"{fig(capstan(1000, 0.25, 3 * pi), 'N')}".replace("\u00a0", " ") in words("friction")
    assert f"{bearing_pressure(3550, 10, 15):.3f} MPa" in words("pressure")
    assert f"{enclosing((1.3, 1.3)):.2f} mm" in words("room")
    assert f"{newtons(28, 'kg'):.1f} N" in words("units")
    assert f"{convert(28, 'kg', 'lb'):.1f} lb" in words("units")
    assert f"{2000 * resultant(radians(130)) / 2:.1f} lb" in words("pull")
    for one in PRINTED_FITS:
        found = iso_fit(one)
        assert 1000 * (found.least_mm or 0) == pytest.approx(one.clearance_um[0], abs=1e-6)
        assert 1000 * (found.most_mm or 0) == pytest.approx(one.clearance_um[1], abs=1e-6)
        assert found.kind == one.kind


def test_the_figures_of_the_shown_hole_are_those_of_the_code() -> None:
    book, numbers = demo_book(), r9()
    here = numbers.here
    frame, part = book.frames["plover-76"], book.parts["barrel-27-short"]
    assert numbers.part == part.id
    tension = newtons(DEFAULT.usual_tension_lb.badminton, "lb")
    pulled = head_pull(frame, tension)
    found = pin(part)
    assert found
    told = {
        "outline": [f"{fig(curve(frame.head).length_mm, digits=1)} mm round", "(9 − 0.5) × 7 mm = 59.5 mm"],
        "string": ["86 − 76 10: R9", "22 passes inside"],
        "units": [f"{fig(tension)} N", "28 lb"],
        "pull": [f"{numbers.pull:.2f} times the tension", f"{fig(numbers.pull_n, digits=1)} N", "rank 4"],
        "pressure": [f"{fig(numbers.pressure_mpa or 0, digits=1)} MPa"],
        "head": [f"{pulled.along_n:.0f} N", f"{pulled.across_n:.0f} N"],
        "fit": [
            f"{fig(here.fit.clearance_mm or 0)} mm: {here.fit.word}",
            f"{fig(here.fit.least_mm or 0, digits=3)} mm",
        ],
        "room": [f"{fig(here.room.spare_mm or 0)} mm: {here.room.word}", f"{fig(here.thickest_mm or 0)} mm"],
        "length": [f"{fig(here.reach.proud_mm or 0)} mm: {here.reach.word}"],
        "turns": [f"{here.turns.groove_deg:.1f}°", f"shared between 2 strings {here.turns.positions}"],
        "parts": [
            f"about {fig(found.size_mm)} mm",
            str(sum(line.count for line in regrommet(frame, book.parts))),
        ],
        "completeness": ["known for 76 of 76 holes 100 %"],
    }
    for slug, figures in told.items():
        said = words(slug, "//section[@id='example']")
        for figure in figures:
            assert figure in said, (slug, figure)


def test_the_ranking_on_the_page_is_that_of_the_code() -> None:
    book = demo_book()
    need = hole_needs(book.frames["plover-76"])[Address("R", 9)]
    answer = Answers(index_parts(book.parts)).of(need)
    rows = trees()["serves"].xpath("//section[@id='example']//tbody/tr/th")
    assert [row.text_content() for row in rows] == [
        book.parts[part].name for part in (*answer.serving, *answer.near)
    ]


def test_a_twin_is_worked_out_as_the_code_advises() -> None:
    book = demo_book()
    numbers = frame_numbers(place(book.frames["plover-76"]), Answers(index_parts(book.parts)))
    spread = numbers.twins[0].spread
    assert spread
    said = words("twins", "//section[@id='example']")
    assert f"{fig(spread.before_mpa)} MPa" in said
    assert f"{fig(spread.after_mpa)} MPa" in said


def test_the_share_of_a_map_is_that_of_its_page() -> None:
    """12 of 14 holes are 86 %, and only all are 100 %: the page of a frame says the same."""
    page = published(small_book())["frames/wren-8/index.html"]
    assert isinstance(page, Page)
    assert f"known for 12 of 14 holes ({percent(12, 14)} %)" in page.body
    assert [percent(0, 300), percent(1, 300), percent(299, 300), percent(300, 300)] == [0, 1, 99, 100]
