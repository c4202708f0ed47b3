"""Tension along the string against worked examples of rope friction, and the law of cosines."""

from __future__ import annotations

from math import cos, pi, radians, sqrt

import pytest

from rimbook.bench.tension import capstan, pull_of
from tests.checks.test_load import ANGLE_FACTORS


def test_worked_examples() -> None:
    """100 kg at 0.2 over three quarters of a turn: 382.26 N
    (https://pickedshares.com/en/engineering-mechanics-1-exercise-27-rope-friction).

    1000 N at 0.25 over one and a half turns: held by 94.78 N, or moved by 10550.72 N
    (http://www.transtutors.com/homework-help/civil-engineering/friction/examples-rope-friction.aspx).
    """
    assert capstan(100 * 9.81, 0.2, 1.5 * pi) == pytest.approx(382.26, abs=0.01)
    assert capstan(1000, 0.25, 3 * pi) == pytest.approx(94.78, abs=0.01)
    assert capstan(10550.72, 0.25, 3 * pi) == pytest.approx(1000, abs=0.01)


# Turns and coefficient of friction to ratio of tensions, after the table of an encyclopaedia's page on the
# capstan equation, as copied at https://formulasearchengine.com/wiki/Capstan_equation
TABLE = {
    (0.25, 0.1): 1.170, (0.25, 0.3): 1.602, (0.25, 0.7): 3.003,
    (0.5, 0.2): 1.874, (0.5, 0.5): 4.810, (1, 0.1): 1.874, (1, 0.4): 12.35,
    (2, 0.3): 43.38, (2, 0.7): 6611, (3, 0.2): 43.38, (3, 0.5): 12390, (5, 0.6): 153552935,
}  # fmt: skip


@pytest.mark.parametrize(("case", "ratio"), TABLE.items())
def test_table_of_ratios(case: tuple[float, float], ratio: float) -> None:
    turns, friction = case
    assert 1 / capstan(1, friction, 2 * pi * turns) == pytest.approx(ratio, rel=5e-4)


def test_turns_multiply() -> None:
    """e^(µ(a+b)) = e^(µa)·e^(µb): two holes in a row lose what one of the whole turn would."""
    assert capstan(capstan(120, 0.2, 1.1), 0.2, 0.7) == pytest.approx(capstan(120, 0.2, 1.8))


@pytest.mark.parametrize(("between", "factor"), ANGLE_FACTORS.items())
def test_equal_tensions_give_the_rigging_table(between: int, factor: float) -> None:
    """The table of the wire rope catalogue, whose angle is the one between the lines."""
    assert pull_of(1, 1, radians(180 - between)) == pytest.approx(factor, abs=0.01)


@pytest.mark.parametrize(
    ("one", "other", "between", "pull"), [(3, 4, 90, 5), (5, 8, 60, sqrt(129)), (7, 3, 0, 10)]
)
def test_unequal_tensions(one: float, other: float, between: float, pull: float) -> None:
    """The law of cosines for the parallelogram of two forces: 3 and 4 at right angles make 5."""
    assert pull_of(one, other, radians(180 - between)) == pytest.approx(pull)
    assert pull**2 == pytest.approx(one**2 + other**2 + 2 * one * other * cos(radians(between)))


@pytest.mark.parametrize(("friction", "turn"), [(-0.1, 1.0), (0.1, -1.0), (float("nan"), 1.0)])
def test_what_is_no_friction_or_turn(friction: float, turn: float) -> None:
    with pytest.raises(ValueError, match="expected a number from 0"):
        capstan(100, friction, turn)
