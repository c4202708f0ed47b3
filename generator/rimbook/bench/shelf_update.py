"""What a season of counting says about the rates: the gamma-Poisson update.

A rate with the prior Gamma(a, b), of which x are counted in t years, has the posterior Gamma(a + x, b + t)
and the mean (a + x)/(b + t) (for instance P. D. Hoff, A First Course in Bayesian Statistical Methods, 3.2).
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from typing import NamedTuple

from rimbook.bench.shelf_choice import Choice
from rimbook.bench.shelf_demand import Asked
from rimbook.bench.shelf_drawers import Filled
from rimbook.bench.shelf_levels import Levels, levels
from rimbook.bench.shelf_plan import Drawer
from rimbook.bench.shelf_terms import Terms

PRIOR_YEARS = 1.0
"""The rates of the plan weigh as much as so many years of counting. An assumption."""


class Gamma(NamedTuple):
    """A distribution of a rate a year: its shape, and its rate in years."""

    shape: float
    rate: float

    @property
    def mean(self) -> float:
        """Pieces a year."""
        return self.shape / self.rate

    def seen(self, count: float, years: float) -> Gamma:
        """What is known after so many were counted in so many years. Raises ValueError below 0."""
        if not (count >= 0 and years >= 0):
            raise ValueError(f"{count!r} pieces in {years!r} years; expected no less than 0 of either.")
        return Gamma(self.shape + count, self.rate + years)


@dataclass(frozen=True, slots=True)
class Used:
    """So many pieces of a part, used in so many years."""

    part: str
    count: int
    years: float


@dataclass(frozen=True, slots=True)
class Learned:
    """One part of one drawer: what was assumed, what is known now, and the levels of the drawer by both."""

    item: str
    part: str
    used: Used
    prior: Gamma
    posterior: Gamma
    old: Levels
    new: Levels


def prior(a_year: float) -> Gamma:
    """The planned rate as a prior that weighs `PRIOR_YEARS`."""
    return Gamma(a_year * PRIOR_YEARS, PRIOR_YEARS)


def learn(
    drawers: Iterable[Drawer], used: Iterable[Used], terms: Terms
) -> tuple[tuple[Filled, ...], tuple[Learned, ...], tuple[Used, ...]]:
    """The drawers with new rates, what was learned, and the counts that belong to no drawer.

    What was used under the id of a part that the drawer stands in for counts for the drawer.
    """
    drawers = tuple(drawers)
    counts, unknown = _by_drawer(drawers, used)
    filled, learned = [], []
    for at, drawer in enumerate(drawers):
        load, own = drawer.filled.load, counts.get(at, {})
        after = {part: prior(load.a_year[part]).seen(use.count, use.years) for part, use in own.items()}
        fresh = replace(load, a_year={**load.a_year, **{part: each.mean for part, each in after.items()}})
        new = levels(fresh, terms)
        dealt = tuple(
            _at_rates(choice, load.a_year, fresh.a_year, drawer.item) for choice in drawer.filled.choices
        )
        filled.append(replace(drawer.filled, load=fresh, choices=dealt))
        learned += [
            Learned(drawer.item, part, own[part], prior(load.a_year[part]), each, drawer.levels, new)
            for part, each in after.items()
        ]
    return tuple(filled), tuple(learned), unknown


def _at_rates(choice: Choice, old: Mapping[str, float], new: Mapping[str, float], item: str) -> Choice:
    """A choice whose places ask for more or less, all in the same proportion."""
    return replace(choice, asked=tuple(_at_rate(each, old, new, item) for each in choice.asked))


def _at_rate(asked: Asked, old: Mapping[str, float], new: Mapping[str, float], item: str) -> Asked:
    part = item if item in old else asked.part
    return replace(asked, a_year=asked.a_year * new[part] / old[part]) if old[part] else asked


def _by_drawer(
    drawers: tuple[Drawer, ...], used: Iterable[Used]
) -> tuple[dict[int, dict[str, Used]], tuple[Used, ...]]:
    """For each drawer what was used of each of its parts; the same part twice is added up."""
    counts: dict[int, dict[str, Used]] = {}
    unknown = []
    for use in used:
        found = _place(drawers, use.part)
        if found is None:
            unknown.append(use)
            continue
        at, part = found
        before = counts.setdefault(at, {}).get(part)
        years = max(use.years, before.years) if before else use.years
        counts[at][part] = Used(part, use.count + (before.count if before else 0), years)
    return counts, tuple(unknown)


def _place(drawers: tuple[Drawer, ...], part: str) -> tuple[int, str] | None:
    """The drawer of a part: its own one, or the only one that stands in for it."""
    loads = [drawer.filled.load.a_year for drawer in drawers]
    for at, yearly in enumerate(loads):
        if part in yearly:
            return at, part
    standing = [
        at
        for at, drawer in enumerate(drawers)
        if drawer.item in loads[at] and any(each.part == part for each in drawer.filled.asked)
    ]
    return (standing[0], drawers[standing[0]].item) if len(standing) == 1 else None
