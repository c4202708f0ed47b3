"""From choices to drawers: each with what it serves, and what is asked of it."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass
from math import fsum

from rimbook.bench.shelf_choice import Choice
from rimbook.bench.shelf_demand import Asked
from rimbook.bench.shelf_levels import Load, least_units
from rimbook.bench.shelf_pool import Pooling, pool
from rimbook.bench.shelf_terms import Terms
from rimbook.book.model import Catalogue


@dataclass(frozen=True, slots=True)
class Filled:
    """One drawer: the id of what is bought for it, the choices it serves, and what they ask of it."""

    item: str
    choices: tuple[Choice, ...]
    load: Load

    @property
    def asked(self) -> tuple[Asked, ...]:
        """All its places."""
        return tuple(each for choice in self.choices for each in choice.asked)


def load_of(item: str, asked: Iterable[Asked], catalogue: Catalogue) -> Load:
    """What some places ask of a drawer: of a set, each part that it is opened for by itself."""
    if catalogue[item].kind != "set":
        return Load({item: fsum(each.a_year for each in asked)}, {item: 1})
    yearly: defaultdict[str, float] = defaultdict(float)
    for each in asked:
        yearly[each.part] += each.a_year
    return Load(dict(yearly), {part: catalogue[item].contains[part] for part in yearly})


def pooled(
    choices: Sequence[Choice], catalogue: Catalogue, terms: Terms
) -> tuple[tuple[Filled, ...], Pooling]:
    """The fewest drawers, and of those the ones that hold least, in order of id; and how it was proven."""

    def level(item: str, places: tuple[int, ...]) -> int:
        asked = [each for place in places for each in choices[place].asked]
        return least_units(load_of(item, asked, catalogue), terms.cover_years, terms.service)

    def form(item: str) -> str | None:
        return item if catalogue[item].kind == "set" else None

    found = pool([choice.items for choice in choices], level, form)
    dealt: defaultdict[str, list[Choice]] = defaultdict(list)
    for item, choice in zip(found.items, choices, strict=True):
        dealt[item].append(choice)
    taken: set[str] = set(dealt)
    drawers = []
    for item, own in sorted(dealt.items()):
        best = _best(item, own, taken, form)
        taken.add(best)
        asked = [each for choice in own for each in choice.asked]
        drawers.append(Filled(best, tuple(own), load_of(best, asked, catalogue)))
    return tuple(sorted(drawers, key=lambda drawer: drawer.item)), found


def by_part(choices: Iterable[Choice], catalogue: Catalogue) -> tuple[Filled, ...]:
    """A drawer for every part that the maps name, shared by the frames that take it."""
    return _grouped(choices, catalogue, each_frame=False)


def by_frame(choices: Iterable[Choice], catalogue: Catalogue) -> tuple[Filled, ...]:
    """A drawer for every part of every frame, shared by none."""
    return _grouped(choices, catalogue, each_frame=True)


def _grouped(choices: Iterable[Choice], catalogue: Catalogue, *, each_frame: bool) -> tuple[Filled, ...]:
    found: defaultdict[tuple[str, str], list[Choice]] = defaultdict(list)
    for choice in choices:
        for each in choice.asked:
            key = _own_item(each, choice, catalogue), each.frame if each_frame else ""
            found[key].append(Choice(choice.items, choice.part, (each,)))
    return tuple(
        Filled(item, tuple(own), load_of(item, [each for one in own for each in one.asked], catalogue))
        for (item, _), own in sorted(found.items(), key=lambda each: each[0])
    )


def _own_item(asked: Asked, choice: Choice, catalogue: Catalogue) -> str:
    """The part on the map, or the set it comes in, or where neither is sold, the best that serves."""
    if asked.part in choice.items:
        return asked.part
    sets = (item for item in choice.items if catalogue[item].kind == "set")
    return next(sets, choice.items[0])


def _best(item: str, own: Sequence[Choice], taken: set[str], form: Callable[[str], str | None]) -> str:
    """Of all that serve every place of a drawer the one that most maps name, then the best in the ranking."""
    able = {
        each
        for each in set(own[0].items).intersection(*(choice.items for choice in own))
        if form(each) == form(item) and (each == item or each not in taken)
    }
    named: defaultdict[str, float] = defaultdict(float)
    for choice in own:
        for each in choice.asked:
            named[each.part] += each.a_year
    return min(able, key=lambda each: (-named[each], sum(choice.items.index(each) for choice in own), each))
