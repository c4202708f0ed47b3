"""Sheets of paper: ISO 216 and the sizes of ANSI/ASME Y14.1 that offices print on."""

from __future__ import annotations

from dataclasses import dataclass, replace

from rimbook.book.model import PaperName


@dataclass(frozen=True, slots=True)
class Paper:
    """One sheet as it hangs, in millimetres."""

    name: str
    width_mm: float
    height_mm: float

    @property
    def landscape(self) -> bool:
        """Whether it is wider than high."""
        return self.width_mm > self.height_mm

    @property
    def margin_mm(self) -> float:
        """An edge that every printer leaves white, and a little more on large sheets."""
        return 7.0 + min(self.width_mm, self.height_mm) / 140

    @property
    def words(self) -> str:
        """`A2 landscape`."""
        return f"{self.name} {'landscape' if self.landscape else 'portrait'}"

    def turned(self, *, landscape: bool) -> Paper:
        """The same sheet, turned where it hangs the other way."""
        if landscape == self.landscape:
            return self
        return replace(self, width_mm=self.height_mm, height_mm=self.width_mm)


# From the smallest to the largest.
PAPERS: dict[PaperName, Paper] = {
    "Letter": Paper("Letter", 215.9, 279.4),
    "A4": Paper("A4", 210, 297),
    "Tabloid": Paper("Tabloid", 279.4, 431.8),
    "A3": Paper("A3", 297, 420),
    "A2": Paper("A2", 420, 594),
    "A1": Paper("A1", 594, 841),
    "A0": Paper("A0", 841, 1189),
}
