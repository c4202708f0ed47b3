"""The pull of the string on a grommet."""

from __future__ import annotations

from collections.abc import Iterator
from math import pi, radians
from typing import NamedTuple

from rimbook.bench.frame_numbers import NAMED
from rimbook.bench.load import forces, resultant
from rimbook.bench.thresholds import Thresholds
from rimbook.site.numbers.cited import CROSS_BOWER
from rimbook.site.numbers.figures import angle, fig, fixed
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.strings_here import bends, ends
from rimbook.site.numbers.topic import Constant, Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import listed

RIGGING = "“Angle Factor Multipliers”, the table of block loads in a wire-rope catalogue (Kulkoni, p. 87)"

# The same table, by the angle between the two lines in degrees. It cuts off where it should round.
PRINTED_FACTORS = {
    0: 2.00,
    20: 1.97,
    40: 1.87,
    60: 1.73,
    80: 1.53,
    90: 1.41,
    100: 1.29,
    120: 1.00,
    140: 0.68,
    160: 0.35,
    180: 0.00,
}


class Printed(NamedTuple):
    """A worked example of the same page: a line of so many lb, so many degrees between its two parts."""

    line_lb: float
    between: float
    factor: float
    load_lb: float


PRINTED_LOADS = (Printed(1000, 50, 1.81, 1810), Printed(1000, 135, 0.76, 760))


def factor(between: float) -> float:
    """The factor for so many degrees between the two parts of a line."""
    return resultant(pi - radians(between))


def _published(limits: Thresholds) -> Iterator[Example]:
    yield Example(
        "The load on a block",
        tuple(
            Line(
                f"{fig(one.line_lb, 'lb')}, {fig(one.between)}° between the two parts of the line",
                f"printed: {fixed(one.factor, 2)} × {fig(one.line_lb)} = {fig(one.load_lb, 'lb')}; here: "
                f"2 × {fig(one.line_lb)} × sin({fig(180 - one.between)}° / 2)",
                fig(one.line_lb * factor(one.between), "lb", 1),
            )
            for one in PRINTED_LOADS
        ),
        f"{RIGGING}, which cuts its factors off after two places",
        Table(
            "The printed factors, and what the code gives",
            ("Turn of the string", "Between the two parts", "Printed", "By this book"),
            tuple(
                (f"{180 - between}°", f"{between}°", fixed(printed, 2), fixed(factor(between), 4))
                for between, printed in sorted(PRINTED_FACTORS.items(), reverse=True)
            ),
        ),
    )


def _here(shown: Shown) -> Iterator[Example]:
    numbers, at = shown.numbers, shown.at_hole
    strings = bends(shown, 0.0)
    force = forces(shown.rim)[shown.hole.address]
    lines = [
        Line(
            "Tension",
            "the usual one of the sport, or the printed limit where that is lower",
            fig(numbers.tension_n, "N", 1),
        ),
        *(
            Line(
                f"{string.name} turns by {angle(string.station.turn)}",
                f"2 × {fig(numbers.tension_n, digits=1)} × sin({angle(string.station.turn)} / 2)",
                fig(string.station.pull_n, "N", 1),
            )
            for string in strings
        ),
        *(
            Line(
                "An end is tied off",
                "its leg pulls with the whole tension",
                fig(numbers.tension_n, "N", 1),
            )
            for _ in range(ends(shown))
        ),
    ]
    if len(strings) + ends(shown) > 1:
        plain_sum = sum(string.station.pull_n for string in strings) + ends(shown) * numbers.tension_n
        lines.append(
            Line(
                "Together, with their directions",
                f"√({fig(abs(force.x), digits=3)}² + {fig(abs(force.y), digits=3)}²) × "
                f"{fig(numbers.tension_n, 'N', 1)}; as plain numbers it would be {fig(plain_sum, 'N', 1)}",
                fig(at.pull_n, "N", 1),
            )
        )
    lines += [
        Line(
            "Pull of the hole",
            f"{fig(at.pull_n, digits=1)} / {fig(numbers.tension_n, digits=1)}",
            f"{fixed(at.pull, 2)} times the tension",
        ),
        Line("Among all holes of the frame", "the hardest-worked hole has rank 1", f"rank {at.rank}"),
        Line(
            "The hardest-worked holes",
            "those named on the page of the frame",
            listed([str(each) for each in numbers.hardest]),
        ),
        Line(
            "All holes together",
            "the sums of all forces and of all moments, over the tension",
            _balance(shown),
        ),
    ]
    yield Example(shown.named, tuple(lines))


def _balance(shown: Shown) -> str:
    holes, pulls = shown.rim.holes, forces(shown.rim)
    across = sum(force.x for force in pulls.values())
    along_y = sum(force.y for force in pulls.values())
    moment = sum(holes[at].at.x * force.y - holes[at].at.y * force.x for at, force in pulls.items())
    return f"{fixed(abs(across), 6)}, {fixed(abs(along_y), 6)} and {fixed(abs(moment), 6)}"


def _tables(limits: Thresholds) -> Iterator[Table]:
    yield Table(
        "What a turn does",
        ("The string turns by", "Pull over tension", "At 10 kg it presses with"),
        tuple(
            (
                f"{turn}°{says}",
                fixed(resultant(radians(turn)), 2),
                fig(10 * resultant(radians(turn)), "kg", 1),
            )
            for turn, says in (
                (0, ", straight on"),
                (30, ""),
                (60, ""),
                (90, ", round the corner"),
                (120, ""),
                (180, ", straight back"),
            )
        ),
    )


TOPIC = Topic(
    slug="pull",
    title="The pull on a grommet",
    asks="How hard does the string press on this grommet?",
    words=texts(
        f"""
        In each hole the string turns from its leg inside the head to its leg outside the rim. The more
        it turns, the harder it presses: not at all where it runs straight on, and with twice its
        tension where it comes straight back.

        The book shows the pull as a multiple of the tension, so the number holds at every tension, and
        in newtons at the tension that is set. Two strings in one hole add with their directions, not as
        plain numbers. The end of a string pulls on its tie-off with its whole tension.

        The holes are ranked by it, the hardest-worked first. The first {NAMED} are named, with those
        that work as hard as the last of them.
        """
    ),
    formulas=(
        Formula("pull", "Pull of one string", "F = 2·T·sin(θ/2)"),
        Formula("pull-shared", "Pull of several legs in one hole", "F = √((Σ X)^2 + (Σ Y)^2)"),
        Formula("multiple", "As a multiple of the tension", "f = F/T"),
        Formula("rigging", "As riggers write it", "F = 2·T·cos(α/2), α = 180° − θ"),
        Formula("balance", "Over a whole frame nothing is left", "Σ X = 0, Σ Y = 0, Σ (x·Y − y·X) = 0"),
    ),
    symbols=(
        Symbol("F", "pull on the grommet, in the plane of the strings", "N"),
        Symbol("T", "tension of the string", "N"),
        Symbol("f", "pull over tension: what the pages show as a multiple"),
        Symbol("θ", "turn: by how much the string changes its direction, 0° for straight on", "°"),
        Symbol("α", "the angle between the two parts of the line, which rigging tables use", "°"),
        Symbol("X", "what one leg pulls to the right", "N"),
        Symbol("Y", "what one leg pulls towards the head", "N"),
        Symbol("x", "place of the hole to the right of the middle of the head", "mm"),
        Symbol("y", "its place towards the head", "mm"),
    ),
    sources=texts(
        f"""
        The parallelogram of forces, of any textbook of mechanics.

        The factors are held against {RIGGING}. It is cut off where it should be rounded, so the two are
        compared within 0.01.

        That all forces and moments cancel is checked for every frame of the book to a
        thousand-millionth of the tension.
        """
    ),
    assumes=texts(
        """
        No friction: the tension is the same all along the string. [The page on friction](friction) says what
        changes.

        The frame is stiff and has just been strung: every pass has the full tension.

        Legs are straight from hole to hole, outside the rim too.
        """
    ),
    stops=texts(
        f"""
        Friction in the grommets and between the strings leaves some of the tension behind.

        A string relaxes. In a published measurement on a tennis racket the tension just after stringing
        was about 30 % below that of the machine ({CROSS_BOWER}).

        So take the pull as a way to compare hole with hole, not as the force on the day.
        """
    ),
    caution="The pull compares holes; it does not promise that a hole will hold. Keep to the tension that "
    "the maker prints, and do not string a cracked frame.",
    here=_here,
    published=_published,
    tables=_tables,
    constants=(
        Constant(
            str(NAMED),
            "so many of the hardest-worked holes are named, and those as hard as the last",
            "assumption",
        ),
    ),
)
