"""The cross-index: which frames belong together, and which take which parts."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from rimbook.bench.confidence import Confidence, confidence, newest
from rimbook.book.model import Catalogue
from rimbook.site.alike import Likeness
from rimbook.site.links import slugs
from rimbook.site.matrix_places import MatrixPlaces
from rimbook.site.summary import Summary
from rimbook.site.words import UNKNOWN


@dataclass(frozen=True, slots=True)
class Cross:
    """All frames of the book in summary, in order of name, and the ways to look them up.

    A lookup gives slugs in the same order. `by_rarest` names each frame once, under that of its parts which
    the fewest frames take. Bores are as on pages, the smallest first and `unknown` last.
    """

    frames: Mapping[str, Summary]
    by_sport: Mapping[str, Sequence[str]]
    by_maker: Mapping[str, Sequence[str]]
    by_part: Mapping[str, Sequence[str]]
    by_rarest: Mapping[str, Sequence[str]]
    by_bore: Mapping[str, Sequence[str]]
    families: Mapping[str, Sequence[str]]
    makers: Mapping[str, str]
    likeness: Likeness
    matrix: MatrixPlaces
    book_day: date | None

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

    def confidence(self, frame: Summary) -> Confidence:
        """How far the map of a frame can be trusted, beside all others."""
        return confidence(frame.vouched, self.book_day)

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
    by_bore: defaultdict[str, list[str]] = defaultdict(list)
    families: defaultdict[str, list[str]] = defaultdict(list)
    for frame in ordered:
        by_sport[frame.sport].append(frame.slug)
        by_maker[frame.maker].append(frame.slug)
        for part in frame.parts:
            by_part[part].append(frame.slug)
        for bore in frame.uses:
            by_bore[bore].append(frame.slug)
        families[_family(frame, frames)].append(frame.slug)
    makers = maker_slugs(ordered, catalogue)
    return Cross(
        frames,
        dict(sorted(by_sport.items())),
        dict(sorted(by_maker.items(), key=lambda item: (item[0].casefold(), item[0]))),
        by_part,
        _by_rarest(ordered, by_part),
        {bore: by_bore[bore] for bore in sorted(by_bore, key=bore_order)},
        families,
        makers,
        Likeness(ordered, catalogue),
        MatrixPlaces(ordered, makers),
        newest(frame.vouched for frame in ordered),
    )


def maker_slugs(frames: Iterable[Summary], catalogue: Catalogue) -> Mapping[str, str]:
    """The slug of each maker of a frame or a part, by name."""
    return slugs(
        {frame.maker for frame in frames} | {part.maker for part in catalogue.values() if part.maker}
    )


def bore_order(bore: str) -> tuple[bool, float]:
    """Sorts bores as pages write them: the smallest first, and `unknown` last."""
    return bore == UNKNOWN, 0.0 if bore == UNKNOWN else float(bore)


def _by_rarest(frames: Iterable[Summary], by_part: Mapping[str, Sequence[str]]) -> dict[str, list[str]]:
    found: defaultdict[str, list[str]] = defaultdict(list)
    for frame in frames:
        if frame.parts:
            found[min(frame.parts, key=lambda part: (len(by_part[part]), part))].append(frame.slug)
    return found


def _family(frame: Summary, frames: Mapping[str, Summary]) -> str:
    """The eldest of a line of variants; a line that runs in a ring ends at its first name."""
    seen = {frame.slug}
    while elder := frames.get(frame.variant_of or ""):
        frame = elder
        if frame.slug in seen:
            return min(seen)
        seen.add(frame.slug)
    return frame.slug
