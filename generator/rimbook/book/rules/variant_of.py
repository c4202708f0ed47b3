"""A variant names another frame of the same maker, and does not go round in a ring."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rimbook.book.load import MapFile
from rimbook.book.model import Frame
from rimbook.book.problems import nearest
from rimbook.book.rules.look_alike import folded
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.text import shown


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    frame, frames = file.frame, given.book.frames
    parent = frame.variant_of
    path = ("variant_of",)
    if parent is None or parent in given.unread_maps:
        return
    if parent == frame.slug:
        yield Finding(path, f"{parent} cannot be a variant of itself.", tip="Leave variant_of out.")
    elif parent not in frames:
        yield Finding(
            path,
            f"There is no map {shown(parent)} to be a variant of.",
            nearest=nearest(parent, [slug for slug in frames if slug != frame.slug]),
            tip="The name is that of the map's file, without .yaml.",
        )
    elif folded(frames[parent].maker) != folded(frame.maker):
        yield Finding(
            path,
            f"{parent} is made by {shown(frames[parent].maker)}, not by {shown(frame.maker)}.",
            expected=f"another frame by {shown(frame.maker)}",
        )
    elif ring := _ring(frame, frames):
        yield Finding(
            path,
            f"These frames are variants of each other in a ring: {', '.join(ring)}.",
            tip="The oldest of them is a variant of none.",
        )


def _ring(frame: Frame, frames: Mapping[str, Frame]) -> list[str]:
    """The way from the frame back to itself, or nothing."""
    way: list[str] = []
    current: Frame | None = frame
    while current is not None and current.slug not in way:
        way.append(current.slug)
        current = frames.get(current.variant_of or "")
    return [*way, frame.slug] if current is frame else []


RULE = Rule(
    name="variant-of",
    scope="map",
    severity="error",
    summary="A variant names another frame of the book, by the same maker, and not in a ring.",
    example="There is no map “lapwin-20” to be a variant of.",
    check=check,
)
