"""What occurs on a frame, and the letter by which a drawing names each part."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import groupby

from rimbook.book.model import Catalogue, Frame, Hole, Part
from rimbook.draw import palette
from rimbook.draw.palette import BoreClass
from rimbook.rim.once import once

UNKNOWN_LETTER = "?"

Identity = tuple[str, str]
_UNKNOWN: Identity = ("unknown", "")


@dataclass(frozen=True, slots=True)
class Bores:
    """One class of bores that occurs, each bore in it (mm, None where unknown) with its number of holes."""

    known: BoreClass
    counts: tuple[tuple[float | None, int], ...]


@dataclass(frozen=True, slots=True)
class Lettered:
    """One part that occurs: its letter, its id, what it is called, and how many the frame takes.

    `kind` is `strip`, `bumper`, `strip-unknown`, a two-post kind, or `loose` for a part with one post.
    `called` is the name in the catalogue, or the id where the catalogue has none.
    """

    letter: str
    part: str | None
    kind: str
    called: str
    count: int


@dataclass(frozen=True, slots=True)
class Key:
    """All that a legend of a frame must explain, and nothing else."""

    bores: tuple[Bores, ...]
    parts: tuple[Lettered, ...]
    letters: Mapping[Identity, str]
    common_mm: float | None
    shared: bool
    tie_offs: bool
    undrilled: bool
    unknown_part: bool

    def letter(self, frame: Frame, hole: Hole) -> str:
        """The letter of what sits in a hole, `?` where nobody knows."""
        return self.letters.get(identity(frame, hole), UNKNOWN_LETTER)


def identity(frame: Frame, hole: Hole) -> Identity:
    """By what two holes take the same part: its id, or the strip's name where its part is unknown."""
    if hole.part is not None:
        return "part", hole.part
    if hole.strip is not None:
        return "strip", frame.strips[hole.strip].name
    return _UNKNOWN


@once
def key(frame: Frame, catalogue: Catalogue) -> Key:
    """What occurs on a frame, parts lettered in the order of the walk."""
    holes = frame.drilled
    counts = Counter([hole.bore_mm for hole in holes])
    common = min(counts, key=lambda bore: (-counts[bore], bore is None, bore or 0.0), default=None)
    by_style: dict[str, list[tuple[float | None, int]]] = {}
    for bore in sorted(counts, key=lambda bore: bore or 0.0):
        by_style.setdefault(palette.bore_style(bore), []).append((bore, counts[bore]))
    alike: dict[Identity, list[Hole]] = {}
    for hole in holes:
        alike.setdefault(identity(frame, hole), []).append(hole)
    unknown = alike.pop(_UNKNOWN, None)
    letters = dict(zip(alike, _alphabet(), strict=False))
    return Key(
        bores=tuple(
            [Bores(known, tuple(by_style[known.style])) for known in palette.ALL if known.style in by_style]
        ),
        parts=tuple(_lettered(frame, catalogue, alike[name], letter) for name, letter in letters.items()),
        letters=letters,
        common_mm=common,
        shared=any(hole.shared for hole in holes),
        tie_offs=any(hole.tie_off for hole in holes),
        undrilled=len(holes) < len(frame.holes),
        unknown_part=unknown is not None,
    )


def kind_of(frame: Frame, catalogue: Catalogue, hole: Hole) -> str:
    """How the part in a hole is drawn: `loose`, a two-post kind, `strip`, `bumper` or `strip-unknown`."""
    part = catalogue.get(hole.part) if hole.part is not None else None
    if hole.strip is not None:
        return "strip-unknown" if hole.part is None else "bumper" if part and part.bumper else "strip"
    if hole.twin is not None:
        return twin_kind(part)
    return "loose"


def twin_kind(part: Part | None) -> str:
    """`twin-even`, `twin-long-first`, `twin-long-last` (clockwise), or `twin-unsaid` where unknown."""
    if part is not None and part.kind == "twin-even":
        return "twin-even"
    if part is None or part.length_mm is None or len(part.length_mm) != 2:
        return "twin-unsaid"
    first, last = part.length_mm
    return "twin-long-first" if first > last else "twin-long-last" if last > first else "twin-even"


def _lettered(frame: Frame, catalogue: Catalogue, alike: Sequence[Hole], letter: str) -> Lettered:
    hole = alike[0]
    # One strip or one two-post part fills several holes, and is bought once.
    wholes = {
        ("strip", o.strip) if o.strip is not None else ("twin", o.twin) if o.twin is not None else o.address
        for o in alike
    }
    part = catalogue.get(hole.part) if hole.part is not None else None
    strips = dict.fromkeys(frame.strips[other.strip].name for other in alike if other.strip is not None)
    called = part.name if part else hole.part or ""
    if strips:
        named = ", ".join(strips)
        called = f"{named}: {called}" if called else f"{named}, part unknown"
    return Lettered(letter, hole.part, kind_of(frame, catalogue, hole), called, len(wholes))


def runs(frame: Frame, alike: Mapping[int, object]) -> Iterator[list[int]]:
    """Runs of neighbouring holes with the same value, as indices into `frame.holes`, clockwise.

    A place without a value breaks a run, and so does the middle of the head.
    """
    for value, run in groupby(range(len(frame.holes)), key=alike.get):
        if value is not None:
            yield list(run)


def _alphabet() -> Iterator[str]:
    """A, B, … Z, AA, AB, …"""
    number = 0
    while True:
        number += 1
        letters, rest = "", number
        while rest:
            rest, digit = divmod(rest - 1, 26)
            letters = chr(65 + digit) + letters
        yield letters
