"""What a shelf is planned by: times, service and shares, and which of them nobody has written down."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from rimbook.bench import given
from rimbook.book.model import Club, PartKind, Shelf

WEEKS = 52.0
"""Weeks of a year."""

ASSUMED_LEAD_WEEKS = 2.0
ASSUMED_REVIEW_WEEKS = 4.0
ASSUMED_SERVICE = 0.95
ASSUMED_SHARES: Mapping[PartKind, float] = MappingProxyType(
    {"single": 0.25, "wide": 0.15, "twin-even": 0.05, "twin-uneven": 0.05, "strip": 0.06}
)
"""Restrings of a hundred at which one part of a kind is renewed. Assumptions, no published source."""

_MOST_WEEKS = 520.0


@dataclass(frozen=True, slots=True)
class Terms:
    """Times in weeks, the service as a chance between 0 and 1, shares of restrings from 0 to 1 by kind.

    `assumed` names what no club file says, as its key there: `review_weeks`, `single` …
    Raises ValueError for values that no shelf can be planned by.
    """

    lead_weeks: float
    review_weeks: float
    service: float
    shares: Mapping[PartKind, float]
    assumed: frozenset[str] = frozenset()

    def __post_init__(self) -> None:
        given.share("lead time in weeks", self.lead_weeks, most=_MOST_WEEKS)
        given.share("review interval in weeks", self.review_weeks, most=_MOST_WEEKS)
        for kind, share in self.shares.items():
            given.share(f"share of restrings that renew a part of kind {kind}", share, most=1.0)
        if not 0 < self.service < 1:
            raise ValueError(
                f"The service level is {self.service!r}; expected a number between 0 and 1, as 0.95."
            )

    @property
    def lead_years(self) -> float:
        """From order to delivery."""
        return self.lead_weeks / WEEKS

    @property
    def cover_years(self) -> float:
        """What an order has to last for: until the one after it arrives."""
        return (self.lead_weeks + self.review_weeks) / WEEKS


def terms_of(club: Club, service: float | None = None) -> Terms:
    """The terms of a club, with assumptions for what its file leaves out. `service` overrides its own."""
    shelf = club.shelf or Shelf()
    level = shelf.service_level if service is None else service
    written = {
        "lead_time_weeks": shelf.lead_time_weeks,
        "review_weeks": shelf.review_weeks,
        "service_level": level,
    }
    assumed = [name for name, value in written.items() if value is None]
    assumed += [kind for kind in ASSUMED_SHARES if kind not in shelf.shares]
    return Terms(
        ASSUMED_LEAD_WEEKS if shelf.lead_time_weeks is None else shelf.lead_time_weeks,
        ASSUMED_REVIEW_WEEKS if shelf.review_weeks is None else shelf.review_weeks,
        ASSUMED_SERVICE if level is None else level,
        {**ASSUMED_SHARES, **shelf.shares},
        frozenset(assumed),
    )
