"""What else would serve a need: the best parts by name, those that just miss, and where to see the rest."""

from __future__ import annotations

from functools import lru_cache
from typing import NamedTuple

from rimbook.bench.answers import Answers
from rimbook.bench.needs import HoleNeed, Need, strings_of
from rimbook.book.model import Part
from rimbook.site.bench_words import measure, reasons_words
from rimbook.site.fits_link import fits_link

MOST = 3
MOST_NEAR = 2


class StandIn(NamedTuple):
    """A part that would serve, or nearly: `why` says what is against it, empty where nothing is."""

    part: Part
    why: str


class StandIns(NamedTuple):
    """The best parts besides the one that sits there.

    `place` is that of the part in the ranking, the best is 1; None where it does not serve or none was
    named. `more` counts further parts that serve. `missing` names what is not known, and `measure` says how
    to find out; then nothing is claimed.
    """

    serving: tuple[StandIn, ...]
    more: int
    near: tuple[StandIn, ...]
    place: int | None
    missing: tuple[str, ...]
    measure: str


@lru_cache(maxsize=4096)
def stand_ins(need: Need, own: str | None, answers: Answers) -> StandIns:
    """What would serve a need besides the part that sits there."""
    answer = answers.of(need)
    others = [each for each in answer.serving if each != own]
    near = [each for each in answer.near if each != own]
    return StandIns(
        tuple(_stand_in(need, each, answers) for each in others[:MOST]),
        max(0, len(others) - MOST),
        tuple(_stand_in(need, each, answers) for each in near[:MOST_NEAR]),
        answer.serving.index(own) + 1 if own in answer.serving else None,
        answer.missing,
        measure(answer.missing),
    )


@lru_cache(maxsize=4096)
def all_that_fit(need: Need, answers: Answers, root: str) -> str:
    """The address at which every part for a hole is ranked, empty for a need of several holes."""
    if not isinstance(need, HoleNeed) or need.bore_mm is None:
        return ""
    strings = strings_of(need, answers.thresholds)[:1]
    return fits_link(root, need.bore_mm, need.depth_mm, strings, need.strings, need.resolution_mm)


def _stand_in(need: Need, part: str, answers: Answers) -> StandIn:
    served = answers.detail(need, part)
    return StandIn(answers.index.catalogue[part], reasons_words(served.reasons) if served else "")
