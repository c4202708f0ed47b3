"""The index of all parts by kind, and the page of sets and strips."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import NamedTuple

from rimbook.book.model import Catalogue, Part, PartKind
from rimbook.site.cross import Cross
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.sold import Sets, packs, sold
from rimbook.site.templates import render
from rimbook.site.words import KIND_NAMES, capital, counted

# Singles and wides, then what is moulded together.
_PLURALS: dict[PartKind, str] = {
    "single": "single parts",
    "wide": "wide parts",
    "twin-even": "even twins",
    "twin-uneven": "uneven twins",
    "strip": "strips",
    "set": "sets",
}


class Shelf(NamedTuple):
    """All parts of one kind, in order of name."""

    kind: PartKind
    title: str
    parts: Sequence[Part]


def part_lists(catalogue: Catalogue, sets: Sets, cross: Cross) -> Iterator[Page]:
    """All parts by kind, and all sets and strips with what they hold and where they go."""
    shelves = [
        Shelf(kind, capital(_PLURALS[kind]), parts)
        for kind in KIND_NAMES
        if (parts := _of_kind(catalogue, kind))
    ]
    path = "parts/"
    yield Page(
        path=path,
        kind="parts",
        title=KINDS["parts"].title,
        description=f"{counted(len(catalogue), 'part')} by kind, with sizes and packs.",
        make=partial(
            render, "parts_index.html", shelves=shelves, root=to_root(path), cross=cross, packs=packs
        ),
    )
    path = "sets/"
    strips = [(part, sold(part, sets)) for part in _of_kind(catalogue, "strip")]
    yield Page(
        path=path,
        kind="sets",
        title=KINDS["sets"].title,
        description="Which set holds which strips and parts, and which frame they are for.",
        make=partial(
            render,
            "sets.html",
            sets=_of_kind(catalogue, "set"),
            strips=strips,
            catalogue=catalogue,
            cross=cross,
            root=to_root(path),
        ),
    )


def _of_kind(catalogue: Catalogue, kind: PartKind) -> list[Part]:
    found = (part for part in catalogue.values() if part.kind == kind)
    return sorted(found, key=lambda part: (part.name.casefold(), part.id))
