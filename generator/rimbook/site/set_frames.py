"""Sets and frames: which frames a set serves, and which sets hold what a frame takes."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from itertools import islice
from typing import NamedTuple

from rimbook.book.model import Catalogue, Part
from rimbook.site.covers import cover, cover_words
from rimbook.site.cross import Cross
from rimbook.site.sold import Sets
from rimbook.site.summary import Summary

MOST_LOOKED_AT = 400
"""A set looks at so many frames for each part it holds, so that a large book stays quick."""

MOST_ALIKE = 24
"""So many frames like the one that a set is made for are held against it."""

MOST_MADE_FOR = 6
"""So many of the frames that a set is made for are asked for others like them."""

MOST_SETS = 20
"""A part that comes in more sets does not lead from a frame to any of them."""


class Served(NamedTuple):
    """A frame, and in words what a set gives it."""

    frame: Summary
    words: str


class Giving(NamedTuple):
    """A set, in words what it gives a frame, and whether it is made for that frame."""

    part: Part
    words: str
    made_for: bool


def frames_for(part: Part, cross: Cross, catalogue: Catalogue, most: int) -> tuple[list[Served], int]:
    """Other frames than those a set is made for, the best served first: at most so many, and how many."""
    ranked = []
    found = dict.fromkeys(_candidates(part, cross, catalogue))
    for place, frame in enumerate(cross.chosen(slug for slug in found if slug not in part.frames)):
        given = cover(part.contains, frame.parts, frame.unknown_parts, catalogue)
        if given.worth_naming:
            ranked.append((given.total - given.held, place, frame, given))
    ranked.sort(key=lambda each: each[:2])
    return [Served(frame, cover_words(given, catalogue)) for *_, frame, given in ranked[:most]], len(ranked)


def gives(part: Part, frame: Summary, catalogue: Catalogue) -> str:
    """What a set gives a frame, in words."""
    return cover_words(cover(part.contains, frame.parts, frame.unknown_parts, catalogue), catalogue)


def sets_for(
    slug: str, parts: Mapping[str, int], unknown: int, catalogue: Catalogue, sets: Sets, most: int
) -> list[Giving]:
    """The sets made for a frame, then others that hold what it takes, those that hold most of it first."""
    made = sets.fitting.get(slug, ())
    holding = (sets.holding.get(part, ()) for part in parts)
    others = {each.id: each for found in holding if len(found) <= MOST_SETS for each in found}
    ranked = []
    for part in others.values():
        given = cover(part.contains, parts, unknown, catalogue)
        if given.worth_naming and part not in made:
            ranked.append((given.total - given.held, part.id, part))
    ordered = [*made, *(part for *_, part in sorted(ranked, key=lambda each: each[:2]))]
    return [
        Giving(part, cover_words(cover(part.contains, parts, unknown, catalogue), catalogue), part in made)
        for part in ordered[: max(most, len(made))]
    ]


def _candidates(part: Part, cross: Cross, catalogue: Catalogue) -> Iterator[str]:
    """Frames whose rarest part is in the set, among which are all that need nothing else; those that take
    its strips; those like the frames it is made for.
    """
    for held in part.contains:
        yield from islice(cross.by_rarest.get(held, ()), MOST_LOOKED_AT)
        if held in catalogue and catalogue[held].kind == "strip":
            yield from islice(cross.by_part.get(held, ()), MOST_LOOKED_AT)
    for slug in part.frames[:MOST_MADE_FOR]:
        if slug in cross.frames:
            alike, _ = cross.likeness.of(cross.frames[slug], MOST_ALIKE)
            yield from (other.frame.slug for other in alike)
