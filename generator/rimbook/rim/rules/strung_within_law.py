"""The strung area keeps within the published limits of its sport."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.limits import LENGTH_WITH_THROAT, LIMITS, THROAT_WIDTH, Limit, over
from rimbook.book.model import Frame
from rimbook.book.reader import Path
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm
from rimbook.rim.outline import area
from rimbook.rim.rules.placed import PlacedMap
from rimbook.rim.types import Curve

_THROAT_TIP = (
    "Farther down it may run on into the throat, "
    f"no wider than {mm(THROAT_WIDTH.most)} ({THROAT_WIDTH.rule})."
)


def check(placed: PlacedMap, given: Given) -> Iterator[Finding]:
    frame, line = placed.frame, placed.rim.curve
    width, length = size(line)
    broad = LIMITS.get((frame.sport, "strung width"))
    if broad and over(width, broad):
        swapped = "inside_mm is [width, height]." if width > length else None
        yield _finding(frame, 0, "strung width", width, broad, swapped)
    long = LIMITS.get((frame.sport, "strung length"))
    if long and over(length, long):
        tip = _THROAT_TIP if _may_run_into_throat(frame) else None
        if tip and not over(width_below(line, long.most), THROAT_WIDTH):
            long, tip = LENGTH_WITH_THROAT, None
        if over(length, long):
            yield _finding(frame, 1, "strung length", length, long, tip)
    wide = LIMITS.get((frame.sport, "strung area"))
    square_cm = area(line) / 100
    if wide and over(square_cm, wide):
        yield Finding(
            ("head",),
            f"The strung area is {square_cm:.1f} cm²; {wide.rule} allows {wide.most:g} cm².",
            expected=f"at most {wide.most:g} cm²",
        )


def _finding(
    frame: Frame, index: int, what: str, value: float, limit: Limit, tip: str | None = None
) -> Finding:
    path: Path = ("head", "points_mm") if frame.head.outline == "points" else ("head", "inside_mm", index)
    return Finding(
        path,
        f"The {what} is {mm(value)}; {limit.rule} allows {mm(limit.most)}.",
        expected=f"at most {mm(limit.most)}",
        tip=tip,
    )


def size(line: Curve) -> tuple[float, float]:
    """Width and length of what a line encloses, in mm."""
    xs, ys = [point.x for point in line.points], [point.y for point in line.points]
    return max(xs) - min(xs), max(ys) - min(ys)


def width_below(line: Curve, down_mm: float) -> float:
    """How wide a line still is anywhere lower than so many mm below its top."""
    low = max(point.y for point in line.points) - down_mm
    xs = [point.x for point in line.points if point.y < low]
    for start, end in zip(line.points, (*line.points[1:], line.points[0]), strict=True):
        if (start.y < low) != (end.y < low):
            xs.append(start.x + (end.x - start.x) * (low - start.y) / (end.y - start.y))
    return max(xs) - min(xs) if xs else 0.0


def _may_run_into_throat(frame: Frame) -> bool:
    """Whether an outline can have a part "which otherwise would be the throat" (BWF Law 4.2.2)."""
    return frame.sport == "badminton" and frame.head.outline in ("teardrop", "points")


RULE = Rule(
    name="strung-within-law",
    scope="map",
    severity="error",
    summary="The strung area, bordered by the line of holes, is no larger than the rules of its sport allow.",
    example="The strung length is 280.1 mm; BWF Law 4.2.2 allows 280 mm.",
    check=check,
)
