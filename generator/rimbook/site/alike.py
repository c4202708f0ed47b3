"""Frames that take the same parts as another, those that differ least first, and how they differ in words."""

from __future__ import annotations

from bisect import bisect_left
from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from rimbook.book.model import Catalogue
from rimbook.site.agree import agreement, differ, names
from rimbook.site.summary import Summary

Loose = tuple[str, ...]
"""The ids of the parts that a frame takes besides its strips, in order."""

WINDOW = 12
"""So many neighbours are looked at on either side: the work grows with frames, not with pairs of frames."""

FEW = 6
"""So many kinds of frame that take all of the loose parts but one, and half as many frames of each."""

MOST_LACKING = 2
"""A frame that lacks more of the parts is not alike. All strips together count as one."""


class Alike(NamedTuple):
    """Another frame, and how much of a regrommet agrees: `all but Plover crown strip`."""

    frame: Summary
    words: str


class Likeness:
    """All frames in an order in which those that take the same parts stand side by side.

    `by_loose` and `by_strip` give places in that order. `by_rest` names the kinds of frame that take some
    parts, or these and one more.
    """

    def __init__(self, frames: Iterable[Summary], catalogue: Catalogue) -> None:
        self.catalogue = catalogue
        self.strips = frozenset(part.id for part in catalogue.values() if part.kind == "strip")
        self.frames = sorted(frames, key=_order)
        self.places = {frame.slug: place for place, frame in enumerate(self.frames)}
        self.by_loose: defaultdict[Loose, list[int]] = defaultdict(list)
        self.by_strip: defaultdict[str, list[int]] = defaultdict(list)
        for place, frame in enumerate(self.frames):
            if loose := self._loose(frame):
                self.by_loose[loose].append(place)
            for part in self.strips.intersection(frame.parts):
                self.by_strip[part].append(place)
        self.by_rest = _by_rest(self.by_loose)

    def of(self, frame: Summary, most: int) -> tuple[list[Alike], int]:
        """At most so many frames alike, and how many there are that take the same loose parts."""
        loose, own = self._loose(frame), self.places[frame.slug]
        ranked = []
        for place in set(self._near(frame, loose, own)) - {own}:
            other = self.frames[place]
            lacking, besides, uneven = differ(frame.parts, other.parts)
            if self._alike(frame, lacking):
                ranked.append((len(lacking) + len(besides), uneven, other.maker != frame.maker, place))
        chosen = [self.frames[place] for *_, place in sorted(ranked)[:most]]
        same = len(self.by_loose.get(loose, (own,))) - 1
        return [Alike(other, self._words(frame, other)) for other in chosen], same

    def _loose(self, frame: Summary) -> Loose:
        return tuple(sorted(part for part in frame.parts if part not in self.strips))

    def _near(self, frame: Summary, loose: Loose, own: int) -> Iterator[int]:
        """Where frames stand that may be alike: the same loose parts, the same strip, all but one."""
        yield from _about(own, self.by_loose.get(loose, ()), WINDOW)
        for part in sorted(self.strips.intersection(frame.parts)):
            yield from _about(own, self.by_strip[part], WINDOW)
        for rest in (loose, *_rests(loose)):
            for kind in self.by_rest.get(rest, ())[: FEW + 1]:
                if kind != loose:
                    yield from _about(own, self.by_loose[kind], FEW // 2)

    def _alike(self, frame: Summary, lacking: Sequence[str]) -> bool:
        """Whether little enough is lacking: a part or two, and no more than half of all pieces."""
        loose = [part for part in lacking if part not in self.strips]
        groups = len(loose) + (len(lacking) > len(loose))
        pieces = sum(frame.parts[part] for part in lacking)
        return groups <= MOST_LACKING and 2 * pieces <= sum(frame.parts.values())

    def _words(self, frame: Summary, other: Summary) -> str:
        known = not frame.unknown_parts and not other.unknown_parts
        return agreement(frame.parts, other.parts, known, lambda ids: names(ids, frame.parts, self.catalogue))


def _order(frame: Summary) -> tuple[object, ...]:
    parts = tuple(sorted(frame.parts.items()))
    return parts, frame.sport, frame.maker.casefold(), frame.name.casefold(), frame.slug


def _about(own: int, places: Sequence[int], width: int) -> Sequence[int]:
    """The places nearest to one's own."""
    at = bisect_left(places, own)
    return places[max(0, at - width) : at + width + 1]


def _rests(loose: Loose) -> Iterator[Loose]:
    """The parts but one, in each way there is."""
    if len(loose) > 1:
        yield from (loose[:at] + loose[at + 1 :] for at in range(len(loose)))


def _by_rest(kinds: Iterable[Loose]) -> Mapping[Loose, Sequence[Loose]]:
    found: defaultdict[Loose, list[Loose]] = defaultdict(list)
    for kind in kinds:
        found[kind].append(kind)
        for rest in _rests(kind):
            found[rest].append(kind)
    return found
