"""The maps of the book as people would write them: what the drafting page opens.

A frame is settled hole by hole; here it is put back into defaults and exceptions. Comments are lost.
"""

from __future__ import annotations

import zlib
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import Any

from rimbook.book.by_hole import TWIN_KINDS
from rimbook.book.model import Address, Catalogue, Frame, Hole, Measured, Side, Strip, Twin
from rimbook.book.walk import Place, write_place
from rimbook.book.written_values import UNKNOWN
from rimbook.site.spans import selectors

PIECE = 64
"""So many maps are in one file on average."""


def pieces(slugs: Iterable[str]) -> list[list[str]]:
    """The slugs in order. A piece begins where a slug's own checksum says so: a new map moves no other."""
    found: list[list[str]] = []
    for slug in sorted(slugs):
        if not found or zlib.crc32(slug.encode()) % PIECE == 0:
            found.append([])
        found[-1].append(slug)
    return found


def piece_name(piece: Sequence[str]) -> str:
    """The name of a piece: that of its first map."""
    return f"drafts/{piece[0]}"


def piece_file(piece: Sequence[str]) -> str:
    """Where a piece lies."""
    return f"data/{piece_name(piece)}.js"


def written_value(frame: Frame, catalogue: Catalogue) -> dict[str, Any]:
    """A frame as the value that a map holds: read again, it settles to an equal frame.

    The keys and shapes are those of `book.written.WrittenFrame`, but `fitted` is a list of pairs, since the
    order of its lines counts and not every language keeps that of keys.
    """
    order = frame.stringing
    value: dict[str, Any] = {
        "format": 1,
        "name": frame.name,
        "maker": frame.maker,
        "sport": frame.sport,
        "aliases": list(frame.aliases),
        "year": frame.year,
        "variant_of": frame.variant_of,
        "head": _head(frame),
        "overall_mm": list(frame.overall_mm or ()),
        "rim_depth_mm": _by_hole(frame, lambda hole: hole.rim_depth_mm),
        "mains": frame.mains,
        "crosses": frame.crosses,
        "spacing_mm": dict(zip(("mains", "crosses"), frame.spacing_mm or (), strict=False)),
        **_side(frame, "R"),
        "left": {} if frame.mirrored else _side(frame, "L"),
        "stringing": {
            "pieces": order.pieces,
            "mains_start": order.mains_start,
            "crosses_start": order.crosses_start,
            "first_cross": order.first_cross,
            "tie_offs": [str(hole) for hole in order.tie_offs],
        },
        "bore_mm": _by_hole(frame, lambda hole: hole.bore_mm),
        "fitted": list(_fitted(frame, catalogue)),
        "strips": list(_strips(frame.strips)),
        "tension_limit": frame.tension_limit and f"{frame.tension_limit.value:g} {frame.tension_limit.unit}",
        "measured": _measured(frame.measured),
        "confirmed": [_without_nothing({"by": each.by, "on": _day(each.on)}) for each in frame.confirmed],
        "note": frame.note,
    }
    return _without_nothing(value)


def _without_nothing(value: dict[str, Any]) -> dict[str, Any]:
    return {key: each for key, each in value.items() if each not in (None, [], {}, "")}


def _head(frame: Frame) -> dict[str, Any]:
    head = frame.head
    if head.outline == "points":
        return {"outline": head.outline, "points_mm": [list(point) for point in head.points_mm]}
    shape = {"outline": head.outline, "inside_mm": [head.width_mm, head.height_mm]}
    own = {"exponent": head.exponent, "taper": head.taper}
    return shape | {name: value for name, value in own.items() if value is not None}


def _side(frame: Frame, side: Side) -> dict[str, Any]:
    """The walk down one side, and its measured places."""
    holes = sorted(
        (hole for hole in frame.holes if hole.address.side == side), key=lambda h: h.address.number
    )
    walk = " ".join(write_place(Place(hole.passes, hole.drilled)) for hole in holes)
    places = [UNKNOWN if hole.place_mm is None else hole.place_mm for hole in holes]
    return {"walk": walk} | ({"places_mm": places} if any(place != UNKNOWN for place in places) else {})


def _by_hole(frame: Frame, value_of: Callable[[Hole], float | None]) -> Any:
    """One value, or the most common one as the default and the others with their holes."""
    holes: defaultdict[float | None, list[Address]] = defaultdict(list)
    for hole in frame.drilled:
        holes[value_of(hole)].append(hole.address)
    ordered = sorted(holes, key=lambda value: (value is None, value or 0))
    default = max(ordered, key=lambda value: len(holes[value]), default=None)
    if len(ordered) < 2:
        return _or_unknown(default)
    others = {
        UNKNOWN if value is None else f"{value:.10g}": _words(holes[value])
        for value in ordered
        if value != default
    }
    return {"default": _or_unknown(default), **others}


def _words(holes: Iterable[Address]) -> list[int | str]:
    return [int(word) if word.isdecimal() else word for word in selectors(holes).split()]


def _fitted(frame: Frame, catalogue: Catalogue) -> Iterator[list[str]]:
    """Lines of `fitted`, none of which overrules another but by being closer to a hole."""
    loose = [hole for hole in frame.drilled if hole.strip is None and hole.twin is None]
    default = _most_common(hole.part for hole in loose)
    yield ["default", _or_unknown(default)]
    by_bore: dict[float | None, str | None] = {}
    for bore in sorted({hole.bore_mm for hole in loose if hole.bore_mm is not None}):
        part = _most_common(hole.part for hole in loose if hole.bore_mm == bore)
        if part != default:
            by_bore[bore] = part
            yield [f"bore {bore:.10g}", _or_unknown(part)]
    own: defaultdict[str | None, list[Address]] = defaultdict(list)
    for hole in loose:
        if hole.part != by_bore.get(hole.bore_mm, default):
            own[hole.part].append(hole.address)
    for part, holes in own.items():
        single = part in catalogue and catalogue[part].kind in TWIN_KINDS if part else False
        words = map(str, holes) if single else selectors(holes).split()  # a run of such parts would be pairs
        yield from ([word, _or_unknown(part)] for word in words)
    yield from ([word, part] for word, part in _twins(frame.twins))


def _most_common(parts: Iterable[str | None]) -> str | None:
    counts = Counter(parts)
    return min(counts, key=lambda part: (-counts[part], part is None, part or ""), default=None)


def _twins(twins: Sequence[Twin]) -> Iterator[tuple[str, str]]:
    """Runs of two-post parts that follow each other, once where both sides have the same."""
    runs: list[tuple[Side, int, int, str]] = []
    for twin in twins:
        one, other = twin.holes
        if one.side != other.side:
            yield f"{one}-{other}", twin.part
            continue
        first, last = sorted((one.number, other.number))
        before = runs[-1] if runs else None
        if before and before[0] == one.side and before[3] == twin.part:
            if before[2] + 1 == first:
                runs[-1] = (one.side, before[1], last, twin.part)
                continue
            if last + 1 == before[1]:
                runs[-1] = (one.side, first, before[2], twin.part)
                continue
        runs.append((one.side, first, last, twin.part))
    for side, first, last, part in sorted(runs, key=lambda run: (run[1], run[0] == "L")):
        other_side: Side = "L" if side == "R" else "R"
        if (other_side, first, last, part) not in runs:
            yield f"{side}{first}-{side}{last}", part
        elif side == "R":
            yield f"{first}-{last}", part


def _strips(strips: Sequence[Strip]) -> Iterator[dict[str, Any]]:
    """Strips by their ends, once where one on the left follows the same on the right."""
    waiting = list(strips)
    while waiting:
        strip = waiting.pop(0)
        first, last = strip.holes[0], strip.holes[-1]
        ends: list[int | str] = [str(first), str(last)]
        if waiting and first.side == last.side == "R" and first.number <= last.number:
            ahead = waiting[0]
            mirrored = Address("L", last.number), Address("L", first.number)
            if (ahead.name, ahead.part, ahead.holes[0], ahead.holes[-1]) == (
                strip.name,
                strip.part,
                *mirrored,
            ):
                waiting.pop(0)
                ends = [first.number, last.number]
        yield {"name": strip.name, "holes": ends, "part": _or_unknown(strip.part)}


def _measured(measured: Measured | None) -> dict[str, Any] | None:
    if measured is None:
        return None
    return _without_nothing(
        {
            "by": measured.by,
            "on": _day(measured.on),
            "with": measured.tool,
            "resolution_mm": measured.resolution_mm,
        }
    )


def _day(on: Any) -> str | None:
    return on.isoformat() if on else None


def _or_unknown(value: Any) -> Any:
    return UNKNOWN if value is None else value
