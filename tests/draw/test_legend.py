"""A legend explains every sign that occurs in the drawings, and no other."""

from __future__ import annotations

from itertools import combinations
from typing import Literal
from xml.etree import ElementTree as ET

import pytest

from rimbook.draw.face import face
from rimbook.draw.legend import legend, legend_entries
from rimbook.draw.unrolled import unrolled
from tests.draw.drawn import EVERY_FRAME, SIGNS, SVG, all_of, book, parsed, rim, text_boxes, view_box

Drawing = Literal["face", "unrolled", "both"]

STYLES = {
    "shared": "rim-mark-ring",
    "tie-off": "tie-off-mark",
    "undrilled": "rim-mark-undrilled",
    "loose": "part-run",
    "strip": "strip-band",
    "bore-unknown": "rim-mark-unknown",
}


def signs_in(tree: ET.Element) -> set[str]:
    """Every sign that a drawing holds, by the name that a legend gives it."""
    found = set()
    for mark in tree.iter():
        styles = mark.get("class", "").split()
        for style in styles:
            if style.startswith("bore-") and mark.tag == f"{SVG}use":
                found.add(style)
            if style in (
                "main",
                "cross",
                "twin-even",
                "twin-uneven",
                "twin-unsaid",
                "strip-unknown",
                "bumper",
            ):
                found.add(style)
        found |= {"shared"} if "rim-mark-ring" in styles else set()
        found |= {"tie-off"} if "tie-off-mark" in styles else set()
        found |= {"undrilled"} if "undrilled" in styles else set()
        found |= {"loose"} if "part-run" in styles and mark.get("d") else set()
        found |= {"strip"} if styles == ["strip-band"] else set()
        if "layer-part-letters" in styles:
            found |= {f"letter-{text.text}" for text in mark.iter(f"{SVG}text")}
    return found


@pytest.mark.parametrize(("folder", "slug"), EVERY_FRAME, ids=[slug for _, slug in EVERY_FRAME])
@pytest.mark.parametrize("drawing", ["face", "unrolled", "both"])
def test_a_legend_shows_exactly_what_occurs(drawing: Drawing, folder: str, slug: str) -> None:
    known, parts = rim(folder, slug), book(folder).parts
    seen: set[str] = set()
    if drawing != "unrolled":
        seen |= signs_in(parsed(face(known, parts)))
    if drawing != "face":
        seen |= signs_in(parsed(unrolled(known, parts)))
    told = [entry.symbol for entry in legend_entries(known, parts, drawing=drawing)]
    assert len(told) == len(set(told))
    assert set(told) == seen
    written = parsed(legend(known, parts, drawing=drawing))
    assert [entry.attrib["data-symbol"] for entry in all_of(written, "g", "entry")] == told


def test_each_line_is_drawn_with_the_sign_it_explains() -> None:
    tree = parsed(legend(rim(SIGNS, "every-sign"), book(SIGNS).parts))
    for entry in all_of(tree, "g", "entry"):
        symbol = entry.attrib["data-symbol"]
        if not symbol.startswith("letter-"):
            styles = {style for element in entry.iter() for style in element.get("class", "").split()}
            assert STYLES.get(symbol, symbol) in styles


def test_a_legend_says_the_numbers() -> None:
    words = [entry.words for entry in legend_entries(rim(SIGNS, "every-sign"), book(SIGNS).parts)]
    for line in (
        "bore 2.8 mm: 6 holes",
        "bore 3.6 mm: 1 hole",
        "bore unknown: 8 holes",
        "2 × side strip: Sign side strip",
        "1 × lower strip, part unknown",
        "1 × Uneven pair",
    ):
        assert line in words


@pytest.mark.parametrize(("folder", "slug"), EVERY_FRAME, ids=[slug for _, slug in EVERY_FRAME])
def test_no_two_lines_overlap_and_none_is_cut(folder: str, slug: str) -> None:
    tree = parsed(legend(rim(folder, slug), book(folder).parts))
    left, top, right, bottom = view_box(tree)
    boxes = text_boxes(tree)
    assert not [text for text, (a, b, c, d) in boxes if a < left or b < top or c > right or d > bottom]
    assert not [
        (one, other)
        for (one, a), (other, b) in combinations(boxes, 2)
        if a[0] < b[2] and b[0] < a[2] and a[1] < b[3] and b[1] < a[3]
    ]
