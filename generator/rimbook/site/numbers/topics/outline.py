"""The outline of the head, and the places of the holes on it."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache

from rimbook.bench.thresholds import COMMON, Thresholds
from rimbook.book.address import SIDES
from rimbook.book.model import Address, End, Frame, Head, Pass
from rimbook.rim.half import Half, halves
from rimbook.rim.outline import STEPS, curve
from rimbook.rim.places import DERIVED_GAP_MM, MEASURED_GAP_MM, bed
from rimbook.rim.spacing import Spacing, spacing
from rimbook.site.numbers.figures import fig, fixed
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import (
    Constant,
    Example,
    Formula,
    Line,
    Symbol,
    Table,
    Topic,
    texts,
)
from rimbook.site.words import ordinal

# Ramanujan's second approximation for an ellipse with the half axes 5 and 3, as a published calculator of
# ellipses prints it.
PRINTED_PERIMETER = 25.526999


def _published(limits: Thresholds) -> Iterator[Example]:
    length = curve(Head("ellipse", 6, 10)).length_mm
    yield Example(
        "The length of an ellipse with half axes of 5 and 3",
        (
            Line("As printed", "Ramanujan’s second approximation", fixed(PRINTED_PERIMETER, 6)),
            Line("By this book", f"{2 * STEPS} straight pieces round the ellipse", fixed(length, 6)),
            Line(
                "Difference", "the pieces cut the corners", f"{fig(abs(length - PRINTED_PERIMETER), '', 6)}"
            ),
        ),
        "a published calculator of the perimeter of an ellipse",
    )


def _here(shown: Shown) -> Iterator[Example]:
    frame, hole = shown.frame, shown.hole
    placed = shown.rim.holes[hole.address]
    meets = [_meets(frame, hole.address, each) for each in hole.passes]
    lines = [
        Line(
            "The outline",
            f"{frame.head.outline}, {fig(frame.head.width_mm)} × {fig(frame.head.height_mm, 'mm')}",
            f"{fig(shown.rim.curve.length_mm, 'mm', 1)} round",
        ),
        *(line for lines, _ in meets for line in lines),
    ]
    if placed.place == "derived" and meets:
        lines.append(
            Line(
                "The place",
                "midway between the two" if len(meets) > 1 else "where the string meets the rim",
                f"{fig(sum(down for _, down in meets) / len(meets), 'mm', 1)} down the side",
            )
        )
    side = "clockwise" if hole.address.side == "R" else "clockwise, all the way round"
    lines.append(
        Line(
            f"{hole.address} as placed",
            f"{placed.place}, in order with its neighbours",
            f"{fig(placed.along_mm, 'mm', 1)} {side}, at "
            f"x = {fig(placed.at.x, 'mm', 1)}, y = {fig(placed.at.y, 'mm', 1)}",
        )
    )
    yield Example(f"{hole.address} of {frame.name}", tuple(lines))


def _meets(frame: Frame, address: Address, string: Pass) -> tuple[list[Line], float]:
    """Where one string, drawn straight, meets the rim: in words, and in mm down the side."""
    half: Half = halves(frame.head)[SIDES.index(address.side)]
    even: Spacing = bed(frame)
    if string.kind == "c":
        y = even.cross(string.number)
        working = f"{ordinal(string.number)} cross, at y = {fig(y, 'mm', 1)}"
        down = half.crosses.along(-y)
    else:
        x = even.main(string.number)
        end = _end(frame, address, string)
        working = (
            f"({string.number} − 0.5) × {fig(even.mains_mm, 'mm')} = {fig(x, 'mm', 1)} from the centre line, "
            f"at the {end}"
        )
        down = half.mains[end].along(x)
    return [Line(f"{string} meets the rim", working, f"{fig(down, 'mm', 1)} down the side")], down


def _end(frame: Frame, address: Address, string: Pass) -> End:
    numbers = [
        hole.address.number
        for hole in frame.drilled
        if hole.address.side == address.side and string in hole.passes
    ]
    return "head" if address.number == min(numbers) else "throat"


@cache
def _room() -> tuple[float, float]:
    """How much room is left beyond the outermost strings of an evenly filled head, in spacings."""
    frame = Frame("even", "even", "even", "badminton", Head("ellipse", 200, 200), 20, 20, ())
    even = spacing(frame, [])
    return 200 / even.mains_mm - frame.mains, 200 / even.crosses_mm - frame.crosses


def _tables(limits: Thresholds) -> Iterator[Table]:
    yield Table(
        "The four kinds of outline",
        ("Kind", "What it is"),
        (
            ("ellipse", "an oval; a circle where width and height are alike"),
            ("superellipse", "squarer than an ellipse where its exponent is more than 2"),
            (
                "teardrop",
                "narrower towards the throat; a taper of 0 is an ellipse, beyond 1 the sides are hollow",
            ),
            ("points", "measured points, joined by a smooth line that passes through each of them"),
        ),
    )


TOPIC = Topic(
    slug="outline",
    title="The outline, and the places of the holes",
    asks="Where on the rim does a hole sit, and how is that known?",
    words=texts(
        f"""
        A map gives the width and the height of the head on the line of the holes, and what kind of
        curve it is. The program walks that curve in {2 * STEPS} short straight pieces, clockwise from
        the middle of the head, and measures along them.

        A place that somebody measured is kept as it is. Every other place is derived: draw the strings
        straight and evenly spaced, and the hole sits where its string meets the rim. A shared hole sits
        midway between the places of its two strings. A hole without a string lies evenly between its
        neighbours.

        Derived places beside measured ones are shifted as those are. Places that would come too near,
        or in the wrong order, are moved apart by as little as can be. So the order of the walk always
        holds, and counting holes is safe even where a place is some way off.
        """
    ),
    formulas=(
        Formula("curve", "Ellipse", "(x/a)^2 + (y/b)^2 = 1"),
        Formula("superellipse", "Superellipse", "|x/a|^n + |y/b|^n = 1"),
        Formula("teardrop", "Teardrop", "x = A·sin(t)·(1 + k·cos(t)), y = b·cos(t), k = τ/√2"),
        Formula(
            "points",
            "Measured points: how fast the line leaves one point for the next. It runs there as the circle "
            "through the point and its two neighbours does",
            "v = q/cos(β/4)^2",
        ),
        Formula("along", "Length along the rim", "s = Σ √(Δx^2 + Δy^2)"),
        Formula("spacing", "Distance of main i from the centre line", "x_i = (i − 1/2)·m"),
        Formula("crosses", "Height of cross j", "y_j = y_0 + ((C + 1)/2 − j)·c"),
        Formula("place", "Derived place of a hole that two strings share", "s = (s_1 + s_2)/2"),
        Formula(
            "order",
            "Places put in order: the least sum of squared shifts in which every gap keeps its least width",
            "Q = Σ (s_i − w_i)^2, s_i − s_h ≥ g",
        ),
    ),
    symbols=(
        Symbol("x", "to the right of the middle of the head", "mm"),
        Symbol("y", "towards the head", "mm"),
        Symbol("a", "half the width of the head", "mm"),
        Symbol("b", "half its height", "mm"),
        Symbol("n", "exponent of a superellipse"),
        Symbol("τ", "taper of a teardrop, 0 to 1"),
        Symbol("k", "how far it narrows"),
        Symbol("A", "chosen so that the widest place of a teardrop is 2·a", "mm"),
        Symbol("t", "the angle that runs once round a teardrop", "°"),
        Symbol("q", "straight distance of two measured points", "mm"),
        Symbol("β", "by how much the line turns between them", "°"),
        Symbol("v", "how fast the line leaves a point, for each step from one point to the next", "mm"),
        Symbol("i", "number of a main from the centre line, or of a hole on its side"),
        Symbol("j", "number of a cross from the head"),
        Symbol("s", "place of a hole along the rim from the middle of the head", "mm"),
        Symbol("w", "the place it would have by its string alone", "mm"),
        Symbol("Q", "sum of squared shifts, made as small as can be", "mm²"),
        Symbol("s_h", "the place of the hole before it", "mm"),
        Symbol("g", "least gap between two derived places", "mm"),
        Symbol("m", "spacing of the mains", "mm"),
        Symbol("c", "spacing of the crosses", "mm"),
        Symbol("C", "number of crosses"),
        Symbol("y_0", "height of the middle cross, chosen so that shared holes fit best", "mm"),
    ),
    sources=texts(
        f"""
        Ellipse and superellipse: the Lamé curve of any textbook of plane curves.

        Teardrop: the pear-shaped curve between an ellipse and the piriform (E. W. Weisstein,
        “Piriform”, MathWorld).

        Measured points: cubic pieces after Hermite, as fast at their ends as the usual cubic for an
        arc.

        Order: isotonic regression by pooling adjacent violators (R. E. Barlow and others, Statistical
        Inference under Order Restrictions, 1972).

        Even spacing and the gap that is kept: {COMMON}.
        """
    ),
    assumes=texts(
        f"""
        The mains are straight, parallel and evenly spaced; the crosses too, at right angles to them.

        Where a map gives no spacing, it is chosen by least squares so that wherever a cross and a main
        share a hole, both meet the rim there. It is drawn weakly towards a head filled evenly: about
        {fig(_room()[0] / 2, digits=0)} spacing of room beyond the outermost main on each side, and
        {fig(_room()[1] / 2, digits=1)} beyond the first and the last cross.

        All holes lie on one line, in the plane of the strings.
        """
    ),
    stops=texts(
        """
        A real head is none of these curves. Where drawing and racket differ by more than a millimetre
        or two, measure points.

        Many frames space their crosses unevenly, or fan their mains. In a trial on 200 made-up frames
        of known spacing the worst hole was 3.4 mm off in the middle case, and 8.4 mm in one of twenty.
        Nobody should drill by a derived place.
        """
    ),
    here=_here,
    published=_published,
    tables=_tables,
    thresholds=("derived_place_mm",),
    constants=(
        Constant(
            f"{2 * STEPS}",
            "straight pieces round the head",
            "by trial: short of a tennis head by under 0.005 mm",
        ),
        Constant(fig(DERIVED_GAP_MM, "mm"), "least gap between derived places, clear of the flanges"),
        Constant(
            fig(MEASURED_GAP_MM, "mm"),
            "gap that is left where measured places are out of order",
            "assumption: finer than any calliper reads",
        ),
    ),
)
