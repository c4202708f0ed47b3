"""Friction of the string in the grommets, as an option."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi
from typing import NamedTuple

from rimbook.bench.load import forces
from rimbook.bench.tension import MOST_FRICTION, capstan, pull_of
from rimbook.bench.thresholds import Thresholds
from rimbook.site.numbers.figures import angle, fig, fixed
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.strings_here import bends
from rimbook.site.numbers.topic import Constant, Example, Formula, Line, Symbol, Topic, texts


class Printed(NamedTuple):
    """A published example: a force in N held behind a turn (in turns of 360°) at a coefficient µ."""

    title: str
    says: str
    force_n: float
    friction: float
    turns: float
    held_n: float
    source: str


PRINTED = (
    Printed(
        "100 kg on a rope over a beam, three quarters of a turn",
        "100 kg × 9.81 m/s²",
        100 * 9.81,
        0.2,
        0.75,
        382.26,
        "“Engineering Mechanics 1”, exercise 27, rope friction (pickedshares)",
    ),
    Printed(
        "1000 N held by one and a half turns",
        "",
        1000,
        0.25,
        1.5,
        94.78,
        "“Examples: rope friction”, a collection of exercises for civil engineers (Transtutors)",
    ),
)


def _published(limits: Thresholds) -> Iterator[Example]:
    for one in PRINTED:
        yield Example(
            one.title,
            (
                Line("Pulled with", one.says, fig(one.force_n, "N")),
                Line(
                    f"Held behind {fig(360 * one.turns)}° at µ = {fig(one.friction)}",
                    f"{fig(one.force_n)} × e^(−{fig(one.friction)} × {fig(2 * pi * one.turns, digits=4)})",
                    fixed(capstan(one.force_n, one.friction, 2 * pi * one.turns), 2, "N"),
                ),
                Line("As printed", "", fixed(one.held_n, 2, "N")),
            ),
            one.source,
        )


def _here(shown: Shown) -> Iterator[Example]:
    tension, friction = shown.numbers.tension_n, shown.limits.friction
    lines = [Line("Coefficient", "an assumption, see the table above", f"µ = {fig(friction)}")]
    for string in bends(shown, friction):
        at = string.station
        lines += [
            Line(
                f"{string.name}: tension outside the rim",
                f"{fig(tension, digits=1)} × e^(−{fig(friction)} × {fig(string.outside)}): the sharper turn "
                f"at the ends of that leg is {angle(string.outside)}",
                fig(min(at.before_n, at.after_n), "N", 1),
            ),
            Line(
                f"{string.name}: pull, turning by {angle(at.turn)}",
                f"√({fig(at.before_n, digits=1)}² + {fig(at.after_n, digits=1)}² − 2 × "
                f"{fig(at.before_n, digits=1)} × {fig(at.after_n, digits=1)} × cos({angle(at.turn)}))",
                fig(pull_of(at.before_n, at.after_n, at.turn), "N", 1),
            ),
        ]
    pulled = forces(shown.rim, friction=friction)[shown.hole.address].length
    lines.append(
        Line(
            "Pull of the hole",
            f"without friction it is {fixed(shown.at_hole.pull, 2)} times the tension",
            f"{fixed(pulled, 2)} times the tension",
        )
    )
    yield Example(shown.named, tuple(lines))


TOPIC = Topic(
    slug="friction",
    title="Friction, as an option",
    asks="What if the string sticks a little in the grommets?",
    words=texts(
        """
        A string that slides round a bend is held back by it. Behind the bend some of its tension is
        missing: the more it turns and the rougher the bend, the more. A rope round a post works the
        same way.

        The pages show the pull without friction, unless you ask for it. With friction every pass inside
        the head keeps the full tension, as the machine pulls each of them; every leg outside the rim
        keeps what the sharper turn at its two ends lets through. Its pull is then that of two unequal
        tensions.

        No published value of the coefficient was found for string on grommet. So it is a number that
        you set, and that stands beside the result.
        """
    ),
    formulas=(
        Formula("friction", "Tension that is left behind a turn", "T_2 = T_1·e^(−μ·θ)"),
        Formula("unequal", "Pull of two unequal tensions", "F = √(T_1^2 + T_2^2 − 2·T_1·T_2·cos(θ))"),
        Formula("equal", "The same where both are equal", "F = 2·T·sin(θ/2)"),
    ),
    symbols=(
        Symbol("T_1", "tension before the turn", "N"),
        Symbol("T_2", "tension behind it", "N"),
        Symbol("μ", "coefficient of friction of string on grommet"),
        Symbol("θ", "turn, in radians where it stands in the exponent", "rad"),
        Symbol("e", "the base of natural logarithms, 2.718…"),
        Symbol("F", "pull on the grommet", "N"),
    ),
    sources=texts(
        """
        The capstan equation of Euler and Eytelwein; W. E. Morton and J. W. S. Hearle, Physical
        Properties of Textile Fibres, equation 25.2.

        Unequal tensions: the law of cosines.

        Coefficients: nylon on nylon is printed from 0.04 to 0.13, and cast nylon at 0.32 (J. F.
        Shackelford, CRC Materials Science and Engineering Handbook, Table 399). P. J. Blau (Tribology
        International 34 (2001), 585) says that tabulated coefficients are routinely misapplied. None of
        them is string on grommet.
        """
    ),
    assumes=texts(
        """
        A string without stiffness or stretch, on the verge of sliding: the loss is the most there can
        be.

        The same coefficient in every hole.

        Each pass was pulled by itself, as on a machine.
        """
    ),
    stops=texts(
        """
        A string that does not slide may keep more tension than this outside the rim, or less in a pass
        that moved while the next was pulled.

        Friction between mains and crosses is left out.

        It must not be turned round to work out µ from a loss of tension: the string also relaxes, and
        the frame gives way.
        """
    ),
    here=_here,
    published=_published,
    thresholds=("friction",),
    constants=(
        Constant(
            fig(MOST_FRICTION),
            "largest coefficient that is taken",
            "assumption: beyond it, a slip of the pen",
        ),
    ),
)
