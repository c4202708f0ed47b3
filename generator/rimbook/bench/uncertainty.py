"""How well a length is known: standard uncertainties as in the GUM.

Sources: JCGM 100:2008 (GUM) F.2.2.1 for the resolution of an instrument, 4.3.7 for limits ±a,
5.1.2 for combining. Resolution is a floor: a calliper may read small bores low by more than that.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from rimbook.bench import given
from rimbook.book.model import Measured, Part


class Size(NamedTuple):
    """A length in mm and its standard uncertainty, None where nobody wrote how it was measured."""

    mm: float
    u_mm: float | None = None


def of_resolution(step_mm: float) -> float:
    """Standard uncertainty of a reading in steps of d: d/√12 (GUM F.2.2.1)."""
    return given.length("resolution", step_mm) / math.sqrt(12)


def of_tolerance(half_width_mm: float) -> float:
    """Standard uncertainty of a length stated as ±a: a/√3, all values within alike (GUM 4.3.7)."""
    return given.length("tolerance", half_width_mm) / math.sqrt(3)


def combined(*uncertainties: float) -> float:
    """Independent standard uncertainties together: the root of the sum of squares (GUM 5.1.2)."""
    return math.hypot(*uncertainties)


def go_nogo(go_mm: float, nogo_mm: float) -> Size:
    """A bore between a pin that goes in and the next that does not: GO ≤ bore < NOGO.

    The middle of the two, with the step as resolution. Raises ValueError unless NOGO is the thicker.
    """
    given.length("GO pin", go_mm)
    given.length("NOGO pin", nogo_mm)
    if nogo_mm <= go_mm:
        raise ValueError(f"The NOGO pin of {nogo_mm:g} mm is no thicker than the GO pin of {go_mm:g} mm.")
    return Size((go_mm + nogo_mm) / 2, of_resolution(nogo_mm - go_mm))


def limits(size: Size, coverage: float) -> tuple[float, float] | None:
    """The least and the most (mm) a size may be: ± `coverage` standard uncertainties, or None without one."""
    if size.u_mm is None:
        return None
    half = coverage * size.u_mm
    return size.mm - half, size.mm + half


def bore_size(bore_mm: float | None, resolution_mm: float | None) -> Size | None:
    """A drilled bore as measured, or None where nobody measured it."""
    if bore_mm is None:
        return None
    given.length("bore", bore_mm)
    return Size(bore_mm, None if resolution_mm is None else of_resolution(resolution_mm))


def barrel_size(part: Part) -> Size | None:
    """A part's barrel with its stated tolerance and the resolution it was measured in, or None."""
    if part.barrel_mm is None:
        return None
    given.length("barrel", part.barrel_mm)
    known = [of_tolerance(part.tolerance_mm)] if part.tolerance_mm else []
    if resolution_mm := resolution_of(part.measured):
        known.append(of_resolution(resolution_mm))
    return Size(part.barrel_mm, combined(*known) if known else None)


def resolution_of(measured: Measured | None) -> float | None:
    """The resolution in mm of a measurement, where somebody wrote it down."""
    return measured.resolution_mm if measured else None
