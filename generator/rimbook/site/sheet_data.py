"""What the bench sheet of a frame needs to know, in the shape of `SheetFrame` in `browser/sheet_frame.js`.

It says again what the bench tables of the page say, hole by hole and piece by piece, so that marks can be
judged on the page. Parts that serve are named by place, the best first; what sits there is always among them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from typing import Any, NamedTuple

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import FrameNumbers
from rimbook.bench.needs import Need, Place
from rimbook.bench.serves import Served
from rimbook.bench.turns import Turns
from rimbook.book.model import Address, Frame, Part
from rimbook.site.frame_view import pin_words
from rimbook.site.sold import Sets
from rimbook.site.words import UNKNOWN, capital, listed

FORMAT = 1
"""The edition of the shape; the script reads no other."""

MOST_SERVING = 8
MOST_SETS = 12
MOST_HOLDING = 20
"""A part that comes in more sets leads to none of them but those made for the frame."""

_CANNOT_TURN = Turns(1)


class _Piece(NamedTuple):
    """What is pushed in as one. `serves` is the index of its place among those of the frame."""

    kind: str
    part: Part | None
    name: str
    holes: Sequence[Address]
    serves: int


def sheet_data(
    frame: Frame, places: Iterable[Place], numbers: FrameNumbers, answers: Answers, sets: Sets
) -> dict[str, Any]:
    """The data of one frame, all of it plain values that JSON can hold.

    `places` and `numbers` are those of the frame, `sets` is `sets_of` the catalogue of `answers`.
    """
    catalogue = answers.index.catalogue
    drilled = frame.drilled
    index = {hole.address: at for at, hole in enumerate(drilled)}
    asked = {address: place for place in places if not place.covered for address in place.holes}
    serves: dict[tuple[Need, str | None], int] = {}
    for place in asked.values():
        serves.setdefault((place.need, place.part), len(serves))
    serving_of = {address: serves[place.need, place.part] for address, place in asked.items()}
    pieces = sorted(_pieces(frame, answers, serving_of), key=lambda piece: index[piece.holes[0]])
    piece_of = {address: at for at, piece in enumerate(pieces) for address in piece.holes}
    serving = [_serving(need, own, answers) for need, own in serves]
    wanted = {each["part"] for place in serving for each in place}
    found = _sets(frame, wanted, sets)
    named = sorted({*wanted, *(name for each in found for name in (each.id, *each.contains))})
    return {
        "format": FORMAT,
        "slug": frame.slug,
        "name": frame.name,
        "sport": frame.sport,
        "holes": [
            {
                "address": str(hole.address),
                "passes": [str(each) for each in hole.passes],
                "pull": round(numbers.holes[hole.address].pull, 2),
                "piece": piece_of[hole.address],
            }
            for hole in drilled
        ],
        "pieces": [_written(piece, index, numbers) for piece in pieces],
        "serves": serving,
        "names": {name: catalogue[name].name if name in catalogue else name for name in named},
        "sets": {each.id: dict(each.contains) for each in found},
    }


def _pieces(frame: Frame, answers: Answers, serves: Mapping[Address, int]) -> Iterator[_Piece]:
    catalogue = answers.index.catalogue
    for strip in frame.strips:
        if holes := [address for address in strip.holes if address in serves]:
            part = catalogue.get(strip.part or "")
            yield _Piece("strip", part, part.name if part else strip.name, holes, serves[holes[0]])
    for twin in frame.twins:
        part = catalogue.get(twin.part)
        kind = part.kind if part else "twin-even"
        yield _Piece(kind, part, part.name if part else twin.part, twin.holes, serves[twin.holes[0]])
    for hole in frame.drilled:
        if hole.strip is None and hole.twin is None:
            part = catalogue.get(hole.part or "")
            name = part.name if part else f"{UNKNOWN} part"
            yield _Piece(part.kind if part else UNKNOWN, part, name, (hole.address,), serves[hole.address])


def _written(piece: _Piece, index: Mapping[Address, int], numbers: FrameNumbers) -> dict[str, Any]:
    alone = len(piece.holes) == 1 and piece.kind != "strip"
    turns = numbers.holes[piece.holes[0]].here.turns if alone else _CANNOT_TURN
    return {
        "kind": piece.kind,
        "part": piece.part.id if piece.part else None,
        "name": piece.name,
        "holes": [index[address] for address in piece.holes],
        "positions": turns.positions,
        "step": turns.step,
        "serves": piece.serves,
    }


# Frames of a kind ask the same again and again; the limit keeps the memory of a large book small.
@lru_cache(maxsize=2048)
def _serving(need: Need, own: str | None, answers: Answers) -> list[dict[str, str]]:
    """The part that sits there first, whatever is said of it, then the others that serve."""
    catalogue = answers.index.catalogue
    others = [each for each in answers.of(need).serving if each != own][: MOST_SERVING - 1]
    parts = [own, *others] if own in catalogue else others
    return [
        {"part": part, **_fit(answers.detail(need, part)), "pin": pin_words(catalogue[part])}
        for part in parts
        if part is not None
    ]


def _fit(served: Served | None) -> dict[str, str]:
    """How a part fits in words; apart from that what to cut, since a pick list has a line for it."""
    if served is None:
        return {"verdict": "may serve", "says": "sits there by the map; how it fits is not known"}
    fits = dict.fromkeys(seat.fit.word for seat in served.seats if seat.fit.word)
    against = [str(reason) for reason in served.reasons if reason.code != "trim"]
    trims = [str(reason) for reason in served.reasons if reason.code == "trim"]
    return {
        "verdict": "serves" if served.verdict == "serves" else "may serve",
        "says": "; ".join([*([listed(list(fits), "or")] if fits else []), *against]),
        **({"trim": capital(trims[0])} if trims else {}),
    }


def _sets(frame: Frame, wanted: Iterable[str], sets: Sets) -> list[Part]:
    """Those made for the frame, then others that hold something that serves, in order of id."""
    holding = (sets.holding.get(part, ()) for part in sorted(wanted))
    others = {each.id: each for found in holding if len(found) <= MOST_HOLDING for each in found}
    made = {each.id: each for each in sets.fitting.get(frame.slug, ())}
    return list({**made, **dict(sorted(others.items()))}.values())[: max(MOST_SETS, len(made))]
