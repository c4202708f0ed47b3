"""What changed in the book lately, day by day, out of its history."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby
from typing import NamedTuple

from rimbook.book.model import Catalogue
from rimbook.site.changes.change import Thing
from rimbook.site.cross import Cross
from rimbook.site.links import frame_path, link, part_path
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.templates import render
from rimbook.site.words import counted, day

MOST_SENTENCES = 60
"""So many sentences are told of one step; what is beyond them is counted."""


class Told(NamedTuple):
    """One change of a frame or a part, as a sentence; `breaking` is a removal or a new name."""

    thing: Thing
    id: str
    text: str
    breaking: bool = False


@dataclass(frozen=True, slots=True)
class Step:
    """What one step of the history changed, on its day. `more` counts changes that are not told."""

    on: date
    told: tuple[Told, ...]
    more: int = 0


@dataclass(frozen=True, slots=True)
class History:
    """The latest steps, the newest first. `why_not` says why there are none, `cut` that older ones exist."""

    steps: tuple[Step, ...] = ()
    why_not: str = ""
    cut: bool = False


class Line(NamedTuple):
    """All changes of one thing in one step, and where its page is, if it still has one."""

    name: str
    href: str | None
    told: Sequence[Told]


def unknown_history() -> History:
    """The history of a book of which only the newest state is at hand."""
    return History(why_not="The history of the book was not at hand when this site was built.")


def history_page(history: Callable[[], History], cross: Cross, catalogue: Catalogue) -> Page:
    """The page of what changed lately. `history` is asked for when the page is made."""
    kind = KINDS["changes"]

    def body() -> str:
        found = history()
        root = to_root(kind.pattern)
        days = [
            (day(on), on.isoformat(), [_step(step, cross, catalogue, root) for step in steps])
            for on, steps in groupby(found.steps, key=lambda step: step.on)
        ]
        return render("history.html", title=kind.title, days=days, history=found, root=root)

    return Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="What changed in the maps and parts of this book lately, day by day, hole by hole.",
        make=body,
    )


def _step(step: Step, cross: Cross, catalogue: Catalogue, root: str) -> tuple[Sequence[Line], str]:
    lines = list(_lines(step.told, cross, catalogue, root))
    return lines, counted(step.more, "more change" if lines else "change") if step.more else ""


def _lines(told: Sequence[Told], cross: Cross, catalogue: Catalogue, root: str) -> Iterator[Line]:
    for (thing, name), group in groupby(told, key=lambda each: (each.thing, each.id)):
        own = list(group)
        if thing == "frame" and name in cross.frames:
            yield Line(cross.frames[name].full_name, link(root, frame_path(name)), own)
        elif thing == "part" and name in catalogue:
            yield Line(catalogue[name].name, link(root, part_path(name)), own)
        else:
            yield Line(name, None, own)
