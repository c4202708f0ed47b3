"""A photo of a frame and a sheet of paper, painted for tests. Pillow does the perspective."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path
from typing import NamedTuple

import numpy as np
from PIL import Image, ImageDraw

Spot = tuple[float, float]

SCALE = 10
"""Pixels a millimetre of the flat picture."""
HALF_WIDE, HALF_HIGH = 150, 170
"""The flat picture reaches so many mm to each side of the origin."""
SIZE = (3000, 3600)
CORNERS = ((210.0, 260.0), (2740.0, 120.0), (2930.0, 3480.0), (60.0, 3390.0))
"""Where the photo shows the corners of the flat picture, clockwise from the top left."""


class Photo(NamedTuple):
    """`seen` holds where each point was painted, in pixels from the top left."""

    file: Path
    seen: list[Spot]


def painted(file: Path, sheet: Iterable[Spot], holes: Iterable[Spot], turn: float = 0.1) -> Photo:
    """A bright sheet, and dark dots for holes, on grey; in mm of the face, turned a little (radians)."""
    flat = Image.new("L", (2 * HALF_WIDE * SCALE, 2 * HALF_HIGH * SCALE), 150)
    draw = ImageDraw.Draw(flat)
    cosine, sine = np.cos(turn), np.sin(turn)

    def laid(spot: Spot) -> Spot:
        x, y = spot
        right, up = cosine * x - sine * y, sine * x + cosine * y
        return (right + HALF_WIDE) * SCALE, (HALF_HIGH - up) * SCALE

    edge = [laid(spot) for spot in sheet]
    draw.polygon(edge, fill=240)
    dots = [laid(spot) for spot in holes]
    flat = _dotted(flat, dots)
    wide, high = flat.size
    whole = [(0.0, 0.0), (float(wide), 0.0), (float(wide), float(high)), (0.0, float(high))]
    # Pillow takes the way from a pixel of what it makes to one of what it is given.
    back = _solved(CORNERS, whole)
    photo = flat.transform(
        SIZE, Image.Transform.PERSPECTIVE, back[:8], Image.Resampling.BILINEAR, fillcolor=150
    )
    photo.save(file)
    there = np.array(_solved(whole, CORNERS)).reshape(3, 3)
    return Photo(file, [_through(there, each) for each in edge + dots])


def _dotted(flat: Image.Image, dots: Iterable[Spot]) -> Image.Image:
    """With dots whose edges are soft, so that they sit between pixels too."""
    grey = np.array(flat, dtype=float)
    radius = 0.9 * SCALE
    for x, y in dots:
        left, top = int(x - radius) - 2, int(y - radius) - 2
        part = grey[top : top + 26, left : left + 26]
        ys, xs = np.mgrid[0:26, 0:26] + 0.5
        share = np.clip(radius + 0.5 - np.hypot(xs + left - x, ys + top - y), 0, 1)
        part[:] = part * (1 - share) + 10 * share
    return Image.fromarray(np.rint(grey).astype(np.uint8))


def dark_middle(photo: Photo, near: Spot) -> Spot:
    """The middle of the dark dot there, as the picture itself has it."""
    reach = 14
    left, top = round(near[0]) - reach, round(near[1]) - reach
    with Image.open(photo.file) as image:
        part = np.array(image.crop((left, top, left + 2 * reach, top + 2 * reach)), dtype=float)
    dark = np.clip(150 - part, 0, None)
    ys, xs = np.mgrid[0 : 2 * reach, 0 : 2 * reach] + 0.5
    return float(left + (dark * xs).sum() / dark.sum()), float(top + (dark * ys).sum() / dark.sum())


def _through(matrix: np.ndarray, spot: Spot) -> Spot:
    x, y, depth = matrix @ np.array([*spot, 1.0])
    return float(x / depth), float(y / depth)


def _solved(start: Iterable[Spot], end: Iterable[Spot]) -> list[float]:
    rows, wanted = [], []
    for (x, y), (u, v) in zip(start, end, strict=True):
        rows += [[x, y, 1, 0, 0, 0, -u * x, -u * y], [0, 0, 0, x, y, 1, -v * x, -v * y]]
        wanted += [u, v]
    return [*np.linalg.solve(np.array(rows), np.array(wanted)).tolist(), 1.0]
