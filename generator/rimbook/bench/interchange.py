"""What can stand in for what, over the whole book: donors, shared drawers, parts without a substitute.

From the answers to every distinct need of every frame. That one part may stand in for another whose
barrel, reach and room suit is common practice, no published source; so a substitute always says that it
is one.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from rimbook.bench.answers import Answer, Answers
from rimbook.bench.needs import Need, PieceNeed, places
from rimbook.bench.part_index import PartIndex
from rimbook.bench.reasons import Missing
from rimbook.book.model import Frame


class Asking(Protocol):
    """What is looked at of a `needs.Place`: its need, what sits there, and whether a piece covers it."""

    @property
    def need(self) -> Need: ...

    @property
    def part(self) -> str | None: ...

    @property
    def covered(self) -> bool: ...


@dataclass(frozen=True, slots=True)
class Drawer:
    """Frames whose loose parts can come out of one drawer, and the parts in it, both in order of id."""

    parts: tuple[str, ...]
    frames: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Donors:
    """Where to get what a place takes, when the part on the map is sold only in a set.

    `sets` hold that very part. `sold_alone` are other parts that serve and are sold by themselves,
    `other_sets` other sets that hold a part that serves; both with the best part first.
    """

    part: str
    sets: tuple[str, ...]
    sold_alone: tuple[str, ...]
    other_sets: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Interchange:
    """The answers of the whole book.

    `frames` names the frames of each need, `fitted` the needs of each part where a map says that it
    sits. `only` are the needs of a fitted part that no other part serves. `untold` says of each frame
    that misses a measure what to measure: it has no drawer.
    """

    answers: Mapping[Need, Answer]
    frames: Mapping[Need, tuple[str, ...]]
    fitted: Mapping[str, tuple[Need, ...]]
    only: Mapping[str, tuple[Need, ...]]
    drawers: tuple[Drawer, ...]
    untold: Mapping[str, tuple[Missing, ...]]

    @property
    def irreplaceable(self) -> tuple[str, ...]:
        """The fitted parts that nothing else replaces anywhere."""
        return tuple(part for part, alone in self.only.items() if len(alone) == len(self.fitted[part]))

    def by_part(self) -> dict[str, tuple[Need, ...]]:
        """The needs that each part serves, whether or not it is fitted there."""
        served: defaultdict[str, list[Need]] = defaultdict(list)
        for need, answer in self.answers.items():
            for each in answer.serving:
                served[each].append(need)
        return {part: tuple(found) for part, found in served.items()}


def interchange(frames: Iterable[Frame], answers: Answers) -> Interchange:
    """Answer every need of these frames, and draw the conclusions."""
    return from_places(((frame.slug, places(frame, answers.index.catalogue)) for frame in frames), answers)


def from_places(frames: Iterable[tuple[str, Sequence[Asking]]], answers: Answers) -> Interchange:
    """The same from the slug of each frame and its places, as `needs.places` gives them."""
    known: dict[Need, Answer] = {}
    asking: defaultdict[Need, list[str]] = defaultdict(list)
    fitted: defaultdict[str, dict[Need, None]] = defaultdict(dict)
    drawers: defaultdict[tuple[str, ...], list[str]] = defaultdict(list)
    untold: dict[str, tuple[Missing, ...]] = {}
    for slug, own in frames:
        for need in dict.fromkeys(place.need for place in own):
            known[need] = answers.of(need)
            asking[need].append(slug)
        for place in own:
            if place.part is not None and not place.covered:
                fitted[place.part][place.need] = None
        parts, missing = _loose_parts(own, known)
        if missing:
            untold[slug] = missing
        elif parts:
            drawers[parts].append(slug)
    return Interchange(
        known,
        {need: tuple(slugs) for need, slugs in asking.items()},
        {part: tuple(needs) for part, needs in sorted(fitted.items())},
        _only(fitted, known),
        tuple(Drawer(parts, tuple(sorted(slugs))) for parts, slugs in sorted(drawers.items())),
        untold,
    )


def donors(part: str, answer: Answer, index: PartIndex) -> Donors:
    """Where a place gets what it takes besides the part on the map, from the answer to its need.

    For a strip, ask with the need of the strip, and again with those of its holes: a strip may be
    replaced by loose parts.
    """
    sets = index.holding.get(part, ())
    others = [each for each in answer.serving if each != part]
    return Donors(
        part,
        sets,
        tuple(each for each in others if index.catalogue[each].sold_alone),
        tuple(
            dict.fromkeys(
                each for other in others for each in index.holding.get(other, ()) if each not in sets
            )
        ),
    )


def _loose_parts(
    own: Iterable[Asking], known: Mapping[Need, Answer]
) -> tuple[tuple[str, ...], tuple[Missing, ...]]:
    """The best part for each place but the strips, and what must be measured before one can be named."""
    parts: set[str] = set()
    missing: dict[Missing, None] = {}
    for place in own:
        if place.covered or (isinstance(place.need, PieceNeed) and place.need.kind == "strip"):
            continue
        answer = known[place.need]
        best = answer.serving[0] if answer.serving else place.part
        if answer.missing:
            missing |= dict.fromkeys(answer.missing)
        elif best is None:
            missing["part"] = None
        else:
            parts.add(best)
    return tuple(sorted(parts)), tuple(missing)


def _only(fitted: Mapping[str, Iterable[Need]], known: Mapping[Need, Answer]) -> dict[str, tuple[Need, ...]]:
    """The needs of each fitted part that no other part serves; a need of unknown sizes is not counted."""
    found: dict[str, tuple[Need, ...]] = {}
    for part, its in sorted(fitted.items()):
        alone = tuple(
            need
            for need in its
            if not known[need].missing and all(each == part for each in known[need].serving)
        )
        if alone:
            found[part] = alone
    return found
