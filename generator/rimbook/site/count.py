"""A hole's place as many stringers say it: counted from the centre, at the head or at the throat."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from rimbook.book.address import SIDES
from rimbook.book.model import Address, Frame, Hole
from rimbook.site.words import ordinal

Region = Literal["head", "side", "throat"]


def counts(frame: Frame) -> Mapping[Address, str]:
    """For each drilled hole, `5th from the centre at the head` or `3rd on the side from the head`.

    Only holes are counted: an undrilled place keeps its number but is passed over.
    """
    found: dict[Address, str] = {}
    for side in SIDES:
        half = sorted((hole for hole in frame.drilled if hole.address.side == side), key=lambda h: h.address)
        on_side = 0
        for index, (hole, region) in enumerate(zip(half, _regions(half), strict=True)):
            if region == "side":
                on_side += 1
                found[hole.address] = f"{ordinal(on_side)} on the side from the head"
            else:
                place = index + 1 if region == "head" else len(half) - index
                found[hole.address] = f"{ordinal(place)} from the centre at the {region}"
    return found


def _regions(half: Sequence[Hole]) -> Iterator[Region]:
    """Head where a main comes the first time, throat where it comes back, side where only crosses pass.

    A hole without a string lies with the hole before it.
    """
    seen: set[int] = set()
    region: Region = "head"
    for hole in half:
        mains = {string.number for string in hole.passes if string.kind == "m"}
        if mains:
            region = "throat" if mains <= seen else "head"
            seen |= mains
        elif hole.passes:
            region = "side"
        yield region
