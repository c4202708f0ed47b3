"""From what is written to what is meant: every default and exception settled, hole by hole."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rimbook.book.address import address, selector
from rimbook.book.by_hole import MAX_REPORTED, RULE, Ring, Run, fitted
from rimbook.book.model import (
    Address,
    Catalogue,
    Confirmed,
    Frame,
    Head,
    Hole,
    Measured,
    Part,
    Side,
    Stringing,
    Strip,
    TensionLimit,
    Twin,
)
from rimbook.book.problems import Problem, nearest
from rimbook.book.reader import Document, Path
from rimbook.book.text import shown
from rimbook.book.walk import Place, read_walk
from rimbook.book.written import WrittenFrame, WrittenMeasured, WrittenPart

Walks = dict[Side, tuple[Place, ...]]


def settle_part(part_id: str, written: WrittenPart, source: str) -> Part:
    """A part of the catalogue as a record."""
    return Part(
        id=part_id,
        **written.model_dump(exclude={"contains", "frames", "packs", "measured"}),
        contains=dict(written.contains),
        frames=tuple(written.frames),
        packs=tuple(sorted(set(written.packs))),
        measured=_measured(written.measured),
        source=source,
    )


def settle_frame(
    slug: str, written: WrittenFrame, document: Document, catalogue: Catalogue
) -> tuple[Frame | None, tuple[Problem, ...]]:
    """A frame as a record, or all reasons why the words of the map make none."""
    head, problems = _head(written, document)
    walks, faults = _walks(written, document)
    problems += faults
    if problems or head is None:
        return None, tuple(problems)
    ring = Ring(document, {side: len(walk) for side, walk in walks.items()})
    holes, strips, twins, tie_offs = _holes(written, ring, walks, catalogue)
    if ring.problems:
        return None, tuple(dict.fromkeys(ring.problems))
    stringing, spacing = written.stringing, written.spacing_mm
    frame = Frame(
        slug=slug,
        name=written.name,
        maker=written.maker,
        sport=written.sport,
        head=head,
        mains=written.mains,
        crosses=written.crosses,
        holes=holes,
        strips=strips,
        twins=twins,
        stringing=Stringing(
            stringing.pieces, stringing.mains_start, stringing.crosses_start, stringing.first_cross, tie_offs
        ),
        spacing_mm=(spacing.mains, spacing.crosses) if spacing else None,
        tension_limit=_tension(written.tension_limit),
        overall_mm=(written.overall_mm[0], written.overall_mm[1]) if written.overall_mm else None,
        year=written.year,
        variant_of=written.variant_of,
        aliases=tuple(written.aliases),
        measured=_measured(written.measured),
        confirmed=tuple(Confirmed(person.by, person.on) for person in written.confirmed),
        note=written.note,
        mirrored=written.left is None,
        source=document.file,
    )
    return frame, ()


def _measured(written: WrittenMeasured | None) -> Measured | None:
    if written is None:
        return None
    return Measured(written.by, written.on, written.with_, written.resolution_mm)


def _tension(written: str | None) -> TensionLimit | None:
    if written is None:
        return None
    value, unit = written.split()
    return TensionLimit(float(value), unit)  # type: ignore[arg-type]


def _head(written: WrittenFrame, document: Document) -> tuple[Head | None, list[Problem]]:
    head = written.head
    problems: list[Problem] = []

    def complain(message: str, *path: str) -> None:
        problems.append(document.problem(RULE, ("head", *path), message))

    for name, outline in {"exponent": "superellipse", "taper": "teardrop", "points_mm": "points"}.items():
        given = getattr(head, name) is not None
        if given and head.outline != outline:
            complain(f"{name} belongs to the outline {outline}, not {head.outline}.", name)
        elif not given and head.outline == outline:
            complain(f"The outline {outline} needs the key {name}.")
    if head.outline != "points":
        if head.inside_mm is None:
            complain(f"The outline {head.outline} needs inside_mm: [width, height].")
            return None, problems
        width, height = head.inside_mm
        return Head(head.outline, width, height, head.exponent, head.taper), problems
    if head.inside_mm is not None:
        complain("The points give the size; leave inside_mm out.", "inside_mm")
    points = tuple((x, y) for x, y in head.points_mm or ())
    if not points:
        return None, problems
    width, height = (max(axis) - min(axis) for axis in zip(*points, strict=True))
    if not (width and height):
        complain("The points lie on one line; a head has a width and a height.", "points_mm")
    return Head("points", width, height, points_mm=points), problems


def _walks(written: WrittenFrame, document: Document) -> tuple[Walks, list[Problem]]:
    texts: list[tuple[Side, str, Path]] = [("R", written.walk, ("walk",))]
    if written.left:
        texts.append(("L", written.left.walk, ("left", "walk")))
    known = [f"m{number}" for number in range(1, written.mains // 2 + 1)]
    known += [f"c{number}" for number in range(1, written.crosses + 1)]
    walks: Walks = {}
    problems: list[Problem] = []
    for side, text, path in texts:
        walks[side], faults = read_walk(text)
        problems += [
            document.problem(
                RULE,
                (*path, fault.index),
                fault.message,
                hole=f"{side}{fault.index + 1}",
                expected="m3, c5, m9+c1, . (no string) or x (no hole)",
                nearest=nearest(fault.word, known),
            )
            for fault in faults[:MAX_REPORTED]
        ]
    return {"R": walks["R"], "L": walks.get("L", walks["R"])}, problems


def _holes(
    written: WrittenFrame, ring: Ring, walks: Walks, catalogue: Catalogue
) -> tuple[tuple[Hole, ...], tuple[Strip, ...], tuple[Twin, ...], tuple[Address, ...]]:
    bores = ring.lengths("bore_mm", written.bore_mm)
    depths = ring.lengths("rim_depth_mm", written.rim_depth_mm)
    parts, twins = fitted(ring, written.fitted, bores, catalogue)
    strips = _strips(written, ring, walks)
    strip_of = {hole: index for index, strip in enumerate(strips) for hole in strip.holes}
    twins = tuple(twin for twin in twins if not any(hole in strip_of for hole in twin.holes))
    twin_of = {hole: index for index, twin in enumerate(twins) for hole in twin.holes}
    places = _places(written, ring)
    tie_offs = _tie_offs(written, ring)

    def hole(at: Address) -> Hole:
        place = walks[at.side][at.number - 1]
        if not place.drilled:
            return Hole(at, drilled=False)
        strip = strip_of.get(at)
        return Hole(
            address=at,
            passes=place.passes,
            bore_mm=bores.get(at),
            rim_depth_mm=depths.get(at),
            part=parts.get(at) if strip is None else strips[strip].part,
            strip=strip,
            twin=twin_of.get(at),
            tie_off=at in tie_offs,
            place_mm=places.get(at),
        )

    return tuple(map(hole, ring.all)), strips, twins, tie_offs


def _strips(written: WrittenFrame, ring: Ring, walks: Walks) -> tuple[Strip, ...]:
    def drilled(run: Run) -> Run:
        return tuple(at for at in run if walks[at.side][at.number - 1].drilled)

    return tuple(
        Strip(strip.name, drilled(run), strip.part)
        for index, strip in enumerate(written.strips)
        for run in _strip_runs(strip.holes, ring, ("strips", index, "holes"))
    )


def _strip_runs(ends: Sequence[int | str], ring: Ring, path: Path) -> Iterator[Run]:
    first, last = address(ends[0]), address(ends[1])
    both_sides = selector(f"{ends[0]}-{ends[1]}")
    if first and last:
        yield from ring.between(first, last, path)
    elif both_sides and len(both_sides.sides) == 2:
        yield from ring.runs(both_sides, path)
    else:
        expected = "[L6, R6] clockwise, or [12, 20] for one on each side"
        found = ", ".join(shown(end, quote=False) for end in ends)
        ring.complain(path, "A strip runs from one hole to another.", found=found, expected=expected)


def _places(written: WrittenFrame, ring: Ring) -> dict[Address, float]:
    left, right_list = written.left, written.places_mm
    lists: list[tuple[Side, Path, list[float | None] | None]] = [
        ("R", ("places_mm",), right_list),
        ("L", ("left", "places_mm"), left.places_mm) if left else ("L", ("places_mm",), right_list),
    ]
    places: dict[Address, float] = {}
    for side, path, values in lists:
        if values is not None and len(values) != ring.counts[side]:
            message = f"There are {len(values)} measured places for {ring.counts[side]} places of the walk."
            ring.complain(path, message, tip="Write unknown where a place was not measured.")
        for number, value in enumerate(values or (), start=1):
            if value is not None:
                places[Address(side, number)] = value
    return places


def _tie_offs(written: WrittenFrame, ring: Ring) -> tuple[Address, ...]:
    found: list[Address] = []
    for index, word in enumerate(written.stringing.tie_offs):
        at = address(word)
        if at and ring.has(at, ("stringing", "tie_offs", index)):
            found.append(at)
    return tuple(dict.fromkeys(found))
