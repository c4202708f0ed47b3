"""Pounds, kilograms and newtons, and the tension at which numbers are shown."""

from __future__ import annotations

from collections.abc import Iterator
from typing import get_args

from rimbook.bench.tension import over_limit, usual_tension
from rimbook.bench.thresholds import Thresholds
from rimbook.bench.units import KG_PER_LB, N_PER_KGF, N_PER_LBF, convert, newtons
from rimbook.book.model import Sport
from rimbook.site.numbers.cited import CROSS_BOWER
from rimbook.site.numbers.figures import fig, fixed
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Constant, Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import UNKNOWN

NIST = "NIST Special Publication 811, appendix B.8"

# “Around 28 kg (274 N or about 62 lb)”: Cross and Bower. They round 274.6 N down.
PRINTED_KG, PRINTED_N, PRINTED_LB = 28.0, 274.0, 62.0


def _published(limits: Thresholds) -> Iterator[Example]:
    yield Example(
        "“Around 28 kg (274 N or about 62 lb)”",
        (
            Line("In newtons", f"{fig(PRINTED_KG)} × {N_PER_KGF}", fig(newtons(PRINTED_KG, "kg"), "N", 1)),
            Line(
                "In pounds", f"{fig(PRINTED_KG)} / {KG_PER_LB}", fig(convert(PRINTED_KG, "kg", "lb"), "lb", 1)
            ),
        ),
        CROSS_BOWER,
    )


def _here(shown: Shown) -> Iterator[Example]:
    frame, limits = shown.frame, shown.limits
    usual, limit = limits.usual_tension_lb.of(frame.sport), frame.tension_limit
    lines = [
        Line(
            "Usual tension of the sport",
            "an assumption, see the table above",
            f"{fig(usual, 'lb')}, {fig(newtons(usual, 'lb'), 'N', 2)}",
        ),
        Line(
            "Limit printed on the frame",
            "as the maker prints it",
            f"{fig(limit.value, limit.unit)}, {fig(newtons(limit.value, limit.unit), 'N', 2)}"
            if limit
            else UNKNOWN,
        ),
        Line("Shown at", "the lower of the two", fig(usual_tension(frame, limits), "N", 2)),
    ]
    if limit:
        caution = over_limit(newtons(limit.value * 1.1, limit.unit), limit)
        lines.append(Line("A tenth above the limit", "the page then says", caution.says if caution else ""))
    yield Example(frame.name, tuple(lines))


def _tables(limits: Thresholds) -> Iterator[Table]:
    yield Table(
        "The same tension in three units",
        ("lb", "kg", "N"),
        tuple(
            (str(pounds), fixed(convert(pounds, "lb", "kg"), 2), fixed(newtons(pounds, "lb"), 1))
            for pounds in (18, 20, 22, 24, 26, 28, 30, 40, 50, 55, 60)
        ),
    )
    sports: tuple[Sport, ...] = get_args(Sport)
    yield Table(
        "The tension at which numbers are shown until you set another",
        ("Sport", "lb", "kg", "N"),
        tuple(
            (
                sport.capitalize(),
                fig(usual),
                fig(convert(usual, "lb", "kg"), digits=1),
                fig(newtons(usual, "lb"), digits=1),
            )
            for sport in sports
            for usual in (limits.usual_tension_lb.of(sport),)
        ),
    )


TOPIC = Topic(
    slug="units",
    title="Tension and its units",
    asks="Which tension do the numbers mean, and what is it in my unit?",
    words=texts(
        """
        A stringing machine shows pounds or kilograms. What it means is a force: the weight of that
        mass. The program works in newtons and changes units only where a number is read or shown.

        Until you set a tension, the pages show the usual one of the sport, or the limit printed on the
        frame where that is lower. Above the printed limit a caution stands beside every number. It
        cannot be hidden.
        """
    ),
    formulas=(
        Formula("units", "Pounds to newtons", f"F = {KG_PER_LB}·{N_PER_KGF}·P"),
        Formula("kilograms", "Kilograms to newtons", f"F = {N_PER_KGF}·K"),
        Formula("usual-tension", "The tension at which numbers are shown", "T = min(T_sport, T_print)"),
        Formula(
            "tension-limit",
            "By how much a tension is above the limit, in per cent",
            "o = 100·(T/T_print − 1)",
        ),
    ),
    symbols=(
        Symbol("P", "tension in pounds", "lb"),
        Symbol("K", "tension in kilograms", "kg"),
        Symbol("F", "the same as a force", "N"),
        Symbol("T", "tension", "N"),
        Symbol("T_sport", "usual tension of the sport", "N"),
        Symbol("T_print", "limit that the maker prints on the frame", "N"),
        Symbol("o", "what is above the limit", "%"),
    ),
    sources=texts(
        f"""
        The factors are exact by definition: {NIST}.

        The usual tension of badminton is one of those tried in Sensors 2023, 23(13), 5957; those of the
        other sports are from memory.
        """
    ),
    assumes=texts(
        """
        Standard gravity, wherever you are. It differs by less than 0.4 % over the earth.
        """
    ),
    stops=texts(
        """
        A machine that is not calibrated does not pull what it shows.

        The tension that is pulled is not the tension that stays; see [the page on pull](pull).
        """
    ),
    caution="The maker’s printed limit comes first. New parts do not raise it.",
    here=_here,
    published=_published,
    tables=_tables,
    thresholds=("usual_tension_lb",),
    constants=(
        Constant(f"{KG_PER_LB} kg", "one pound", f"exact: {NIST}"),
        Constant(f"{N_PER_KGF} N", "the weight of one kilogram in standard gravity", f"exact: {NIST}"),
        Constant(f"{N_PER_LBF:.13f} N", "the weight of one pound", f"exact: {NIST}"),
    ),
)
