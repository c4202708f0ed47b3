"""No two frames go by one name, nor by two that look alike."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import Loaded
from rimbook.book.model import Frame
from rimbook.book.reader import Path
from rimbook.book.rules.look_alike import folded, forms
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.text import shown


def check(loaded: Loaded, given: Given) -> Iterator[Finding]:
    first: dict[str, list[tuple[Frame, str]]] = {}
    for file in loaded.maps.values():
        frame = file.frame
        own: set[str] = set()
        for path, name in _names(frame):
            own_forms = forms(name)
            if not own.isdisjoint(own_forms):
                yield Finding(
                    path,
                    f"{shown(frame.name)} goes by {shown(name)} twice.",
                    file=file.document.file,
                    severity="note",
                )
                continue
            own.update(own_forms)
            for other, its_name in (each for form in own_forms for each in first.get(form, [])):
                if _told_apart(frame, other):
                    continue
                same_maker = folded(frame.maker) == folded(other.maker)
                yield Finding(
                    path,
                    f"{shown(name)} is already the name of {other.slug}"
                    + ("." if name == its_name else f", written {shown(its_name)}."),
                    file=file.document.file,
                    severity="error" if same_maker else "warning",
                    tip="Two versions of one frame are told apart by their year."
                    if same_maker
                    else f"Both are found under it: {other.slug} is by {shown(other.maker)}.",
                )
                break
            for form in own_forms:
                first.setdefault(form, []).append((frame, name))


def _names(frame: Frame) -> Iterator[tuple[Path, str]]:
    yield ("name",), frame.name
    for index, alias in enumerate(frame.aliases):
        yield ("aliases", index), alias


def _told_apart(frame: Frame, other: Frame) -> bool:
    return (
        folded(frame.maker) == folded(other.maker)
        and frame.year is not None
        and other.year is not None
        and frame.year != other.year
    )


RULE = Rule(
    name="same-name",
    scope="book",
    severity="error",
    summary="No two frames share a name or an alias, even with other capitals or look-alike letters, "
    "unless a maker's years tell them apart.",
    example="“LAPWING 2O” is already the name of lapwing-20, written “Lapwing 20”.",
    check=check,
)
