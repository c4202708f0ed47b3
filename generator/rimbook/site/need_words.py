"""What a hole, or the holes of one piece, ask of a part, in words."""

from __future__ import annotations

from rimbook.bench.needs import HoleNeed, Need, PieceNeed
from rimbook.site.words import counted, listed, mm, size


def need_words(need: Need) -> str:
    """`2.1 mm bore, 9.4 mm deep, 1 string`, or `two holes 7.4 mm apart: …`."""
    return hole_words(need) if isinstance(need, HoleNeed) else _piece_words(need)


def hole_words(need: HoleNeed) -> str:
    """`2.1 mm bore, 9.4 mm deep, 1 string`."""
    bore = "bore unknown" if need.bore_mm is None else f"{size(need.bore_mm)} mm bore"
    depth = "rim depth unknown" if need.depth_mm is None else f"{size(need.depth_mm)} mm deep"
    strings = counted(need.strings, "string") if need.strings else "no string"
    return f"{bore}, {depth}, {strings}"


def sport_of(need: Need) -> str:
    """The sport of the holes."""
    return need.sport if isinstance(need, HoleNeed) else need.holes[0].sport


def _piece_words(need: PieceNeed) -> str:
    kinds = listed(list(dict.fromkeys(hole_words(hole) for hole in need.holes)), "or")
    if need.kind == "twin":
        return f"two holes, pitch {mm(need.pitch_mm)}: {kinds}"
    bumper = {True: " and a bumper", False: " without a bumper", None: ""}[need.bumper]
    return f"strip of {counted(need.posts, 'hole')}{bumper}: {kinds}"
