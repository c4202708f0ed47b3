"""What must be said beside a number because something could break or hurt."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

CautionCode = Literal[
    "over the limit",
    "bore over barrel",
    "barrel over flange",
    "posts under pitch",
    "one barrel, two lengths",
    "beyond any racket",
]


@dataclass(frozen=True, slots=True)
class Caution:
    """A code for the page and a sentence for the reader."""

    code: CautionCode
    says: str
