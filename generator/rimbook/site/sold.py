"""How each part can be bought: by itself, or only inside a set."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass

from rimbook.book.model import Catalogue, Part
from rimbook.site.words import counted, listed


@dataclass(frozen=True, slots=True)
class Sets:
    """The sets of a catalogue, looked up by what they hold and by the frame they are made for."""

    holding: Mapping[str, tuple[Part, ...]]
    fitting: Mapping[str, tuple[Part, ...]]


def sets_of(catalogue: Catalogue) -> Sets:
    """Look through a catalogue once."""
    holding: defaultdict[str, list[Part]] = defaultdict(list)
    fitting: defaultdict[str, list[Part]] = defaultdict(list)
    for part in catalogue.values():
        for held in part.contains:
            holding[held].append(part)
        for frame in part.frames if part.kind == "set" else ():
            fitting[frame].append(part)
    return Sets(
        {held: tuple(parts) for held, parts in holding.items()},
        {frame: tuple(parts) for frame, parts in fitting.items()},
    )


def packs(part: Part) -> str:
    """`singly and in packs of 25 and 100`, or that it is not sold by itself."""
    if not part.packs:
        return "not sold by itself"
    ways = ["singly"] if 1 in part.packs else []
    if larger := [f"{pack:,}" for pack in part.packs if pack > 1]:
        ways.append(f"in packs of {listed(larger)}")
    return listed(ways)


def sold(part: Part, sets: Sets) -> str:
    """How a part is sold, with the names of the sets that hold it where there is no other way."""
    if part.packs:
        return packs(part)
    holding = sets.holding.get(part.id, ())
    if not holding:
        return "not sold by itself, and in no set of this book"
    names = listed([each.name for each in holding[:3]], "or")
    more = f" and {counted(len(holding) - 3, 'more set')}" if len(holding) > 3 else ""
    return f"only in a set: {names}{more}"
