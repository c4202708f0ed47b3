"""Values said for many holes at once: a default, and exceptions by address over it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from rimbook.book.address import Selector, address, clockwise, selector, span
from rimbook.book.model import Address, Catalogue, Side, Twin
from rimbook.book.problems import Problem, nearest
from rimbook.book.reader import Document, Path
from rimbook.book.text import shown
from rimbook.book.written_values import UNKNOWN, is_mm

RULE = "meaning"
TWIN_KINDS = ("twin-even", "twin-uneven")
MAX_NAMED = 1_000
"""So many words may name holes under one key: more than any frame has holes, and few enough to be quick."""
MAX_REPORTED = 200
"""So many faults of one map are told at once."""

Run = tuple[Address, ...]


class Ring:
    """The places of one map, and what its selectors mean there.

    `counts` are the places of each side. What a selector gets wrong is added to
    `problems`, so that a map is told all its faults at once.
    """

    def __init__(self, document: Document, counts: Mapping[Side, int]) -> None:
        self.document = document
        self.counts = counts
        self.all = clockwise(counts)
        self.problems: list[Problem] = []

    def complain(self, path: Path, message: str, *, key: bool = False, **more: str | None) -> None:
        """Note an error at a place of the document."""
        if len(self.problems) < MAX_REPORTED:
            self.problems.append(self.document.problem(RULE, path, message, key=key, **more))

    def too_many(self, count: int, path: Path) -> bool:
        """Whether more words name holes than are read; if so, that is noted."""
        if count > MAX_NAMED:
            message = f"{count:,} words name holes here; at most {MAX_NAMED:,} are read."
            self.complain(path, message, tip="Name each hole once.")
        return count > MAX_NAMED

    def has(self, hole: Address, path: Path, *, key: bool = False) -> bool:
        """Whether there is such a place; if not, that is noted."""
        last = self.counts[hole.side]
        if hole.number > last:
            expected = f"{hole.side}1 to {hole.side}{last}"
            self.complain(path, f"There is no hole {hole}.", key=key, expected=expected)
        return hole.number <= last

    def runs(self, found: Selector, path: Path, *, key: bool = False) -> Iterator[Run]:
        """The holes a selector names: one run a side, each in clockwise order."""
        for side in found.sides:
            if found.first > found.last:
                message = f"{side}{found.first}-{side}{found.last} runs backwards."
                self.complain(path, message, key=key, tip="Put the smaller number first.")
            elif self.has(Address(side, found.last), path, key=key):
                run = tuple(Address(side, number) for number in range(found.first, found.last + 1))
                yield run if side == "R" else run[::-1]

    def between(self, first: Address, last: Address, path: Path, *, key: bool = False) -> Iterator[Run]:
        """The one run from a hole clockwise to another, also over the middle."""
        if self.has(first, path, key=key) and self.has(last, path, key=key):
            yield span(first, last, self.counts)

    def lengths(self, name: str, written: Any) -> dict[Address, float]:
        """Lengths by hole of a key such as `bore_mm`; a hole of unknown length is left out."""
        if not isinstance(written, dict):
            written = {"default": written}
        if "default" not in written:
            self.complain((name,), f"{name} has exceptions but no default.", tip="Add default: unknown.")
        default = self._length(name, "default", written.get("default", UNKNOWN))
        values: dict[Address, float | None] = dict.fromkeys(self.all, default)
        if self.too_many(sum(len(each) for each in written.values() if isinstance(each, list)), (name,)):
            return {}
        for word, holes in written.items():
            if word != "default":
                values.update(
                    dict.fromkeys(self._listed((name, word), holes), self._length(name, word, word))
                )
        return {hole: value for hole, value in values.items() if value is not None}

    def _length(self, name: str, key: str, word: object) -> float | None:
        if word == UNKNOWN:
            return None
        try:
            length = float(str(word))
        except ValueError:
            length = 0.0
        if is_mm(length):
            return length
        self.complain(
            (name, key),
            f"{name} cannot be {shown(word)}.",
            key=True,
            expected=f"a length in mm, {UNKNOWN} or default",
            nearest=nearest(str(word), ("default", UNKNOWN)),
        )
        return None

    def _listed(self, path: Path, holes: object) -> list[Address]:
        if not isinstance(holes, list):
            size, word = shown(holes, quote=False), path[-1]
            tip = f"The size comes first: {size}: [{word}]." if is_mm(holes) and selector(word) else None
            self.complain(path, "The holes must be a list.", expected="[9, 13, R31]", tip=tip)
            return []
        found: list[Address] = []
        for index, word in enumerate(holes):
            chosen = selector(word)
            if chosen is None:
                expected = "9, R9, 9-13 or R9-R13"
                self.complain((*path, index), f"{shown(word)} names no hole.", expected=expected)
            else:
                found.extend(hole for run in self.runs(chosen, (*path, index)) for hole in run)
        return found


def fitted(
    ring: Ring, written: Mapping[str, str | None], bores: Mapping[Address, float], catalogue: Catalogue
) -> tuple[dict[Address, str | None], tuple[Twin, ...]]:
    """What sits in each hole, and which holes share a two-post part.

    The default gives way to `bore 2.7`, and that to holes; the later line wins.
    """
    parts: dict[Address, str | None] = dict.fromkeys(ring.all, written.get("default"))
    runs: list[tuple[str | None, Run]] = []
    if ring.too_many(len(written), ("fitted",)):
        return parts, ()
    for key, part in written.items():
        if key.startswith("bore "):
            bore = _bore(ring, key)
            parts.update((hole, part) for hole in ring.all if bore is not None and bores.get(hole) == bore)
        elif key != "default":
            runs += [(part, run) for run in _fitted_runs(ring, key, bores)]
    for part, run in runs:
        parts.update(dict.fromkeys(run, part))
    return parts, _twins(ring, parts, runs, catalogue)


def _bore(ring: Ring, key: str) -> float | None:
    try:
        bore = float(key.removeprefix("bore "))
    except ValueError:
        bore = 0.0
    if is_mm(bore):
        return bore
    ring.complain(("fitted", key), f"{shown(key)} names no bore.", key=True, expected="bore 2.7")
    return None


def _fitted_runs(ring: Ring, key: str, bores: Mapping[Address, float]) -> Iterator[Run]:
    ends = [address(word) for word in key.split("-")]
    if len(ends) == 2 and ends[0] and ends[1] and ends[0].side != ends[1].side:
        yield from ring.between(ends[0], ends[1], ("fitted", key), key=True)
    elif chosen := selector(key):
        yield from ring.runs(chosen, ("fitted", key), key=True)
    else:
        ring.complain(
            ("fitted", key),
            f"{shown(key)} names no holes.",
            key=True,
            expected="default, bore 2.7, a hole as R9 or 9, or a run as R9-R13",
            nearest=nearest(key, ("default", *(f"bore {bore:g}" for bore in sorted(set(bores.values()))))),
        )


def _twins(
    ring: Ring,
    parts: Mapping[Address, str | None],
    runs: list[tuple[str | None, Run]],
    catalogue: Catalogue,
) -> tuple[Twin, ...]:
    """Two-post parts, paired hole by hole along the run that names them."""
    twins: dict[Address, Twin] = {}
    for part, run in runs:
        if part is not None and part in catalogue and catalogue[part].kind in TWIN_KINDS:
            pairs = zip(run[::2], run[1::2], strict=False)
            twins.update((first, Twin((first, second), part)) for first, second in pairs)
    order = {hole: index for index, hole in enumerate(ring.all)}
    kept = (twin for twin in twins.values() if all(parts[hole] == twin.part for hole in twin.holes))
    return tuple(sorted(kept, key=lambda twin: order[twin.holes[0]]))
