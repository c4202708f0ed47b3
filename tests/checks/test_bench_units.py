"""Units of tension against the exact definitions and a published pair."""

from __future__ import annotations

import pytest
from scipy import constants

from rimbook.bench.units import KG_PER_LB, N_PER_KGF, N_PER_LBF, ForceUnit, convert, newtons


def test_the_factors_are_those_of_the_definition() -> None:
    """1 lb = 0.45359237 kg, 1 kgf = 9.80665 N, 1 lbf = 4.4482216152605 N: NIST SP 811, appendix B.8.

    scipy.constants carries the same definitions.
    """
    assert KG_PER_LB == 0.45359237
    assert pytest.approx(constants.lb, rel=1e-14) == KG_PER_LB
    assert N_PER_KGF == 9.80665 == constants.kilogram_force
    assert pytest.approx(4.4482216152605, rel=1e-14) == N_PER_LBF
    assert pytest.approx(constants.lbf, rel=1e-14) == N_PER_LBF


@pytest.mark.parametrize(
    ("pounds", "in_newtons", "in_kilograms"),
    [  # worked out with scipy.constants
        (20, 88.964, 9.0718),
        (24, 106.757, 10.8862),
        (28, 124.550, 12.7006),
        (30, 133.447, 13.6078),
        (60, 266.893, 27.2155),
    ],
)
def test_usual_tensions(pounds: float, in_newtons: float, in_kilograms: float) -> None:
    assert newtons(pounds, "lb") == pytest.approx(in_newtons, abs=5e-4)
    assert convert(pounds, "lb", "kg") == pytest.approx(in_kilograms, abs=5e-5)


def test_a_published_pair() -> None:
    """ "Around 28 kg (274 N or about 62 lb)": Cross and Bower, Measurements of string tension in a tennis
    racket, Sports Engineering (2001). They round 274.6 N down."""
    assert newtons(28, "kg") == pytest.approx(274, abs=1)
    assert convert(28, "kg", "lb") == pytest.approx(62, abs=0.5)


@pytest.mark.parametrize("unit", ["lb", "kg", "N"])
def test_there_and_back(unit: ForceUnit) -> None:
    assert convert(convert(27.5, unit, "kg"), "kg", unit) == pytest.approx(27.5, rel=1e-14)


def test_an_unknown_unit_names_the_nearest() -> None:
    with pytest.raises(ValueError, match=r"'lbs' is no unit of tension; expected lb, kg or N\. Nearest: lb"):
        convert(24, "lbs", "N")  # type: ignore[arg-type]


@pytest.mark.parametrize("value", [float("nan"), float("inf")])
def test_no_number_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="finite"):
        newtons(value, "lb")
