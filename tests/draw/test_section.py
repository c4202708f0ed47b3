"""A part in section: its numbers, its proportions, and what nobody has measured."""

from __future__ import annotations

import re
from itertools import combinations

import pytest

from rimbook.book.model import Part
from rimbook.draw.section import section
from tests.draw.drawn import EVERY_PART, SIGNS, SVG, all_of, book, ends, parsed, text_boxes, view_box


def texts(drawing: str) -> list[str]:
    return [text.text or "" for text in parsed(drawing).iter(f"{SVG}text")]


@pytest.mark.parametrize(("folder", "part"), EVERY_PART, ids=[part for _, part in EVERY_PART])
def test_no_two_texts_overlap_and_none_is_cut(folder: str, part: str) -> None:
    drawing = section(book(folder).parts[part])
    if book(folder).parts[part].kind == "set":
        assert drawing == ""
        return
    tree = parsed(drawing)
    left, top, right, bottom = view_box(tree)
    boxes = text_boxes(tree)
    assert not [text for text, (a, b, c, d) in boxes if a < left or b < top or c > right or d > bottom]
    assert not [
        (one, other)
        for (one, a), (other, b) in combinations(boxes, 2)
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]


def test_a_barrel_says_its_sizes_and_is_drawn_in_proportion() -> None:
    part = book(SIGNS).parts["barrel-21"]
    drawing = section(part)
    assert set(texts(drawing)) == {
        "bore 1.3", "barrel 2.05", "length 10.5", "flange 4.2", "one post, mm, ± 0.05"
    }  # fmt: skip
    (lines,) = all_of(parsed(drawing), "path", "dimension")
    spots = ends(lines.attrib["d"])
    bore, barrel, length, flange = (
        abs(b[0] - a[0]) + abs(b[1] - a[1]) for a, b in zip(spots[::2], spots[1::2], strict=True)
    )
    for drawn, size in ((barrel, 2.05), (length, 10.5), (flange, 4.2)):
        assert drawn / bore == pytest.approx(size / 1.3, rel=0.02)


def test_unequal_posts_have_a_length_each() -> None:
    assert {"length 10.5", "length 16.0", "pitch 7.0"} <= set(
        texts(section(book(SIGNS).parts["twin-uneven"]))
    )


def test_what_nobody_has_measured_says_so_and_is_broken() -> None:
    drawing = section(book(SIGNS).parts["twin-unsaid"])
    assert sorted(texts(drawing)) == sorted(
        ["bore ?", "barrel ?", "length ?", "length ?", "flange ?", "pitch ?", "two unequal posts, mm"]
    )
    walls = all_of(parsed(drawing), "path", "wall")
    assert [wall.attrib["class"] for wall in walls] == ["wall wall-unknown"] * 2
    assert not re.search(r"\d", parsed(drawing).findtext(f"{SVG}desc") or "")


def test_a_strip_says_how_many_posts_it_has() -> None:
    drawing = section(book(SIGNS).parts["sign-bumper"])
    assert "strip of 12 posts, mm" in texts(drawing)
    assert all_of(parsed(drawing), "path", "break")
    assert all_of(parsed(drawing), "path", "strip-band")
    assert "strip of ? posts, mm" in texts(section(Part("any", "Any", "strip")))


@pytest.mark.parametrize("size", [0.01, 1.0, 500.0])
def test_odd_sizes_do_no_harm(size: float) -> None:
    for kind in ("single", "wide", "twin-even", "twin-uneven", "strip"):
        part = Part(
            "odd", "Odd", kind, barrel_mm=size, bore_mm=2 * size, length_mm=(size,), flange_mm=size / 3
        )
        left, top, right, bottom = view_box(parsed(section(part)))
        assert right - left == pytest.approx(268)
        assert 50 < bottom - top < 260
