"""The tension of the string at each hole, and what it pulls where the two sides differ.

Capstan: T₂ = T₁·e^(−µ·θ) behind a turn of θ radians (Euler and Eytelwein; a string without stiffness or
stretch, on the verge of sliding, so the loss is the most there can be). Two unequal tensions round a turn
of θ pull with √(T₁² + T₂² − 2·T₁·T₂·cos θ), the law of cosines; for equal ones that is 2·T·sin(θ/2).
Tensions in newtons. No published value of µ for string on grommet was found: say where yours comes from.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate, pairwise
from typing import Literal

from rimbook.bench import given
from rimbook.bench.caution import Caution
from rimbook.bench.load import held
from rimbook.bench.thresholds import DEFAULT, Thresholds
from rimbook.bench.units import newtons
from rimbook.book.limits import over_printed
from rimbook.book.model import Address, Frame, TensionLimit
from rimbook.rim.types import Point, Rim, StringPath

MOST_FRICTION = 10.0

Pulled = Literal["every pass", "one end"]


@dataclass(frozen=True, slots=True)
class Station:
    """The string at one hole: its turn in radians, and its tension before and after it in newtons.

    `pull_n` is what it pulls there. At the two ends of a piece one side is 0 and the turn with it.
    """

    address: Address
    turn: float
    before_n: float
    after_n: float
    pull_n: float


def usual_tension(frame: Frame, thresholds: Thresholds = DEFAULT) -> float:
    """The tension (N) at which a frame's numbers are shown until a reader sets another.

    The usual one of the sport, which is an assumption, but never above the limit printed on the frame.
    """
    usual = newtons(thresholds.usual_tension_lb.of(frame.sport), "lb")
    limit = frame.tension_limit
    return min(usual, newtons(limit.value, limit.unit)) if limit else usual


def capstan(tension_n: float, friction: float, turn: float) -> float:
    """What is left of a tension (N) behind a turn of so many radians."""
    given.force("tension", tension_n)
    given.share("turn", turn, most=1e4)
    return tension_n * held(given.share("friction coefficient", friction, most=MOST_FRICTION), turn)


def pull_of(before_n: float, after_n: float, turn: float) -> float:
    """The pull (N) of a string that turns by so many radians, at two tensions (N): the law of cosines."""
    square = before_n * before_n + after_n * after_n - 2 * before_n * after_n * math.cos(turn)
    return math.sqrt(max(0.0, square))


def along(
    rim: Rim, path: StringPath, tension_n: float, friction: float, pulled: Pulled = "every pass"
) -> tuple[Station, ...]:
    """The string at each hole of one piece, in its own order.

    Pulled at `every pass`, as on a machine, each leg inside the head has the full tension, and a leg
    outside keeps what the sharper turn at its ends lets through. Pulled at `one end`, the last, the
    tension falls at every hole on the way back: no racket is strung so, but it bounds the loss.
    Raises ValueError for a tension or a coefficient that is none.
    """
    given.force("tension", tension_n)
    given.share("friction coefficient", friction, most=MOST_FRICTION)
    if not path.legs:
        return ()
    ways = [rim.holes[leg.end].at.minus(rim.holes[leg.start].at).unit for leg in path.legs]
    turns = [0.0, *(_turn(one, other) for one, other in pairwise(ways)), 0.0]
    shares = (
        _falling(turns[1:-1], friction)
        if pulled == "one end"
        else [
            held(friction, max(turns[i], turns[i + 1])) if leg.run == "outside" else 1.0
            for i, leg in enumerate(path.legs)
        ]
    )
    tensions = [0.0, *(share * tension_n for share in shares), 0.0]
    addresses = [path.legs[0].start, *(leg.end for leg in path.legs)]
    return tuple(
        Station(address, turn, before, after, pull_of(before, after, turn))
        for address, turn, (before, after) in zip(addresses, turns, pairwise(tensions), strict=True)
    )


def over_limit(tension_n: float, limit: TensionLimit | None) -> Caution | None:
    """The caution for a tension (N) above the one printed on the frame. None within it, or without one."""
    given.force("tension", tension_n)
    if limit is None or not over_printed(tension_n, newtons(limit.value, limit.unit)):
        return None
    over = tension_n / newtons(limit.value, limit.unit) - 1
    says = (
        f"This tension is {100 * over:.1f} % above the {limit.value:g} {limit.unit} printed on the frame. "
        "The maker's limit comes first: the frame may break."
    )
    return Caution("over the limit", says)


def _falling(turns: Sequence[float], friction: float) -> list[float]:
    """The share of the tension in each leg, when only the last one is pulled."""
    back = accumulate(reversed(turns), lambda share, turn: share * held(friction, turn), initial=1.0)
    return list(back)[::-1]


def _turn(one: Point, other: Point) -> float:
    return abs(math.atan2(one.x * other.y - one.y * other.x, one.x * other.x + one.y * other.y))
