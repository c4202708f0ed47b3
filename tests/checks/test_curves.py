"""The outlines against published perimeters, areas and directions."""

from __future__ import annotations

from math import acos, asin, cos, degrees, hypot, pi, sin, sqrt

import pytest
from scipy.integrate import quad
from scipy.special import ellipe, gamma

from rimbook.book.model import Head
from rimbook.rim.outline import area, at, curve
from rimbook.rim.types import Point

REAL_HEADS = [(186, 244), (220, 280), (250, 330), (292, 394)]


@pytest.mark.parametrize(
    ("half_height", "half_width", "perimeter"),
    [
        # Ramanujan's second approximation, as printed at
        # https://scoutmytool.com/calc/geometry/perimeter-ellipse
        (5, 3, 25.526999),
        # Computed from the complete elliptic integral: 4·a·E(m), m = 1 − (b/a)².
        (10, 5, 48.4422411027),
        (2, 1, 9.6884482205),
        # The same for the largest strung surfaces: laws of badminton, 280 × 220 mm; rules of tennis,
        # 394 × 292 mm.
        (140, 110, 788.2281506885),
        (197, 146, 1083.5303007205),
    ],
)
def test_perimeter_of_an_ellipse(half_height: float, half_width: float, perimeter: float) -> None:
    line = curve(Head("ellipse", 2 * half_width, 2 * half_height))
    assert line.length_mm == pytest.approx(perimeter, rel=5e-6)


@pytest.mark.parametrize(("width", "height"), REAL_HEADS)
def test_perimeter_of_a_real_head_is_right_to_five_micrometres(width: float, height: float) -> None:
    """scipy's `ellipe` takes the parameter m = k², not the modulus k."""
    exact = 2 * height * ellipe(1 - (width / height) ** 2)
    assert curve(Head("ellipse", width, height)).length_mm == pytest.approx(exact, abs=0.005)


@pytest.mark.parametrize("exponent", [1.8, 2.35, 2.6])
@pytest.mark.parametrize(("width", "height"), REAL_HEADS[:3])
def test_perimeter_of_a_superellipse(width: float, height: float, exponent: float) -> None:
    """Arc length ∫√(r² + r'²) dφ of r(φ) = (|cos φ/a|ⁿ + |sin φ/b|ⁿ)^(−1/n), from any calculus text."""
    a, b = width / 2, height / 2

    def speed(turn: float) -> float:
        c, s = cos(turn), sin(turn)
        level = (c / a) ** exponent + (s / b) ** exponent
        slope = (s / b) ** (exponent - 1) * c / b - (c / a) ** (exponent - 1) * s / a
        r = level ** (-1 / exponent)
        return hypot(r, r * slope / level)

    exact = 4 * quad(speed, 0, pi / 2, limit=300)[0]
    head = Head("superellipse", width, height, exponent=exponent)
    assert curve(head).length_mm == pytest.approx(exact, abs=0.005)


# A = 4ab Γ(1 + 1/n)² / Γ(1 + 2/n): https://agentcalc.com/superellipse-area-calculator
# Computed for a = b = 1.
SUPERELLIPSE_AREAS = [(2, pi), (2.5, 3.3809353625), (3, 3.5332775006), (4, 3.7081493546)]


@pytest.mark.parametrize(("exponent", "unit_area"), SUPERELLIPSE_AREAS)
def test_area_of_a_superellipse(exponent: float, unit_area: float) -> None:
    formula = 4 * gamma(1 + 1 / exponent) ** 2 / gamma(1 + 2 / exponent)
    assert formula == pytest.approx(unit_area, abs=1e-9)
    line = curve(Head("superellipse", 186, 244, exponent=exponent))
    assert area(line) == pytest.approx(93 * 122 * unit_area, rel=3e-5)


def test_area_of_the_largest_strung_surfaces() -> None:
    """Computed, π·a·b: badminton 280 × 220 mm 483.805 cm², tennis 394 × 292 mm 903.585 cm²."""
    assert area(curve(Head("ellipse", 220, 280))) == pytest.approx(48380.5, rel=3e-5)
    assert area(curve(Head("ellipse", 292, 394))) == pytest.approx(90358.5, rel=3e-5)


def test_area_of_the_piriform() -> None:
    """x = a(1 + sin t), y = b cos t (1 + sin t) has the area π·a·b: Weisstein, "Piriform", MathWorld.

    It is the teardrop with k = 1, beyond the tapers that a map may have. Its greatest y is b·3√3/4.
    """
    line = curve(Head("teardrop", 190, 320, taper=sqrt(2)))
    assert area(line) == pytest.approx(pi * 160 * 95 / (3 * sqrt(3) / 4), rel=3e-5)


@pytest.mark.parametrize("taper", [0.0, 0.3, 0.7, 1.0])
def test_perimeter_of_a_teardrop(taper: float) -> None:
    """Arc length of x = A sin t (1 + k cos t), y = b cos t by numerical integration; A from a fine search."""
    k, b = taper / sqrt(2), 170.0
    scale = 95 / max(sin(turn / 1e4) * (1 + k * cos(turn / 1e4)) for turn in range(31416))
    exact = quad(lambda t: hypot(scale * (cos(t) + k * cos(2 * t)), b * sin(t)), 0, 2 * pi, limit=300)[0]
    assert curve(Head("teardrop", 190, 340, taper=taper)).length_mm == pytest.approx(exact, abs=0.005)


def test_quarters_of_an_ellipse_are_equal() -> None:
    line = curve(Head("ellipse", 200, 260))
    quarters = [at(line, line.length_mm * part / 4)[0] for part in range(4)]
    assert quarters == [
        pytest.approx(corner, abs=1e-6) for corner in [(0, 130), (100, 0), (0, -130), (-100, 0)]
    ]


def test_way_out_of_an_ellipse() -> None:
    """The normal of x²/a² + y²/b² = 1 is (x/a², y/b²), the gradient: any calculus text."""
    line = curve(Head("ellipse", 186, 244))
    for step in range(200):
        point, outward = at(line, line.length_mm * (step + 0.37) / 200)
        normal = Point(point.x / 93**2, point.y / 122**2).unit
        assert outward.length == pytest.approx(1, abs=1e-12)
        assert degrees(acos(min(1, normal.x * outward.x + normal.y * outward.y))) < 0.01


def test_places_on_a_circle() -> None:
    """On a circle of radius r an arc s turns by s/r: any school text."""
    line = curve(Head("ellipse", 200, 200))
    for along in (0, 17.5, 100, 333, 600):
        point, outward = at(line, along)
        assert point == pytest.approx((100 * sin(along / 100), 100 * cos(along / 100)), abs=0.005)
        assert outward == pytest.approx((sin(along / 100), cos(along / 100)), abs=3e-5)
    assert at(line, 100 * asin(0.5))[0].x == pytest.approx(50, abs=0.002)


def test_an_ellipse_through_measured_points() -> None:
    """24 points of an ellipse, in any direction and from anywhere, give its perimeter to 0.01 per cent."""
    measured = [(300 + 93 * cos(pi * step / 12), 40 + 122 * sin(pi * step / 12)) for step in range(24)]
    exact = 488 * ellipe(1 - (93 / 122) ** 2)
    for points in (measured, measured[::-1], measured[7:] + measured[:7]):
        line = curve(Head("points", 186, 244, points_mm=tuple(points)))
        assert line.length_mm == pytest.approx(exact, rel=1e-4)
        assert line.points[0] == pytest.approx((0, 122), abs=0.02)
        assert at(line, exact / 4)[0] == pytest.approx((93, 0), abs=0.1)


@pytest.mark.parametrize(("half_width", "half_height", "off"), [(100, 100, 0.01), (93, 122, 0.2)])
def test_points_may_be_spread_unevenly(half_width: float, half_height: float, off: float) -> None:
    """The curve keeps to x²/a² + y²/b² = 1 though the points on it stand 4 to 60 mm apart."""
    turns = sorted([pi * step / 12 for step in range(24) if step % 5] + [0.04, 1.1, 2.14, 3.18, 4.23, 5.28])
    points = tuple((half_width * sin(turn), half_height * cos(turn)) for turn in turns)
    line = curve(Head("points", 2 * half_width, 2 * half_height, points_mm=points))
    for x, y in line.points:
        assert hypot(x, y) * abs(1 - 1 / hypot(x / half_width, y / half_height)) < off
