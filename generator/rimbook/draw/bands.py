"""Parts that take several holes, drawn along the rim: strips, bumper strips and two-post parts."""

from __future__ import annotations

from collections.abc import Mapping

from rimbook.book.model import Address, Catalogue, Frame
from rimbook.draw import palette, svg
from rimbook.draw.key import kind_of
from rimbook.draw.ring import Ring, Sight
from rimbook.draw.svg import Markup, Spot
from rimbook.rim.types import Rim

CLEAR = 3.2
"""From the rim band to the middle of a strip."""

WIDTH = 4.6
"""What a strip takes outside the rim."""

_OVERHANG_MM = 2.2

CROWN = 2.6
"""From the rim band to the back of a staple."""


def middle(ring: Ring, along: dict[int, float], run: list[int]) -> float:
    """Half-way along a run of places (mm)."""
    span = (along[run[-1]] - along[run[0]]) % ring.length_mm
    return (along[run[0]] + span / 2) % ring.length_mm


def strip_runs(frame: Frame) -> list[list[int]]:
    """The places of each strip that covers any, in clockwise order, as indices into `frame.holes`."""
    index = {hole.address: i for i, hole in enumerate(frame.holes)}
    return [run for strip in frame.strips if (run := [index[at] for at in strip.holes if at in index])]


def twin_runs(frame: Frame) -> list[list[int]]:
    """The two places of each two-post part, in clockwise order."""
    index = {hole.address: i for i, hole in enumerate(frame.holes)}
    return [[index[address] for address in twin.holes] for twin in frame.twins]


def layer(
    frame: Frame, catalogue: Catalogue, ring: Ring, along: dict[int, float], half_band: float, radius: float
) -> Markup:
    """Strips outside the rim with their end caps, and the staples of two-post parts."""
    drawn = []
    out = half_band + CLEAR
    for run in strip_runs(frame):
        start, end = along[run[0]] - _OVERHANG_MM, along[run[-1]] + _OVERHANG_MM
        drawn.append(strip_band(ring.beside(start, end, out), kind_of(frame, catalogue, frame.holes[run[0]])))
        drawn.append(caps([(ring.at(at, out - 2.8), ring.at(at, out + 2.8)) for at in (start, end)]))
    for first, last in twin_runs(frame):
        kind = kind_of(frame, catalogue, frame.holes[first])
        short, long = reaches(kind, radius)
        crown = ring.beside(along[first], along[last], half_band + CROWN)
        drawn.append(staple([ring.at(along[first], -short), *crown, ring.at(along[last], -long)], kind))
    return svg.layer("parts", *drawn, stroke_linejoin="round")


def strip_band(spots: list[Spot], kind: str) -> Markup:
    """A strip's band: plain, ribbed for a bumper strip, broken where nobody knows the part."""
    line = svg.polyline(spots)
    ink = palette.STRIP.light
    if kind == "strip-unknown":
        return svg.path(
            line, class_="strip-band strip-unknown", stroke=ink, stroke_width=2.6, stroke_dasharray="3 2"
        )
    if kind == "strip":
        return svg.path(line, class_="strip-band", stroke=ink, stroke_width=2.6)
    return svg.group(
        svg.path(line, class_="strip-band bumper", stroke=ink, stroke_width=4.8),
        svg.path(
            line, class_="ribs", stroke=palette.PAGE.light, stroke_width=2.4, stroke_dasharray="1.4 2.2"
        ),
    )


def caps(pairs: list[tuple[Spot, Spot]]) -> Markup:
    """Where a strip begins and ends."""
    return svg.path(svg.segments(pairs), class_="strip-cap", stroke=palette.TEXT.light, stroke_width=1.4)


def reaches(kind: str, radius: float) -> tuple[float, float]:
    """How far each leg of a staple reaches past the middle of its hole, in clockwise order."""
    short, long = radius + 2.4, radius + 8.0
    return (long if kind == "twin-long-first" else short), (long if kind == "twin-long-last" else short)


def staple(spots: list[Spot], kind: str) -> Markup:
    """A two-post part as a staple through both holes: legs as unequal as its posts, broken where unknown."""
    style = "twin-uneven" if kind.startswith("twin-long") else kind
    dashes = "2.4 1.4" if kind == "twin-unsaid" else None
    return svg.path(
        svg.polyline(spots),
        class_=f"twin-staple {style}",
        stroke=palette.TEXT.light,
        stroke_width=2,
        stroke_dasharray=dashes,
    )


def outside_runs(rim: Rim, ring: Ring, sights: Mapping[Address, Sight], out: float) -> str:
    """Path data of the string outside the rim, from hole to hole by the shorter way."""
    holes, length = rim.holes, ring.length_mm
    data = []
    for start, end, run in (leg for way in rim.paths for leg in way.legs):
        if run == "outside":
            a, b = holes[start].along_mm, holes[end].along_mm
            first, last = sights[start], sights[end]
            if (b - a) % length > length / 2:
                a, b, first, last = b, a, last, first
            spots = [first.out(0), first.out(out), *ring.between(a, b, out), last.out(out), last.out(0)]
            data.append(svg.polyline(spots))
    return "".join(data)
