"""The face view as a wall chart carries it: in the chart's font, without caption, in colour or in greys."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass
from itertools import pairwise

from rimbook.book.model import Catalogue
from rimbook.draw import palette
from rimbook.draw.face import face
from rimbook.draw.labels import text_width
from rimbook.draw.plan import FONT as DRAWN_FONT
from rimbook.draw.svg import number
from rimbook.draw.typeset import CAP_HEIGHT, FONT
from rimbook.rim.types import Rim

_FONT_SIZE = 11.4
"""Labels have room for a wide face at 9.6; this narrow one is larger in the same room."""

_CAPTION = re.compile(r'<g class="layer layer-caption".*?</g>', re.DOTALL)
_CAPTION_HEIGHT = DRAWN_FONT * 3.3
_VIEW_BOX = re.compile(r'viewBox="(\S+) (\S+) (\S+) (\S+)"')
_TEXT = re.compile(r'<text x="(\S+)" y="(\S+)"[^>]*>([^<]*)<')
_RIM_ROOM = 20.0
_RIM = re.compile(r'<path d="M([^"]*)Z" id="[^"]*-rim"/>')

# Where shape tells the bore, ink need only be dark; strings and rim stay lighter than what names them.
_GREYS = {
    **{known.light: "#111111" for known in palette.CLASSES},
    palette.UNKNOWN.light: "#111111",
    palette.TEXT.light: "#111111",
    palette.QUIET.light: "#4d4d4d",
    palette.RIM.light: "#ececec",
    palette.EDGE.light: "#8c8c8c",
    palette.MAIN.light: "#5f5f5f",
    palette.CROSS.light: "#8a8a8a",
    palette.STRIP.light: "#757575",
}


@dataclass(frozen=True, slots=True)
class ChartFace:
    """A drawing of `width` × `height` units whose smallest letters are `letter` units high.

    `per_mm` are the units that stand for one millimetre of the frame.
    """

    svg: str
    width: float
    height: float
    letter: float
    per_mm: float


def chart_face(rim: Rim, catalogue: Catalogue, *, black_and_white: bool = False) -> ChartFace:
    """The drawing of one frame for a chart."""
    svg = _CAPTION.sub("", face(rim, catalogue))
    svg = svg.replace('font-family="sans-serif"', f'font-family="{FONT}"', 1)
    svg = svg.replace(f'font-size="{number(DRAWN_FONT)}"', f'font-size="{number(_FONT_SIZE)}"')
    if black_and_white:
        svg = greys(svg)
    box = _VIEW_BOX.search(svg)
    line = _RIM.search(svg)
    if box is None or line is None:
        raise ValueError("the face view has no view box or no rim")
    _, top, _, height = map(float, box.groups())
    height -= _CAPTION_HEIGHT
    left, width = _across(svg, line[1])
    view = " ".join(map(number, (left, top, width, height)))
    svg = _VIEW_BOX.sub(f'viewBox="{view}" width="{number(width)}" height="{number(height)}"', svg, count=1)
    letter = _FONT_SIZE * CAP_HEIGHT
    return ChartFace(svg, width, height, letter, _length(line[1]) / rim.curve.length_mm)


def _across(svg: str, rim: str) -> tuple[float, float]:
    """Where the drawing begins and how wide it is: rim, strips and words, without the room a page leaves."""
    xs = [float(point.split()[0]) for point in rim.split("L")]
    ends = [min(xs) - _RIM_ROOM, max(xs) + _RIM_ROOM]
    for x, _, words in _TEXT.findall(svg):
        half = text_width(words, DRAWN_FONT, bold=True) / 2
        ends += [float(x) - half, float(x) + half]
    return min(ends), max(ends) - min(ends)


def greys(svg: str) -> str:
    """A drawing with every ink of the palette turned into a grey."""
    return re.sub(r"#[0-9a-f]{6}", lambda ink: _GREYS.get(ink[0], ink[0]), svg)


def _length(points: str) -> float:
    """How long a closed line of path data is."""
    spots = [tuple(map(float, point.split())) for point in points.split("L")]
    return sum(math.dist(a, b) for a, b in pairwise([*spots, spots[0]]))
