"""A small book that keeps every rule, as text: each test breaks it in one place."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date

from rimbook.bench.check import check
from rimbook.book.load import Loaded, MapFile, PartsFile, catalogue, map_from
from rimbook.book.problems import Problem
from rimbook.book.reader import read
from rimbook.book.settle import settle_part
from rimbook.book.shape import hold
from rimbook.book.written import WrittenParts

TODAY = date(2026, 11, 1)

MAP_FILE = "frames/maps/lapwing-20.yaml"
PARTS_FILE = "frames/parts/common.yaml"

MAP = """\
format: 1
name: Lapwing 20
maker: Saltmarsh Works
sport: badminton
year: 2024
head: {outline: ellipse, inside_mm: [186, 244]}
overall_mm: [674, 206]
rim_depth_mm: 9.4
mains: 6
crosses: 5
spacing_mm: {mains: 7.0, crosses: 50}
walk: >-
  m1 m2 m3 c1 c2
  c3 c4 m3+c5 m2 m1
stringing: {pieces: 2, tie_offs: [R8, L8, R4, L4]}
bore_mm: {default: 2.1, 2.7: [8]}
fitted:
  default: barrel-21
  bore 2.7: barrel-27
  9-10: twin-21
strips:
  - {name: crown strip, holes: [L2, R2], part: lapwing-crown}
tension_limit: 28 lb
measured: {by: a-handle, on: 2026-10-04, with: calliper, resolution_mm: 0.05}
confirmed: [{by: other-handle, on: 2026-10-12}]
"""

PARTS = """\
format: 1
parts:
  barrel-21:
    name: Barrel 2.1
    kind: single
    barrel_mm: 2.05
    bore_mm: 1.3
    length_mm: 10.5
    flange_mm: 4.2
    packs: [1, 25]
  barrel-27: {name: Barrel 2.7, kind: wide, barrel_mm: 2.65, bore_mm: 1.9, length_mm: 10.5, packs: [25]}
  twin-21: {name: Twin 2.1, kind: twin-even, barrel_mm: 2.05, bore_mm: 1.3, pitch_mm: 7.0, packs: [1]}
  lapwing-crown: {name: Lapwing crown, kind: strip, posts: 4, barrel_mm: 2.05, packs: []}
  lapwing-set:
    name: Lapwing set
    kind: set
    packs: [1]
    frames: [lapwing-20]
    contains: {barrel-21: 10, barrel-27: 2, twin-21: 2, lapwing-crown: 1}
"""


def changed(text: str, *swaps: tuple[str, str]) -> str:
    """The text with each first thing put for the second; the first must be there once."""
    for old, new in swaps:
        assert text.count(old) == 1, (old, text.count(old))
        text = text.replace(old, new)
    return text


def parts_file(text: str = PARTS, file: str = PARTS_FILE) -> PartsFile:
    """A catalogue file, which must be readable."""
    document = read(text, file)
    written, problems = hold(document, WrittenParts)
    assert written, problems
    return PartsFile({key: settle_part(key, part, file) for key, part in written.parts.items()}, document)


def loaded(
    map_text: str = MAP,
    parts_text: str = PARTS,
    *,
    more_maps: Mapping[str, str] | None = None,
    more_parts: str | None = None,
    problems: tuple[Problem, ...] = (),
) -> Loaded:
    """The small book, with further maps by slug and a further catalogue file."""
    files = [parts_file(parts_text)]
    if more_parts:
        files.append(parts_file(more_parts, "frames/parts/more.yaml"))
    maps: dict[str, MapFile] = {}
    for slug, text in {"lapwing-20": map_text, **(more_maps or {})}.items():
        file, found = map_from(read(text, f"frames/maps/{slug}.yaml"), slug, catalogue(tuple(files)))
        assert file, found
        maps[slug] = file
    return Loaded(maps, tuple(files), problems, len(maps))


def found(rule: str, book: Loaded) -> list[Problem]:
    """What one rule has to say about a book."""
    return [problem for problem in check(book, TODAY) if problem.rule == rule]


def said(rule: str, book: Loaded) -> list[str]:
    """What one rule has to say about a book, in its own words alone."""
    return [problem.message for problem in found(rule, book)]


def map_with(*swaps: tuple[str, str]) -> Loaded:
    """The small book with a change in its map."""
    return loaded(changed(MAP, *swaps))


def parts_with(*swaps: tuple[str, str]) -> Loaded:
    """The small book with a change in its catalogue."""
    return loaded(parts_text=changed(PARTS, *swaps))
