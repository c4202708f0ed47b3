"""Frames for tests, made from a walk as it is written in a map."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from itertools import pairwise

from rimbook.book.model import Address, End, Frame, Head, Hole, Pass, Side, Sport, Stringing
from rimbook.rim.half import halves

PLOVER_HEAD = Head("superellipse", 186.0, 244.0, exponent=2.35)
PLOVER_WALK = """
m1 m2 m3 m4 m5 m6 m7 m8 c1+m9 c2 m10 c3 m11+c4 c5 c6 c7 c8 c9 c10 c11 c12 c13 c14 c15 c16 c17
m11+c18 c19 m10+c20 m9+c21 m8 m7 m6 m5 m4 m3 m2 m1
"""


def address(word: str) -> Address:
    """`R9` as an address."""
    return Address("R" if word[0] == "R" else "L", int(word[1:]))


def string(word: str) -> Pass:
    """`m3` or `c5` as a pass."""
    return Pass("m" if word[0] == "m" else "c", int(word[1:]))


def frame(
    walk: str,
    *,
    mains: int,
    crosses: int,
    head: Head = PLOVER_HEAD,
    left: str | None = None,
    sport: Sport = "badminton",
    places_mm: Mapping[Side, Sequence[float | None]] | None = None,
    spacing_mm: tuple[float, float] | None = None,
    pieces: int = 2,
    mains_start: End = "head",
    crosses_start: End = "head",
    first_cross: Side = "R",
    tie_offs: str = "",
) -> Frame:
    """A frame with one walk for both sides, unless the left has its own."""
    knots = tuple(map(address, tie_offs.split()))

    def holes(side: Side, words: Sequence[str]) -> list[Hole]:
        places = (places_mm or {}).get(side) or [None] * len(words)
        return [
            Hole(
                address=(here := Address(side, number)),
                passes=() if word in (".", "x") else tuple(map(string, word.split("+"))),
                drilled=word != "x",
                tie_off=here in knots,
                place_mm=place,
            )
            for number, (word, place) in enumerate(zip(words, places, strict=True), start=1)
        ]

    return Frame(
        slug="plover-76",
        name="Plover 76",
        maker="Saltmarsh Works",
        sport=sport,
        head=head,
        mains=mains,
        crosses=crosses,
        holes=(*holes("R", walk.split()), *reversed(holes("L", (left or walk).split()))),
        stringing=Stringing(2 if pieces == 2 else 1, mains_start, crosses_start, first_cross, knots),
        spacing_mm=spacing_mm,
        mirrored=left is None,
    )


def plover(**changes: object) -> Frame:
    """A badminton frame: 22 mains, 21 crosses, 38 places a half, five of them shared."""
    settings = {"mains": 22, "crosses": 21, "tie_offs": "R8 R31 L31 L33"} | changes
    return frame(PLOVER_WALK, **settings)  # type: ignore[arg-type]


def walk_of(
    head: Head, mains: int, crosses: int, spacing_mm: tuple[float, float], middle_mm: float, shared_mm: float
) -> str:
    """The walk of a frame drilled for straight strings at such a spacing.

    A main and a cross that meet the rim closer together than `shared_mm` share a hole.
    """
    half = halves(head)[0]
    lines = []
    for number in range(1, mains // 2 + 1):
        off_centre = (number - 0.5) * spacing_mm[0]
        lines += [(half.mains[end].along(off_centre), f"m{number}") for end in ("head", "throat")]
    for number in range(1, crosses + 1):
        below = (number - (crosses + 1) / 2) * spacing_mm[1] - middle_mm
        lines.append((half.crosses.along(below), f"c{number}"))
    lines.sort()
    words = [lines[0][1]]
    for (before, last), (here, word) in pairwise(lines):
        close = here - before < shared_mm and last[0] != word[0] and "+" not in words[-1]
        if close:
            words[-1] += f"+{word}"
        else:
            words.append(word)
    return " ".join(words)
