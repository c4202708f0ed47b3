"""Every drawing against the elements and attributes of SVG 1.1, as the tables of svgwrite have them."""

from __future__ import annotations

import re
from collections.abc import Iterator
from xml.etree import ElementTree as ET

import pytest
from svgwrite.validator2 import get_validator

from rimbook.bench.load import pull
from rimbook.draw.face import face
from rimbook.draw.legend import legend
from rimbook.draw.ringed import ringed
from rimbook.draw.section import section
from rimbook.draw.tape import lay
from rimbook.draw.tape_bar import bar_drawing
from rimbook.draw.tape_drawing import piece_drawing
from rimbook.draw.tape_pieces import pieces
from rimbook.draw.unrolled import unrolled
from tests.draw.drawn import EVERY_FRAME, EVERY_PART, SVG, book, parsed, rim

SVG_11 = get_validator("full", debug=True)

# Of other standards: SVG 2 (`href`, `tabindex`, `paint-order`, and with it `data-*` of HTML) and WAI-ARIA.
OF_OTHERS = re.compile(r"data-.*|aria-.*|role|tabindex|href|paint-order")

# The grammar of path data lets a minus begin the next number (SVG 1.1, 8.3.9); svgwrite wants a blank there.
TOUCHING = re.compile(r"(?<=\d)-")


def faults(drawing: str) -> Iterator[str]:
    """What is not SVG 1.1 in a drawing."""
    for element in parsed(drawing).iter():
        yield from _faults(element)


def _faults(element: ET.Element) -> Iterator[str]:
    name = element.tag.removeprefix(SVG)
    if name not in SVG_11.elements:
        yield f"<{name}> is no element"
        return
    for child in element:
        inside = child.tag.removeprefix(SVG)
        if inside not in SVG_11.elements[name].valid_children:
            yield f"<{inside}> may not stand in <{name}>"
    for attribute, value in element.attrib.items():
        if not OF_OTHERS.fullmatch(attribute):
            written = TOUCHING.sub(" -", value) if attribute == "d" else value
            try:
                SVG_11.check_svg_attribute_value(name, attribute, written)
            except (TypeError, ValueError) as error:
                yield str(error)


@pytest.mark.parametrize(("folder", "slug"), EVERY_FRAME)
def test_drawings_of_frames_are_svg(folder: str, slug: str) -> None:
    known, parts = rim(folder, slug), book(folder).parts
    tape = lay(known, parts)
    drawings = [
        face(known, parts, pulls=pull(known)),
        ringed(face(known, parts), [known.frame.holes[0].address]),
        unrolled(known, parts, pulls=pull(known)),
        legend(known, parts),
        *(piece_drawing(tape, piece, name=f"tape-{piece.number}") for piece in pieces(tape, 180.0)),
    ]
    assert [fault for drawing in drawings for fault in faults(drawing)] == []


@pytest.mark.parametrize(("folder", "part"), EVERY_PART)
def test_drawings_of_parts_are_svg(folder: str, part: str) -> None:
    known = book(folder).parts[part]
    if known.kind != "set":
        assert list(faults(section(known))) == []


def test_the_proof_bar_is_svg() -> None:
    assert list(faults(bar_drawing())) == []


@pytest.mark.parametrize(
    "wrong", ["<cirle/>", '<circle r="wide"/>', '<circle length="3"/>', "<circle><g/></circle>"]
)
def test_what_is_no_svg_is_seen(wrong: str) -> None:
    assert list(faults(f'<svg xmlns="http://www.w3.org/2000/svg">{wrong}</svg>'))
