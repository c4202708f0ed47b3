"""The same purchases by another way: mixed integer programs, solved by HiGHS through scipy."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np
from scipy.optimize import Bounds, LinearConstraint, milp
from scipy.sparse import lil_matrix

from tests.browser.buy_cases import Problem


class Oracle:
    """One purchase as a program: whole numbers of offers, and pieces that flow from parts to needs."""

    def __init__(self, problem: Problem, unmet: Mapping[str, int] | None = None) -> None:
        missed = unmet or {}
        self.offers = problem["offers"]
        needs = problem["needs"]
        parts = sorted({part for each in needs for part in each["parts"]})
        ways = [(k, part) for k, each in enumerate(needs) for part in sorted(set(each["parts"]))]
        width = len(self.offers) + len(ways)
        rows = lil_matrix((len(needs) + len(parts), width))
        low = np.zeros(len(needs) + len(parts))
        for column, (k, part) in enumerate(ways, start=len(self.offers)):
            rows[k, column] = 1
            rows[len(needs) + parts.index(part), column] = -1
        for k, each in enumerate(needs):
            low[k] = each["count"] - missed.get(each["id"], 0)
        for i, part in enumerate(parts):
            low[len(needs) + i] = -problem["shelf"].get(part, 0)
            for j, each in enumerate(self.offers):
                rows[len(needs) + i, j] = each["holds"].get(part, 0)
        self.enough = LinearConstraint(rows.tocsr(), low, np.inf)
        self.whole = np.array([1] * len(self.offers) + [0] * len(ways))
        self.goals = {
            "price": self._goal([each["price"] for each in self.offers]),
            "purchases": self._goal([1] * len(self.offers)),
            "pieces": self._goal([sum(each["holds"].values()) for each in self.offers]),
        }

    def least(
        self, goal: str, most: Mapping[str, int] | None = None, times: Mapping[str, int] | None = None
    ) -> int | None:
        """The least price, purchases or pieces where others keep to what they may be at most.

        `times` limits single offers. None where nothing is enough.
        """
        limits = [
            LinearConstraint(self.goals[name].reshape(1, -1), -np.inf, value)
            for name, value in (most or {}).items()
        ]
        upper = np.full(len(self.whole), np.inf)
        for j, each in enumerate(self.offers):
            upper[j] = (times or {}).get(each["id"], np.inf)
        found = milp(
            self.goals[goal],
            constraints=[self.enough, *limits],
            integrality=self.whole,
            bounds=Bounds(0, upper),
            options={"mip_rel_gap": 0},
        )
        if found.status == 2:
            return None
        assert found.status == 0, found.message
        least: int = round(found.fun)
        return least

    def _goal(self, values: Sequence[int]) -> Any:
        return np.array([*values, *[0] * (len(self.whole) - len(values))], dtype=float)


def most_met(problem: Problem) -> int:
    """How many pieces the needs can have at most if every offer is bought without end."""
    asked = sum(each["count"] for each in problem["needs"])
    endless = {part for each in problem["offers"] for part, count in each["holds"].items() if count}
    parts = sorted({part for each in problem["needs"] for part in each["parts"]})
    ways = [(k, part) for k, each in enumerate(problem["needs"]) for part in sorted(set(each["parts"]))]
    if not ways:
        return 0
    rows = lil_matrix((len(problem["needs"]) + len(parts), len(ways)))
    for column, (k, part) in enumerate(ways):
        rows[k, column] = 1
        rows[len(problem["needs"]) + parts.index(part), column] = 1
    supply = [asked if part in endless else problem["shelf"].get(part, 0) for part in parts]
    high = np.array([*(each["count"] for each in problem["needs"]), *supply], dtype=float)
    found = milp(-np.ones(len(ways)), constraints=LinearConstraint(rows.tocsr(), -np.inf, high))
    assert found.status == 0, found.message
    met: int = round(-found.fun)
    return met
