"""The way of the string: passes, legs, shared holes and tie-offs."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator

from rimbook.bench.thresholds import COMMON
from rimbook.rim.types import StringPath
from rimbook.site.numbers.figures import fig
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Topic, texts
from rimbook.site.words import counted, listed


def _here(shown: Shown) -> Iterator[Example]:
    frame = shown.frame
    strung = [hole for hole in frame.drilled if hole.passes]
    passes = sum(len(hole.passes) for hole in strung)
    shared = [str(hole.address) for hole in strung if hole.shared]
    yield Example(
        f"The strings of {frame.name}",
        (
            Line(
                "Passes through the rim",
                f"2 × {frame.mains} + 2 × {frame.crosses}",
                str(2 * frame.mains + 2 * frame.crosses),
            ),
            Line("Holes with a string", "counted on the map", str(len(strung))),
            Line("Shared holes", f"{passes} − {len(strung)}", f"{passes - len(strung)}: {listed(shared)}"),
            *(_legs(path) for path in shown.rim.paths),
            Line(
                "Longest way outside the rim",
                "straight from hole to hole",
                fig(max((_length(shown, path) for path in shown.rim.paths), default=0.0), "mm", 1),
            ),
        ),
    )


def _legs(path: StringPath) -> Line:
    runs = Counter(leg.run for leg in path.legs)
    ends = f"from {path.legs[0].start} to {path.legs[-1].end}" if path.legs else "nowhere"
    name = "One piece" if path.string == "whole" else path.string.capitalize()
    return Line(
        f"{name}, {ends}",
        f"{counted(runs['inside'], 'pass', 'passes')} inside the head",
        f"{counted(runs['outside'], 'leg')} outside the rim",
    )


def _length(shown: Shown, path: StringPath) -> float:
    holes = shown.rim.holes
    return max(
        (holes[leg.end].at.minus(holes[leg.start].at).length for leg in path.legs if leg.run == "outside"),
        default=0.0,
    )


TOPIC = Topic(
    slug="string",
    title="The way of the string",
    asks="In which order does the string go from hole to hole?",
    words=texts(
        """
        The mains lie in one string, from the outermost on the left to the outermost on the right, up
        and down by turns. The two mains in the centre are joined at the end that the map calls the
        start of the mains. The crosses go from side to side by turns, from the end and the side where
        the map says they start.

        Between two passes the string runs outside the rim, from the hole it left to the hole it enters
        next. Each end of a string goes on to a tie-off. Which end takes which is chosen so that the way
        along the rim is the shortest in all.

        Every main and every cross needs a hole at both its ends. Where there are fewer holes than that,
        some are shared.
        """
    ),
    formulas=(
        Formula("passes", "Passes through the rim", "P = 2·M + 2·C"),
        Formula("shared-holes", "Shared holes", "S = P − H"),
        Formula(
            "tie-offs",
            "The way from the end of a string to a tie-off",
            "w = min(|s_1 − s_2|, L − |s_1 − s_2|)",
        ),
    ),
    symbols=(
        Symbol("M", "number of mains, both halves together"),
        Symbol("C", "number of crosses"),
        Symbol("P", "passes: once for each end of each string of the bed"),
        Symbol("H", "holes with a string"),
        Symbol("S", "shared holes, if no hole takes more than two strings"),
        Symbol("s_1", "where the last pass ends, along the rim", "mm"),
        Symbol("s_2", "where the tie-off is, along the rim", "mm"),
        Symbol("L", "length of the rim", "mm"),
        Symbol("w", "the shorter way along the rim", "mm"),
    ),
    sources=texts(
        f"""
        The count of passes is arithmetic. Every map is held to it.

        How mains and crosses are laid: {COMMON}.
        """
    ),
    assumes=texts(
        """
        The string weaves straight on, with no pattern that skips back.

        A string of one piece turns from the last main to the first cross.

        Legs outside the rim are straight from hole to hole.
        """
    ),
    stops=texts(
        """
        Some stringers skip a hole or turn back to save string or to spare a hole. The drawing shows the
        plain way. The pull on the holes where they differ is then another one.

        A real string lies in the groove of the rim and not on the straight line between two holes.
        """
    ),
    here=_here,
)
