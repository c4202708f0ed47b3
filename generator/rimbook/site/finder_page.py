"""The finder: its page, and its index of everything that can be found."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache, partial

from rimbook.book.address import selector
from rimbook.book.model import Catalogue, Moved
from rimbook.site.cross import Cross
from rimbook.site.finder_index import (
    FRAMES_FILE,
    PARTS_FILE,
    FinderFrame,
    FinderPart,
    FinderPlace,
    finder_index,
)
from rimbook.site.links import bore_path, link
from rimbook.site.pages import KINDS, Asset, Page, to_root
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import KIND_NAMES, UNKNOWN, capital, counted


def finder_pages(
    cross: Cross, catalogue: Catalogue, places: Sequence[FinderPlace], moved: Moved
) -> Iterator[Page | Asset]:
    """The page with the finder, and the two files of its index."""
    kind = KINDS["finder"]
    yield Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="Find a frame by name, maker, bore, part, pattern, number of holes or shared holes.",
        make=partial(render, "finder.html", title=kind.title, root=to_root(kind.pattern)),
    )
    index = lru_cache(maxsize=1)(lambda: _index(cross, catalogue, places, moved))
    for file in (FRAMES_FILE, PARTS_FILE):
        yield Asset(file, partial(_from_index, index, file))


def _from_index(index: Callable[[], dict[str, bytes]], file: str) -> bytes:
    return index()[file]


def _index(
    cross: Cross, catalogue: Catalogue, places: Sequence[FinderPlace], moved: Moved
) -> dict[str, bytes]:
    parts = [FinderPart(part.id, part.name, KIND_NAMES[part.kind], part.maker) for part in catalogue.values()]
    found = [*_lists(cross), *_single_pages(), *places]
    return finder_index(map(_frame, cross.frames.values()), parts, found, moved)


def _single_pages() -> Iterator[FinderPlace]:
    """Pages that are alone of their kind, as the menus name them."""
    for kind in KINDS.values():
        if kind.single and kind.name != "finder":
            yield FinderPlace("page", kind.title, link("", kind.pattern))


def _frame(frame: Summary) -> FinderFrame:
    return FinderFrame(
        slug=frame.slug,
        name=frame.name,
        maker=frame.maker,
        sport=frame.sport,
        mains=frame.mains,
        crosses=frame.crosses,
        holes=frame.holes,
        bores=tuple(frame.bores),
        shared=shared_numbers(frame.shared),
        parts=tuple(frame.parts),
        aliases=frame.aliases,
        year=frame.year,
    )


def shared_numbers(words: str) -> tuple[int, ...]:
    """The numbers on the walk that selectors name, on whichever side."""
    runs = [found for word in words.split() if (found := selector(word))]
    return tuple(sorted({number for run in runs for number in range(run.first, run.last + 1)}))


def _lists(cross: Cross) -> Iterator[FinderPlace]:
    for sport, frames in cross.by_sport.items():
        path = link("", cross.sport_path(sport))
        yield FinderPlace("sport", f"{capital(sport)} frames", path, (), counted(len(frames), "frame"))
    for bore, frames in cross.by_bore.items():
        title = "Unknown bores" if bore == UNKNOWN else f"Bore {bore} mm"
        yield FinderPlace("bore", title, link("", bore_path(bore)), (), counted(len(frames), "frame"))
    for maker in sorted(cross.makers):
        note = counted(len(cross.by_maker.get(maker, ())), "frame")
        yield FinderPlace("maker", maker, link("", cross.maker_path(maker)), (), note)
