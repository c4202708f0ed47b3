"""Which pin pushes a part out of its hole."""

from __future__ import annotations

from dataclasses import dataclass

from rimbook.book.model import Part


@dataclass(frozen=True, slots=True)
class Pin:
    """A straight pin, in millimetres: thicker than `over_mm`, thinner than `under_mm`.

    `size_mm` is the middle of the two, to a tenth of a millimetre where that still lies between them:
    an easy size to look for.
    """

    over_mm: float
    under_mm: float
    size_mm: float


def pin(part: Part) -> Pin | None:
    """The pin that drives a part out, or None where its barrel or bore is unknown.

    Thinner than the opening inside it would slide through; thicker than the barrel
    it would jam in the frame. Common practice, no published source.
    """
    if part.barrel_mm is None or part.bore_mm is None or part.bore_mm >= part.barrel_mm:
        return None
    middle = (part.bore_mm + part.barrel_mm) / 2
    easy = round(middle, 1)
    return Pin(part.bore_mm, part.barrel_mm, easy if part.bore_mm < easy < part.barrel_mm else middle)
