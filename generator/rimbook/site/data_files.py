"""The book as data for other programs. Removing or renaming a key is a breaking change."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any

from pydantic import TypeAdapter

from rimbook.bench.confidence import Confidence
from rimbook.bench.parts_list import Needed
from rimbook.book.model import Address
from rimbook.draw.svg import WHOLE
from rimbook.rim.types import Point, Rim
from rimbook.site.links import frame_path
from rimbook.site.provenance_data import confirmed_data, measured_data
from rimbook.site.summary import Summary

# Four times as fast as the `json` of Python, which would take a twentieth of a build.
_WRITER = TypeAdapter(Any)

FORMAT = 1
OUTLINE_POINTS = 360
FRAMES_FILE = "data/frames.json"


def frame_file(slug: str) -> str:
    """Where a frame's data lies."""
    return f"data/frames/{slug}.json"


def frame_data(rim: Rim, pulls: Mapping[Address, float], needed: Iterable[Needed]) -> str:
    """One frame as JSON: outline, drilled holes clockwise, string path, parts of a full regrommet."""
    frame = rim.frame
    strips = [strip.name for strip in frame.strips]
    twins = {one: str(other) for twin in frame.twins for one, other in (twin.holes, twin.holes[::-1])}
    holes = []
    for hole in frame.drilled:
        placed = rim.holes[hole.address]
        holes.append(
            {
                "address": str(hole.address),
                "at_mm": [hundredth(placed.at.x), hundredth(placed.at.y)],
                "along_mm": hundredth(placed.along_mm),
                "place": placed.place,
                "passes": [str(string) for string in hole.passes],
                "tie_off": hole.tie_off,
                "bore_mm": hole.bore_mm,
                "rim_depth_mm": hole.rim_depth_mm,
                "part": hole.part,
                "strip": None if hole.strip is None else strips[hole.strip],
                "twin_with": twins.get(hole.address),
                "pull": round(pulls[hole.address], 3),
            }
        )
    data: dict[str, Any] = {
        "format": FORMAT,
        "slug": frame.slug,
        "name": frame.name,
        "maker": frame.maker,
        "sport": frame.sport,
        "year": frame.year,
        "variant_of": frame.variant_of,
        "mains": frame.mains,
        "crosses": frame.crosses,
        "outline": {
            "length_mm": hundredth(rim.curve.length_mm),
            "points_mm": [[hundredth(x), hundredth(y)] for x, y in _thinned(rim.curve.points)],
        },
        "holes": holes,
        "path": [
            {
                "string": path.string,
                "legs": [{"from": str(leg.start), "to": str(leg.end), "run": leg.run} for leg in path.legs],
            }
            for path in rim.paths
        ],
        "regrommet": [{"part": line.part, "count": line.count} for line in needed],
        "measured": measured_data(frame.measured),
        "confirmed": confirmed_data(frame.confirmed),
        "source": frame.source,
    }
    return _json(data)


def with_confidence(data: str, found: Confidence) -> str:
    """The JSON of a frame with its score as the last key: the score follows from the whole book."""
    return f'{data.rstrip().removesuffix("}")},"confidence":{found.score}}}\n'


def all_frames(summaries: Iterable[Summary], confidence: Callable[[Summary], Confidence]) -> bytes:
    """The list of all frames as JSON. A hole of unknown bore is counted in `holes` alone."""
    frames = [
        {
            "slug": frame.slug,
            "name": frame.name,
            "maker": frame.maker,
            "sport": frame.sport,
            "mains": frame.mains,
            "crosses": frame.crosses,
            "holes": frame.holes,
            "bores": frame.bores,
            "url": f"{frame_path(frame.slug)}index.html",
            "confidence": confidence(frame).score,
        }
        for frame in summaries
    ]
    return _json({"format": FORMAT, "frames": frames}).encode()


def hundredth(value: float) -> float:
    """A length to a hundredth, in a quarter of the time that `round` takes: it gives way only at a tie.

    A float as large as `WHOLE` has no digits after the point, so that what is added to it comes out whole.
    """
    return (value * 100 + WHOLE - WHOLE) / 100


def _thinned(points: Sequence[Point]) -> Sequence[Point]:
    """At most so many points: a few mm apart, a straight line misses the curve by hundredths."""
    return points[:: max(1, -(-len(points) // OUTLINE_POINTS))]


def _json(data: object) -> str:
    return _WRITER.dump_json(data).decode() + "\n"
