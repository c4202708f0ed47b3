"""Small invented frames as the bench sheet gets them, and others made of the demo maps."""

from __future__ import annotations

from typing import Any

from rimbook.bench.parts_list import regrommet
from rimbook.book.model import Catalogue, Frame

NAMES = {
    "post-a": "Post A",
    "post-b": "Post B",
    "wide-a": "Wide A",
    "pair-a": "Pair A",
    "crown-a": "Crown A",
    "kit-a": "Kit A",
}


def serving(part: str, verdict: str = "serves", says: str = "snug") -> dict[str, str]:
    return {"part": part, "verdict": verdict, "says": says}


def hole(address: str, piece: int, *passes: str, pull: float = 1.4) -> dict[str, Any]:
    return {"address": address, "passes": list(passes), "pull": pull, "piece": piece}


def piece(kind: str, part: str | None, holes: list[int], serves: int, **others: Any) -> dict[str, Any]:
    plain = {
        "positions": 4 if kind == "single" else 1,
        "step": 1,
        "name": NAMES.get(part or "", "unknown part"),
    }
    return {"kind": kind, "part": part, "holes": holes, "serves": serves, **plain, **others}


def small_frame() -> dict[str, Any]:
    """Twelve holes: a crown strip of four, singles, a shared hole on each side, a pair at the throat.

    The crown strip comes only in a kit. Post B may stand in for post A, but not for sure.
    """
    sides = [
        hole("R1", 0, "m1", pull=1.1),
        hole("R2", 0, "m2"),
        hole("R3", 1, "m3", "c1", pull=1.9),
        hole("R4", 2, "c2", pull=1.2),
        hole("R5", 3, "m2", pull=1.6),
        hole("R6", 4, "m1"),
        hole("L6", 4, "m1"),
        hole("L5", 5, "m2"),
        hole("L4", 6, "c2", pull=1.3),
        hole("L3", 7, "m3", "c1", pull=1.9),
        hole("L2", 0, "m2"),
        hole("L1", 0, "m1", pull=1.1),
    ]
    pieces = [
        piece("strip", "crown-a", [0, 1, 10, 11], 3),
        piece("wide", "wide-a", [2], 1, positions=2, step=2),
        piece("single", "post-a", [3], 0),
        piece("single", "post-a", [4], 0),
        piece("twin-even", "pair-a", [5, 6], 2),
        piece("single", "post-a", [7], 0),
        piece("single", None, [8], 0, positions=None),
        piece("wide", "wide-a", [9], 1, positions=2, step=2),
    ]
    return {
        "format": 1,
        "slug": "small-12",
        "name": "Small 12",
        "sport": "badminton",
        "holes": sides,
        "pieces": pieces,
        "serves": [
            [serving("post-a"), serving("post-b", "may serve", "may be loose")],
            [serving("wide-a")],
            [serving("pair-a")],
            [serving("crown-a")],
        ],
        "names": NAMES,
        "sets": {"kit-a": {"crown-a": 1, "post-a": 4, "wide-a": 2}},
    }


def everything_new(frame: Frame, catalogue: Catalogue) -> list[dict[str, Any]]:
    """A full regrommet as pieces: their kind, and as many holes as they have posts."""
    found = []
    for line in regrommet(frame, catalogue):
        part = catalogue.get(line.part or "")
        kind = part.kind if part else ("strip" if line.strip else "unknown")
        posts = len(line.holes) // line.count
        found += [{"kind": kind, "holes": posts} for _ in range(line.count)]
    return found
