"""The rim tape against published lengths, sizes of paper, and independent readers of the PDF."""

from __future__ import annotations

import io
from collections.abc import Sequence
from math import atan2, cos, hypot, pi, sin

import pdfplumber
import pypdfium2
import pytest
from pypdf import PdfReader
from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.special import ellipe, ellipeinc

from rimbook.book.model import Head
from rimbook.draw.paper import PAPERS
from rimbook.draw.tape import lay, parallel_mm
from rimbook.draw.tape_sheet import tape_pdf
from rimbook.rim.outline import curve
from rimbook.rim.place import place
from rimbook.rim.types import Rim
from tests.rim.frames import frame

WALK = "m1 m2 m3 m4 c1 c2 c3 c4 c5 m4 m3 m2 m1"
# Half width and half height of the largest head that the laws of badminton allow: 220 × 280 mm.
A, B = 110.0, 140.0
PLACES = (6.0, 18.5, 40.0, 61.25, 90.0, 130.0, 171.3, 210.0, 250.0, 300.0, 330.5, 350.0, 388.0)
MM_PER_POINT = 25.4 / 72


def measured_rim() -> Rim:
    """A frame on an ellipse whose every hole somebody measured along the rim."""
    places = {side: list(PLACES) for side in ("R", "L")}
    made = frame(
        WALK,
        mains=8,
        crosses=5,
        head=Head("ellipse", 2 * A, 2 * B),
        places_mm=places,  # type: ignore[arg-type]
    )
    return place(made)


def parallel_ellipse_mm(outside_mm: float) -> float:
    """The length of the curve so far outside the ellipse: ∫(1 + dκ) ds, κ = ab/(a²cos²φ + b²sin²φ)^(3/2).

    From any textbook of differential geometry; for d = 0 it is the perimeter.
    """

    def speed(turn: float) -> float:
        ds = hypot(A * cos(turn), B * sin(turn))
        return ds * (1 + outside_mm * A * B / ds**3)

    return float(4 * quad(speed, 0, pi / 2)[0])


def beside_mm(along_mm: float, outside_mm: float) -> float:
    """How far along the parallel curve the foot of a place on the ellipse lies, from the middle of the head.

    The place is found by the incomplete elliptic integral: s = a E(φ | 1 − b²/a²) from the end of the axis a.
    """
    turn = brentq(lambda t: A * ellipeinc(t, 1 - (B / A) ** 2) - along_mm, 0, pi)
    return along_mm + outside_mm * atan2(sin(turn) / A, cos(turn) / B)


def drawn(pdf: bytes, printer: float = 1.0) -> tuple[float, list[float]]:
    """The length of the whole tape, and each mark from its left end, as a printer makes them, in mm.

    `printer` is how much of a millimetre comes out of it.

    A piece is an outline 30 mm high. It ends at the line across it, or where it has none, at its outline.
    """
    mm = MM_PER_POINT * printer
    length, marks = 0.0, []
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        for page in document.pages:
            uprights = [
                (line["x0"], line["top"], line["height"] * mm) for line in page.lines if line["width"] < 0.01
            ]
            outlines = [each for each in (*page.rects, *page.curves) if abs(each["height"] * mm - 30) < 0.3]
            for piece in sorted(outlines, key=lambda each: each["top"]):
                inside = [
                    (x, height)
                    for x, top, height in uprights
                    if piece["top"] - 1 < top < piece["bottom"] - 1 and piece["x0"] - 1 < x < piece["x1"] + 1
                ]
                across = [x for x, height in inside if abs(height - 30) < 0.3 and x > piece["x0"] + 1]
                marks += [length + (x - piece["x0"]) * mm for x, height in inside if abs(height - 7) < 0.2]
                length += (min([*across, piece["x1"]]) - piece["x0"]) * mm
    return length, sorted(marks)


def dark_run_mm(pdf: bytes, dpi: int = 600) -> float:
    """The longest unbroken dark line in the upper quarter of the first page, in mm, in its picture."""
    page = pypdfium2.PdfDocument(pdf)[0]
    picture = page.render(scale=dpi / 72).to_pil().convert("L")
    width, height = picture.size
    left = picture.crop((0, 0, int(width * 0.42), height // 4)).point(lambda grey: 255 if grey < 128 else 0)
    longest = max(_longest(left.crop((0, y, left.width, y + 1)).tobytes()) for y in range(left.height))
    return longest * 25.4 / dpi


def _longest(row: bytes) -> int:
    return max(map(len, row.split(b"\0")))


@pytest.mark.parametrize(
    ("half_width", "half_height", "perimeter"),
    [
        # 4·a·E(m), m = 1 − (b/a)², by scipy's complete elliptic integral: the largest strung surfaces of the
        # laws of badminton, 280 × 220 mm, and of the rules of tennis, 394 × 292 mm.
        (110, 140, 788.2282),
        (146, 197, 1083.5303),
    ],
)
def test_the_tape_is_as_long_as_the_perimeter(
    half_width: float, half_height: float, perimeter: float
) -> None:
    line = curve(Head("ellipse", 2 * half_width, 2 * half_height))
    exact = 4 * half_height * ellipe(1 - (half_width / half_height) ** 2)
    assert exact == pytest.approx(perimeter, abs=1e-4)
    assert parallel_mm(line, 0) == pytest.approx(exact, abs=0.01)


@pytest.mark.parametrize("outside_mm", [0.0, 5.2, 9.4, 24.0])
def test_steiner_s_formula_agrees_with_the_integral(outside_mm: float) -> None:
    line = curve(Head("ellipse", 2 * A, 2 * B))
    assert parallel_mm(line, outside_mm) == pytest.approx(parallel_ellipse_mm(outside_mm), abs=0.01)


def test_the_printed_tape_has_every_mark_at_its_length() -> None:
    length, marks = drawn(tape_pdf(measured_rim(), {}))
    perimeter = 4 * B * ellipe(1 - (A / B) ** 2)
    assert length == pytest.approx(perimeter, abs=0.1)
    # Left to right inside the head: the left side from the throat, then the right side from the head.
    expected = sorted([perimeter / 2 - at for at in PLACES] + [perimeter / 2 + at for at in PLACES])
    assert marks == pytest.approx(expected, abs=0.1)


@pytest.mark.parametrize("outside_mm", [5.2, 12.0])
def test_round_the_outside_marks_move_by_the_angle_turned(outside_mm: float) -> None:
    length, marks = drawn(tape_pdf(measured_rim(), {}, outside_mm=outside_mm))
    whole = parallel_ellipse_mm(outside_mm)
    assert length == pytest.approx(whole, abs=0.1)
    places = [beside_mm(at, outside_mm) for at in PLACES]
    assert marks == pytest.approx(
        sorted([whole / 2 - at for at in places] + [whole / 2 + at for at in places]), abs=0.1
    )
    # Stretched evenly, some marks would be more than half a millimetre off.
    evenly = [at * whole / parallel_ellipse_mm(0) for at in PLACES]
    assert max(abs(one - other) for one, other in zip(places, evenly, strict=True)) > 0.5


def test_the_right_side_is_on_the_left_round_the_outside() -> None:
    """Whoever looks at the rim from outside, the face up, sees the right side of the head on the left."""
    inside, outside = lay(measured_rim(), {}), lay(measured_rim(), {}, outside_mm=5)
    assert str(inside.marks[0].hole.address) == "L13"
    assert str(outside.marks[0].hole.address) == "R13"


@pytest.mark.parametrize(("measured_mm", "printed_mm"), [(100.0, 100.0), (98.7, 101.317), (101.5, 98.522)])
def test_the_proof_bar_is_as_long_as_it_says(measured_mm: float, printed_mm: float) -> None:
    """A printer that makes 98.7 of 100 mm makes 100 of 101.317 mm."""
    assert printed_mm * measured_mm / 100 == pytest.approx(100, abs=0.001)
    assert dark_run_mm(tape_pdf(measured_rim(), {}, measured_mm=measured_mm)) == pytest.approx(
        printed_mm, abs=0.1
    )


def test_the_whole_tape_is_corrected_with_the_bar() -> None:
    length, marks = drawn(tape_pdf(measured_rim(), {}, measured_mm=98.7), printer=0.987)
    plain_length, plain = drawn(tape_pdf(measured_rim(), {}))
    assert length == pytest.approx(plain_length, abs=0.1)
    assert marks == pytest.approx(plain, abs=0.1)


@pytest.mark.parametrize(
    ("name", "size"),
    [
        # ISO 216, and ANSI/ASME Y14.1 sizes A and B, across.
        ("A4", (297.0, 210.0)),
        ("A3", (420.0, 297.0)),
        ("Letter", (279.4, 215.9)),
        ("Tabloid", (431.8, 279.4)),
    ],
)
def test_the_sheet_has_its_published_size(name: str, size: Sequence[float]) -> None:
    pages = PdfReader(io.BytesIO(tape_pdf(measured_rim(), {}, paper=PAPERS[name]))).pages  # type: ignore[index]
    assert len(pages) >= 1
    for page in pages:
        points = float(page.mediabox.width), float(page.mediabox.height)
        assert [each * MM_PER_POINT for each in points] == pytest.approx(size, abs=0.1)
