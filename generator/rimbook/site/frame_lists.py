"""Lists of frames: all of them, and those of one sport or one maker."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import Any, TypeVar

from rimbook.book.model import Catalogue, Part
from rimbook.site.cross import Cross
from rimbook.site.links import link
from rimbook.site.matrix_places import WHATS
from rimbook.site.pages import KINDS, Kind, Page, to_root
from rimbook.site.paging import Sheet, sheets
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import capital, counted

T = TypeVar("T")


def frame_lists(cross: Cross, catalogue: Catalogue) -> Iterator[Page]:
    """The index of all frames, of sports and of makers, and a list for each sport and maker."""
    frames = list(cross.frames.values())
    yield from _list("frames/", "frames", KINDS["frames"].title, frames, cross)
    yield _index(
        KINDS["sports"],
        [(capital(sport), cross.sport_path(sport), len(found), 0) for sport, found in cross.by_sport.items()],
    )
    for sport, found in cross.by_sport.items():
        path = cross.sport_path(sport)
        yield from _list(path, "sport", f"{capital(sport)} frames", cross.chosen(found), cross)
    parts_by_maker = _parts_by_maker(catalogue)
    makers = sorted(cross.makers, key=lambda maker: (maker.casefold(), maker))
    yield _index(
        KINDS["makers"],
        [
            (
                maker,
                cross.maker_path(maker),
                len(cross.by_maker.get(maker, ())),
                len(parts_by_maker.get(maker, ())),
            )
            for maker in makers
        ],
    )
    for maker in makers:
        chosen = cross.chosen(cross.by_maker.get(maker, ()))
        parts = parts_by_maker.get(maker, [])
        yield from _list(cross.maker_path(maker), "maker", maker, chosen, cross, parts)


def _parts_by_maker(catalogue: Catalogue) -> dict[str, list[Part]]:
    found: dict[str, list[Part]] = {}
    for part in sorted(catalogue.values(), key=lambda part: (part.name.casefold(), part.id)):
        if part.maker:
            found.setdefault(part.maker, []).append(part)
    return found


def _list(
    path: str, kind: str, title: str, frames: Sequence[Summary], cross: Cross, parts: Sequence[Part] = ()
) -> Iterator[Page]:
    by_frames, by_parts = list(sheets(path, frames)), list(sheets(path, parts))
    longer: Sequence[Sheet[Any]] = by_frames if len(by_frames) >= len(by_parts) else by_parts
    for sheet in longer:
        some_frames = _rows(by_frames, sheet.number)
        yield Page(
            path=sheet.path,
            kind=kind if sheet.number == 1 else f"{kind}-more",
            title=title + sheet.suffix,
            description=f"{title}: {counted(len(frames), 'frame')} with a grommet map in this book.",
            make=partial(
                render,
                "frame_list.html",
                title=title + sheet.suffix,
                frames=some_frames,
                count=len(frames),
                sheet=sheet,
                cross=cross,
                parts=_rows(by_parts, sheet.number),
                part_count=len(parts),
                matrices=list(_matrices(kind, some_frames, cross, to_root(sheet.path))),
                root=to_root(sheet.path),
            ),
        )


def _rows(found: Sequence[Sheet[T]], number: int) -> Sequence[T]:
    """What a list has on the page of this number, if it is so long."""
    return found[number - 1].rows if number <= len(found) else ()


def _matrices(kind: str, frames: Sequence[Summary], cross: Cross, root: str) -> Iterator[tuple[str, str]]:
    """Where the frames of a sport or of a maker stand in the matrices."""
    if kind in ("sport", "maker"):
        for what in WHATS:
            for sport, href in cross.matrix.of_sports(what, frames, root):
                yield f"{sport} frames by {what.removesuffix('s')}", href


def _index(kind: Kind, rows: Sequence[tuple[str, str, int, int]]) -> Page:
    root = to_root(kind.pattern)
    return Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description=f"{kind.title} in this book of grommet maps.",
        make=partial(
            render,
            "index_list.html",
            title=kind.title,
            rows=[(name, link(root, to), frames, parts) for name, to, frames, parts in rows],
        ),
    )
