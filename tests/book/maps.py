"""Small maps as text, for tests that begin where a contributor does."""

from __future__ import annotations

from rimbook.book.load import MapFile, map_from
from rimbook.book.model import Catalogue, Part
from rimbook.book.problems import Problem
from rimbook.book.reader import read

PARTS: Catalogue = {
    part.id: part
    for part in (
        Part("short-21", "Short 2.1", "single", barrel_mm=2.05, bore_mm=1.3, length_mm=(10.0,), packs=(25,)),
        Part("wide-27", "Wide 2.7", "wide", barrel_mm=2.65, bore_mm=1.9, length_mm=(10.0,), packs=(25,)),
        Part("pair-7", "Pair 7", "twin-even", barrel_mm=2.05, pitch_mm=7.0, length_mm=(10.0,), packs=(1,)),
        Part("crown", "Crown", "strip", posts=4),
    )
}

MAP = """\
format: 1
name: Plover 20
maker: Saltmarsh Works
sport: badminton
head: {outline: ellipse, inside_mm: [186, 244]}
rim_depth_mm: 9.4
mains: 6
crosses: 3
walk: >-
  m1 m2 m3 c1 c2 . x
  m3+c3 m2 m1
bore_mm: {default: 2.1, 2.7: [8], unknown: [R4]}
fitted:
  default: short-21
  bore 2.7: wide-27
stringing: {tie_offs: [R5, L5]}
"""


def settled(text: str = MAP, slug: str = "plover-20") -> MapFile:
    """The map, which must have no problem."""
    loaded, problems = map_from(read(text, f"frames/maps/{slug}.yaml"), slug, PARTS)
    assert not problems, problems
    assert loaded
    return loaded


def problems_of(text: str, slug: str = "plover-20") -> tuple[Problem, ...]:
    """What stands between the text and a record."""
    _, problems = map_from(read(text, f"frames/maps/{slug}.yaml"), slug, PARTS)
    return problems
