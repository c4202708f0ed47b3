"""All sets with what they hold and for what, and all strips with where they go and how they are sold."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import Any, NamedTuple

from rimbook.book.model import Catalogue, Part
from rimbook.site.cross import Cross
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.paging import Sheet, sheets
from rimbook.site.part_lists import of_kind
from rimbook.site.sold import Sets, sold
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import counted

FEW = 3
"""So many frames stand beside a strip in the list of all strips."""


class SetRow(NamedTuple):
    """A set, the frames it is made for that have a map, and what it holds: id, part and pieces."""

    part: Part
    frames: Sequence[Summary]
    held: Sequence[tuple[str, Part | None, int]]


class StripRow(NamedTuple):
    """A strip, the first of so many frames that take it, the sets it comes in, how it is sold."""

    part: Part
    frames: Sequence[Summary]
    frame_count: int
    sets: Sequence[Part]
    sold: str


def set_lists(catalogue: Catalogue, sets: Sets, cross: Cross) -> Iterator[Page]:
    """The list of sets and the list of strips, each broken up where it is long."""
    yield from _list(
        "sets",
        "Which set holds which strips and parts, and which frame it is for.",
        of_kind(catalogue, "set"),
        lambda part: _set_row(part, catalogue, cross),
        cross,
    )
    yield from _list(
        "strips",
        "Which strip goes over which holes of which frame, and how it is sold.",
        of_kind(catalogue, "strip"),
        lambda part: _strip_row(part, sets, cross),
        cross,
    )


def _list(
    name: str, description: str, parts: Sequence[Part], row: Callable[[Part], NamedTuple], cross: Cross
) -> Iterator[Page]:
    kind = KINDS[name]
    for sheet in sheets(kind.pattern, parts):
        yield Page(
            path=sheet.path,
            kind=kind.name if sheet.number == 1 else f"{kind.name}-more",
            title=kind.title + sheet.suffix,
            description=description,
            make=partial(_body, name, kind.title + sheet.suffix, sheet, len(parts), row, cross),
        )


def _body(
    name: str, title: str, sheet: Sheet[Part], count: int, row: Callable[[Part], Any], cross: Cross
) -> str:
    return render(
        f"{name}.html",
        title=title,
        rows=[row(part) for part in sheet.rows],
        caption=counted(count, name.removesuffix("s")) + sheet.suffix,
        sheet=sheet,
        cross=cross,
        root=to_root(sheet.path),
    )


def _set_row(part: Part, catalogue: Catalogue, cross: Cross) -> SetRow:
    return SetRow(
        part,
        [cross.frames[slug] for slug in part.frames if slug in cross.frames],
        [(held, catalogue.get(held), count) for held, count in part.contains.items()],
    )


def _strip_row(part: Part, sets: Sets, cross: Cross) -> StripRow:
    slugs = cross.by_part.get(part.id, ())
    holding = sets.holding.get(part.id, ())
    return StripRow(part, cross.chosen(slugs[:FEW]), len(slugs), holding, sold(part, sets))
