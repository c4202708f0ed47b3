"""The rim on the page: millimetres turned into units, and lines that run beside it."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable
from dataclasses import dataclass
from typing import NamedTuple

from rimbook.draw.svg import Spot
from rimbook.rim.once import once
from rimbook.rim.outline import extent
from rimbook.rim.types import Curve, Point, Rim

STEPS = 160
"""How many points the rim is drawn with: under a tenth of a unit from the curve."""


@dataclass(frozen=True, slots=True)
class View:
    """Where a point in millimetres falls on the page: y turns round, since pages count downwards."""

    scale: float
    left: float
    top: float

    def all_at(self, points: Iterable[Point]) -> list[Spot]:
        """The spots of points."""
        scale, left, top = self.scale, self.left, self.top
        return [(left + scale * x, top - scale * y) for x, y in points]


class Sight(NamedTuple):
    """A spot on the rim and the direction out of the head there, one long."""

    x: float
    y: float
    across: float
    down: float

    def out(self, units: float) -> Spot:
        """The spot so many units outside."""
        return self.x + self.across * units, self.y + self.down * units


@dataclass(frozen=True, slots=True)
class Ring:
    """The closed line of the holes in units of the page, with the outward normal at each of its spots."""

    spots: tuple[Spot, ...]
    normals: tuple[Spot, ...]
    along_mm: tuple[float, ...]
    length_mm: float

    def sight(self, along_mm: float) -> Sight:
        """The spot so far along the rim."""
        along = along_mm % self.length_mm
        after = bisect_right(self.along_mm, along)
        before = after - 1
        start = self.along_mm[before]
        end = self.along_mm[after] if after < len(self.along_mm) else self.length_mm
        share = (along - start) / (end - start) if end > start else 0.0
        after %= len(self.along_mm)
        (ax, ay), (bx, by) = self.spots[before], self.spots[after]
        (anx, any_), (bnx, bny) = self.normals[before], self.normals[after]
        nx, ny = anx + (bnx - anx) * share, any_ + (bny - any_) * share
        length = (nx * nx + ny * ny) ** 0.5 or 1.0
        return Sight(ax + (bx - ax) * share, ay + (by - ay) * share, nx / length, ny / length)

    def at(self, along_mm: float, out: float = 0.0) -> Spot:
        """The spot so far along the rim, and so many units outside it."""
        return self.sight(along_mm).out(out)

    def beside(self, start_mm: float, end_mm: float, out: float) -> list[Spot]:
        """The line clockwise from one place to another, so many units outside the rim."""
        return [self.at(start_mm, out), *self.between(start_mm, end_mm, out), self.at(end_mm, out)]

    def between(self, start_mm: float, end_mm: float, out: float) -> list[Spot]:
        """The same line without its ends."""
        start = start_mm % self.length_mm
        end = start + (end_mm - start_mm) % self.length_mm
        first = bisect_right(self.along_mm, start + 1e-6)
        last = bisect_left(self.along_mm, end - 1e-6)
        chosen: Iterable[int] = range(first, last)
        if end > self.length_mm:
            chosen = [*chosen, *range(bisect_left(self.along_mm, end - self.length_mm - 1e-6))]
        spots, normals = self.spots, self.normals
        return [(spots[i][0] + normals[i][0] * out, spots[i][1] + normals[i][1] * out) for i in chosen]


def fit(curve: Curve, width: float, height: float) -> View:
    """The view that puts a curve into a box of the page whose corner is the origin."""
    left, right, low, high = extent(curve)
    scale = min(width / (right - left), height / (high - low))
    return View(scale, -left * scale, high * scale)


def ring(curve: Curve, view: View) -> Ring:
    """The curve on the page, thinned to what the eye can tell."""
    step = max(1, len(curve.points) // STEPS)
    spots = view.all_at(curve.points[::step])
    normals = []
    for (ax, ay), (bx, by) in zip((spots[-1], *spots), (*spots[1:], spots[0]), strict=False):
        dx, dy = bx - ax, by - ay
        length = (dx * dx + dy * dy) ** 0.5 or 1.0
        normals.append((dy / length, -dx / length))
    return Ring(tuple(spots), tuple(normals), curve.along_mm[::step], curve.length_mm)


@once
def places(rim: Rim) -> dict[int, float]:
    """Where each place of the walk is along the rim (mm), by its index in `frame.holes`.

    A place that is not drilled has no measured spot: it is drawn midway between
    the drilled ones beside it, sharing the gap evenly.
    """
    holes = rim.frame.holes
    known = {i: rim.holes[hole.address].along_mm for i, hole in enumerate(holes) if hole.address in rim.holes}
    if not known:
        return {i: rim.curve.length_mm * (i + 0.5) / len(holes) for i in range(len(holes))}
    if len(known) == len(holes):
        return known
    order = sorted(known)
    placed = dict(known)
    for before, after in zip(order, order[1:] + order[:1], strict=True):
        between = (after - before - 1) % len(holes)
        gap = (known[after] - known[before]) % rim.curve.length_mm or rim.curve.length_mm
        for step in range(1, between + 1):
            along = known[before] + gap * step / (between + 1)
            placed[(before + step) % len(holes)] = along % rim.curve.length_mm
    return dict(sorted(placed.items()))
