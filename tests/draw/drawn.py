"""Drawings to test, and how to look at them: every frame of the book, and the signs made for tests."""

from __future__ import annotations

import re
from functools import cache
from pathlib import Path
from xml.etree import ElementTree as ET

from rimbook.book.load import load_book
from rimbook.book.model import Book
from rimbook.draw.labels import Box, text_width
from rimbook.rim.place import place
from rimbook.rim.types import Rim

ROOT = Path(__file__).parents[2]
SVG = "{http://www.w3.org/2000/svg}"


@cache
def book(folder: str) -> Book:
    """The book in a folder of the project."""
    loaded = load_book(ROOT / folder)
    assert loaded.problems == ()
    return loaded.book


SIGNS = "tests/draw/book"
EVERY_FRAME = [(folder, slug) for folder in ("frames", SIGNS) for slug in book(folder).frames]
EVERY_PART = [(folder, part) for folder in ("frames", SIGNS) for part in book(folder).parts]


@cache
def rim(folder: str, slug: str) -> Rim:
    """A frame with everything in its place."""
    return place(book(folder).frames[slug])


def parsed(drawing: str) -> ET.Element:
    """The drawing as a tree. Raises ParseError where it is not well-formed."""
    return ET.fromstring(drawing)


def all_of(tree: ET.Element, name: str, style: str | None = None) -> list[ET.Element]:
    """Elements of a name, and of a class where one is given, outside `defs`."""
    defined = {element for defs in tree.iter(f"{SVG}defs") for element in defs.iter()}
    return [
        element
        for element in tree.iter(f"{SVG}{name}")
        if element not in defined and (style is None or style in element.get("class", "").split())
    ]


def text_boxes(tree: ET.Element) -> list[tuple[str, Box]]:
    """Every line of text with the box that it fills at most, by the widths of a wide face."""
    found: list[tuple[str, Box]] = []

    def look(element: ET.Element, inherited: dict[str, str]) -> None:
        here = {**inherited, **element.attrib}
        if element.tag == f"{SVG}text":
            words, size = element.text or "", float(here["font-size"])
            width = text_width(words, size, bold=here.get("font-weight") == "bold")
            left = float(here["x"]) - {"middle": width / 2, "end": width}.get(
                here.get("text-anchor", ""), 0.0
            )
            baseline = float(here["y"])
            found.append((words, (left, baseline - size * 0.74, left + width, baseline + size * 0.02)))
        for child in element:
            look(
                child, {key: here[key] for key in ("font-size", "font-weight", "text-anchor") if key in here}
            )

    look(tree, {})
    return found


def view_box(tree: ET.Element) -> Box:
    """What a drawing shows."""
    left, top, width, height = map(float, tree.attrib["viewBox"].split())
    return left, top, left + width, top + height


def ends(path: str) -> list[tuple[float, float]]:
    """The absolute points of path data made of M, L, m, l and Z."""
    spots: list[tuple[float, float]] = []
    x = y = 0.0
    for command, arguments in re.findall(r"([MLmlZ])([^MLmlZ]*)", path):
        if command != "Z":
            dx, dy = map(float, arguments.split())
            x, y = (dx, dy) if command.isupper() else (x + dx, y + dy)
            spots.append((x, y))
    return spots
