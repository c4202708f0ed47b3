"""The walk: one word for each place, from the middle of the head to the middle of the throat."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from rimbook.book.model import Pass
from rimbook.book.text import shown

MAX_PLACES = 200

_PASS = re.compile(r"([mc])([1-9][0-9]{0,2})")


@dataclass(frozen=True, slots=True)
class Place:
    """One word of a walk: what passes, and whether there is a hole at all."""

    passes: tuple[Pass, ...]
    drilled: bool = True


@dataclass(frozen=True, slots=True)
class WalkFault:
    """A word that is no place: its index on the walk, and why."""

    index: int
    word: str
    message: str


@lru_cache(maxsize=1024)
def read_place(word: str) -> Place | str:
    """The place a word means, or why it means none."""
    if word == ".":
        return Place(())
    if word == "x":
        return Place((), drilled=False)
    passes = []
    for piece in word.split("+"):
        match = _PASS.fullmatch(piece)
        if not match:
            return f"{shown(word)} is no place of a walk."
        passes.append(Pass("m" if match[1] == "m" else "c", int(match[2])))
    if len(passes) > 2:
        return f"{shown(word)} puts {len(passes)} strings through one hole; two are the most."
    if len(set(passes)) < len(passes):
        return f"{shown(word)} puts the same string through one hole twice."
    return Place(tuple(passes))


def read_walk(text: str) -> tuple[tuple[Place, ...], tuple[WalkFault, ...]]:
    """All places of a walk in order, and every word that is none."""
    places: list[Place] = []
    faults: list[WalkFault] = []
    words = text.split()
    for index, word in enumerate(words):
        place = read_place(word)
        if isinstance(place, Place):
            places.append(place)
        else:
            faults.append(WalkFault(index, word, place))
    if not words:
        faults.append(WalkFault(0, "", "The walk is empty."))
    elif len(words) > MAX_PLACES:
        faults.append(
            WalkFault(MAX_PLACES, "", f"The walk has {len(words)} places; at most {MAX_PLACES} are read.")
        )
    return tuple(places[:MAX_PLACES]), tuple(faults)


def write_place(place: Place) -> str:
    """The word for a place: what `read_place` reads back."""
    if not place.drilled:
        return "x"
    return "+".join(map(str, place.passes)) or "."
