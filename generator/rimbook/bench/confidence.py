"""How far a map can be trusted, counted from what is written in it: a small whole score, and why.

The weights are a choice of this book. They follow what a stringer would ask: who measured, how finely, were
the places themselves measured, has anybody else found the same, and has anybody looked of late?
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from typing import NamedTuple

from rimbook.book.model import Confirmed, Frame, Measured

MOST = 5
FINE_MM = 0.1
"""A tool that shows steps of at most this tells the usual bores apart."""

MEASURED_SHARE = 0.5
"""So many of the places along the rim have to be measured, not worked out."""

OLD_YEARS = 5
"""Nobody looked at the map for so long: makers change frames without changing their names."""


class Reason(NamedTuple):
    """One question of the score: what it gives, what it could give, and the answer."""

    asks: str
    points: int
    most: int
    answer: str


@dataclass(frozen=True, slots=True)
class Vouched:
    """What a score is counted from. `places` and `places_measured` count drilled holes."""

    measured: Measured | None
    confirmed: tuple[Confirmed, ...]
    places: int
    places_measured: int

    @property
    def latest(self) -> date | None:
        """The last day on which somebody looked."""
        signed = (self.measured, *self.confirmed)
        return max((each.on for each in signed if each and each.on), default=None)

    @property
    def others(self) -> int:
        """How many people beside the one who measured have confirmed the map."""
        own = self.measured.by if self.measured else None
        return len({each.by for each in self.confirmed} - {own})


@dataclass(frozen=True, slots=True)
class Confidence:
    """A score between 0 and MOST, and the reasons that add up to it."""

    reasons: tuple[Reason, ...]

    @property
    def score(self) -> int:
        """The sum of all points, never below 0."""
        return max(0, sum(reason.points for reason in self.reasons))

    @property
    def word(self) -> str:
        """The score as one word."""
        return WORDS[self.score]


WORDS = ("none", "very low", "low", "fair", "good", "high")


def newest(vouched: Iterable[Vouched]) -> date | None:
    """The last day on which any of these was looked at.

    Ages are counted to it, not to the day of a build, so that the same book always says the same.
    """
    return max((day for day in (each.latest for each in vouched) if day), default=None)


def vouched(frame: Frame) -> Vouched:
    """Who stands for a map, and how many of its places were measured."""
    measured = sum(hole.place_mm is not None for hole in frame.drilled)
    return Vouched(frame.measured, frame.confirmed, len(frame.drilled), measured)


def confidence(known: Vouched, book_day: date | None = None) -> Confidence:
    """The score of one map. `book_day` is the newest day of the book, as `newest` gives it.

    Without one, the map is taken for the newest.
    """
    return Confidence(
        (_signed(known), _fine(known), _places(known), _others(known), _age(known, book_day or known.latest))
    )


def _signed(known: Vouched) -> Reason:
    points = int(known.measured is not None)
    return Reason("Did somebody sign it?", points, 1, known.measured.by if known.measured else "nobody")


def _fine(known: Vouched) -> Reason:
    asks = f"Was it measured to {FINE_MM:g} mm or finer, with a tool that is named?"
    measured = known.measured
    if measured is None or measured.tool is None:
        return Reason(asks, 0, 1, "the tool is not written down")
    if measured.resolution_mm is None:
        return Reason(asks, 0, 1, f"{measured.tool}, how finely is not written down")
    points = int(measured.resolution_mm <= FINE_MM)
    return Reason(asks, points, 1, f"{measured.tool}, read to {measured.resolution_mm:g} mm")


def _places(known: Vouched) -> Reason:
    measured, of = known.places_measured, known.places
    points = int(of > 0 and measured >= MEASURED_SHARE * of)
    return Reason(
        "Were at least half of the places along the rim measured?", points, 1, f"{measured} of {of}"
    )


def _others(known: Vouched) -> Reason:
    answer = {0: "nobody else", 1: "one other"}.get(known.others, f"{known.others} others")
    return Reason("Did others find the same on rackets of their own?", min(2, known.others), 2, answer)


def _age(known: Vouched, book_day: date | None) -> Reason:
    asks = f"Did somebody look in the last {OLD_YEARS} years? If not, a point goes."
    if known.latest is None or book_day is None:
        return Reason(asks, -1, 0, "no day is written down")
    is_old = age_years(known.latest, book_day) > OLD_YEARS
    return Reason(asks, -int(is_old), 0, f"last on {known.latest.isoformat()}")


def age_years(day: date, book_day: date) -> float:
    """Years between two days, by the mean year of the calendar, 365.2425 days."""
    return (book_day - day).days / 365.2425
