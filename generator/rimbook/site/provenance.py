"""Where each fact of a frame comes from: measured by whom, worked out, or unknown and how to find out."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from rimbook.bench.parts_list import Needed
from rimbook.book.model import Catalogue, Frame, Hole, Part
from rimbook.rim.types import Rim
from rimbook.site.spans import plain, selectors, spans
from rimbook.site.words import counted, day, listed, mm, number, percent

NOBODY = "nobody signed for it"
WORKED_OUT = "worked out"
_NAMED = 6

_SIZES = {
    "single": ("barrel_mm", "bore_mm", "length_mm"),
    "wide": ("barrel_mm", "bore_mm", "length_mm"),
    "twin-even": ("barrel_mm", "bore_mm", "length_mm", "pitch_mm"),
    "twin-uneven": ("barrel_mm", "bore_mm", "length_mm", "pitch_mm"),
    "strip": ("barrel_mm", "bore_mm", "length_mm"),
    "set": (),
}
SIZE_WORDS = {
    "barrel_mm": "barrel",
    "bore_mm": "opening",
    "length_mm": "length",
    "pitch_mm": "distance of the posts",
}


class Fact(NamedTuple):
    """A kind of fact, what is known of it, and where that comes from."""

    what: str
    known: str
    source: str


def facts(rim: Rim, needed: Sequence[Needed], catalogue: Catalogue) -> list[Fact]:
    """Every kind of fact on a frame's page. `needed` is its parts list."""
    drilled = rim.frame.drilled
    bores = [hole for hole in drilled if hole.bore_mm is None]
    parts = [hole for hole in drilled if hole.part is None]
    depths = [hole for hole in drilled if hole.rim_depth_mm is None]
    ids = dict.fromkeys(line.part for line in needed if line.part is not None)
    fitted = [catalogue[part] for part in ids if part in catalogue]
    return [
        _of_holes("Bore", drilled, bores, "measure with pin gauges or the shanks of drills", rim.frame),
        _of_holes("Part", drilled, parts, "measure the barrel of what sits there with a calliper", rim.frame),
        _sizes(fitted),
        _of_holes("Rim depth", drilled, depths, "measure with a calliper across the rim", rim.frame),
        _outline(rim.frame),
        _places(rim),
    ]


def unknown_sizes(part: Part) -> tuple[str, ...]:
    """The sizes that a part of its kind has and nobody has measured, in words."""
    return tuple(SIZE_WORDS[name] for name in _SIZES[part.kind] if getattr(part, name) is None)


def measured_words(frame: Frame) -> str:
    """Who measured the map, when, with what and how finely, as a sentence."""
    measured = frame.measured
    if measured is None:
        return "Nobody has signed this map yet: take every number as unconfirmed."
    words = f"Measured by {measured.by}"
    words += f" on {day(measured.on)}" if measured.on else ", on a day not written down"
    words += f" with {measured.tool}" if measured.tool else ", with a tool not written down"
    if measured.resolution_mm is None:
        return f"{words}, how finely is not written down."
    return f"{words}, read to {mm(measured.resolution_mm)}."


def confirmed_words(frame: Frame) -> str:
    """Who has confirmed the map, as a sentence."""
    if not frame.confirmed:
        return "Nobody else has confirmed it yet."
    people = [f"{each.by} on {day(each.on)}" if each.on else each.by for each in frame.confirmed]
    return f"Confirmed against another racket by {listed(people)}."


def _by(frame: Frame) -> str:
    return f"measured by {frame.measured.by}" if frame.measured else NOBODY


def _of_holes(what: str, drilled: Sequence[Hole], missing: Sequence[Hole], advice: str, frame: Frame) -> Fact:
    total = len(drilled)
    if not missing:
        return Fact(what, f"known for all {counted(total, 'hole')}", _by(frame))
    if len(missing) == total:
        return Fact(what, f"unknown for every hole – {advice}", "nobody has measured it")
    where = plain(tuple(spans(selectors(hole.address for hole in missing))))
    known = total - len(missing)
    words = f"known for {known} of {total} holes ({percent(known, total)} %); unknown at {where} – {advice}"
    return Fact(what, words, _by(frame))


def _sizes(parts: Sequence[Part]) -> Fact:
    what = "Sizes of the parts"
    if not parts:
        return Fact(what, "unknown, as are the parts", "nobody has measured them")
    missing = [part for part in parts if unknown_sizes(part)]
    words = f"known for all {counted(len(parts), 'part')}"
    if missing:
        named = [f"{part.name} ({', '.join(unknown_sizes(part))})" for part in missing[:_NAMED]]
        words = f"known for {len(parts) - len(missing)} of {counted(len(parts), 'part')}"
        words += f"; unknown of {listed(named)}"
        words += " and others" if len(missing) > _NAMED else ""
    people = sorted({part.measured.by for part in parts if part.measured})
    signed = sum(part.measured is not None for part in parts)
    if not people:
        return Fact(what, words, NOBODY)
    source = f"measured by {listed(people[:_NAMED])}" + (" and others" if len(people) > _NAMED else "")
    unsigned = f"; {counted(len(parts) - signed, 'part')} unsigned" if signed < len(parts) else ""
    return Fact(what, words, source + unsigned)


def _outline(frame: Frame) -> Fact:
    head = frame.head
    if head.outline == "points":
        words = f"{counted(len(head.points_mm), 'point')} round the rim, the curve between them worked out"
        return Fact("Outline", words, _by(frame))
    shape = {"ellipse": "an ellipse", "superellipse": "a superellipse", "teardrop": "a teardrop"}[
        head.outline
    ]
    chosen = f" of exponent {number(head.exponent)}" if head.exponent is not None else ""
    chosen += f" of taper {number(head.taper)}" if head.taper is not None else ""
    words = f"{shape}{chosen} through the width and height of the head"
    return Fact("Outline", words, f"width and height {_by(frame)}; the curve is {WORKED_OUT}")


def _places(rim: Rim) -> Fact:
    total = len(rim.holes)
    measured = sum(hole.place == "measured" for hole in rim.holes.values())
    if measured == total:
        return Fact("Place", "all measured along the rim", _by(rim.frame))
    if measured == 0:
        return Fact("Place", "all worked out from the string pattern, none measured", WORKED_OUT)
    words = f"{measured} of {total} measured along the rim, the others worked out from the string pattern"
    return Fact("Place", words, f"{_by(rim.frame)}; the others {WORKED_OUT}")
