"""The cross-index: which frames belong together, and which take which parts."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from rimbook.book.model import Catalogue
from rimbook.site.links import slugs
from rimbook.site.summary import Summary


@dataclass(frozen=True, slots=True)
class Cross:
    """All frames of the book in summary, in order of name, and the ways to look them up.

    A lookup gives slugs in the same order.
    """

    frames: Mapping[str, Summary]
    by_sport: Mapping[str, Sequence[str]]
    by_maker: Mapping[str, Sequence[str]]
    by_part: Mapping[str, Sequence[str]]
    by_loose_parts: Mapping[tuple[str, ...], Sequence[str]]
    strips: frozenset[str]
    families: Mapping[str, Sequence[str]]
    makers: Mapping[str, str]

    def maker_path(self, maker: str) -> str:
        """The page of a maker."""
        return f"makers/{self.makers[maker]}/"

    def sport_path(self, sport: str) -> str:
        """The page of a sport."""
        return f"sports/{sport}/"

    def sisters(self, frame: Summary) -> list[Summary]:
        """The other variants of the same frame."""
        family = self.families[_family(frame, self.frames)]
        return [self.frames[slug] for slug in family if slug != frame.slug]

    def alike(self, frame: Summary, most: int) -> tuple[list[Summary], int]:
        """Other frames that take the same parts, strips apart: at most so many, and how many there are."""
        loose = _loose_parts(frame, self.strips)
        if frame.unknown_parts or not loose:
            return [], 0
        same = self.by_loose_parts[loose]
        first = [self.frames[slug] for slug in same[: most + 1] if slug != frame.slug]
        return first[:most], len(same) - 1

    def chosen(self, found: Iterable[str]) -> list[Summary]:
        """The summaries of some slugs."""
        return [self.frames[slug] for slug in found]


def cross_index(summaries: Iterable[Summary], catalogue: Catalogue) -> Cross:
    """Look through all summaries once."""
    ordered = sorted(summaries, key=lambda frame: (frame.name.casefold(), frame.year or 0, frame.slug))
    frames = {frame.slug: frame for frame in ordered}
    by_sport: defaultdict[str, list[str]] = defaultdict(list)
    by_maker: defaultdict[str, list[str]] = defaultdict(list)
    by_part: defaultdict[str, list[str]] = defaultdict(list)
    by_loose_parts: defaultdict[tuple[str, ...], list[str]] = defaultdict(list)
    strips = frozenset(part.id for part in catalogue.values() if part.kind == "strip")
    families: defaultdict[str, list[str]] = defaultdict(list)
    for frame in ordered:
        by_sport[frame.sport].append(frame.slug)
        by_maker[frame.maker].append(frame.slug)
        for part in frame.parts:
            by_part[part].append(frame.slug)
        if not frame.unknown_parts and (loose := _loose_parts(frame, strips)):
            by_loose_parts[loose].append(frame.slug)
        families[_family(frame, frames)].append(frame.slug)
    makers = {frame.maker for frame in ordered} | {part.maker for part in catalogue.values() if part.maker}
    return Cross(
        frames,
        dict(sorted(by_sport.items())),
        dict(sorted(by_maker.items(), key=lambda item: (item[0].casefold(), item[0]))),
        by_part,
        by_loose_parts,
        strips,
        families,
        slugs(makers),
    )


def _loose_parts(frame: Summary, strips: frozenset[str]) -> tuple[str, ...]:
    return tuple(sorted(part for part in frame.parts if part not in strips))


def _family(frame: Summary, frames: Mapping[str, Summary]) -> str:
    """The eldest of a line of variants; a line that runs in a ring ends at its first name."""
    seen = {frame.slug}
    while elder := frames.get(frame.variant_of or ""):
        frame = elder
        if frame.slug in seen:
            return min(seen)
        seen.add(frame.slug)
    return frame.slug
