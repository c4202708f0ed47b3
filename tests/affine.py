"""The affine space AG(n, 3): a family of covers whose optima are published."""

from __future__ import annotations

from itertools import product

Point = tuple[int, ...]


def affine_points(dimension: int) -> list[Point]:
    """The vectors over the integers modulo 3."""
    return list(product(range(3), repeat=dimension))


def affine_lines(dimension: int) -> list[list[Point]]:
    """The triples of points that add up to zero, in order."""
    points = affine_points(dimension)
    found = {
        frozenset((a, b, tuple(-(x + y) % 3 for x, y in zip(a, b, strict=True))))
        for a in points
        for b in points
        if a != b
    }
    return sorted(map(sorted, found))
