"""Every frame of the book drawn: nothing overlaps, nothing is cut, every hole says what it is."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from itertools import combinations
from math import dist

import pytest

from rimbook.bench.load import pull
from rimbook.draw.face import face
from rimbook.draw.legend import legend
from rimbook.draw.unrolled import unrolled
from rimbook.draw.words import hole_words
from tests.draw.drawn import (
    EVERY_FRAME,
    ROOT,
    SIGNS,
    SVG,
    all_of,
    book,
    ends,
    parsed,
    rim,
    text_boxes,
    view_box,
)

DRAWINGS = {"face": face, "unrolled": unrolled}
PHONE = 360

each_frame = pytest.mark.parametrize(("folder", "slug"), EVERY_FRAME, ids=[slug for _, slug in EVERY_FRAME])
each_drawing = pytest.mark.parametrize("drawing", DRAWINGS)


def drawn(drawing: str, folder: str, slug: str) -> str:
    return DRAWINGS[drawing](rim(folder, slug), book(folder).parts)


@each_frame
@each_drawing
def test_no_two_texts_overlap_and_none_is_cut(drawing: str, folder: str, slug: str) -> None:
    tree = parsed(drawn(drawing, folder, slug))
    boxes = text_boxes(tree)
    left, top, right, bottom = view_box(tree)
    cut = [words for words, (a, b, c, d) in boxes if a < left or b < top or c > right or d > bottom]
    assert cut == []
    over = [
        (one, other)
        for (one, a), (other, b) in combinations(boxes, 2)
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]
    assert over == []


@each_frame
@each_drawing
def test_a_pull_is_written_as_a_multiple_and_lies_on_no_other_word(
    drawing: str, folder: str, slug: str
) -> None:
    known = rim(folder, slug)
    boxes = text_boxes(parsed(DRAWINGS[drawing](known, book(folder).parts, pulls=pull(known))))
    loads = [(words, box) for words, box in boxes if words.startswith("×")]
    assert loads
    assert [
        (words, other)
        for words, a in loads
        for other, b in boxes
        if a != b and a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ] == []


@each_frame
@each_drawing
def test_words_are_nine_pixels_high_on_a_narrow_phone(drawing: str, folder: str, slug: str) -> None:
    tree = parsed(drawn(drawing, folder, slug))
    left, _, right, _ = view_box(tree)
    sizes = {float(element.attrib["font-size"]) for element in tree.iter() if "font-size" in element.attrib}
    assert min(sizes) * PHONE / (right - left) >= 9


@each_frame
@each_drawing
def test_every_place_is_there_in_order_and_says_what_it_is(drawing: str, folder: str, slug: str) -> None:
    frame = rim(folder, slug).frame
    marks = all_of(parsed(drawn(drawing, folder, slug)), "use")
    marks = [mark for mark in marks if "data-address" in mark.attrib]
    assert [mark.attrib["data-address"] for mark in marks] == [str(hole.address) for hole in frame.holes]
    assert [mark.attrib["id"] for mark in marks] == [f"{drawing}-{hole.address}" for hole in frame.holes]
    assert [mark.attrib["aria-label"] for mark in marks] == [hole_words(frame, hole) for hole in frame.holes]
    assert [mark.attrib["tabindex"] for mark in marks] == ["0"] + ["-1"] * (len(marks) - 1)
    assert {mark.attrib["role"] for mark in marks} == {"img"}


@each_frame
def test_names_are_unique_and_uses_lead_somewhere_with_all_drawings_on_one_page(
    folder: str, slug: str
) -> None:
    page = [drawn(drawing, folder, slug) for drawing in DRAWINGS] + [
        legend(rim(folder, slug), book(folder).parts)
    ]
    names = re.findall(r' id="([^"]*)"', "".join(page))
    assert len(names) == len(set(names))
    for drawing in page:
        own = {element.attrib["id"] for element in parsed(drawing).iter() if "id" in element.attrib}
        asked = {use.attrib["href"].removeprefix("#") for use in parsed(drawing).iter(f"{SVG}use")}
        marks = {
            name for name in own if name.rpartition("-bore-")[1] or name.endswith(("-rim", "-undrilled"))
        }
        assert asked == marks


@each_frame
@each_drawing
def test_nothing_lies_outside_the_drawing(drawing: str, folder: str, slug: str) -> None:
    tree = parsed(drawn(drawing, folder, slug))
    left, top, right, bottom = view_box(tree)
    for mark in all_of(tree, "use"):
        if "x" in mark.attrib:
            assert left + 4 < float(mark.attrib["x"]) < right - 4
            assert top + 4 < float(mark.attrib["y"]) < bottom - 4
    for path in all_of(tree, "path"):
        x, y = map(float, re.findall(r"M(-?[\d.]+) (-?[\d.]+)", path.attrib["d"])[0])
        assert left <= x <= right
        assert top <= y <= bottom


@each_drawing
def test_a_drawing_is_no_stranger_to_a_strict_page(drawing: str) -> None:
    """No style attribute and no style sheet: a page may forbid both."""
    made = drawn(drawing, SIGNS, "every-sign")
    assert "style" not in {name for element in parsed(made).iter() for name in element.attrib}
    assert "<style" not in made
    assert "<script" not in made


@each_drawing
def test_the_text_twin_names_every_run(drawing: str) -> None:
    tree = parsed(drawn(drawing, SIGNS, "every-sign"))
    said = tree.findtext(f"{SVG}desc") or ""
    assert said.startswith("77 holes, 10 of them shared; 22 mains and 21 crosses.")
    for words in (
        "R9 to R11: bore 2.8 mm, barrel-28: m9+c1 m10+c2 m11+c3.",
        "R20: bore unknown, part unknown: c12.",
        "R35 to R36: bore 2.1 mm, twin-even: m4 m3.",
        "R24 to R26: bore 2.1 mm, lower strip, part unknown: c16 c17 c18.",
        "L16: not drilled.",
        "L23 to L20: bore unknown, barrel-21: none c13 c12 c11.",
        "Tie-offs: R8, R31, L35, L33.",
    ):
        assert words in said


def test_a_hole_reads_itself_out() -> None:
    frame = rim("frames", "plover-76").frame
    said = {str(hole.address): hole_words(frame, hole) for hole in frame.holes}
    assert said["R9"] == "R9: main 9 and cross 1, shared, bore 2.7, barrel-27-short"
    assert said["R31"] == "R31: main 8, bore 2.7, barrel-27-short, tie-off"
    assert said["L38"] == "L38: main 1, bore 2.1, twin-21-even-70 with L37"
    assert said["R1"] == "R1: main 1, bore 2.1, crown strip, plover-crown"


def test_every_shared_hole_has_a_ring_and_no_other() -> None:
    frame = rim(SIGNS, "every-sign").frame
    for drawing in DRAWINGS:
        tree = parsed(drawn(drawing, SIGNS, "every-sign"))
        ringed = {
            group.attrib["id"]
            for defs in tree.iter(f"{SVG}defs")
            for group in defs.iter(f"{SVG}g")
            if any(circle.get("class") == "rim-mark-ring" for circle in group.iter(f"{SVG}circle"))
        }
        marks = [mark for mark in all_of(tree, "use") if "data-address" in mark.attrib]
        shared = [mark.attrib["data-address"] for mark in marks if mark.attrib["href"][1:] in ringed]
        assert shared == [str(hole.address) for hole in frame.holes if hole.shared]
        assert shared == [
            mark.attrib["data-address"] for mark in marks if "shared" in mark.attrib["class"].split()
        ]


@each_drawing
def test_the_same_frame_gives_the_same_bytes_whatever_the_hash_seed(drawing: str) -> None:
    program = (
        "import sys\n"
        "from tests.draw.test_drawings import drawn\n"
        f"sys.stdout.buffer.write(drawn({drawing!r}, {SIGNS!r}, 'every-sign').encode())\n"
    )
    runs = {
        subprocess.run(
            [sys.executable, "-c", program],
            cwd=ROOT,
            env={
                **os.environ,
                "PYTHONHASHSEED": seed,
                "PYTHONPATH": f"{ROOT / 'generator'}{os.pathsep}{ROOT}",
            },
            capture_output=True,
            check=True,
        ).stdout
        for seed in ("1", "2")
    }
    assert runs == {drawn(drawing, SIGNS, "every-sign").encode()}


@each_frame
def test_no_label_stands_far_from_what_it_names(folder: str, slug: str) -> None:
    tree = parsed(drawn("face", folder, slug))
    for pointers in all_of(tree, "path", "pointer"):
        spots = ends(pointers.attrib["d"])
        lengths = [dist(start, end) for start, end in zip(spots[::2], spots[1::2], strict=True)]
        assert max(lengths) < 25


@each_frame
def test_the_area_that_answers_a_finger_on_the_unrolled_rim_cuts_no_word(folder: str, slug: str) -> None:
    """It holds string, hole and bore whole, and not the number of the load: a ring runs round it."""
    known = rim(folder, slug)
    tree = parsed(unrolled(known, book(folder).parts, pulls=pull(known)))
    half = float(next(tree.iter(f"{SVG}rect")).attrib["width"]) / 2
    edges = {float(mark.attrib["x"]) + side * half for mark in all_of(tree, "use") for side in (-1, 1)}
    rows = [(words, box) for words, box in text_boxes(tree) if 20 < box[1] < view_box(tree)[3] - 44]
    cut = [words for words, box in rows for edge in edges if box[0] < edge < box[2]]
    assert [words for words in cut if not words.isdecimal()] == []
