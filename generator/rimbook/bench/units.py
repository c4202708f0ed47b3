"""Pounds, kilograms and newtons, as a stringing machine may show its tension.

A tension "in pounds" or "in kilograms" is a force: the weight of that mass in standard gravity.
1 lb = 0.45359237 kg exactly, 1 kgf = 9.80665 N exactly, hence 1 lbf = 4.4482216152605 N
(NIST Special Publication 811, appendix B.8).
"""

from __future__ import annotations

import math
from typing import Literal, get_args

from rimbook.book.problems import nearest

ForceUnit = Literal["lb", "kg", "N"]

KG_PER_LB = 0.45359237
N_PER_KGF = 9.80665
N_PER_LBF = KG_PER_LB * N_PER_KGF

_NEWTONS: dict[ForceUnit, float] = {"lb": N_PER_LBF, "kg": N_PER_KGF, "N": 1.0}


def convert(value: float, given: ForceUnit, wanted: ForceUnit) -> float:
    """A force in another unit. Raises ValueError for an unknown unit or a number that is none."""
    for unit in (given, wanted):
        if unit not in _NEWTONS:
            close = nearest(str(unit), get_args(ForceUnit))
            hint = f" Nearest: {close}." if close else ""
            raise ValueError(f"{unit!r} is no unit of tension; expected lb, kg or N.{hint}")
    if not math.isfinite(value):
        raise ValueError(f"{value} is no tension; expected a finite number.")
    return value if given == wanted else value * _NEWTONS[given] / _NEWTONS[wanted]


def newtons(value: float, unit: ForceUnit) -> float:
    """A force in newtons. Raises ValueError as `convert` does."""
    return convert(value, unit, "N")
