"""SVG as text: numbers, escaping, and words from strangers."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.book.model import Part
from rimbook.draw import svg
from rimbook.draw.face import face
from rimbook.draw.legend import legend
from rimbook.draw.section import section
from rimbook.draw.unrolled import unrolled
from tests.draw.drawn import SIGNS, SVG, book, parsed, rim

HOSTILE = "<script>alert(1)</script>]]>&\"'<!--\x00\x08\x1b\ufffe\ud800\u202e javascript:x"


@pytest.mark.parametrize(
    ("value", "text"),
    [(0.0, "0"), (-0.0, "0"), (-0.004, "0"), (1.0, "1"), (10.0, "10"), (1.5, "1.5"), (1.256, "1.26"),
     (100, "100"), (-3.10, "-3.1"), (0.5, "0.5")],
)  # fmt: skip
def test_a_number_has_two_decimals_at_most_and_no_idle_zeros(value: float, text: str) -> None:
    assert svg.number(value) == text


@given(st.floats(-1e6, 1e6) | st.integers(-1000, 1000).map(lambda each: each / 20))
def test_path_data_has_the_nearest_tenth_and_halves_go_to_the_even_one(value: float) -> None:
    assert svg.polyline([(value, -value)]) == (
        f"M{svg.number(round(value * 10) / 10)} {svg.number(round(-value * 10) / 10)}"
    )


def test_dashes_end_where_the_line_ends_however_many_they_are() -> None:
    steps = re.findall(r"[lm](-?[\d.]+) ", svg.dashes(((0, 0), (100, 0)), [n / 77 for n in range(1, 78)]))
    assert len(steps) == 77
    assert sum(map(float, steps)) == pytest.approx(100)


def test_an_attribute_and_its_words_are_escaped() -> None:
    made = svg.element("g", svg.words("a<b>&c"), aria_label='"a" < \x00b\n', class_="x", x=None)
    assert made == '<g aria-label="&quot;a&quot; &lt; b " class="x">a&lt;b&gt;&amp;c</g>'


def test_nothing_is_drawn_for_nothing() -> None:
    assert svg.group(svg.path(""), svg.NOTHING, class_="x") == ""


def test_words_from_strangers_come_out_harmless() -> None:
    """In every text of every drawing: the name, the strips, the parts and their names."""
    known, signs = rim(SIGNS, "every-sign"), book(SIGNS)
    strips = tuple(replace(strip, name=HOSTILE) for strip in known.frame.strips)
    holes = tuple(replace(hole, part=hole.part and HOSTILE) for hole in known.frame.holes)
    frame = replace(known.frame, name=HOSTILE, maker=HOSTILE, strips=strips, holes=holes)
    hostile = replace(known, frame=frame)
    parts = {HOSTILE: Part(HOSTILE, HOSTILE, "single", maker=HOSTILE)}
    drawings = [
        draw(hostile, catalogue)
        for draw in (face, unrolled, legend)
        for catalogue in (parts, {}, signs.parts)
    ]
    drawings.append(section(parts[HOSTILE]))
    for drawing in drawings:
        tree = parsed(drawing)
        tags = {element.tag.removeprefix(SVG) for element in tree.iter()}
        assert tags <= {"svg", "title", "desc", "defs", "g", "path", "use", "rect", "circle", "text"}
        names = {name for element in tree.iter() for name in element.attrib}
        assert not [name for name in names if name.startswith("on") or name == "style" or "}" in name]
        assert not [use for use in tree.iter(f"{SVG}use") if not use.attrib["href"].startswith("#")]
        assert not [sign for sign in "\x00\x08\x1b\ufffe\ud800\u202e" if sign in drawing]
        drawing.encode("utf-8")


def test_a_drawing_with_a_hostile_name_still_says_it() -> None:
    frame = replace(rim(SIGNS, "plain-20").frame, name="<b>Plain</b> & \x07sons")
    title = parsed(face(replace(rim(SIGNS, "plain-20"), frame=frame), {})).find(f"{SVG}title")
    assert title is not None
    assert title.text == "<b>Plain</b> & sons: face on, handle down"
