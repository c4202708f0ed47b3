"""Seasons of a club, played restring by restring: what a shelf promises is counted, not worked out."""

from __future__ import annotations

import heapq
import random
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from statistics import fmean, stdev
from typing import NamedTuple

from rimbook.bench.shelf_demand import Asked
from rimbook.bench.shelf_plan import Drawer, ShelfPlan
from rimbook.book.model import Catalogue, Club

WEEKS = 52.0


class Counted(NamedTuple):
    """The share of orders after which a drawer did not run short, and its standard error."""

    share: float
    error: float


def seasons(club: Club, shelf: ShelfPlan, catalogue: Catalogue, count: int, seed: int) -> dict[str, Counted]:
    """Play so many seasons, each from a full shelf, and count for each drawer."""
    chance = random.Random(seed)
    at = {id(each): drawer.item for drawer in shelf.drawers for each in drawer.filled.asked}
    own: defaultdict[tuple[str, str], list[Asked]] = defaultdict(list)
    for drawer in shelf.drawers:
        for each in drawer.filled.asked:
            own[each.frame, catalogue[each.part].kind] += [each] * each.pieces
    shares: defaultdict[str, list[float]] = defaultdict(list)
    for _ in range(count):
        renewed: defaultdict[str, list[tuple[float, str]]] = defaultdict(list)
        for frame in club.frames:
            for week in _restrings(frame.restrings_per_year or 0.0, chance):
                for kind, share in shelf.terms.shares.items():
                    places = own.get((frame.frame, kind))
                    if places and chance.random() < share:
                        place = chance.choice(places)
                        renewed[at[id(place)]].append((week, place.part))
        for drawer in shelf.drawers:
            shares[drawer.item].append(_kept(drawer, renewed[drawer.item], shelf, catalogue))
    return {item: Counted(fmean(each), stdev(each) / count**0.5) for item, each in shares.items()}


def _restrings(yearly: float, chance: random.Random) -> list[float]:
    """The weeks of a season's restrings, one after the other by chance."""
    weeks, week = [], 0.0
    while yearly and (week := week + chance.expovariate(yearly / WEEKS)) < WEEKS:
        weeks.append(week)
    return weeks


def _kept(
    drawer: Drawer, renewed: Sequence[tuple[float, str]], shelf: ShelfPlan, catalogue: Catalogue
) -> float:
    """The share of orders of one season up to whose successor's arrival nothing was short."""
    lead, review = shelf.terms.lead_weeks, shelf.terms.review_weeks
    if catalogue[drawer.item].kind != "set":
        return _stocked(drawer.levels.up_to, [week for week, _ in renewed], lead, review)
    holds = catalogue[drawer.item].contains
    starts = [n * review for n in range(int((WEEKS - lead) // review))]
    fine = []
    for start in starts:
        asked = Counter(part for week, part in renewed if start < week <= start + lead + review)
        fine.append(_sets(asked, holds) <= drawer.levels.up_to)
    return fmean(fine)


def _sets(asked: Mapping[str, int], holds: Mapping[str, int]) -> int:
    """The sets that have to be opened."""
    return max((-(-count // holds[part]) for part, count in asked.items()), default=0)


def _stocked(full: int, demands: Sequence[float], lead: float, review: float) -> float:
    """Review, order, deliver: at each arrival, was anything owed since the one before?"""
    events = [(week, 1, 0) for week in demands]
    reviews = int((WEEKS - lead) // review)
    events += [(n * review, 2, 0) for n in range(reviews + 1)]
    heapq.heapify(events)
    here, position, fine, first = full, full, [], True
    while events:
        week, what, pieces = heapq.heappop(events)
        if what == 1:
            here, position = here - 1, position - 1
        elif what == 2:
            heapq.heappush(events, (week + lead, 0, full - position))
            position = full
        else:
            if not first:
                fine.append(here >= 0)
            here, first = here + pieces, False
    return fmean(fine)
