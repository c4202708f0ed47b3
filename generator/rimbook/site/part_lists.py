"""The index of all parts by kind."""

from __future__ import annotations

from collections.abc import Sequence
from functools import partial
from typing import NamedTuple

from rimbook.book.model import Catalogue, Part, PartKind
from rimbook.site.cross import Cross
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.paging import ROWS
from rimbook.site.sold import packs
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


LISTS: dict[PartKind, str] = {"strip": "strips/", "set": "sets/"}
"""Kinds that also have lists of their own, broken up where they are long."""


class Shelf(NamedTuple):
    """All parts of one kind, in order of name. A long shelf may be listed elsewhere only."""

    kind: PartKind
    title: str
    parts: Sequence[Part]

    @property
    def elsewhere(self) -> str | None:
        """Where the parts are listed, if here they are too many."""
        return LISTS.get(self.kind) if len(self.parts) > ROWS else None


def part_list(catalogue: Catalogue, cross: Cross) -> Page:
    """All parts by kind."""
    shelves = [
        Shelf(kind, capital(_PLURALS[kind]), parts)
        for kind in KIND_NAMES
        if (parts := of_kind(catalogue, kind))
    ]
    path = "parts/"
    return Page(
        path=path,
        kind="parts",
        title=KINDS["parts"].title,
        description=f"{counted(len(catalogue), 'part')} by kind, with sizes and packs.",
        make=partial(
            render,
            "parts_index.html",
            shelves=shelves,
            lists=LISTS,
            root=to_root(path),
            cross=cross,
            packs=packs,
        ),
    )


def of_kind(catalogue: Catalogue, kind: PartKind) -> list[Part]:
    """The parts of one kind in order of name."""
    found = (part for part in catalogue.values() if part.kind == kind)
    return sorted(found, key=lambda part: (part.name.casefold(), part.id))
