"""Why a part does or does not serve, and what to measure where nobody knows: every word written once.

A reason is a code and, where it has one, an amount in millimetres. The sentences stand beside the
codes, so that the build and the browser say the same.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

Missing = Literal[
    "bore",
    "bore resolution",
    "rim depth",
    "string diameter",
    "barrel",
    "barrel tolerance",
    "inner bore",
    "post length",
    "flange",
    "pitch",
    "place",
    "part",
]

MEASURE: Mapping[Missing, str] = {
    "bore": "Measure the drilled hole: with a pair of pins, the thickest that goes and the thinnest that "
    "does not, or with a calliper across two directions.",
    "bore resolution": "Write down how finely it was measured: the step of the pins or of the calliper.",
    "rim depth": "Measure the rim along the hole, from the seat of the flange to the inside edge.",
    "string diameter": "Measure the string with a calliper, or take the figure from its packet.",
    "barrel": "Measure the outside of the barrel with a calliper.",
    "barrel tolerance": "Write down how finely the barrel was measured, or its stated tolerance.",
    "inner bore": "Measure the opening inside the barrel with a pair of pins.",
    "post length": "Measure the barrel from under the flange to its end.",
    "flange": "Measure across the flange.",
    "pitch": "Measure from the middle of one post to the middle of the other.",
    "place": "Measure from the middle of one hole to the middle of the next.",
    "part": "Look what sits in the hole, and write it on the map.",
}

ReasonCode = Literal[
    "too loose",
    "too tight",
    "may be loose",
    "may be tight",
    "strings tight",
    "no room",
    "too short",
    "lets go",
    "trim",
    "pitch off",
    "pitch unsure",
    "spacing unrecorded",
    "no bumper",
    "bumper",
    "unknown",
]

SENTENCES: Mapping[ReasonCode, str] = {
    "too loose": "the barrel is too thin by {mm} mm",
    "too tight": "the barrel is too thick by {mm} mm",
    "may be loose": "within the uncertainty of the sizes it may drop out",
    "may be tight": "within the uncertainty of the sizes it may not seat",
    "strings tight": "the strings go through, but {mm} mm of the room to thread is lacking",
    "no room": "the strings need {mm} mm more room",
    "too short": "the barrel is short by {mm} mm, so the string meets the frame",
    "lets go": "too little of the barrel is in the rim to hold",
    "trim": "cut {mm} mm off after fitting",
    "pitch off": "the posts miss the holes by {mm} mm",
    "pitch unsure": "whether the posts meet the holes is within the uncertainty: measure the distance",
    "spacing unrecorded": "the spacing of the posts is not recorded: lay it on before buying",
    "no bumper": "it has no bumper",
    "bumper": "it has a bumper, which this place has not",
    "unknown": "not known: {what}",
}


@dataclass(frozen=True, slots=True)
class Reason:
    """One reason: its code, by how many mm, and for `unknown` what is missing."""

    code: ReasonCode
    mm: float | None = None
    what: Missing | None = None

    def __str__(self) -> str:
        amount = "" if self.mm is None else f"{self.mm:.2f}".rstrip("0").rstrip(".")
        return SENTENCES[self.code].format(mm=amount, what=self.what)


def unknown(missing: tuple[Missing, ...]) -> tuple[Reason, ...]:
    """Each missing measure as a reason."""
    return tuple(Reason("unknown", what=what) for what in missing)
