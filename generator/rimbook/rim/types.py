"""Values of the rim: points, placed holes, and the legs of the string."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from math import hypot
from typing import Literal, NamedTuple

from rimbook.book.model import Address, Frame


class Point(NamedTuple):
    """A place or a direction in millimetres: x to the right, y towards the head."""

    x: float
    y: float

    def plus(self, other: Point) -> Point:
        return Point(self.x + other.x, self.y + other.y)

    def minus(self, other: Point) -> Point:
        return Point(self.x - other.x, self.y - other.y)

    def times(self, factor: float) -> Point:
        return Point(self.x * factor, self.y * factor)

    @property
    def length(self) -> float:
        return hypot(self.x, self.y)

    @property
    def unit(self) -> Point:
        """The same direction, one long. A point of no length stays as it is."""
        length = self.length
        return self.times(1 / length) if length else self


@dataclass(frozen=True, slots=True)
class Curve:
    """A closed line as points round it, clockwise from the middle of the head.

    `along_mm[i]` is the length from the start to `points[i]`; the closing piece
    back to the first point is counted in `length_mm` but the point not repeated.
    """

    points: tuple[Point, ...]
    along_mm: tuple[float, ...]
    length_mm: float


@dataclass(frozen=True, slots=True)
class Placed:
    """Where a drilled hole sits: on the outline, and which way is out of the head."""

    address: Address
    at: Point
    outward: Point
    along_mm: float
    place: Literal["measured", "derived"]


class Leg(NamedTuple):
    """A straight piece of string between two holes, inside the head or outside the rim."""

    start: Address
    end: Address
    run: Literal["inside", "outside"]


@dataclass(frozen=True, slots=True)
class StringPath:
    """One piece of string from end to end, and what it weaves.

    `string` is `mains`, `crosses` or `whole` for a one-piece job.
    """

    string: Literal["mains", "crosses", "whole"]
    legs: tuple[Leg, ...]


@dataclass(frozen=True, slots=True)
class Rim:
    """A frame with everything in its place: the input of every number and drawing."""

    frame: Frame
    curve: Curve
    holes: Mapping[Address, Placed]
    paths: tuple[StringPath, ...]
