"""Where in a map a hole, a strip or a fitted part was written."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from rimbook.book.address import address, selector
from rimbook.book.load import ClubFile, MapFile
from rimbook.book.model import Address, Frame, Hole
from rimbook.book.reader import Path
from rimbook.book.written_values import UNKNOWN


def on_walk(frame: Frame, at: Address) -> Path:
    """The word of the walk that stands for a hole."""
    own_left = at.side == "L" and not frame.mirrored
    return ("left", "walk", at.number - 1) if own_left else ("walk", at.number - 1)


def of_place(frame: Frame, at: Address) -> Path:
    """The measured place of a hole."""
    own_left = at.side == "L" and not frame.mirrored
    return ("left", "places_mm", at.number - 1) if own_left else ("places_mm", at.number - 1)


def of_club_frame(file: ClubFile, index: int) -> Path:
    """The slug of one frame of a club, in its short form or its long one."""
    path: Path = ("frames", index)
    return (*path, "frame") if isinstance(file.document.at(path), dict) else path


def of_strips(file: MapFile) -> tuple[Path, ...]:
    """For each strip of the frame the entry that wrote it: an entry without sides wrote two."""
    written = file.document.at(("strips",)) or []
    paths: list[Path] = []
    for index, entry in enumerate(written):
        sided = all(address(end) for end in entry["holes"])
        paths += [("strips", index)] * (1 if sided else 2)
    return tuple(paths)


@dataclass(frozen=True, slots=True)
class Line:
    """One line under `fitted`: the holes it names, and those no later line takes from it."""

    key: str
    part: str | None
    named: tuple[Address, ...]
    kept: tuple[Address, ...]

    @property
    def path(self) -> Path:
        """Its place in the document."""
        return ("fitted", self.key)


@lru_cache(maxsize=1)
def fitted_lines(file: MapFile) -> tuple[Line, ...]:
    """The lines under `fitted` in the order in which they rule: default, bores, holes.

    Kept for the next rule that asks about the same map.
    """
    written = file.document.at(("fitted",)) or {}
    ranked = sorted(written, key=lambda key: 0 if key == "default" else 1 if key.startswith("bore ") else 2)
    named = {key: tuple(hole for hole in _named(file.frame, key) if hole.drilled) for key in ranked}
    last = {hole.address: key for key in ranked for hole in named[key]}
    return tuple(
        Line(
            key,
            None if written[key] == UNKNOWN else written[key],
            tuple(hole.address for hole in named[key]),
            tuple(hole.address for hole in named[key] if last[hole.address] == key and hole.strip is None),
        )
        for key in ranked
    )


def _named(frame: Frame, key: str) -> tuple[Hole, ...]:
    """The places that a key of `fitted` names, clockwise from the middle of the head."""
    if key == "default":
        return frame.holes
    if key.startswith("bore "):
        bore = float(key.removeprefix("bore "))
        return tuple(hole for hole in frame.holes if hole.bore_mm == bore)
    found = selector(key)
    if found:
        numbers = range(found.first, found.last + 1)
        return tuple(
            hole
            for hole in frame.holes
            if hole.address.side in found.sides and hole.address.number in numbers
        )
    first, last = (address(word) for word in key.split("-"))
    order = {hole.address: index for index, hole in enumerate(frame.holes)}
    start, end = (order[at] if at else 0 for at in (first, last))
    return frame.holes[start : end + 1] if start <= end else frame.holes[start:] + frame.holes[: end + 1]
