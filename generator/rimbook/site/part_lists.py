"""The list of all parts by kind, broken up where it is long."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from itertools import groupby
from typing import NamedTuple

from rimbook.book.model import Catalogue, Part, PartKind
from rimbook.site.cross import Cross
from rimbook.site.links import link
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.paging import ROWS, Sheet, sheets
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
"""Kinds that also have lists of their own. Where they are too many for one page, they are only there."""


class Shelf(NamedTuple):
    """Parts of one kind, in order of name, as far as they are on one page; `total` is how many there are."""

    kind: PartKind
    title: str
    parts: Sequence[Part]
    total: int


class Place(NamedTuple):
    """Where the parts of a kind begin: a link from the page, within it, or to another list."""

    title: str
    href: str
    total: int


def part_list(catalogue: Catalogue, cross: Cross) -> Iterator[Page]:
    """All parts by kind."""
    kind = KINDS["parts"]
    kinds = {name: parts for name in KIND_NAMES if (parts := of_kind(catalogue, name))}
    elsewhere = {name for name, parts in kinds.items() if name in LISTS and len(parts) > ROWS}
    rows = [part for name, parts in kinds.items() if name not in elsewhere for part in parts]
    begins = {part.kind: index // ROWS for index, part in reversed(list(enumerate(rows)))}
    for sheet in sheets(kind.pattern, rows):
        yield Page(
            path=sheet.path,
            kind=kind.name if sheet.number == 1 else f"{kind.name}-more",
            title=kind.title + sheet.suffix,
            description=f"{counted(len(catalogue), 'part')} by kind, with sizes and packs.",
            make=partial(_body, kind.title + sheet.suffix, sheet, kinds, begins, cross),
        )


def _body(
    title: str,
    sheet: Sheet[Part],
    kinds: Mapping[PartKind, Sequence[Part]],
    begins: Mapping[PartKind, int],
    cross: Cross,
) -> str:
    root = to_root(sheet.path)
    shelves = [
        Shelf(name, capital(_PLURALS[name]), list(parts), len(kinds[name]))
        for name, parts in groupby(sheet.rows, lambda part: part.kind)
    ]
    places = []
    for name, parts in kinds.items():
        if name not in begins:
            href = link(root, LISTS[name])
        elif begins[name] == sheet.number - 1:
            href = f"#{name}"
        else:
            href = f"{sheet.links[begins[name]][1]}#{name}"
        places.append(Place(capital(_PLURALS[name]), href, len(parts)))
    return render(
        "parts_index.html",
        title=title,
        sheet=sheet,
        shelves=shelves,
        places=places,
        lists=LISTS,
        root=root,
        cross=cross,
        packs=packs,
    )


def of_kind(catalogue: Catalogue, kind: PartKind) -> list[Part]:
    """The parts of one kind in order of name."""
    found = (part for part in catalogue.values() if part.kind == kind)
    return sorted(found, key=lambda part: (part.name.casefold(), part.id))
