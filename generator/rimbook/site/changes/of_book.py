"""What differs between two states of the book, and whom that touches elsewhere."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass

from rimbook.book.model import Book, Frame, Moved
from rimbook.site.changes import of_frame, of_part
from rimbook.site.changes.change import Change
from rimbook.site.words import counted, listed

_NAMED = 6


@dataclass(frozen=True, slots=True)
class Changes:
    """All differences in order: new and lost things, changed frames, changed parts, then what follows."""

    changes: tuple[Change, ...]
    follows: tuple[str, ...]

    @property
    def breaking(self) -> tuple[Change, ...]:
        """Removals and new numbers or names: what people who use the data must be told."""
        return tuple(change for change in self.changes if change.breaking)


def compare(
    before: Book, after: Book, *, moved: Moved | None = None, unread: Collection[str] = ()
) -> Changes:
    """Every difference between two states.

    `moved` has the names that changed, those of the newer state unless others are given; `unread` are maps
    of the newer state that are there and cannot be read.
    """
    moved = moved or after.moved
    frames = _renamed(moved.frames, before.frames, after.frames)
    parts = _renamed(moved.parts, before.parts, after.parts)
    found = [*_frames(before, after, frames, unread), *_parts(before, after, parts)]
    return Changes(tuple(found), tuple(_follows(before, after, frames, found)))


def _renamed(
    moved: Mapping[str, str], before: Mapping[str, object], after: Mapping[str, object]
) -> Mapping[str, str]:
    """The names that went between two states and lead on to others."""
    return {old: new for old, new in moved.items() if old in before and old not in after and new in after}


def _frames(before: Book, after: Book, moved: Mapping[str, str], unread: Collection[str]) -> Iterator[Change]:
    earlier = {new: old for old, new in moved.items() if new not in before.frames}
    for slug, frame in after.frames.items():
        old = before.frames.get(earlier.get(slug, slug))
        if old is None:
            holes = counted(len(frame.drilled), "hole")
            words = f"{frame.name} by {frame.maker} is new: {holes}, {frame.mains} × {frame.crosses}."
            yield Change("frame", slug, words)
            continue
        if slug in earlier:
            words = f"The page of {old.name} moved from {old.slug} to {slug}; the old address leads on."
            yield Change("frame", slug, words, breaking=True)
        yield from of_frame.changes_of(old, frame)
    for slug, frame in before.frames.items():
        if slug in unread:
            yield Change("frame", slug, f"{frame.name} cannot be read any more: rimbook check says why.")
        elif slug not in after.frames and earlier.get(moved.get(slug, "")) != slug:
            words = f"{frame.name} by {frame.maker} is gone, and {_page(slug, moved)}."
            yield Change("frame", slug, words, breaking=True)


def _parts(before: Book, after: Book, moved: Mapping[str, str]) -> Iterator[Change]:
    earlier = {new: old for old, new in moved.items() if new not in before.parts}
    for part_id, part in after.parts.items():
        old = before.parts.get(earlier.get(part_id, part_id))
        if old is None:
            yield Change("part", part_id, f"{part.name} is new.")
            continue
        if part_id in earlier:
            words = f"The page of {old.name} moved from {old.id} to {part_id}; the old address leads on."
            yield Change("part", part_id, words, breaking=True)
        yield from of_part.changes_of(old, part)
    for part_id, part in before.parts.items():
        if part_id not in after.parts and earlier.get(moved.get(part_id, "")) != part_id:
            words = f"{part.name} is gone, and {_page(part_id, moved)}."
            yield Change("part", part_id, words, breaking=True)


def _page(name: str, moved: Mapping[str, str]) -> str:
    return f"its address leads on to {moved[name]}" if name in moved else "so is its page"


def _follows(before: Book, after: Book, moved: Mapping[str, str], found: list[Change]) -> Iterator[str]:
    """What the changes mean for things that did not change themselves."""
    touched = {change.id for change in found if change.thing == "frame"}
    for part_id in dict.fromkeys(change.id for change in found if change.thing == "part"):
        users = [
            frame for slug, frame in after.frames.items() if slug not in touched and _takes(frame, part_id)
        ]
        sets = [part.id for part in after.parts.values() if part_id in part.contains]
        if part_id not in after.parts:
            if users or sets:
                yield f"{part_id} is gone, and still named by {_things(users, sets)}."
        elif part_id in before.parts and (users or sets):
            yield f"{part_id} changed, and with it what is said of {_things(users, sets)}."
    for slug in dict.fromkeys(change.id for change in found if change.thing == "frame" and change.breaking):
        if slug in after.frames or slug in moved:
            continue
        sisters = [frame for frame in after.frames.values() if frame.variant_of == slug]
        sets = [part.id for part in after.parts.values() if slug in part.frames]
        if sisters or sets:
            yield f"{slug} is gone, and still named by {_things(sisters, sets)}."
    yield from _clubs(after, touched)


def _clubs(after: Book, touched: Collection[str]) -> Iterator[str]:
    """The clubs whose chart, labels and shelf follow from frames that changed or went."""
    for club in after.clubs.values():
        own = [each.frame for each in club.frames if each.frame in touched]
        gone = [slug for slug in own if slug not in after.frames]
        if changed := [slug for slug in own if slug in after.frames]:
            yield f"The club {club.slug} has {listed(changed)} on its chart and shelf."
        if gone:
            yield f"The club {club.slug} still names {listed(gone)}."


def _takes(frame: Frame, part_id: str) -> bool:
    return any(hole.part == part_id for hole in frame.holes)


def _things(frames: list[Frame], parts: list[str]) -> str:
    words = []
    if frames:
        names = [frame.slug for frame in frames[:_NAMED]]
        more = f" and {len(frames) - _NAMED} more" if len(frames) > _NAMED else ""
        words.append(f"{counted(len(frames), 'frame')} ({', '.join(names)}{more})")
    if parts:
        words.append(f"{counted(len(parts), 'set')} ({', '.join(parts[:_NAMED])})")
    return listed(words)
