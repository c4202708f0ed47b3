"""The pull of the strings on each grommet."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from itertools import pairwise
from math import atan2, exp, hypot, sin
from typing import NamedTuple

from rimbook.book.model import Address
from rimbook.rim.once import once
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
    return forces_at(rim, (friction,))[0]


def forces_at(rim: Rim, frictions: Sequence[float]) -> tuple[Mapping[Address, Point], ...]:
    """The same at each of several coefficients of friction."""
    for friction in frictions:
        if friction < 0:
            raise ValueError(f"A friction coefficient cannot be {friction}; it is 0 or more.")
    laid = _laid(rim)
    return tuple(_summed(rim, laid, friction) for friction in frictions)


def _summed(rim: Rim, laid: Sequence[_Laid], friction: float) -> Mapping[Address, Point]:
    sums = {address: [0.0, 0.0] for address in rim.holes}
    for start, end, x, y, turn in laid:
        tension = held(friction, turn)
        pulled, pulling = sums[start], sums[end]
        pulled[0] += x * tension
        pulled[1] += y * tension
        pulling[0] -= x * tension
        pulling[1] -= y * tension
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


class _Laid(NamedTuple):
    """A leg: its two holes, the unit way from one to the other, and the sharper turn at its ends.

    Inside the head, where the string keeps its tension, no turn counts.
    """

    start: Address
    end: Address
    x: float
    y: float
    turn: float


@once
def _laid(rim: Rim) -> list[_Laid]:
    return [each for path in rim.paths for each in _laid_along(rim, path.legs)]


def _laid_along(rim: Rim, legs: Sequence[Leg]) -> Iterator[_Laid]:
    ways = [_way(rim, leg) for leg in legs]
    turns = [0.0, *(_turn(one, other) for one, other in pairwise(ways)), 0.0]
    for leg, (x, y), before, after in zip(legs, ways, turns, turns[1:], strict=False):
        yield _Laid(leg.start, leg.end, x, y, max(before, after) if leg.run == "outside" else 0.0)


def _way(rim: Rim, leg: Leg) -> tuple[float, float]:
    start, end = rim.holes[leg.start].at, rim.holes[leg.end].at
    x, y = end.x - start.x, end.y - start.y
    length = hypot(x, y)
    return (x * (1 / length), y * (1 / length)) if length else (x, y)


def _turn(one: tuple[float, float], other: tuple[float, float]) -> float:
    """The change of direction between two unit vectors, 0 to π."""
    return abs(atan2(one[0] * other[1] - one[1] * other[0], one[0] * other[0] + one[1] * other[1]))
