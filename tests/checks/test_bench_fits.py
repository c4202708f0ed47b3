"""Fits against the tables of ISO 286: holes H7 with shafts g6, h6, k6, n6, p6 and s6.

Sources: shafts in JIS B 0401 (1999), which takes over ISO 286-2, as copied at
https://docs.steelcam.org/sumitomo/tehnicheskaya-informaciya-page28 ; H7 and h6 as copied at
http://deepri.com/technical/information/tech_iso_tolerances.html ; the kinds of fit in ANSI B4.2-1978.
These are classes for metal parts: they test the arithmetic and the words, not the bench thresholds.
"""

from __future__ import annotations

import math

import pytest

from rimbook.bench.fit import Fit, FitKind, fit
from rimbook.bench.uncertainty import Size, of_tolerance

# Micrometres, "over … up to and including …" mm.
RANGES = ((0, 3), (3, 6), (6, 10))
H7 = {3: (0, 10), 6: (0, 12), 10: (0, 15)}
SHAFTS = {
    "g6": {3: (-8, -2), 6: (-12, -4), 10: (-14, -5)},
    "h6": {3: (-6, 0), 6: (-8, 0), 10: (-9, 0)},
    "k6": {3: (0, 6), 6: (1, 9), 10: (1, 10)},
    "n6": {3: (4, 10), 6: (8, 16), 10: (10, 19)},
    "p6": {3: (6, 12), 6: (12, 20), 10: (15, 24)},
    "s6": {3: (14, 20), 6: (19, 27), 10: (23, 32)},
}

# Clearance in micrometres, least and most; below zero the shaft is the larger.
CLEARANCES: dict[tuple[str, int], tuple[int, int, FitKind]] = {
    ("g6", 3): (2, 18, "clearance"),
    ("g6", 6): (4, 24, "clearance"),
    ("g6", 10): (5, 29, "clearance"),
    ("h6", 3): (0, 16, "clearance"),  # line to line
    ("h6", 6): (0, 20, "clearance"),
    ("h6", 10): (0, 24, "clearance"),
    ("k6", 3): (-6, 10, "transition"),
    ("k6", 6): (-9, 11, "transition"),
    ("k6", 10): (-10, 14, "transition"),
    ("n6", 3): (-10, 6, "transition"),
    ("n6", 6): (-16, 4, "transition"),
    ("n6", 10): (-19, 5, "transition"),
    # ANSI B4.2-1978 calls H7/p6 an interference fit, with the footnote "transition fit for basic sizes
    # in range from 0 through 3 mm" (as copied at http://zpag.net/Usinage/standard_ansiB4_2_1978.htm).
    ("p6", 3): (-12, 4, "transition"),
    ("p6", 6): (-20, 0, "interference"),  # line to line
    ("p6", 10): (-24, 0, "interference"),
    ("s6", 3): (-20, -4, "interference"),
    ("s6", 6): (-27, -7, "interference"),
    ("s6", 10): (-32, -8, "interference"),
}


def between(nominal: float, limits_um: tuple[int, int]) -> Size:
    """A size known to lie between two deviations: the middle, with the half-width as a tolerance."""
    low, high = (nominal + deviation / 1000 for deviation in limits_um)
    return Size((low + high) / 2, of_tolerance((high - low) / 2))


def iso_fit(shaft: str, nominal: float) -> Fit:
    row = next(most for least, most in RANGES if least < nominal <= most)
    return fit(between(nominal, H7[row]), between(nominal, SHAFTS[shaft][row]))


@pytest.mark.parametrize(("shaft", "nominal"), CLEARANCES)
def test_limits_and_kind(shaft: str, nominal: int) -> None:
    least, most, kind = CLEARANCES[shaft, nominal]
    found = iso_fit(shaft, nominal)
    assert found.least_mm == pytest.approx(least / 1000, abs=1e-9)
    assert found.most_mm == pytest.approx(most / 1000, abs=1e-9)
    assert found.kind == kind


@pytest.mark.parametrize(("nominal", "kind"), [(3.0, "transition"), (3.001, "interference")])
def test_the_exception_ends_at_three_millimetres(nominal: float, kind: FitKind) -> None:
    assert iso_fit("p6", nominal).kind == kind


@pytest.mark.parametrize("nominal", [0.5, 2.1, 2.7, 3.4, 9.99])
def test_h7_h6_is_never_below_nothing(nominal: float) -> None:
    """The same nominal size on both sides: line to line, whatever the rounding of the sum."""
    found = iso_fit("h6", nominal)
    assert found.kind == "clearance"
    assert math.isclose(found.least_mm or 0.0, 0.0, abs_tol=1e-9)
