"""How often a worn grommet can be turned to fresh plastic."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.thresholds import Thresholds
from rimbook.bench.turns import QUARTERS, turns
from rimbook.site.numbers.figures import fig, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Constant, Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import UNKNOWN, counted, mm


def _here(shown: Shown) -> Iterator[Example]:
    part, need, found = shown.part, shown.need, shown.at_hole.here.turns
    thickest = shown.limits.string_mm.of(need.sport)[-1]
    groove = thickest * shown.limits.groove_per_string
    opening, flange = (part.bore_mm, part.flange_mm) if part else (None, None)
    land = (flange - opening) / 2 if flange is not None and opening is not None else None
    yield Example(
        f"{part.name if part else 'An unknown part'} in {shown.named}, {counted(need.strings, 'string')}",
        (
            Line(
                "Groove of the thickest usual string",
                f"{fig(shown.limits.groove_per_string)} × {fig(thickest)}",
                fig(groove, "mm", 3),
            ),
            Line(
                "Angle it takes",
                f"2 × asin({fig(groove, digits=3)} / {maybe(opening)})",
                UNKNOWN if found.groove_deg is None else f"{fig(found.groove_deg, digits=1)}°",
            ),
            Line(
                "Flange round the opening",
                f"({maybe(flange)} − {maybe(opening)}) / 2",
                f"{maybe(land, 'mm')}; it takes {fig(shown.limits.land_per_string * thickest, 'mm')}",
            ),
            Line(
                "Fresh positions when it is new",
                f"shared between {counted(need.strings, 'string')}",
                UNKNOWN if found.positions is None else str(found.positions),
            ),
            *(
                Line(
                    f"Left to turn to after {counted(quarters, 'quarter turn')}",
                    "",
                    UNKNOWN if (left := found.left(quarters)) is None else str(left),
                )
                for quarters in (0, 1, 2)
            ),
        ),
    )


def _tables(limits: Thresholds) -> Iterator[Table]:
    string = limits.string_mm.badminton[-1]
    groove = string * limits.groove_per_string
    rows = []
    for opening in (0.9, 1.1, 1.3, 1.6, 2.0):
        one = turns(groove, opening, 5.0, 1, thresholds=limits)
        two = turns(groove, opening, 5.0, 2, thresholds=limits)
        rows.append(
            (mm(opening), f"{maybe(one.groove_deg, digits=0)}°", str(one.positions), str(two.positions))
        )
    yield Table(
        f"Fresh positions of a part with a wide flange, for a string of {fig(string, 'mm')}",
        ("Opening", "Angle of the groove", "One string", "Two strings"),
        tuple(rows),
    )


TOPIC = Topic(
    slug="turns",
    title="Turning a worn grommet",
    asks="Can I turn it instead of changing it, and how often?",
    words=texts(
        """
        A string wears a groove where it bends over the mouth of the opening. Turn the part by a
        quarter, and the string lies on fresh plastic, as long as the groove takes no more than a
        quarter of the way round. A wider groove leaves only a half turn, and a still wider one none.

        The mouth is the smallest circle that the groove crosses, so it decides. The flange only has to
        be wide enough to carry the string. Two strings in one hole wear two places at a time.

        Strips and two-post parts cannot be turned.
        """
    ),
    formulas=(
        Formula("groove", "Width of a groove", "w = g·d"),
        Formula("groove-angle", "Angle that the groove takes", "γ = 2·asin(w/B)"),
        Formula("land", "The flange carries the string where", "(f − B)/2 ≥ i·d"),
        Formula(
            "positions",
            "Fresh positions of a new part: four where γ is at most 90°, two up to 180°, else one",
            "P = max(1, ⌊Q/n⌋)",
        ),
        Formula("turns-left", "Fresh positions left after some quarter turns", "R = max(0, P − 1 − ⌈k/z⌉)"),
    ),
    symbols=(
        Symbol("d", "diameter of the string", "mm"),
        Symbol("g", "width of a groove over string diameter"),
        Symbol("w", "width of the groove", "mm"),
        Symbol("B", "opening inside the barrel", "mm"),
        Symbol("γ", "angle of the groove, seen along the barrel", "°"),
        Symbol("f", "diameter of the flange", "mm"),
        Symbol("i", "width of flange that a string takes, over its diameter"),
        Symbol("Q", f"places round the mouth: {QUARTERS}, {QUARTERS // 2} or 1"),
        Symbol("n", "strings in the hole"),
        Symbol("P", "fresh positions when new, the first one included"),
        Symbol("k", "quarter turns already spent"),
        Symbol("z", "quarter turns from one fresh position to the next, 1 or 2"),
        Symbol("R", "fresh positions left to turn to"),
    ),
    sources=texts(
        """
        That a worn grommet is turned by about 90°, until nothing fresh is left: common practice, no
        published source.

        The angle of a groove across a round mouth is the angle of a chord, of any textbook of geometry.

        The width of a groove is an assumption.
        """
    ),
    assumes=texts(
        """
        The part can turn in its hole, and nothing of it is split or missing.

        A groove is as wide as the string that wore it needs, and no more.

        A quarter turn where only a half one is fresh spoils the place that it leads towards.
        """
    ),
    stops=texts(
        """
        A groove cut by a sawing string is wider than this, or deeper than the wall.

        A part that is glued, squeezed hard or oval does not turn. A split part is changed, not turned.

        Look at the part: what you see comes before what is worked out.
        """
    ),
    here=_here,
    tables=_tables,
    thresholds=("groove_per_string", "land_per_string"),
    constants=(Constant(f"{QUARTERS}", "quarter turns go once round", "geometry"),),
)
