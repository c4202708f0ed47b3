"""An old name leads to a name of today, and is not in use itself."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from rimbook.book.load import Loaded
from rimbook.book.problems import nearest
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.text import shown


def check(loaded: Loaded, given: Given) -> Iterator[Finding]:
    if loaded.moved is None:
        return
    file, moved = loaded.moved.document.file, loaded.moved.moved
    frames = given.book.frames.keys() | given.unread_maps
    yield from _of_kind("frames", moved.frames, frames, file)
    yield from _of_kind("parts", moved.parts, given.book.parts.keys(), file, unsure=given.parts_unread)


def _of_kind(
    kind: str, moved: Mapping[str, str], known: Collection[str], file: str, *, unsure: bool = False
) -> Iterator[Finding]:
    """`unsure` means that not all names are known, so that a missing one may be there."""
    one = kind.removesuffix("s")
    for old, new in moved.items():
        path = (kind, old)
        if old in known:
            message = f"{shown(old)} is not an old name: there is a {one} of this name."
            yield Finding(path, message, file=file, key=True, tip=f"Rename the {one}, or take the line out.")
        if new in moved:
            end = _end(old, moved)
            message = f"{shown(old)} leads to {shown(new)}, which is an old name itself."
            tip = None if end else "The names lead round in a ring."
            yield Finding(path, message, file=file, expected=end, tip=tip)
        elif new not in known and not unsure:
            message = f"{shown(old)} leads to {shown(new)}, but there is no such {one}."
            yield Finding(path, message, file=file, nearest=nearest(new, known))


def _end(name: str, moved: Mapping[str, str]) -> str | None:
    """Where a row of old names ends; None where it never does."""
    seen = set()
    while name in moved:
        if name in seen:
            return None
        seen.add(name)
        name = moved[name]
    return name


RULE = Rule(
    name="moved-names",
    scope="book",
    severity="error",
    summary="An old name in moved.yaml is no longer in use, and leads straight to a frame or a part "
    "of the book.",
    example="“lapwing-old” leads to “lapwin-20”, but there is no such frame.",
    check=check,
)
