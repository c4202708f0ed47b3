"""The pull of the strings on each grommet."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise
from math import atan2, exp, sin

from rimbook.book.model import Address
from rimbook.rim.types import Leg, Point, Rim


def pull(rim: Rim, *, friction: float = 0.0) -> Mapping[Address, float]:
    """The resultant pull on the grommet of every drilled hole, divided by the string tension (no unit).

    A hole in which one string turns carries `resultant(turn)`; strings that share a hole add as vectors.
    A hole without a string carries 0. See `forces` for what is assumed.
    """
    return {address: force.length for address, force in forces(rim, friction=friction).items()}


def forces(rim: Rim, *, friction: float = 0.0) -> Mapping[Address, Point]:
    """The pull on every drilled hole as a vector in the plane of the strings, divided by the string tension.

    Each leg pulls its two holes towards each other, so that over the frame forces and
    moments cancel. Assumed: a frame just strung, every pass inside the head at the full tension, legs
    straight from hole place to hole place, outside the rim too. Without friction the legs outside have the
    full tension as well; with it they keep `held(friction, turn)` of it, for the sharper turn at their
    two ends: the least that can be left, since the string is taken to be on the verge of sliding.

    `friction` is the coefficient of string on grommet. No published value for it was found:
    state where yours comes from. Raises ValueError where it is negative.
    """
    if friction < 0:
        raise ValueError(f"A friction coefficient cannot be {friction}; it is 0 or more.")
    sums = {address: [0.0, 0.0] for address in rim.holes}
    for path in rim.paths:
        ways = [_way(rim, leg) for leg in path.legs]
        tensions = _tensions(path.legs, ways, friction) if friction else [1.0] * len(ways)
        for leg, way, tension in zip(path.legs, ways, tensions, strict=True):
            start, end = sums[leg.start], sums[leg.end]
            start[0] += way.x * tension
            start[1] += way.y * tension
            end[0] -= way.x * tension
            end[1] -= way.y * tension
    return {address: Point(x, y) for address, (x, y) in sums.items()}


def resultant(turn: float) -> float:
    """The pull of a string that turns by so many radians, divided by its tension: 2·sin(turn/2).

    The turn is the change of direction, 0 for a straight string. Tables of rigging give 2·cos(a/2) for the
    angle a = π − turn between the two lines.
    """
    return 2 * sin(turn / 2)


def held(friction: float, turn: float) -> float:
    """The share of the tension left behind a turn of so many radians: e^(−friction·turn).

    The capstan equation of Euler and Eytelwein: a string without stiffness or stretch, on the verge of
    sliding.
    """
    return exp(-friction * turn)


def _way(rim: Rim, leg: Leg) -> Point:
    return rim.holes[leg.end].at.minus(rim.holes[leg.start].at).unit


def _tensions(legs: Sequence[Leg], ways: Sequence[Point], friction: float) -> list[float]:
    turns = [0.0, *(_turn(one, other) for one, other in pairwise(ways)), 0.0]
    return [
        held(friction, max(before, after)) if leg.run == "outside" else 1.0
        for leg, (before, after) in zip(legs, pairwise(turns), strict=True)
    ]


def _turn(one: Point, other: Point) -> float:
    """The change of direction between two unit vectors, 0 to π."""
    return abs(atan2(one.x * other.y - one.y * other.x, one.x * other.x + one.y * other.y))
