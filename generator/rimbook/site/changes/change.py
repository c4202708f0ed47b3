"""One difference, as one sentence."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from rimbook.book.model import Address
from rimbook.site.words import capital

Thing = Literal["frame", "part"]


@dataclass(frozen=True, slots=True)
class Change:
    """What changed of a frame or a part, and at which holes.

    `breaking` is a removal or a new name: whoever uses the data or a link to the page loses something. Its
    holes are those of the older state; of all others, those of the newer.
    """

    thing: Thing
    id: str
    sentence: str
    holes: tuple[Address, ...] = ()
    breaking: bool = False

    @property
    def text(self) -> str:
        """The sentence, begun with a large letter unless it begins with a hole or an id."""
        first = self.sentence.split(" ", 1)[0]
        return self.sentence if "-" in first or any(map(str.isdigit, first)) else capital(self.sentence)


def from_to(what: str, before: object, after: object, unit: str = "") -> str:
    """`bore 2.1 → 2.7 mm`, with unknown for what nobody knows."""
    old, new = (_word(each) for each in (before, after))
    end = f" {unit}" if unit and after is not None else ""
    return f"{what} {old} → {new}{end}"


def _word(value: object) -> str:
    if value is None or value == ():
        return "unknown"
    if isinstance(value, float):
        return f"{value:g}"
    if isinstance(value, tuple):
        return " and ".join(_word(each) for each in value)
    return str(value)
