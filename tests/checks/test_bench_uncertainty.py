"""Standard uncertainties against the GUM."""

from __future__ import annotations

import math

import pytest

from rimbook.bench.uncertainty import Size, bore_size, combined, go_nogo, limits, of_resolution, of_tolerance


@pytest.mark.parametrize(
    ("step", "u"),
    [  # d/√12 = 0.29·d: JCGM 100:2008 (GUM) F.2.2.1
        (0.01, 0.002887),
        (0.02, 0.005774),
        (0.05, 0.014434),
        (0.1, 0.028868),
        (0.0005 * 25.4, 0.003666),
    ],
)
def test_resolution(step: float, u: float) -> None:
    assert of_resolution(step) == pytest.approx(u, abs=5e-7)
    assert of_resolution(step) == pytest.approx(0.29 * step, rel=0.01)


def test_limits_of_a_uniform_distribution() -> None:
    """±a has u = a/√3: GUM 4.3.7. A resolution d is ±d/2."""
    assert of_tolerance(0.05) == pytest.approx(0.05 / math.sqrt(3))
    assert of_tolerance(0.05 / 2) == pytest.approx(of_resolution(0.05))


@pytest.mark.parametrize(("half_width", "u"), [(0.40, 0.23), ((16.92 - 16.40) / 2, 0.15)])
def test_worked_examples_of_the_gum(half_width: float, u: float) -> None:
    """The expansion of copper in GUM 4.3.7 (±0.40, so u = 0.23) and 4.3.8 (16.40 to 16.92, so u = 0.15).

    From memory.
    """
    assert of_tolerance(half_width) == pytest.approx(u, abs=0.005)


def test_go_and_nogo() -> None:
    """GO 2.60 and NOGO 2.65: 2.60 ≤ bore < 2.65, and u = 0.05/√12 = 0.0144."""
    size = go_nogo(2.60, 2.65)
    assert size.mm == pytest.approx(2.625)
    assert size.u_mm == pytest.approx(0.0144, abs=5e-5)
    assert limits(size, math.sqrt(3)) == pytest.approx((2.60, 2.65))


@pytest.mark.parametrize(("go", "nogo"), [(2.65, 2.60), (2.6, 2.6)])
def test_pins_in_the_wrong_order(go: float, nogo: float) -> None:
    with pytest.raises(ValueError, match="no thicker than the GO pin"):
        go_nogo(go, nogo)


def test_combining() -> None:
    """The root of the sum of squares (GUM 5.1.2), here a triangle with whole sides."""
    assert combined(0.03, 0.04) == pytest.approx(0.05)


def test_what_nobody_wrote_down_stays_unknown() -> None:
    assert bore_size(None, 0.05) is None
    assert bore_size(2.1, None) == Size(2.1, None)
    assert limits(Size(2.1), 2) is None


@pytest.mark.parametrize("step", [0.0, -0.05, float("nan"), float("inf"), 1e9])
def test_no_resolution_is_refused(step: float) -> None:
    with pytest.raises(ValueError, match="The resolution is"):
        of_resolution(step)
