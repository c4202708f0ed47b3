"""The pull on a grommet against published tables of rigging and rope friction."""

from __future__ import annotations

from math import cos, exp, hypot, pi, radians, sin, sqrt

import pytest

from rimbook.bench.load import forces, held, pull, resultant
from rimbook.book.model import Address
from rimbook.rim.outline import curve
from rimbook.rim.types import Leg, Placed, Point, Rim, StringPath
from tests.rim.frames import frame

# "Angle Factor Multipliers", wire rope catalogue, p. 87: http://www.kulkoni.com/catalog-fb_22/86/
# The angle is the one between the two lines, so a straight line has 180° and a line doubled back 0°: it is
# 180° less the turn. The print cuts off at 40, 45, 130 and 135° and does not round, hence the tolerance.
ANGLE_FACTORS = {
    0: 2.00, 10: 1.99, 20: 1.97, 30: 1.93, 40: 1.87, 45: 1.84, 50: 1.81,
    60: 1.73, 70: 1.64, 80: 1.53, 90: 1.41, 100: 1.29, 110: 1.15, 120: 1.00,
    130: 0.84, 135: 0.76, 140: 0.68, 150: 0.52, 160: 0.35, 170: 0.17, 180: 0.00,
}  # fmt: skip


def bent_string(between: float) -> Rim:
    """One string through R2, the two lines so many degrees apart: inside to R1, outside to R3."""
    made = frame(". . .", mains=2, crosses=1)
    ends = {
        1: Point(0.0, -90.0),
        2: Point(0.0, 0.0),
        3: Point(-sin(radians(between)), -cos(radians(between))),
    }
    holes = {
        Address("R", number): Placed(Address("R", number), at, Point(0.0, 1.0), float(number), "derived")
        for number, at in ends.items()
    }
    one, two, three = holes
    path = StringPath("mains", (Leg(one, two, "inside"), Leg(two, three, "outside")))
    return Rim(made, curve(made.head), holes, (path,))


@pytest.mark.parametrize(("between", "factor"), ANGLE_FACTORS.items())
def test_angle_factors(between: int, factor: float) -> None:
    assert pull(bent_string(between))[Address("R", 2)] == pytest.approx(factor, abs=0.01)
    assert resultant(pi - radians(between)) == pytest.approx(factor, abs=0.01)


@pytest.mark.parametrize("between", [1, 37, 90, 142, 179])
def test_the_two_ways_of_writing_it(between: float) -> None:
    """2·cos(a/2) of the angle between the lines is 2·sin(turn/2) of the turn: textbook trigonometry."""
    found = pull(bent_string(between))[Address("R", 2)]
    assert found == pytest.approx(2 * cos(radians(between) / 2), abs=1e-12)
    assert found == pytest.approx(resultant(radians(180 - between)), abs=1e-12)


def test_worked_examples_of_the_rigging_table() -> None:
    """1000 lb at 50° pull with 1810 lb, at 135° with 760 lb: same page."""
    assert 1000 * pull(bent_string(50))[Address("R", 2)] == pytest.approx(1810, abs=10)
    assert 1000 * pull(bent_string(135))[Address("R", 2)] == pytest.approx(760, abs=10)


def test_the_pull_points_between_the_lines() -> None:
    force = forces(bent_string(90))[Address("R", 2)]
    assert force == pytest.approx((-1, -1))


@pytest.mark.parametrize(
    ("friction", "turn", "ratio"),
    [
        # https://git.fossee.in/Scilab-TBC-Uploads/.git/plain/3886/CH5/EX5.16/5_16.sce
        (0.3, radians(250), 3.7025),
        # Five turns at 0.6, an encyclopaedia's example: https://formulasearchengine.com/wiki/Capstan_equation
        (0.6, 10 * pi, 153552935),
        # A quarter turn and half a turn, from the same page's table.
        (0.3, pi / 2, 1.602),
        (0.3, pi, 2.566),
    ],
)
def test_capstan_ratios(friction: float, turn: float, ratio: float) -> None:
    assert 1 / held(friction, turn) == pytest.approx(ratio, rel=2e-4)


def test_capstan_forces() -> None:
    """100 kg over three quarters of a turn at 0.2 are held by 382.26 N:
    https://pickedshares.com/en/engineering-mechanics-1-exercise-27-rope-friction

    1000 N over one and a half turns at 0.25 are held by 94.78 N:
    http://www.transtutors.com/homework-help/civil-engineering/friction/examples-rope-friction.aspx
    """
    assert 100 * 9.81 * held(0.2, 1.5 * pi) == pytest.approx(382.26, abs=0.01)
    assert 1000 * held(0.25, 3 * pi) == pytest.approx(94.78, abs=0.01)


@pytest.mark.parametrize("between", [30, 90, 150])
def test_unequal_tensions_follow_the_law_of_cosines(between: float) -> None:
    """R² = T1² + T2² + 2·T1·T2·cos a for lines a apart: the parallelogram of forces."""
    left = exp(-0.15 * radians(180 - between))
    expected = sqrt(1 + left**2 + 2 * left * cos(radians(between)))
    force = forces(bent_string(between), friction=0.15)[Address("R", 2)]
    assert hypot(*force) == pytest.approx(expected, abs=1e-12)
