"""Some holes of a finished drawing ringed, to show where something changed."""

from __future__ import annotations

import re
from collections.abc import Collection

from rimbook.book.model import Address
from rimbook.draw import svg

_ROOM = 9.5
"""Radius of a ring, in units of the drawing: clear of the widest bore's mark."""

_HOLE = re.compile(r'<use [^>]*?\bx="([-\d.]+)" y="([-\d.]+)"[^>]*? data-address="([RL]\d+)"')


def ringed(drawing: str, holes: Collection[Address]) -> str:
    """The drawing with a ring round each of `holes`. It has to be one that `face` or `unrolled` drew."""
    names = {str(hole) for hole in holes}
    rings = [
        svg.element(
            "circle", cx=float(x), cy=float(y), r=_ROOM, class_="changed", fill="none", stroke="currentColor"
        )
        for x, y, address in _HOLE.findall(drawing)
        if address in names
    ]
    end = drawing.rindex("</svg>")
    return f"{drawing[:end]}{''.join(map(str, rings))}{drawing[end:]}"
