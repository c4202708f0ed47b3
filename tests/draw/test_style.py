"""The style sheet reaches what is drawn, in both schemes and on paper."""

from __future__ import annotations

import re

from rimbook.bench.load import pull
from rimbook.draw.face import face
from rimbook.draw.legend import legend
from rimbook.draw.palette import CLASSES, INKS
from rimbook.draw.section import section
from rimbook.draw.style import stylesheet
from rimbook.draw.tape import lay
from rimbook.draw.tape_bar import bar_drawing
from rimbook.draw.tape_drawing import piece_drawing
from rimbook.draw.tape_pieces import pieces
from rimbook.draw.unrolled import unrolled
from tests.draw.drawn import SIGNS, book, parsed, rim

# What a page adds of its own, and where it says that paper or the dark scheme is meant.
NOT_DRAWN = {"drawing"}


def drawn() -> list[str]:
    """Every kind of drawing that a page shows, of the frame that has every sign."""
    known, parts = rim(SIGNS, "every-sign"), book(SIGNS).parts
    tape = lay(known, parts)
    return [
        *(draw(known, parts, pulls=pull(known)) for draw in (face, unrolled)),
        legend(known, parts),
        *(section(part) for part in parts.values() if part.kind != "set"),
        bar_drawing(),
        *(piece_drawing(tape, piece, name=f"tape-{piece.number}") for piece in pieces(tape, 180.0)),
    ]


def drawn_styles() -> set[str]:
    return {
        style
        for drawing in drawn()
        for element in parsed(drawing).iter()
        for style in element.get("class", "").split()
    }


def test_every_selector_names_something_that_is_drawn() -> None:
    named = set(re.findall(r"\.([a-z][a-z0-9-]*)", re.sub(r"\{[^}]*\}", "{}", stylesheet())))
    assert named - NOT_DRAWN - drawn_styles() == set()


def test_every_colour_that_is_drawn_has_a_rule() -> None:
    """A plain attribute is only a fallback: what the page cannot recolour would vanish on a dark one."""
    sheet = stylesheet()
    for drawing in drawn():
        for element in parsed(drawing).iter():
            coloured = [element.get(name, "") for name in ("fill", "stroke")]
            if any(value.startswith("#") for value in coloured) and not element.tag.endswith(("}g", "}text")):
                styles = element.get("class", "").split()
                assert any(re.search(rf"\.{style}\b", sheet) for style in styles), element.attrib


def test_every_property_has_a_light_and_a_dark_value_and_paper_is_light() -> None:
    sheet = stylesheet()
    for name, light, dark in [(f"--rim-{ink.name}", ink.light, ink.dark) for ink in INKS] + [
        (f"--{known.style}", known.light, known.dark) for known in CLASSES
    ]:
        assert re.findall(rf"{name}: (#[0-9a-f]+);", sheet) == [light, dark, light]


def test_every_property_that_is_used_is_defined() -> None:
    sheet = stylesheet()
    assert set(re.findall(r"var\((--[a-z0-9-]+)\)", sheet)) == set(re.findall(r"(--[a-z0-9-]+):", sheet))
