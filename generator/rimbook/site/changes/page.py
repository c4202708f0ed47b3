"""The page that shows a reviewer what changes: sentences, and drawings before and after."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from markupsafe import Markup

from rimbook.book.model import Address, Book, Frame
from rimbook.draw.face import face
from rimbook.draw.ringed import ringed
from rimbook.draw.unrolled import unrolled
from rimbook.rim.place import place
from rimbook.site.changes.change import Change
from rimbook.site.changes.of_book import Changes
from rimbook.site.links import frame_path, part_path
from rimbook.site.templates import render
from rimbook.site.words import counted

MOST_DRAWN = 40
"""So many changed frames are drawn; a change of the whole book is told in sentences."""

_SPECIAL = re.compile(r"([\\`*_{}\[\]()#+!|<>&~])")


@dataclass(frozen=True, slots=True)
class Pictures:
    """A changed frame before and after, with the changed holes ringed; None where it was not there."""

    before: Markup | None
    after: Markup | None


@dataclass(frozen=True, slots=True)
class Group:
    """All that changed of one frame or part. `path` leads to its page in the newer site, if it has one."""

    id: str
    name: str
    path: str | None
    changes: tuple[Change, ...]
    pictures: tuple[Pictures, ...]


def changes_page(changes: Changes, before: Book, after: Book, moved: Mapping[str, str], site: str) -> str:
    """The whole page as HTML. `site` leads from it to the top of the built site."""
    groups = list(_groups(changes, before, after, moved))
    return render("changes.html", groups=groups, changes=changes, summary=summary(changes), site=site)


def summary(changes: Changes) -> str:
    """One line on how much there is."""
    if not changes.changes:
        return "Nothing in the book changes."
    frames = {change.id for change in changes.changes if change.thing == "frame"}
    parts = {change.id for change in changes.changes if change.thing == "part"}
    counts = [counted(len(frames), "frame")] if frames else []
    counts += [counted(len(parts), "part")] if parts else []
    breaks = (
        f"; {counted(len(changes.breaking), 'change')} can break what others use" if changes.breaking else ""
    )
    return f"{counted(len(changes.changes), 'change')} of {' and '.join(counts)}{breaks}."


def as_text(changes: Changes) -> str:
    """For a person at a terminal."""
    lines = [summary(changes)]
    for (_, name), group in groupby(changes.changes, key=lambda change: (change.thing, change.id)):
        lines += ["", name, *(f"  {'! ' if each.breaking else '  '}{each.text}" for each in group)]
    if changes.follows:
        lines += ["", "What follows elsewhere", *(f"    {words}" for words in changes.follows)]
    if changes.breaking:
        lines += [
            "",
            "! can break what others use: say so in the change. Write a name that changed into moved.yaml.",
        ]
    return "\n".join(lines) + "\n"


def as_markdown(changes: Changes) -> str:
    """For the summary of a forge. No text of a stranger becomes markup."""
    lines = ["## What changes in the book", "", _plain(summary(changes))]
    for (_, name), group in groupby(changes.changes, key=lambda change: (change.thing, change.id)):
        lines += ["", f"### {_plain(name)}", ""]
        lines += [f"- {'**Can break:** ' if each.breaking else ''}{_plain(each.text)}" for each in group]
    if changes.follows:
        lines += ["", "### What follows elsewhere", "", *(f"- {_plain(words)}" for words in changes.follows)]
    return "\n".join(lines) + "\n"


def _groups(changes: Changes, before: Book, after: Book, moved: Mapping[str, str]) -> Iterator[Group]:
    earlier = {new: old for old, new in moved.items()}
    drawn = 0
    for (thing, name), group in groupby(changes.changes, key=lambda change: (change.thing, change.id)):
        own = tuple(group)
        if thing == "part":
            part = after.parts.get(name) or before.parts[name]
            yield Group(name, part.name, part_path(name) if name in after.parts else None, own, ())
            continue
        old, new = before.frames.get(earlier.get(name, name)), after.frames.get(name)
        drawn += 1
        pictures = tuple(_pictures(old, new, before, after, own)) if drawn <= MOST_DRAWN else ()
        frame = new or old
        yield Group(name, frame.name if frame else name, frame_path(name) if new else None, own, pictures)


def _pictures(
    old: Frame | None, new: Frame | None, before: Book, after: Book, changes: tuple[Change, ...]
) -> Iterator[Pictures]:
    gone, new_or_other = (
        [hole for change in changes if change.breaking == breaking for hole in change.holes]
        for breaking in (True, False)
    )
    for kind in ("face", "unrolled"):
        yield Pictures(
            _drawn(kind, old, before, gone, "before") if old else None,
            _drawn(kind, new, after, new_or_other, "after") if new else None,
        )


def _drawn(kind: str, frame: Frame, book: Book, holes: Sequence[Address], state: str) -> Markup:
    draw = face if kind == "face" else unrolled
    drawing = draw(place(frame), book.parts, name=f"{frame.slug}-{kind}-{state}")
    return Markup(ringed(drawing, holes))  # noqa: S704 - the drawing escapes every text in it


def _plain(text: str) -> str:
    return _SPECIAL.sub(r"\\\1", text.replace("\n", " "))
