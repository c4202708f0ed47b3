"""The fewest drawers, and the least in them: against HiGHS, against published coverings, against a trap."""

from __future__ import annotations

import random
from itertools import product

import numpy as np
import pytest
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.stats import poisson

from rimbook.bench.shelf_poisson import enough
from rimbook.bench.shelf_pool import Pooling, pool

SERVICE = 0.95


def plain(_: str, __: tuple[int, ...]) -> int:
    """A level that tells no assignment from another."""
    return 0


def lines(dimension: int) -> list[list[str]]:
    """The lines {a, b, c} with a + b + c = 0 of the affine space over three elements."""
    points = list(product(range(3), repeat=dimension))
    found = {
        frozenset((a, b, tuple(-(x + y) % 3 for x, y in zip(a, b, strict=True))))
        for a in points
        for b in points
        if a != b
    }
    return [sorted("".join(map(str, point)) for point in line) for line in sorted(found, key=sorted)]


# Steiner triple coverings: 3^n less the size of a largest cap set, 1, 2, 4, 9 … (https://oeis.org/A090245).
@pytest.mark.parametrize(("dimension", "count", "least"), [(1, 1, 1), (2, 12, 5)])
def test_steiner_triples(dimension: int, count: int, least: int) -> None:
    options = lines(dimension)
    assert len(options) == count
    found = pool(options, plain)
    assert (len(set(found.items)), found.fewest) == (least, True)


def test_a_trap_for_the_greedy() -> None:
    """Two drawers cover all; the largest first leads to three. A usual trap for set cover, from memory."""
    upper, lower = range(7), range(7, 14)
    greedy = {"c": {*range(3, 7), *range(10, 14)}, "d": {1, 2, 8, 9}, "e": {0, 7}}
    sets = {"a": set(upper), "b": set(lower), **greedy}
    options = [[name for name, held in sorted(sets.items()) if place in held] for place in range(14)]
    assert set(pool(options, plain).items) == {"a", "b"}


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


@pytest.mark.parametrize("seed", range(25))
def test_against_another_solver(seed: int) -> None:
    chance = random.Random(seed)
    names = [f"part-{number}" for number in range(chance.randint(3, 7))]
    options = [sorted(chance.sample(names, chance.randint(1, 3))) for _ in range(chance.randint(3, 10))]
    means = [round(chance.choice((0.0, 0.04, 0.3, 1.1, 2.6)) * chance.uniform(0.7, 1.3), 3) for _ in options]

    def level(_: str, places: tuple[int, ...]) -> int:
        return enough(sum(means[place] for place in places), SERVICE)

    found = pool(options, level)
    assert (found.fewest, found.least) == (True, True)
    dealt: dict[str, list[int]] = {}
    for place, item in enumerate(found.items):
        assert item in options[place]
        dealt.setdefault(item, []).append(place)
    total = sum(level(item, tuple(places)) for item, places in dealt.items())
    assert (len(dealt), total) == solved(options, means)


def test_items_of_another_form_are_kept_apart() -> None:
    """A set holds less in units: it is taken, though another item serves the same places."""

    def level(item: str, _: tuple[int, ...]) -> int:
        return 1 if item == "set" else 2

    assert pool([["a", "set"], ["a", "set"]], level, lambda item: item == "set").items == ("set", "set")


def test_what_is_too_much_is_cut_off_and_said() -> None:
    chance = random.Random(7)
    names = [f"part-{number:02}" for number in range(40)]
    options = [sorted(chance.sample(names, 4)) for _ in range(160)]
    found = pool(options, lambda _, places: len(places))
    assert all(item in options[place] for place, item in enumerate(found.items))
    assert not (found.fewest and found.least)


def test_a_place_without_options_is_refused() -> None:
    with pytest.raises(ValueError, match="no options"):
        pool([["a"], []], plain)
    assert pool([], plain) == Pooling(())
