"""Nominal pressure of a barrel on the rim: force over the projected area, p = F/(d·L).

F in newtons, d and L in mm, p in N/mm² = MPa. Source: the usual bearing pressure of machine design
(Mott, Machine Elements in Mechanical Design, 3-20/21). The true pressure is not even, and the part of
the pull along the hole presses the flange instead; so the number is nominal, for comparing holes.
"""

from __future__ import annotations

from rimbook.bench import given


def projected_area(width_mm: float, length_mm: float) -> float:
    """The area in mm² of a round bar of some width, seen from the side, along the length that bears."""
    return given.length("width", width_mm) * given.length("length", length_mm)


def bearing_pressure(force_n: float, width_mm: float, length_mm: float) -> float:
    """Nominal pressure in MPa of a force on a bar of some width over some length (mm).

    Raises ValueError for a force below zero and for lengths that are none.
    """
    if force_n == 0:
        return 0.0 / projected_area(width_mm, length_mm)
    return given.force("force", force_n, most=1e6) / projected_area(width_mm, length_mm)
