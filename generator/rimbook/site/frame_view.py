"""A frame as its page shows it: every number already a word, every choice already made."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from rimbook.bench.parts_list import Needed
from rimbook.bench.pins import pin
from rimbook.book.model import Address, Catalogue, Frame, Hole, Part
from rimbook.rim.types import Rim
from rimbook.site.count import counts
from rimbook.site.provenance import Fact, confirmed_words, facts, measured_words
from rimbook.site.set_frames import Giving, sets_for
from rimbook.site.sold import Sets, sold
from rimbook.site.spans import Span, spans_of
from rimbook.site.words import UNKNOWN, mm, size


class HoleRow(NamedTuple):
    """One line of the hole table."""

    address: str
    spoken: str
    strings: str
    shared: bool
    tie_off: bool
    bore: str
    part: str | None
    part_name: str
    piece: str
    place: str
    pull: str


class Hard(NamedTuple):
    """Holes on which the strings pull alike, and how hard, as a multiple of the tension."""

    holes: tuple[Span, ...]
    pull: str


class PartRow(NamedTuple):
    """One line of the parts list of a full regrommet."""

    part: Part | None
    name: str
    pieces: int
    holes: tuple[Span, ...]
    sold: str
    pin: str


class BoreRow(NamedTuple):
    """A bore, how many holes have it, and which if they are few."""

    bore: str
    found: int
    holes: tuple[Span, ...]


class StripRow(NamedTuple):
    """A strip, the holes it covers, and how it is sold."""

    name: str
    part: Part | None
    first: str
    last: str
    posts: int
    sold: str


@dataclass(frozen=True, slots=True)
class FrameView:
    """All that the page of a frame says of the frame itself."""

    frame: Frame
    holes: Sequence[HoleRow]
    shared: tuple[Span, ...]
    undrilled: tuple[Span, ...]
    unstrung: tuple[Span, ...]
    tie_offs: tuple[str, ...]
    bores: Sequence[BoreRow]
    strips: Sequence[StripRow]
    hardest: Sequence[Hard]
    parts: Sequence[PartRow]
    sets: Sequence[Giving]
    depths: tuple[str, ...]
    facts: Sequence[Fact]
    measured: str
    confirmed: str


FEW_HOLES = 24
MOST_SETS = 6
NAMED = 3
"""So many pulls are named at a glance, the hardest: mostly of a pair of holes each."""

PLACES = {"measured": "measured", "derived": "worked out"}


def view(
    rim: Rim, needed: Sequence[Needed], pulls: Mapping[Address, float], catalogue: Catalogue, sets: Sets
) -> FrameView:
    """Put the page of a frame into words. `pulls` are as `bench.load.pull` gives them."""
    frame = rim.frame
    drilled = frame.drilled
    return FrameView(
        frame=frame,
        holes=_hole_rows(rim, pulls, catalogue),
        shared=spans_of(hole.address for hole in drilled if hole.shared),
        undrilled=spans_of(hole.address for hole in frame.holes if not hole.drilled),
        unstrung=spans_of(hole.address for hole in drilled if not hole.passes),
        tie_offs=tuple(map(str, frame.stringing.tie_offs)),
        bores=_bore_rows(drilled),
        strips=[_strip_row(frame, index, catalogue, sets) for index in range(len(frame.strips))],
        hardest=_hardest(pulls),
        parts=[_part_row(line, catalogue, sets) for line in needed],
        sets=_sets(frame, needed, catalogue, sets),
        depths=_depths(drilled),
        facts=facts(rim, needed, catalogue),
        measured=measured_words(frame),
        confirmed=confirmed_words(frame),
    )


def _depths(drilled: Sequence[Hole]) -> tuple[str, ...]:
    return tuple(map(size, sorted({hole.rim_depth_mm for hole in drilled if hole.rim_depth_mm is not None})))


def _hole_rows(rim: Rim, pulls: Mapping[Address, float], catalogue: Catalogue) -> list[HoleRow]:
    frame = rim.frame
    from_centre = counts(frame)
    twin_of = {hole: twin.holes for twin in frame.twins for hole in twin.holes}
    rows = []
    for hole in frame.drilled:
        part = catalogue.get(hole.part) if hole.part else None
        rows.append(
            HoleRow(
                address=str(hole.address),
                spoken=from_centre[hole.address],
                strings=" + ".join(map(str, hole.passes)),
                shared=hole.shared,
                tie_off=hole.tie_off,
                bore=size(hole.bore_mm),
                part=hole.part,
                part_name=part.name if part else hole.part or UNKNOWN,
                piece=_piece(frame, hole, twin_of.get(hole.address)),
                place=PLACES[rim.holes[hole.address].place],
                pull=f"{pulls[hole.address]:.2f}",
            )
        )
    return rows


def _piece(frame: Frame, hole: Hole, twin: tuple[Address, Address] | None) -> str:
    if hole.strip is not None:
        return frame.strips[hole.strip].name
    if twin is not None:
        return f"one part with {twin[0] if twin[1] == hole.address else twin[1]}"
    return ""


def _bore_rows(drilled: Sequence[Hole]) -> list[BoreRow]:
    found = Counter(hole.bore_mm for hole in drilled)
    rows = []
    for bore in sorted(found, key=lambda bore: (bore is None, bore or 0)):
        few = [hole.address for hole in drilled if hole.bore_mm == bore] if found[bore] <= FEW_HOLES else []
        rows.append(BoreRow(size(bore), found[bore], spans_of(few)))
    return rows


def _hardest(pulls: Mapping[Address, float]) -> list[Hard]:
    """The highest pulls as pages print them, and the holes of each; a pull of nothing is none."""
    alike: defaultdict[str, list[Address]] = defaultdict(list)
    for address, pull in sorted(pulls.items(), key=lambda each: -round(each[1], 2)):
        alike[f"{pull:.2f}"].append(address)
    named = [(pull, holes) for pull, holes in alike.items() if float(pull)][:NAMED]
    return [Hard(spans_of(holes), pull) for pull, holes in named]


def _sets(frame: Frame, needed: Sequence[Needed], catalogue: Catalogue, sets: Sets) -> list[Giving]:
    parts: Counter[str] = Counter()
    for line in needed:
        if line.part is not None:
            parts[line.part] += line.count
    unknown = sum(line.count for line in needed if line.part is None)
    return sets_for(frame.slug, parts, unknown, catalogue, sets, MOST_SETS)


def _strip_row(frame: Frame, index: int, catalogue: Catalogue, sets: Sets) -> StripRow:
    strip = frame.strips[index]
    part = catalogue.get(strip.part) if strip.part else None
    ends = (str(strip.holes[0]), str(strip.holes[-1])) if strip.holes else ("", "")
    return StripRow(strip.name, part, *ends, len(strip.holes), sold(part, sets) if part else UNKNOWN)


def _part_row(line: Needed, catalogue: Catalogue, sets: Sets) -> PartRow:
    part = catalogue.get(line.part) if line.part else None
    if part is None:
        unknown = f"unknown strip: {line.strip}" if line.strip else "unknown part"
        name = line.part or unknown
    else:
        name = part.name
    return PartRow(
        part=part,
        name=name,
        pieces=line.count,
        holes=spans_of(line.holes),
        sold=(sold(part, sets) if part else UNKNOWN),
        pin=pin_words(part) if part else UNKNOWN,
    )


def pin_words(part: Part) -> str:
    """`about 1.7 mm (over 1.3, under 2.05)`, or what to measure first."""
    if part.kind == "set":
        return "see each part"
    found = pin(part)
    if found is None:
        return "unknown – measure the barrel and the opening inside it with a calliper"
    return f"about {mm(found.size_mm)} (over {size(found.over_mm)}, under {size(found.under_mm)})"
