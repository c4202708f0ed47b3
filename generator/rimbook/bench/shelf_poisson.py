"""How many are asked for in a while, when breakages come by themselves: the Poisson distribution.

P(D = k) = m^k·e^−m/k!, for instance A. M. Law, Simulation Modeling and Analysis. Weights are taken from the
likeliest count outwards by P(k + 1)/P(k) = m/(k + 1) and divided by their sum, so that nothing overflows and
no error of a logarithm is left.
"""

from __future__ import annotations

import math
from bisect import bisect_left
from functools import lru_cache
from itertools import accumulate
from typing import NamedTuple

LARGEST_MEAN = 1e5
IDLE = 1e-25
"""A weight so far below the largest adds nothing that a float can hold."""


class _Table(NamedTuple):
    """The chances of `first`, `first + 1` … and of at most so many."""

    first: int
    chances: tuple[float, ...]
    at_most: tuple[float, ...]


def at_most(count: int, mean: float) -> float:
    """The chance that no more than `count` are asked for, where `mean` are on average: P(D ≤ S).

    Raises ValueError for a mean below 0 or above `LARGEST_MEAN`.
    """
    first, _, sums = _table(mean)
    if count < first:
        return 0.0
    return sums[min(count - first, len(sums) - 1)]


def exactly(count: int, mean: float) -> float:
    """The chance that just so many are asked for: P(D = k). Raises as `at_most`."""
    first, chances, _ = _table(mean)
    return chances[count - first] if 0 <= count - first < len(chances) else 0.0


def enough(mean: float, service: float) -> int:
    """The least count that is enough with at least this chance: the least S with P(D ≤ S) ≥ service.

    Raises ValueError for a service that is not between 0 and 1, and as `at_most`.
    """
    if not 0 < service < 1:
        raise ValueError(f"The service level is {service!r}; expected a number between 0 and 1, as 0.95.")
    first, _, sums = _table(mean)
    return first + min(bisect_left(sums, service), len(sums) - 1)


def shortfall(count: int, mean: float) -> float:
    """How many are lacking on average, where `count` are there: E[(D − S)+]. Raises as `at_most`."""
    first, chances, _ = _table(mean)
    if count < first:
        return mean - count
    return math.fsum((first + at - count) * chances[at] for at in range(count - first + 1, len(chances)))


@lru_cache(maxsize=1 << 12)
def _table(mean: float) -> _Table:
    if not 0 <= mean <= LARGEST_MEAN:
        raise ValueError(f"The mean demand is {mean!r}; expected a number from 0 to {LARGEST_MEAN:g}.")
    likeliest = math.floor(mean)
    below, weight = [], 1.0
    for count in range(likeliest, 0, -1):
        weight *= count / mean
        if weight < IDLE:
            break
        below.append(weight)
    above, weight, count = [1.0], 1.0, likeliest
    while weight >= IDLE and mean > 0:
        count += 1
        weight *= mean / count
        above.append(weight)
    weights = [*reversed(below), *above]
    whole = math.fsum(weights)
    chances = tuple(each / whole for each in weights)
    return _Table(likeliest - len(below), chances, tuple(min(1.0, each) for each in accumulate(chances)))
