"""How many strings go through a barrel: the smallest circle round n circles, and room to thread.

n equal strings of diameter d need a round bore of ratio·d. The ratios are exact and proven: 5 and 6 by
Graham (1968), 8 by Pirl (1969), the others elementary. Two unequal strings need d₁ + d₂. Three unequal
ones need the outer circle of Soddy (Descartes' theorem) when all three touch it, and otherwise that of
the two thickest, beside which the third has room. Strings count as round and stiff: soft or flat ones
need less, knots more.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from rimbook.bench import given
from rimbook.bench.reasons import Missing
from rimbook.bench.thresholds import CLOSE_MM, DEFAULT, Thresholds

RoomWord = Literal["runs free", "tight", "will not go"]

RATIOS: tuple[float, ...] = (
    0.0,
    1.0,
    2.0,
    1 + 2 / math.sqrt(3),
    1 + math.sqrt(2),
    1 + 1 / math.sin(math.pi / 5),
    3.0,
    3.0,
    1 + 1 / math.sin(math.pi / 7),
)
"""Bore over string diameter, by the number of strings."""

MOST_STRINGS = len(RATIOS) - 1


@dataclass(frozen=True, slots=True)
class Room:
    """What the strings need in mm, without room to thread, and what is then spare (lacking below zero)."""

    word: RoomWord | None = None
    strings: int = 0
    needs_mm: float | None = None
    spare_mm: float | None = None
    missing: tuple[Missing, ...] = ()


@dataclass(frozen=True, slots=True)
class Through:
    """How strings of one diameter (mm) go through a barrel."""

    string_mm: float
    word: RoomWord


def in_hole(string_mm: tuple[float, ...], strings: int) -> tuple[float, ...]:
    """The diameters of so many strings in one hole, thinnest first.

    Where fewer diameters are given than strings, the thickest is repeated, which is on the safe side.
    Raises ValueError for no diameter, or more of them than strings.
    """
    given.count("number of strings", strings, most=MOST_STRINGS)
    for each in string_mm:
        given.length("string diameter", each)
    if not string_mm or len(string_mm) > max(strings, 1):
        raise ValueError(f"{len(string_mm)} string diameters are given for {strings} strings.")
    ordered = sorted(string_mm)
    return tuple(ordered + ordered[-1:] * (strings - len(ordered)))[:strings]


def enclosing(string_mm: tuple[float, ...]) -> float:
    """The smallest round bore (mm) that takes these strings side by side, 0 for none.

    Exact for equal strings and for up to three unequal ones; four and more unequal ones are counted as
    if all were the thickest, which is never too small. Raises ValueError for more than eight.
    """
    given.count("number of strings", len(string_mm), most=MOST_STRINGS)
    thick = sorted((given.length("string diameter", each) for each in string_mm), reverse=True)
    if not thick:
        return 0.0
    if len(thick) == 2 or (len(thick) == 3 and thick[2] < thick[0]):
        return thick[0] + thick[1] if len(thick) == 2 else _three(*thick)
    return RATIOS[len(thick)] * thick[0]


def _three(a: float, b: float, c: float) -> float:
    """The smallest circle round three, thickest first.

    Beside two circles in one of diameter a + b, the gap takes a circle of ab(a + b)/(a² + ab + b²): the
    incircle of the arbelos. A thicker third pushes the other two apart (Descartes: 1/D is
    2√(1/ab + 1/bc + 1/ca) − 1/a − 1/b − 1/c).
    """
    if c <= a * b * (a + b) / (a * a + a * b + b * b):
        return a + b
    return 1 / (2 * math.sqrt(1 / (a * b) + 1 / (b * c) + 1 / (c * a)) - 1 / a - 1 / b - 1 / c)


def room(
    bore_mm: float | None, string_mm: tuple[float, ...] | None, thresholds: Thresholds = DEFAULT
) -> Room:
    """Whether these strings (mm, one for each) go through a barrel's inner bore (mm)."""
    missing: list[Missing] = []
    if string_mm == ():
        return Room("runs free", needs_mm=0.0)
    if bore_mm is None:
        missing.append("inner bore")
    if string_mm is None:
        missing.append("string diameter")
    strings = len(string_mm or ())
    needs = None if string_mm is None else enclosing(string_mm)
    if bore_mm is None or needs is None:
        return Room(None, strings, needs, missing=tuple(missing))
    spare = given.length("inner bore", bore_mm) - needs
    return Room(_word(spare, strings, thresholds), strings, needs, spare)


def through(
    bore_mm: float, strings: int, string_mm: tuple[float, ...], thresholds: Thresholds = DEFAULT
) -> tuple[Through, ...]:
    """How so many equal strings go through an inner bore (mm), for each diameter asked about."""
    given.length("inner bore", bore_mm)
    return tuple(
        Through(each, _word(bore_mm - enclosing((each,) * strings), strings, thresholds))
        for each in string_mm
    )


def thickest(bore_mm: float, strings: int, thresholds: Thresholds = DEFAULT) -> float | None:
    """The thickest of so many equal strings (mm) that run free through an inner bore (mm).

    None for no strings at all. 0 where not even the room to thread is there.
    """
    given.length("inner bore", bore_mm)
    if given.count("number of strings", strings, most=MOST_STRINGS) == 0:
        return None
    return max(0.0, bore_mm - thresholds.threading_mm) / RATIOS[strings]


def _word(spare_mm: float, strings: int, thresholds: Thresholds) -> RoomWord:
    if strings == 0 or spare_mm >= thresholds.threading_mm - CLOSE_MM:
        return "runs free"
    return "tight" if spare_mm >= -CLOSE_MM else "will not go"
