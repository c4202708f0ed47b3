"""How often a worn grommet can be turned so that the string lies on fresh plastic.

A string wears a groove where it bends over the mouth of the bore. Seen along the barrel, a groove of
width w across a mouth of diameter b takes the angle 2·asin(w/b). A quarter turn finds fresh plastic when
that is at most 90°, a half turn when it is at most 180°. The mouth is the smallest circle the groove
crosses, so it decides; the flange only has to be wide enough to carry the string. Each string in the
hole takes a place of its own. That a worn grommet is turned by about 90°, until nothing fresh is left,
is common practice without a published source. Assumes that the part can turn, and that nothing is split.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from rimbook.bench import given
from rimbook.bench.reasons import Missing
from rimbook.bench.thresholds import CLOSE_MM, DEFAULT, Thresholds

QUARTERS = 4


@dataclass(frozen=True, slots=True)
class Turns:
    """How many positions of a part are fresh when it is new (the first one included).

    `step` is how many quarter turns lead from one to the next, and `groove_deg` the angle of a groove.
    """

    positions: int | None = None
    step: int = 1
    groove_deg: float | None = None
    missing: tuple[Missing, ...] = ()

    def left(self, quarter_turns: int) -> int | None:
        """How many fresh positions are left to turn to after so many quarter turns.

        A quarter turn where only a half one is fresh spoils the place it leads towards. None where
        nobody knows how many there were; ValueError below zero.
        """
        given.count("number of quarter turns", quarter_turns, most=1000)
        if self.positions is None:
            return None
        return max(0, self.positions - 1 - math.ceil(quarter_turns / self.step))


def turns(
    groove_mm: float | None,
    bore_mm: float | None,
    flange_mm: float | None,
    strings: int = 1,
    *,
    can_turn: bool = True,
    thresholds: Thresholds = DEFAULT,
) -> Turns:
    """The fresh positions of a part with this groove, inner bore and flange (mm) and so many strings.

    `can_turn` is False for strips and two-post parts. Raises ValueError for a flange no wider than the bore.
    """
    given.count("number of strings", strings, most=8)
    if not can_turn:
        return Turns(1)
    missing: list[Missing] = []
    if bore_mm is None:
        missing.append("inner bore")
    if flange_mm is None:
        missing.append("flange")
    if groove_mm is None:
        missing.append("string diameter")
    if bore_mm is None or flange_mm is None or groove_mm is None:
        return Turns(missing=tuple(missing))
    given.length("groove", groove_mm)
    given.length("inner bore", bore_mm)
    if given.length("flange", flange_mm) <= bore_mm:
        raise ValueError(f"The flange of {flange_mm:g} mm is no wider than the inner bore of {bore_mm:g} mm.")
    angle = math.degrees(2 * math.asin(min(1.0, groove_mm / bore_mm)))
    land_mm = (flange_mm - bore_mm) / 2
    string_mm = groove_mm / thresholds.groove_per_string if thresholds.groove_per_string else groove_mm
    if groove_mm > bore_mm + CLOSE_MM or land_mm < thresholds.land_per_string * string_mm - CLOSE_MM:
        return Turns(1, 1, angle)
    places, step = (QUARTERS, 1) if angle <= 90 + CLOSE_MM else (QUARTERS // 2, 2)
    return Turns(max(1, places // max(1, strings)), step, angle)
