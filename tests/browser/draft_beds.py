"""Frames as the drafting page's geometry takes them."""

from __future__ import annotations

from typing import Any

from rimbook.book.model import Frame, Head


def head(given: Head) -> dict[str, Any]:
    return {
        "outline": given.outline,
        "width": given.width_mm,
        "height": given.height_mm,
        "exponent": given.exponent,
        "taper": given.taper,
        "points": [list(point) for point in given.points_mm],
    }


def bed(frame: Frame) -> dict[str, Any]:
    return {
        "head": head(frame.head),
        "mains": frame.mains,
        "crosses": frame.crosses,
        "spacing": list(frame.spacing_mm) if frame.spacing_mm else None,
        "holes": [
            {
                "address": str(hole.address),
                "side": hole.address.side,
                "number": hole.address.number,
                "passes": [str(each) for each in hole.passes],
                "drilled": hole.drilled,
                "place": hole.place_mm,
            }
            for hole in frame.holes
        ],
    }
