"""The wall chart: one frame large, or a collection on as many sheets as it takes.

`chart.typ` lays it out. It gives the smallest letters the largest height that the sheet allows, the
same on all sheets, and refuses a sheet on which they would fall below what the reading distance asks.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cache
from importlib.resources import files
from math import floor
from pathlib import Path
from typing import Any

from rimbook.book.model import Catalogue, Units
from rimbook.draw import glyphs, svg
from rimbook.draw.chart_face import chart_face, greys
from rimbook.draw.chart_marks import mark_drawings, said
from rimbook.draw.chart_words import CAUTIONS, SIGNS, card_words
from rimbook.draw.lettering import NEAREST_M, SHARE, SOURCE, furthest_m, least_mm
from rimbook.draw.paper import PAPERS, Paper
from rimbook.draw.qr import qr
from rimbook.draw.typeset import (
    CAP_HEIGHT,
    FONT,
    Unprintable,
    families,
    font_folder,
    typeset,
    typeset_svg,
)
from rimbook.draw.words import summary
from rimbook.rim.types import Rim

_TOO_SMALL = "too small: "
_BREAK = "\u200b"
_LONG = re.compile(r"[^\s/]{14}(?=[^\s/]{6})")
"""A word may be broken after so many letters where it goes on much longer: none runs out of the sheet."""

_INKS = {"text": "#1d2228", "quiet": "#4d5560", "line": "#868d96"}
_GREY_INKS = {"text": "#000000", "quiet": "#404040", "line": "#808080"}


@dataclass(frozen=True, slots=True)
class Look:
    """How a chart is made: on what paper, for whom, to be read from where.

    `distance_m` None makes the letters as large as the sheet allows and says from where they can be read.
    `site_url` ends in a slash; without one a chart says where a page lies, and has no code to scan.
    """

    paper: Paper
    title: str
    owner: str = ""
    edition: str = ""
    distance_m: float | None = None
    black_and_white: bool = False
    units: Units = "metric"
    site_url: str | None = None
    fonts: tuple[Path, ...] = ()


@dataclass(frozen=True, slots=True)
class Shown:
    """One frame of a chart, where its page lies on the site, and what the owner says of it."""

    rim: Rim
    page: str
    remark: str = ""


@dataclass(frozen=True, slots=True)
class TooSmall(Exception):
    """A paper too small for the distance: how far its own best letters reach, and a paper that is enough.

    `smallest` is None where no paper is.
    """

    paper: Paper
    distance_m: float
    reach_m: float
    smallest: Paper | None

    def __str__(self) -> str:
        enough = f"The smallest that works is {self.smallest.words}" if self.smallest else "No paper works"
        return (
            f"{self.paper.words} is too small to be read from {self.distance_m:g} m: "
            f"its letters would reach {floor(self.reach_m * 100) / 100:g} m. {enough}."
        )


def chart_pdf(shown: Sequence[Shown], catalogue: Catalogue, look: Look) -> bytes:
    """The chart as a tagged PDF. Raises TooSmall, and Unprintable where a package is missing."""
    made = _files(shown, catalogue, look)
    try:
        return typeset(_source(), made, fonts=look.fonts)
    except Unprintable as error:
        raise _refusal(error, shown, catalogue, look) from error


def chart_svg(shown: Sequence[Shown], catalogue: Catalogue, look: Look) -> tuple[bytes, ...]:
    """The chart as one SVG a sheet, letters drawn as outlines, each with title and description."""
    made = _files(shown, catalogue, look)
    try:
        sheets = typeset_svg(_source(), made, fonts=look.fonts)
    except Unprintable as error:
        raise _refusal(error, shown, catalogue, look) from error
    told = svg.escape(" ".join(f"{each.rim.frame.name}: {summary(each.rim)}" for each in shown))
    title = svg.escape(look.title)
    return tuple(
        sheet.replace(
            b">", f' role="img"><title>{title} ({at}/{len(sheets)})</title><desc>{told}</desc>'.encode(), 1
        )
        for at, sheet in enumerate(sheets, start=1)
    )


def unprinted(shown: Sequence[Shown], catalogue: Catalogue, look: Look) -> tuple[str, ...]:
    """The characters that no font at hand has, a line a script; the chart shows a lozenge for each."""
    texts = _texts([_words(each, catalogue, look) for each in shown], [look.title, look.owner, look.edition])
    return glyphs.missing(texts, _known(look))


def _refusal(
    error: Unprintable, shown: Sequence[Shown], catalogue: Catalogue, look: Look
) -> TooSmall | Unprintable:
    text = str(error)
    if not text.startswith(_TOO_SMALL):
        return error
    asked = look.distance_m or NEAREST_M
    reach = furthest_m(float(text.removeprefix(_TOO_SMALL)))
    return TooSmall(look.paper, asked, reach, _smallest(shown, catalogue, look))


def _smallest(shown: Sequence[Shown], catalogue: Catalogue, look: Look) -> Paper | None:
    """The smallest paper that works, hung as was asked if that works, else turned."""
    for paper in PAPERS.values():
        for turned in (look.paper.landscape, not look.paper.landscape):
            tried = paper.turned(landscape=turned)
            try:
                typeset(
                    _source(),
                    _files(shown, catalogue, replace(look, paper=tried), probe=True),
                    fonts=look.fonts,
                )
            except Unprintable:
                continue
            return tried
    return None


@cache
def _source() -> str:
    return (files("rimbook.draw") / "chart.typ").read_text("utf-8")


def _files(
    shown: Sequence[Shown], catalogue: Catalogue, look: Look, *, probe: bool = False
) -> Mapping[str, bytes]:
    """What `chart.typ` reads: words and sizes as JSON, drawings as SVG.

    A `probe` only wants to know whether the paper works, not what it would take.
    """
    known = _known(look)
    cards = [_words(each, catalogue, look) for each in shown]
    lacking = glyphs.missing(_texts(cards, [look.title, look.owner, look.edition]), known)
    made: dict[str, bytes] = {}
    for at, (each, card) in enumerate(zip(shown, cards, strict=True)):
        drawn = chart_face(each.rim, catalogue, black_and_white=look.black_and_white)
        card |= {
            "face": f"face-{at}",
            "width": drawn.width,
            "height": drawn.height,
            "letter": drawn.letter,
            "per_mm": drawn.per_mm,
        }
        made[f"face-{at}"] = drawn.svg.encode()
        if look.site_url:
            card["qr"] = f"qr-{at}"
            made[f"qr-{at}"] = qr(card["address"])
    styles = [
        "shared",
        "tie-off",
        *(row["style"] for card in cards for row in (*card["bores"], *card["signs"])),
    ]
    for style, drawing in mark_drawings(styles).items():
        made[f"mark-{style}"] = (greys(drawing) if look.black_and_white else drawing).encode()
    data = {
        "title": look.title,
        "owner": look.owner,
        "edition": look.edition,
        "paper": {"words": look.paper.words, "width": look.paper.width_mm, "height": look.paper.height_mm},
        "margin": look.paper.margin_mm,
        "fonts": [FONT, *families(look.fonts)],
        "cap": CAP_HEIGHT,
        "inks": _GREY_INKS if look.black_and_white else _INKS,
        "distance": look.distance_m,
        "least": least_mm(look.distance_m or NEAREST_M),
        "share": SHARE,
        "rule": SOURCE,
        "probe": probe,
        "cautions": CAUTIONS,
        "signs": SIGNS,
        "lacking": lacking,
        "said": {style: said(style) for style in dict.fromkeys(styles)},
        "cards": cards,
    }
    return {"chart": json.dumps(_printable(data, known), ensure_ascii=False).encode(), **made}


def _words(each: Shown, catalogue: Catalogue, look: Look) -> dict[str, Any]:
    page = f"{each.page}index.html"
    return {
        **card_words(each.rim, catalogue, look.units),
        "remark": each.remark,
        "summary": f"Face view of {each.rim.frame.name}. {summary(each.rim)}",
        "address": f"{look.site_url or ''}{page}",
    }


def _known(look: Look) -> frozenset[int]:
    return glyphs.printable((font_folder(), *look.fonts))


def _texts(*values: object) -> Iterator[str]:
    for value in values:
        if isinstance(value, str):
            yield value
        elif isinstance(value, Mapping):
            yield from _texts(*value.values())
        elif isinstance(value, Sequence):
            yield from _texts(*value)


def _printable(value: Any, known: frozenset[int]) -> Any:
    """The same values with every character printable."""
    if isinstance(value, str):
        return _LONG.sub(lambda word: f"{word[0]}{_BREAK}", glyphs.replaced(value, known))
    if isinstance(value, Mapping):
        return {name: _printable(each, known) for name, each in value.items()}
    if isinstance(value, list | tuple):
        return [_printable(each, known) for each in value]
    return value
