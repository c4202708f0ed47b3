"""Places to pool, and the fewest drawers with the least in them by another solver: HiGHS, out of scipy."""

from __future__ import annotations

import random

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.stats import poisson

from rimbook.bench.shelf_poisson import enough
from tests.affine import affine_lines

SERVICE = 0.95


def lines(dimension: int) -> list[list[str]]:
    """The lines {a, b, c} with a + b + c = 0 of the affine space over three elements."""
    return [["".join(map(str, point)) for point in line] for line in affine_lines(dimension)]


def few_places(chance: random.Random) -> tuple[list[list[str]], list[float]]:
    """The options of some places, and how many are asked for on average at each."""
    names = [f"part-{number}" for number in range(chance.randint(3, 7))]
    options = [sorted(chance.sample(names, chance.randint(1, 3))) for _ in range(chance.randint(3, 10))]
    means = [round(chance.choice((0.0, 0.04, 0.3, 1.1, 2.6)) * chance.uniform(0.7, 1.3), 3) for _ in options]
    return options, means


def solved(options: list[list[str]], means: list[float]) -> tuple[int, int]:
    """Drawers and level by a mixed-integer programme: a level t holds a mean up to its own threshold."""
    items = sorted({item for each in options for item in each})
    most = enough(sum(means), SERVICE)
    held = [_threshold(level) for level in range(most + 1)]
    deal = [(place, item) for place, each in enumerate(options) for item in each]
    steps = [(item, level) for item in items for level in range(most + 1)]
    width = len(deal) + len(steps)
    cost = np.zeros(width)
    rows, low, high = [], [], []
    for at, (_, level) in enumerate(steps):
        cost[len(deal) + at] = 1000 + level  # the fewest first, then the least
    for place in range(len(options)):
        rows.append([float(own == place) for own, _ in deal] + [0.0] * len(steps))
        low.append(1.0)
        high.append(1.0)
    for item in items:
        chosen = [0.0] * len(deal) + [float(own == item) for own, _ in steps]
        rows.append(chosen)
        low.append(0.0)
        high.append(1.0)
        load = [means[place] if own == item else 0.0 for place, own in deal]
        rows.append(load + [-held[level] if own == item else 0.0 for own, level in steps])
        low.append(-np.inf)
        high.append(0.0)
    for at, (_, item) in enumerate(deal):  # a place without demand takes an opened drawer as well
        row = [0.0] * width
        row[at] = 1.0
        for step, (own, _) in enumerate(steps):
            if own == item:
                row[len(deal) + step] = -1.0
        rows.append(row)
        low.append(-np.inf)
        high.append(0.0)
    result = milp(
        cost,
        constraints=LinearConstraint(np.array(rows), low, high),
        integrality=np.ones(width),
        bounds=Bounds(0, 1),
    )
    assert result.success
    drawers, total = divmod(round(float(result.fun)), 1000)
    return drawers, total


def _threshold(level: int) -> float:
    """The largest mean for which a level is enough, by halving, with scipy's distribution."""
    low, high = 0.0, level + 10.0
    for _ in range(60):
        middle = (low + high) / 2
        low, high = (middle, high) if poisson.cdf(level, middle) >= SERVICE else (low, middle)
    return low
