"""Room for several strings against the proven packings of equal circles in a circle."""

from __future__ import annotations

import math

import pytest

from rimbook.bench.room import enclosing, room, thickest
from rimbook.bench.thresholds import changed

# Bore over string diameter. https://cavac.at/cavacopedia/Circle%20packing%20in%20a%20circle prints three
# decimals and the closed forms; proofs: 5 and 6 Graham 1968, 8 Pirl 1969, the others elementary.
PRINTED = {1: 1.0, 2: 2.0, 3: 2.154, 4: 2.414, 5: 2.701, 6: 3.0, 7: 3.0, 8: 3.304}
CLOSED = {
    3: 1 + 2 / math.sqrt(3),
    4: 1 + math.sqrt(2),
    5: 1 + math.sqrt(2 * (1 + 1 / math.sqrt(5))),
    8: 1 + 1 / math.sin(math.pi / 7),
}
# Share of the circle that the strings fill, as printed there: worked out from ratios that are cut off.
DENSITY = {2: 0.5, 3: 0.6466, 4: 0.6864, 5: 0.6854, 6: 0.6666, 7: 0.7777}

BARE = changed({"threading_mm": 0.0})


@pytest.mark.parametrize(("strings", "ratio"), PRINTED.items())
def test_printed_ratios(strings: int, ratio: float) -> None:
    """The print cuts off after three decimals."""
    assert 0 <= enclosing((1.0,) * strings) - ratio < 0.001


@pytest.mark.parametrize(("strings", "ratio"), CLOSED.items())
def test_closed_forms(strings: int, ratio: float) -> None:
    assert enclosing((0.7,) * strings) == pytest.approx(0.7 * ratio, rel=1e-12)


@pytest.mark.parametrize(("strings", "density"), DENSITY.items())
def test_printed_densities(strings: int, density: float) -> None:
    assert strings / enclosing((1.0,) * strings) ** 2 == pytest.approx(density, abs=5e-4)


def test_a_seventh_string_needs_no_more_than_a_sixth() -> None:
    assert enclosing((1.3,) * 6) == enclosing((1.3,) * 7)


@pytest.mark.parametrize(("bore", "most"), [(3.0, 7), (2.999, 5), (2.0, 2), (1.999, 1)])
def test_how_many_strings_a_bore_takes(bore: float, most: int) -> None:
    goes = [n for n in range(1, 9) if room(bore, (1.0,) * n, BARE).word != "will not go"]
    assert max(goes) == most


def test_two_strings_exactly() -> None:
    """1.30 mm twice need exactly 2.60 mm, and that is what runs free without an allowance."""
    assert enclosing((1.30, 1.30)) == pytest.approx(2.60, abs=1e-12)
    assert room(2.60, (1.30, 1.30), BARE).word == "runs free"
    assert room(2.59, (1.30, 1.30), BARE).word == "will not go"
    assert thickest(2.60, 2, BARE) == pytest.approx(1.30)


@pytest.mark.parametrize(("one", "other"), [(0.62, 0.70), (1.2, 1.35), (0.1, 3.0)])
def test_two_unequal_strings(one: float, other: float) -> None:
    """The diameters add up: the two lie along one diameter of the bore."""
    assert enclosing((one, other)) == pytest.approx(one + other)


def angles(bore: float, strings: tuple[float, float, float]) -> float:
    """What three circles, each touching the wall of a bore and its neighbour, take of a full turn.

    By the law of cosines in the triangle of the centres: an argument that knows nothing of Descartes.
    """
    total = 0.0
    for a, b in ((0, 1), (1, 2), (2, 0)):
        one, other = (bore - strings[a]) / 2, (bore - strings[b]) / 2
        apart = (strings[a] + strings[b]) / 2
        cosine = (one * one + other * other - apart * apart) / (2 * one * other)
        total += math.acos(max(-1.0, min(1.0, cosine)))
    return total


@pytest.mark.parametrize(
    "strings", [(0.62, 0.66, 0.70), (0.7, 0.7, 0.62), (1.2, 1.25, 1.35), (1.0, 1.0, 0.67)]
)
def test_three_unequal_strings_just_close_the_ring(strings: tuple[float, float, float]) -> None:
    bore = enclosing(strings)
    assert angles(bore, strings) == pytest.approx(2 * math.pi, abs=1e-6)
    assert angles(bore * 1.001, strings) < 2 * math.pi < angles(bore * 0.999, strings)


@pytest.mark.parametrize("third", [0.1, 0.5, 0.66])
def test_a_thin_third_string_lies_in_the_gap(third: float) -> None:
    """Beside two of 1 mm in a bore of 2 mm the gap takes up to 2/3 mm: the incircle of the arbelos."""
    assert enclosing((1.0, 1.0, third)) == pytest.approx(2.0)
    assert angles(2.0, (1.0, 1.0, third)) <= 2 * math.pi + 1e-9
