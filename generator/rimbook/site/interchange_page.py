"""One page on the whole book: frames that share a drawer, parts that nothing replaces, what to measure."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator
from functools import partial
from typing import NamedTuple

from rimbook.bench.reasons import MEASURE
from rimbook.book.model import Catalogue, Part
from rimbook.site.cross import Cross
from rimbook.site.exchange import Exchange
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.summary import Summary
from rimbook.site.templates import render

MOST_DRAWERS, MOST_FRAMES, MOST_PARTS = 100, 12, 200
"""So many drawers, frames of each, and parts that nothing replaces are named."""


class Shared(NamedTuple):
    """A drawer that two frames or more can share: its parts, how many frames, and some of them."""

    parts: tuple[Part, ...]
    all_frames: int
    frames: tuple[Summary, ...]


class Only(NamedTuple):
    """A part that nothing replaces, how many frames take it, and the sets that hold it."""

    part: Part
    frames: int
    sets: tuple[Part, ...]


class Unmeasured(NamedTuple):
    """A measure that is missing, how to take it, how many frames miss it, and some of them."""

    name: str
    advice: str
    all_frames: int
    frames: tuple[Summary, ...]


def interchange_page(cross: Cross, catalogue: Catalogue, book: Callable[[], Exchange]) -> Page:
    """The page; `book` gives the interchange when it is wanted."""
    kind = KINDS["interchange"]
    return Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="Frames that can share a drawer of grommets, and the parts that nothing else replaces.",
        make=partial(_body, cross, catalogue, book),
    )


def _body(cross: Cross, catalogue: Catalogue, book: Callable[[], Exchange]) -> str:
    found = book()
    drawers = sorted(
        (drawer for drawer in found.found.drawers if len(drawer.frames) > 1),
        key=lambda drawer: (-len(drawer.frames), drawer.parts),
    )
    only = list(_only(found, cross, catalogue))
    return render(
        "interchange.html",
        title=KINDS["interchange"].title,
        drawers=[
            Shared(
                tuple(catalogue[part] for part in drawer.parts),
                len(drawer.frames),
                tuple(cross.chosen(drawer.frames[:MOST_FRAMES])),
            )
            for drawer in drawers[:MOST_DRAWERS]
        ],
        drawer_count=len(drawers),
        only=only[:MOST_PARTS],
        only_count=len(only),
        untold=list(_untold(found, cross)),
        root=to_root(KINDS["interchange"].pattern),
    )


def _only(found: Exchange, cross: Cross, catalogue: Catalogue) -> Iterator[Only]:
    holding = found.answers.index.holding
    for part in found.found.irreplaceable:
        if part in catalogue:
            sets = tuple(catalogue[each] for each in holding.get(part, ())[:2])
            yield Only(catalogue[part], len(cross.by_part.get(part, ())), sets)


def _untold(found: Exchange, cross: Cross) -> Iterator[Unmeasured]:
    count = Counter(what for missing in found.found.untold.values() for what in missing)
    for what, frames in count.most_common():
        slugs = [slug for slug, missing in found.found.untold.items() if what in missing]
        yield Unmeasured(what, MEASURE[what], frames, tuple(cross.chosen(slugs[:MOST_FRAMES])))
