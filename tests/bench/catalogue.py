"""A small catalogue and frames to judge with it."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from rimbook.book.model import Catalogue, Frame, Measured, Part, PartKind, Strip, Twin
from rimbook.rim.place import place
from rimbook.rim.types import Rim
from tests.rim.frames import address, frame, plover

FINELY = Measured("a-handle", resolution_mm=0.02)


def part(name: str, kind: PartKind = "single", **sizes: Any) -> Part:
    """A part that fits bores of 2.1, with what differs."""
    usual: dict[str, Any] = {
        "barrel_mm": 2.05,
        "bore_mm": 1.3,
        "length_mm": (10.5,),
        "flange_mm": 4.2,
        "tolerance_mm": 0.05,
        "packs": (1,),
        "measured": FINELY,
    }
    return Part(name, name, kind, **(usual | sizes))


PARTS: Catalogue = {
    each.id: each
    for each in (
        part("short"),
        part("short-too", packs=()),
        part("long", length_mm=(12.0,)),
        part("wide", "wide", barrel_mm=2.65, bore_mm=1.9, flange_mm=4.8),
        part("pair-70", "twin-even", pitch_mm=7.0, length_mm=(12.0,)),
        part("pair-73", "twin-even", pitch_mm=7.3, length_mm=(12.0,)),
        part("pair-76", "twin-even", pitch_mm=7.6, length_mm=(12.0,)),
        part("pair-81", "twin-even", pitch_mm=8.1, length_mm=(12.0,)),
        part("pair-uneven", "twin-uneven", pitch_mm=7.0, length_mm=(16.0, 10.5)),
        part("crown", "strip", posts=4, packs=()),
        part("crown-too", "strip", posts=4, packs=()),
        part("bumper", "strip", posts=4, bumper=True),
        part("crown-6", "strip", posts=6),
        Part("own-set", "Own set", "set", contains={"crown": 1, "short-too": 40}, packs=(1,)),
        Part("other-set", "Other set", "set", contains={"crown-too": 1, "long": 20}, packs=(1,)),
    )
}


def measured_plover(**changes: Any) -> Frame:
    """The plover with bores, depths and parts: short ones, wide ones in shared holes."""
    bare = plover()
    holes = tuple(
        replace(
            hole,
            bore_mm=2.7 if hole.shared or hole.tie_off else 2.1,
            rim_depth_mm=9.4,
            part="wide" if hole.shared or hole.tie_off else "short",
        )
        for hole in bare.holes
    )
    return replace(bare, holes=holes, measured=FINELY, **changes)


def with_holes(base: Frame, where: str, **changes: Any) -> Frame:
    """The same frame with some holes changed."""
    chosen = set(map(address, where.split()))
    holes = tuple(replace(hole, **changes) if hole.address in chosen else hole for hole in base.holes)
    return replace(base, holes=holes)


def with_strip(base: Frame, where: str, part_id: str | None) -> Frame:
    """The same frame with a strip over some holes."""
    chosen = tuple(map(address, where.split()))
    return replace(with_holes(base, where, part=part_id, strip=0), strips=(Strip("strip", chosen, part_id),))


def with_twin(base: Frame, one: str, other: str, part_id: str) -> Frame:
    """The same frame with a two-post part in two holes."""
    pair = (address(one), address(other))
    return replace(with_holes(base, f"{one} {other}", part=part_id, twin=0), twins=(Twin(pair, part_id),))


def straight_pair(distance_mm: float) -> Rim:
    """A frame whose two neighbours R1 and R2 were measured to be so far apart (mm), nearly straight."""
    made = frame(
        "m1 m2 c1 m2 m1",
        mains=4,
        crosses=1,
        places_mm={
            "R": (3.0, 3.0 + distance_mm, None, None, None),
            "L": (3.0, 3.0 + distance_mm, None, None, None),
        },
    )
    holes = tuple(replace(hole, bore_mm=2.1, rim_depth_mm=11.0, part="long") for hole in made.holes)
    return place(replace(made, holes=holes, measured=FINELY))
