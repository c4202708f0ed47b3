"""How a barrel sits in a drilled hole: limits, the kind of fit, and the bench word.

Clearance = bore − barrel, in mm; the least is the smallest bore less the thickest barrel, the most the
reverse. Clearance, transition and interference are named as in ISO 286-1:2010 (3.3), with the extreme
case of 0 counted to clearance below and to interference above. The bench words and what divides them
are common practice without a published source. Assumes round and dry; stops being true in an oval or
cracked hole.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal, get_args

from rimbook.bench.reasons import Missing
from rimbook.bench.thresholds import CLOSE_MM, DEFAULT, Thresholds
from rimbook.bench.uncertainty import Size, limits

FitKind = Literal["clearance", "transition", "interference"]
FitWord = Literal["drops out", "finger fit", "snug", "needs driving", "will not seat"]

FIT_WORDS: tuple[FitWord, ...] = get_args(FitWord)
"""From the loosest to the tightest."""

SWELLS = (
    "Nylon takes up water from the air and swells, some kinds several times as much as others. "
    "Fit it dry, and check the fit again after a few days."
)


@dataclass(frozen=True, slots=True)
class Fit:
    """How a barrel sits. All numbers are None where a size is missing.

    `word` is that of the sizes as measured; `loosest` and `tightest` are those at the limits.
    """

    word: FitWord | None = None
    clearance_mm: float | None = None
    least_mm: float | None = None
    most_mm: float | None = None
    kind: FitKind | None = None
    loosest: FitWord | None = None
    tightest: FitWord | None = None
    missing: tuple[Missing, ...] = ()

    @property
    def sure(self) -> bool:
        """Whether the word holds at both limits."""
        return self.word is not None and self.word == self.loosest == self.tightest


def fit(bore: Size | None, barrel: Size | None, thresholds: Thresholds = DEFAULT) -> Fit:
    """The fit of a barrel in a bore, both in mm with their standard uncertainty.

    A missing size gives no word; a missing uncertainty gives the word but neither limits nor kind.
    """
    missing: list[Missing] = []
    if bore is None:
        missing.append("bore")
    if barrel is None:
        missing.append("barrel")
    if bore is None or barrel is None:
        return Fit(missing=tuple(missing))
    clearance = bore.mm - barrel.mm
    word = fit_word(clearance, thresholds)
    of_bore, of_barrel = limits(bore, thresholds.coverage), limits(barrel, thresholds.coverage)
    if of_bore is None:
        missing.append("bore resolution")
    if of_barrel is None:
        missing.append("barrel tolerance")
    if of_bore is None or of_barrel is None:
        return Fit(word, clearance, missing=tuple(missing))
    least, most = of_bore[0] - of_barrel[1], of_bore[1] - of_barrel[0]
    return Fit(
        word,
        clearance,
        least,
        most,
        fit_kind(least, most),
        loosest=fit_word(most, thresholds),
        tightest=fit_word(least, thresholds),
    )


def fit_kind(least_mm: float, most_mm: float) -> FitKind:
    """The kind of fit between two limits of the clearance (ISO 286-1:2010, 3.3)."""
    if least_mm >= -CLOSE_MM:
        return "clearance"
    return "interference" if most_mm <= CLOSE_MM else "transition"


def fit_word(clearance_mm: float, thresholds: Thresholds = DEFAULT) -> FitWord:
    """The bench word of a clearance in mm. A value on a threshold takes the word nearer to snug."""
    if clearance_mm > thresholds.drops_out_over_mm + CLOSE_MM:
        return "drops out"
    if clearance_mm > thresholds.finger_over_mm + CLOSE_MM:
        return "finger fit"
    if clearance_mm >= thresholds.driving_under_mm - CLOSE_MM:
        return "snug"
    return "needs driving" if clearance_mm >= thresholds.seats_down_to_mm - CLOSE_MM else "will not seat"


def swells(material: str | None) -> bool:
    """Whether a material is named as a polyamide (nylon), which swells with moisture."""
    return material is not None and bool(re.search(r"\b(PA ?\d*|nylon|polyamide)\b", material, re.IGNORECASE))
