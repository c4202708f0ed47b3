"""What differs between two states of one part, and how it is sold."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from rimbook.book.model import Part
from rimbook.site.changes.change import Change, from_to
from rimbook.site.words import KIND_NAMES, counted, listed

_FACTS: tuple[tuple[str, Callable[[Part], object], str], ...] = (
    ("name", lambda part: part.name, ""),
    ("kind", lambda part: KIND_NAMES[part.kind], ""),
    ("maker", lambda part: part.maker, ""),
    ("barrel", lambda part: part.barrel_mm, "mm"),
    ("opening", lambda part: part.bore_mm, "mm"),
    ("length", lambda part: part.length_mm, "mm"),
    ("flange", lambda part: part.flange_mm, "mm"),
    ("distance of the posts", lambda part: part.pitch_mm, "mm"),
    ("tolerance", lambda part: part.tolerance_mm, "mm"),
    ("posts", lambda part: part.posts, ""),
    ("bumper", lambda part: "yes" if part.bumper else "no", ""),
    ("material", lambda part: part.material, ""),
    ("made for", lambda part: listed(part.frames) or "any frame", ""),
    ("note", lambda part: part.note or "none", ""),
)


def changes_of(before: Part, after: Part) -> list[Change]:
    """Every difference of a part, sizes first, then what a set holds and how it is sold."""
    found = [
        Change("part", after.id, f"{from_to(what, fact(before), fact(after), unit)}.")
        for what, fact, unit in _FACTS
        if fact(before) != fact(after)
    ]
    found += [Change("part", after.id, words) for words in _contents(before, after)]
    if before.packs != after.packs:
        found.append(Change("part", after.id, _sold(before, after)))
    return found


def _contents(before: Part, after: Part) -> Iterator[str]:
    for part in sorted({*before.contains, *after.contains}):
        old, new = before.contains.get(part, 0), after.contains.get(part, 0)
        if old != new:
            yield f"Holds {new} of {part}, {old or 'none'} before."


def _sold(before: Part, after: Part) -> str:
    if not before.packs:
        return f"Now sold alone, in {_packs(after)}; only in a set before."
    if not after.packs:
        return f"No longer sold alone, only in a set; in {_packs(before)} before."
    return f"Sold in {_packs(after)}; in {_packs(before)} before."


def _packs(part: Part) -> str:
    return (
        f"packs of {listed([str(count) for count in part.packs])}"
        if part.packs != (1,)
        else counted(1, "piece")
    )
