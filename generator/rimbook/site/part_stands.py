"""What the page of a part says of interchange: what serves in its place, and where else it serves."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import NamedTuple

from rimbook.bench.interchange import Donors, donors
from rimbook.bench.needs import Need, PieceNeed
from rimbook.book.model import Part
from rimbook.site.bench_words import reasons_words
from rimbook.site.exchange import At, Exchange
from rimbook.site.need_words import need_words, sport_of
from rimbook.site.stand_ins import StandIns, all_that_fit, stand_ins

MOST_NEEDS = 8
"""So many kinds of hole are told one by one."""

MOST_SETS = 6


class Instead(NamedTuple):
    """A kind of hole in which the part sits: where, and what else would serve there."""

    words: str
    sport: str
    at: At
    others: StandIns
    rest: str


class Elsewhere(NamedTuple):
    """A kind of hole that the part would serve, but does not sit in: its place in the ranking."""

    words: str
    sport: str
    at: At
    place: int
    of: int
    why: str
    rest: str


class Donor(NamedTuple):
    """What holes of a strip or of a part sold only in a set take instead, and where that is sold."""

    alone: tuple[Part, ...]
    more_alone: int
    sets: tuple[Part, ...]
    more_sets: int
    loose: bool


@dataclass(frozen=True, slots=True)
class PartStands:
    """All of it. `alone` counts the kinds of hole where nothing else serves, `all_alone` if these are all."""

    instead: Sequence[Instead]
    more_instead: int
    alone: int
    all_alone: bool
    elsewhere: Sequence[Elsewhere]
    elsewhere_needs: int
    elsewhere_frames: int
    elsewhere_holes: int
    donors: Sequence[Donor]


def part_stands(part: Part, book: Exchange, root: str) -> PartStands:
    """Look one part up in the interchange of the book."""
    needs = sorted(book.found.fitted.get(part.id, ()), key=lambda need: -book.fitted[part.id, need].frames)
    sits = set(needs)
    others = [need for need in book.serves.get(part.id, ()) if need not in sits]
    frames = {slug for need in others for slug in book.found.frames[need]}
    return PartStands(
        [_instead(part, need, book, root) for need in needs[:MOST_NEEDS]],
        max(0, len(needs) - MOST_NEEDS),
        len(book.found.only.get(part.id, ())),
        part.id in book.found.irreplaceable,
        [_elsewhere(part, need, book, root) for need in others[:MOST_NEEDS]],
        len(others),
        len(frames),
        sum(book.at[need].holes for need in others),
        list(_donors(part, needs, book)) if not part.sold_alone else [],
    )


def _instead(part: Part, need: Need, book: Exchange, root: str) -> Instead:
    found = stand_ins(need, part.id, book.answers)
    rest = all_that_fit(need, book.answers, root)
    return Instead(need_words(need), sport_of(need), book.fitted[part.id, need], found, rest)


def _elsewhere(part: Part, need: Need, book: Exchange, root: str) -> Elsewhere:
    serving = book.found.answers[need].serving
    served = book.answers.detail(need, part.id)
    return Elsewhere(
        need_words(need),
        sport_of(need),
        book.at[need],
        serving.index(part.id) + 1,
        len(serving),
        reasons_words(served.reasons) if served else "",
        all_that_fit(need, book.answers, root),
    )


def _donors(part: Part, needs: Sequence[Need], book: Exchange) -> Iterator[Donor]:
    """For the piece as a whole, and then for its holes one by one: loose parts may stand in for a strip."""
    whole = [donors(part.id, book.found.answers[need], book.answers.index) for need in needs]
    if found := _donor(whole, book, loose=False):
        yield found
    holes = dict.fromkeys(hole for need in needs if isinstance(need, PieceNeed) for hole in need.holes)
    loose = [donors(part.id, book.answers.of(hole), book.answers.index) for hole in holes]
    if found := _donor(loose, book, loose=True):
        yield found


def _donor(found: Sequence[Donors], book: Exchange, *, loose: bool) -> Donor | None:
    parts = book.answers.index.catalogue
    alone = list(dict.fromkeys(each for donor in found for each in donor.sold_alone))
    sets = list(dict.fromkeys(each for donor in found for each in donor.other_sets))
    if not alone and not sets:
        return None
    return Donor(
        tuple(parts[each] for each in alone[:MOST_SETS]),
        max(0, len(alone) - MOST_SETS),
        tuple(parts[each] for each in sets[:MOST_SETS]),
        max(0, len(sets) - MOST_SETS),
        loose,
    )
