"""Which drawers to keep: the fewest that serve every place, and of those the ones that hold least.

A minimum set cover, worked out exactly on each group of places that hang together. Fewest first: the cover is
sought with one drawer more each time, branching on the place with the fewest options, cut off where places
without an option in common ask for more drawers than are left (for instance L. A. Wolsey, Integer
Programming). Then all covers of that size are looked through, and all ways to deal the places out to them,
cut off where the drawers hold too much already: a level never falls when a place is added.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterator, Mapping, Sequence
from dataclasses import dataclass

MOST_STEPS = 40_000
"""So many steps are taken in each group for the fewest drawers, and again for the least level."""

DEEPEST = 400
"""More places with a choice than that are not dealt out one by one."""

Level = Callable[[str, tuple[int, ...]], int]
"""What has to be kept of an item for some places, by their index. It never falls when one is added."""


@dataclass(frozen=True, slots=True)
class Pooling:
    """For each place its item. `fewest` or `least` is false where the search was cut off before its proof."""

    items: tuple[str, ...]
    fewest: bool = True
    least: bool = True


class _CutOff(Exception):
    """The search took too many steps."""


def pool(
    options: Sequence[Sequence[str]], level: Level, form: Callable[[str], Hashable] = lambda _: None
) -> Pooling:
    """Give each place one of its options so that the fewest items are used, then the least is kept.

    Items of the same form have the same level for the same places. Raises ValueError for a place without
    options.
    """
    if not all(options):
        raise ValueError("A place has no options.")
    chosen = [""] * len(options)
    fewest = least = True
    for places in _groups(options):
        group = _Group(places, options, level, form)
        cover, proven = group.fewest()
        fewest &= proven
        given, proven = group.least(cover)
        least &= proven
        for place, item in given.items():
            chosen[place] = item
    return Pooling(tuple(chosen), fewest, least)


def _groups(options: Sequence[Sequence[str]]) -> Iterator[list[int]]:
    """Places that hang together by a common option."""
    asking: defaultdict[str, list[int]] = defaultdict(list)
    for place, items in enumerate(options):
        for item in items:
            asking[item].append(place)
    seen: set[int] = set()
    for start in range(len(options)):
        if start in seen:
            continue
        seen.add(start)
        group = [start]
        for place in group:
            for item in options[place]:
                fresh = [other for other in asking[item] if other not in seen]
                seen.update(fresh)
                group += fresh
        yield sorted(group)


class _Group:
    """One group. Sets of places are whole numbers, a bit a place."""

    def __init__(
        self,
        places: Sequence[int],
        options: Sequence[Sequence[str]],
        level: Level,
        form: Callable[[str], Hashable],
    ) -> None:
        self.places = places
        self.level = level
        self.covers = _without_lesser(_covers(places, options), form)
        self.options = [
            [item for item, covered in self.covers.items() if covered >> bit & 1]
            for bit in range(len(places))
        ]
        self.steps = 0
        self.failed: dict[int, int] = {}
        self.levels: dict[tuple[str, int], int] = {}

    def fewest(self) -> tuple[tuple[str, ...], bool]:
        """As few items as cover all places, and whether that is proven."""
        everything = (1 << len(self.places)) - 1
        self.steps = 0
        try:
            count = self._at_least(everything)
            while (cover := self._cover(everything, count)) is None:
                count += 1
            return cover, True
        except _CutOff:
            return self._greedy(everything), False

    def least(self, cover: tuple[str, ...]) -> tuple[dict[int, str], bool]:
        """The item of each place with the least sum of levels, and whether that is proven.

        From as many items as `cover` has, which is taken where no better is found in time.
        """
        everything = (1 << len(self.places)) - 1
        self.steps, best, total = 0, self._first(cover), None
        try:
            for each in self._all(everything, len(cover), (), frozenset()):
                found = self._deal(each, total)
                if found is not None:
                    best, total = found
        except _CutOff:
            return dict(zip(self.places, best, strict=True)), False
        return dict(zip(self.places, best, strict=True)), self.steps <= MOST_STEPS

    def _step(self) -> None:
        self.steps += 1
        if self.steps > MOST_STEPS:
            raise _CutOff

    def _tightest(self, uncovered: int, without: frozenset[str] = frozenset()) -> list[str]:
        """The options of the uncovered place that has the fewest, those that cover most first."""
        bits = [bit for bit in range(len(self.places)) if uncovered >> bit & 1]
        found = min(([item for item in self.options[bit] if item not in without] for bit in bits), key=len)
        return sorted(found, key=lambda item: (-(self.covers[item] & uncovered).bit_count(), item))

    def _at_least(self, uncovered: int) -> int:
        """So many uncovered places have no option in common: each takes an item of its own."""
        count = 0
        taken: set[str] = set()
        bits = [bit for bit in range(len(self.places)) if uncovered >> bit & 1]
        for bit in sorted(bits, key=lambda bit: len(self.options[bit])):
            if taken.isdisjoint(self.options[bit]):
                taken.update(self.options[bit])
                count += 1
        return count

    def _cover(self, uncovered: int, count: int) -> tuple[str, ...] | None:
        """A cover of at most so many items, if there is one."""
        if not uncovered:
            return ()
        if self.failed.get(uncovered, -1) >= count:
            return None
        self._step()
        if self._at_least(uncovered) <= count:
            for item in self._tightest(uncovered):
                rest = self._cover(uncovered & ~self.covers[item], count - 1)
                if rest is not None:
                    return (item, *rest)
        self.failed[uncovered] = count
        return None

    def _all(
        self, uncovered: int, count: int, taken: tuple[str, ...], without: frozenset[str]
    ) -> Iterator[tuple[str, ...]]:
        """Every cover of so many items, once: what an earlier branch took is left out of the later ones."""
        self._step()
        if not uncovered:
            yield taken
            return
        if self._at_least(uncovered) > count or self.failed.get(uncovered, -1) >= count:
            return
        for item in self._tightest(uncovered, without):
            yield from self._all(uncovered & ~self.covers[item], count - 1, (*taken, item), without)
            without |= {item}

    def _deal(self, cover: tuple[str, ...], most: int | None) -> tuple[list[str], int] | None:
        """Deal the places out to a cover with the least sum of levels, if that is less than `most`."""
        ways = [[item for item in cover if self.covers[item] >> bit & 1] for bit in range(len(self.places))]
        held = dict.fromkeys(cover, 0)
        for bit, items in enumerate(ways):
            if len(items) == 1:
                held[items[0]] |= 1 << bit
        free = [bit for bit, items in enumerate(ways) if len(items) > 1]
        best: tuple[list[str], int] | None = None

        def go(at: int, total: int) -> None:
            nonlocal best, most
            self._step()
            if most is not None and total >= most:
                return
            if at == len(free):
                best, most = (self._spread(held), total), total
                return
            for item in ways[free[at]]:
                before = held[item]
                held[item] = before | 1 << free[at]
                go(at + 1, total - self._level(item, before) + self._level(item, held[item]))
                held[item] = before

        if len(free) > DEEPEST:
            raise _CutOff
        try:
            go(0, sum(self._level(item, places) for item, places in held.items()))
        except _CutOff:
            if best is None:
                raise  # else what was found is taken over, and the next step ends the search
        return best

    def _level(self, item: str, held: int) -> int:
        if not held:
            return 0
        key = item, held
        if key not in self.levels:
            bits = (bit for bit in range(len(self.places)) if held >> bit & 1)
            self.levels[key] = self.level(item, tuple(self.places[bit] for bit in bits))
        return self.levels[key]

    def _greedy(self, uncovered: int) -> tuple[str, ...]:
        taken: list[str] = []
        while uncovered:
            item = max(sorted(self.covers), key=lambda each: (self.covers[each] & uncovered).bit_count())
            taken.append(item)
            uncovered &= ~self.covers[item]
        return tuple(taken)

    def _first(self, cover: Sequence[str]) -> list[str]:
        """Each place to the first item of a cover that serves it."""
        return [
            next(item for item in cover if self.covers[item] >> bit & 1) for bit in range(len(self.places))
        ]

    def _spread(self, held: Mapping[str, int]) -> list[str]:
        return [
            next(item for item, places in held.items() if places >> bit & 1)
            for bit in range(len(self.places))
        ]


def _covers(places: Sequence[int], options: Sequence[Sequence[str]]) -> dict[str, int]:
    covers: defaultdict[str, int] = defaultdict(int)
    for bit, place in enumerate(places):
        for item in options[place]:
            covers[item] |= 1 << bit
    return dict(sorted(covers.items()))


def _without_lesser(covers: Mapping[str, int], form: Callable[[str], Hashable]) -> dict[str, int]:
    """Without items that serve no more than another of their form: in a least cover that one takes its place.

    Both are never in it, since one of them could go.
    """
    kept: dict[str, int] = {}
    for item, covered in sorted(covers.items(), key=lambda each: (-each[1].bit_count(), each[0])):
        if not any(covered & ~other == 0 and form(item) == form(name) for name, other in kept.items()):
            kept[item] = covered
    return kept
