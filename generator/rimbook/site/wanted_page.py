"""What the book lacks most: the page for a person with a racket, a calliper and ten minutes."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from rimbook.book.model import Catalogue, Part
from rimbook.site.cross import Cross
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.provenance import unknown_sizes
from rimbook.site.settings import Settings
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import counted, listed

MOST = 100
"""So many lines has each list: what is below them can wait, and the page stays small."""


class WantedMap(NamedTuple):
    """A map, what to do for it, and where its file is edited."""

    frame: Summary
    what: str
    edit: str | None


class WantedPart(NamedTuple):
    """A part, how many frames take it, what to measure, and where its file is edited."""

    part: Part
    frames: int
    what: str
    edit: str | None


@dataclass(frozen=True, slots=True)
class Wanted:
    """The three lists, the most wanted first and cut at MOST, and how long they are in all."""

    maps: Sequence[WantedMap]
    map_count: int
    parts: Sequence[WantedPart]
    part_count: int
    unconfirmed: Sequence[WantedMap]
    unconfirmed_count: int


def wanted_page(cross: Cross, catalogue: Catalogue, settings: Settings) -> Page:
    """The page of what is wanted most."""
    kind = KINDS["wanted"]

    def body() -> str:
        found = wanted(cross, catalogue, settings)
        return render("wanted.html", title=kind.title, wanted=found, root=to_root(kind.pattern))

    return Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="Maps with unknowns, parts that nobody has measured, maps that nobody has confirmed: "
        "what to measure next.",
        make=body,
    )


def wanted(cross: Cross, catalogue: Catalogue, settings: Settings) -> Wanted:
    """Look through the book once for what it lacks."""
    frames = cross.frames.values()
    lacking = sorted(
        (frame for frame in frames if frame.missing.facts),
        key=lambda frame: (-frame.missing.facts, frame.slug),
    )
    parts = sorted(_parts(catalogue), key=lambda part: (-len(cross.by_part.get(part.id, ())), part.id))
    alone = sorted(
        (frame for frame in frames if not frame.vouched.others),
        key=lambda frame: (cross.confidence(frame).score, frame.slug),
    )
    return Wanted(
        [WantedMap(each, _lacks(each), settings.edit_url(each.source)) for each in lacking[:MOST]],
        len(lacking),
        [
            WantedPart(
                part, len(cross.by_part.get(part.id, ())), _unmeasured(part), settings.edit_url(part.source)
            )
            for part in parts[:MOST]
        ],
        len(parts),
        [WantedMap(each, _signature(each), settings.edit_url(each.source)) for each in alone[:MOST]],
        len(alone),
    )


def _parts(catalogue: Catalogue) -> Iterator[Part]:
    """Parts that nobody signed for, or with sizes that nobody knows. A set is no more than its parts."""
    for part in catalogue.values():
        if part.kind != "set" and (part.measured is None or unknown_sizes(part)):
            yield part


def _lacks(frame: Summary) -> str:
    missing = frame.missing
    counts = (("bore", missing.bores), ("part", missing.parts), ("rim depth", missing.depths))
    return listed([f"the {what} of {counted(count, 'hole')}" for what, count in counts if count])


def _unmeasured(part: Part) -> str:
    missing = unknown_sizes(part)
    if missing:
        return listed(missing)
    return "every size: nobody has signed for them"


def _signature(frame: Summary) -> str:
    measured = frame.vouched.measured
    return f"measured by {measured.by} alone" if measured else "signed by nobody"
