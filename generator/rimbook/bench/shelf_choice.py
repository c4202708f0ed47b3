"""What may be kept for a place: what is sold, and serves there.

A part that is sold by itself is kept by itself. One that comes only inside a set is kept as that set; a set
is opened for nothing that is sold by itself.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from itertools import takewhile
from math import fsum

from rimbook.bench.answers import Answers
from rimbook.bench.needs import Need
from rimbook.bench.shelf_demand import Asked, Unplanned


@dataclass(frozen=True, slots=True)
class Choice:
    """Places that the same things serve, so that they come out of one drawer.

    `items` are ids of things that are sold, the best first. `part` is named where one of them is a set: it
    is what the set is opened for.
    """

    items: tuple[str, ...]
    part: str | None
    asked: tuple[Asked, ...]

    @property
    def a_year(self) -> float:
        """Pieces a year."""
        return fsum(each.a_year for each in self.asked)


def choices(asked: Iterable[Asked], answers: Answers) -> tuple[tuple[Choice, ...], tuple[Unplanned, ...]]:
    """The choices of all places that ask for something, and the places for which nothing is sold."""
    catalogue = answers.index.catalogue
    alike: defaultdict[tuple[frozenset[str], str | None], list[Asked]] = defaultdict(list)
    ranked: dict[tuple[frozenset[str], str | None], tuple[str, ...]] = {}
    unsold: list[Unplanned] = []
    for each in asked:
        items = items_for(each.need, each.part, answers)
        if not items:
            unsold.append(Unplanned(each.frame, "not sold", each.pieces, each.holes, each.part))
            continue
        in_set = any(catalogue[item].kind == "set" for item in items)
        key = frozenset(items), each.part if in_set else None
        alike[key].append(each)
        ranked.setdefault(key, items)
    return tuple(Choice(ranked[key], key[1], tuple(alike[key])) for key in alike), tuple(unsold)


def items_for(need: Need, own: str, answers: Answers) -> tuple[str, ...]:
    """What may be kept for a place: its own part, what surely serves, and the sets that hold its own part.

    Raises KeyError where the catalogue has no such part.
    """
    index, catalogue = answers.index, answers.index.catalogue
    serving = takewhile(
        lambda part: (found := answers.detail(need, part)) is not None and found.verdict == "serves",
        answers.of(need).serving,
    )
    alone = [part for part in dict.fromkeys((own, *serving)) if catalogue[part].sold_alone]
    if catalogue[own].sold_alone:
        return tuple(alone)
    return (*alone, *(each for each in index.holding.get(own, ()) if catalogue[each].sold_alone))
