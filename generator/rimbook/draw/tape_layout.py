"""Where things stand on the rim tape, in drawings of four units to a millimetre."""

from __future__ import annotations

from collections.abc import Iterable

from rimbook.draw import svg

PER_MM = 4
"""Units of a drawing in a millimetre: marks keep the sizes and strokes they have in the other drawings."""

HEIGHT_MM = 30.0
EDGE_MM = 1.0
"""White round each drawing, so that no line on its border is cut."""

HEIGHT = HEIGHT_MM * PER_MM
RADIUS = 5.0
FONT, SMALL = 10.0, 8.8

# Down the tape: words along the upper edge, two rows of addresses, the holes, two rows of bores, strips and
# twins, their letters, the scale.
WORDS, ADDRESSES, MIDDLE, BORES = 9.0, (34.0, 24.0), 52.0, (76.0, 85.0)
SPANS, LETTERS, NUMBERS = 90.0, 102.0, 112.5
TICK = (38.0, 66.0)
TARGETS = (17.0, 108.0)


def units(mm: float) -> float:
    return mm * PER_MM


def box(left: float, top: float, width: float, height: float) -> str:
    n = svg.number
    return f"M{n(left)} {n(top)}h{n(width)}v{n(height)}h{n(-width)}Z"


def upright(places: Iterable[float], top: float, bottom: float) -> str:
    """Path data of upright lines, to a hundredth of a unit."""
    return "".join(f"M{svg.number(x)} {svg.number(top)}V{svg.number(bottom)}" for x in places)
