"""The nominal pressure under a barrel."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.pressure import bearing_pressure, projected_area
from rimbook.bench.thresholds import Thresholds
from rimbook.site.numbers.cited import MOTT
from rimbook.site.numbers.figures import fig, fixed, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Topic, texts

# Mott, question 3-18: 3550 N on a pin of 10.0 mm over 15.0 mm.
PRINTED_N, PRINTED_WIDTH_MM, PRINTED_LENGTH_MM, PRINTED_MPA = 3550.0, 10.0, 15.0, 23.7


def _published(limits: Thresholds) -> Iterator[Example]:
    area = projected_area(PRINTED_WIDTH_MM, PRINTED_LENGTH_MM)
    pressure = bearing_pressure(PRINTED_N, PRINTED_WIDTH_MM, PRINTED_LENGTH_MM)
    yield Example(
        "A pin of 10.0 mm that bears on 15.0 mm",
        (
            Line(
                "Projected area",
                f"{fixed(PRINTED_WIDTH_MM, 1)} × {fixed(PRINTED_LENGTH_MM, 1)}",
                fig(area, "mm²"),
            ),
            Line("Pressure", f"{fig(PRINTED_N)} / {fig(area)}", fixed(pressure, 3, "MPa")),
            Line("As printed", "", fixed(PRINTED_MPA, 1, "MPa")),
        ),
        f"{MOTT}, question 3-18",
    )


def _here(shown: Shown) -> Iterator[Example]:
    at, part = shown.at_hole, shown.part
    barrel = part.barrel_mm if part else None
    engaged = at.here.reach.engaged_mm
    yield Example(
        shown.named,
        (
            Line("Pull", "see the page on pull", fig(at.pull_n, "N", 1)),
            Line("Barrel", part.name if part else "no part is known", maybe(barrel, "mm")),
            Line("Length in the rim", "the shorter of barrel and rim depth", maybe(engaged, "mm")),
            Line(
                "Nominal pressure",
                f"{fig(at.pull_n, digits=1)} / ({maybe(barrel)} × {maybe(engaged)})",
                maybe(at.pressure_mpa, "MPa", 1),
            ),
        ),
    )


TOPIC = Topic(
    slug="pressure",
    title="The pressure under a barrel",
    asks="Is the pull spread over much plastic or little?",
    words=texts(
        """
        The same pull presses harder through a thin or short barrel than through a thick or long one.
        Divide the pull by the area that the barrel shows from the side: its diameter times the length
        that sits in the rim.

        The book calls this pressure nominal, because the true one is not even. It is good for comparing
        one hole with another, or one part with another in the same hole.
        """
    ),
    formulas=(
        Formula("pressure", "Nominal pressure", "p = F/(d·L)"),
        Formula("bearing-length", "Length that bears", "L = min(l, t)"),
    ),
    symbols=(
        Symbol("p", "nominal pressure; 1 MPa is 1 N on a square millimetre", "MPa"),
        Symbol("F", "pull on the grommet", "N"),
        Symbol("d", "outer diameter of the barrel", "mm"),
        Symbol("L", "length of barrel in the rim", "mm"),
        Symbol("l", "length of the barrel under its flange", "mm"),
        Symbol("t", "rim depth at the hole", "mm"),
    ),
    sources=(f"Bearing pressure, as machine design has it: {MOTT}, equations 3-20 and 3-21.",),
    assumes=texts(
        """
        The pull is spread evenly over the projected area of the barrel.

        All of the pull presses sideways. The part of it along the hole presses the flange instead.
        """
    ),
    stops=texts(
        """
        The true pressure is highest at the inside edge of the rim, where the string turns, and can be
        several times the nominal one.

        The formulas of Hertz for a round bar in a socket do not hold here either: string and opening,
        barrel and bore nearly fill each other.

        It is no strength. No strength of a rim is published, and none is claimed here.
        """
    ),
    here=_here,
    published=_published,
)
