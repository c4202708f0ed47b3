"""The bench numbers of a frame as its page shows them: hole by kind of hole, never one line a hole."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import NamedTuple

from rimbook.bench.answers import Answers
from rimbook.bench.fit import SWELLS, swells
from rimbook.bench.frame_numbers import NAMED, FrameNumbers, PartInHole
from rimbook.bench.load import forces_at
from rimbook.bench.needs import HoleNeed, PieceNeed, hole_needs, places
from rimbook.bench.twins import TwinAdvice
from rimbook.bench.units import convert
from rimbook.book.model import Address, Frame, Part
from rimbook.rim.types import Rim
from rimbook.site.bench_words import (
    at_each,
    fit_words,
    force_words,
    length_words,
    measure,
    pressure_words,
    reasons_words,
    room_words,
    sentence,
    turns_words,
)
from rimbook.site.need_words import hole_words
from rimbook.site.spans import Span, spans_of
from rimbook.site.stand_ins import StandIns, all_that_fit, stand_ins
from rimbook.site.words import UNKNOWN, capital, number

MOST_PAIRS = 4
"""So many pairs of holes are named for which a two-post part would serve, those that gain most."""

# No published value for string on grommet was found, so the reader chooses. The capstan equation takes the
# string to be on the verge of sliding: the loss that it gives is an upper bound.
FRICTIONS = (0.0, 0.1, 0.3)
"""The coefficients of string on grommet that a page offers. It is printed at the first, without friction."""

# Pulls that differ by less are those of mirrored holes, apart from rounding.
_ALIKE = 1e-6


class Times(NamedTuple):
    """A force that follows the tension: the factors to it, for the browser, and the newtons at this one.

    There is a factor for each of `FRICTIONS`, or one for all of them.
    """

    factors: str
    newtons: str


class Presses(NamedTuple):
    """A pressure that follows the tension: MPa for each newton of it, for the browser, and at this one.

    As with `Times`, there is one for each of `FRICTIONS`, or one for all of them.
    """

    per_newton: str
    mpa: str


class Line(NamedTuple):
    """A question of the bench: its name, the topic that explains it, and the answer in words."""

    name: str
    topic: str
    says: str


class HoleKind(NamedTuple):
    """Holes alike in bore, depth, part and strings. The pull is that of the hardest-worked of them.

    `worst` names that hole at each of `FRICTIONS`, and is empty where it stays the same.
    """

    part: Part | None
    name: str
    hole: str
    holes: tuple[Span, ...]
    lines: tuple[Line, ...]
    hardest: Address
    worst: str
    multiple: str
    pull: Times
    pressure: Presses | None
    covered: bool
    others: StandIns
    rest: str
    cautions: tuple[str, ...]


class Piece(NamedTuple):
    """A strip or a two-post part, and what would serve in its place."""

    part: Part | None
    name: str
    holes: tuple[Span, ...]
    others: StandIns


class Hardest(NamedTuple):
    """One of the hardest-worked holes."""

    address: Address
    multiple: str
    pull: Times


class Pair(NamedTuple):
    """Neighbouring holes and the two-post part that would serve both: pressure before and after."""

    holes: tuple[str, ...]
    part: Part
    why: str
    distance: str
    before: Presses | None
    after: Presses | None
    percent: str


@dataclass(frozen=True, slots=True)
class BenchView:
    """All that stands under "Bench numbers" of a frame. `each` gives the force on a hole by its address.

    `ranked` names the hardest-worked holes at each of `frictions`.
    """

    tension: str
    newtons: str
    assumed: str
    limit: tuple[str, str] | None
    frictions: str
    hardest: Sequence[Hardest]
    ranked: str
    along: Times
    across: Times
    kinds: Sequence[HoleKind]
    pieces: Sequence[Piece]
    pairs: Sequence[Pair]
    more_pairs: int
    cautions: Sequence[str]
    trims: bool
    each: Mapping[str, Times]


def bench_view(rim: Rim, numbers: FrameNumbers, answers: Answers, root: str) -> BenchView:
    """Put the numbers of a frame into words."""
    frame, tension_n = rim.frame, numbers.tension_n
    free = {address: hole.pull for address, hole in numbers.holes.items()}
    rubbed = forces_at(rim, FRICTIONS[1:])
    pulls = [free, *({address: force.length for address, force in each.items()} for each in rubbed)]
    each = {str(address): _times([by[address] for by in pulls], tension_n) for address in free}
    kinds = list(_kinds(frame, numbers, answers, root, pulls))
    pairs = list(_pairs(numbers, answers))
    gains = [pair for pair in pairs if pair.before] or pairs[:1]
    limit = frame.tension_limit
    at_limit = limit is not None and abs(convert(limit.value, limit.unit, "N") - tension_n) < 1e-6
    return BenchView(
        tension=f"{number(convert(tension_n, 'N', 'lb'), 1)} lb",
        newtons=number(tension_n, 4),
        assumed="the limit printed on the frame" if at_limit else f"a usual tension in {frame.sport}",
        limit=(number(limit.value, 3), limit.unit) if limit else None,
        frictions=",".join(number(friction) for friction in FRICTIONS),
        hardest=[
            Hardest(address, f"{numbers.holes[address].pull:.2f}", each[str(address)])
            for address in numbers.hardest
        ],
        ranked=",".join(" ".join(map(str, holes)) for holes in (numbers.hardest, *map(_ranked, pulls[1:]))),
        along=_times([numbers.head.along_n / tension_n], tension_n),
        across=_times([numbers.head.across_n / tension_n], tension_n),
        kinds=kinds,
        pieces=list(_pieces(frame, answers)),
        pairs=gains[:MOST_PAIRS],
        more_pairs=len(pairs) - len(gains[:MOST_PAIRS]),
        cautions=list(_cautions(numbers, kinds)),
        trims=any(hole.here.reach.word == "trim" for hole in numbers.holes.values()),
        each=each,
    )


def _times(factors: Sequence[float], tension_n: float) -> Times:
    return Times(at_each(factors, 4), force_words(factors[0] * tension_n))


def _presses(mpa: float, tension_n: float, shares: Sequence[float] = (1.0,)) -> Presses:
    """`shares` are what the pressure becomes at each of `FRICTIONS`, divided by what it is without."""
    return Presses(at_each((mpa / tension_n * share for share in shares), 6), pressure_words(mpa))


def _ranked(pulls: Mapping[Address, float]) -> list[Address]:
    """The holes of the highest pulls, hardest first, and those alike to the last of them."""
    least = min(sorted(pulls.values())[-NAMED:], default=0.0) - _ALIKE
    found = [(size, address) for address, size in pulls.items() if size >= least and size > _ALIKE]
    return [address for _, address in sorted(found, key=lambda each: -each[0])]


def _worst(first: Address, addresses: Iterable[Address], pulls: Mapping[Address, float]) -> Address:
    """The hardest-worked hole; the first one gives way only to one that is worked harder."""
    worst = max(addresses, key=pulls.__getitem__)
    return worst if pulls[worst] > pulls[first] + _ALIKE else first


def _kinds(
    frame: Frame,
    numbers: FrameNumbers,
    answers: Answers,
    root: str,
    pulls: Sequence[Mapping[Address, float]],
) -> Iterator[HoleKind]:
    """Each kind of hole once, in the order in which a walk meets them."""
    asked = hole_needs(frame)
    alike: dict[tuple[HoleNeed, str | None, bool, int], list[Address]] = {}
    for hole in frame.drilled:
        covered = hole.strip is not None or hole.twin is not None
        key = (asked[hole.address], hole.part, covered, id(numbers.holes[hole.address].here))
        alike.setdefault(key, []).append(hole.address)
    for (need, part_id, covered, _), addresses in alike.items():
        part = answers.index.catalogue.get(part_id or "")
        worked = max((numbers.holes[address] for address in addresses), key=lambda hole: hole.pull)
        here = worked.here
        worst = [worked.address, *(_worst(worked.address, addresses, by) for by in pulls[1:])]
        factors = [by[address] for by, address in zip(pulls, worst, strict=True)]
        shares = [factor / worked.pull for factor in factors] if worked.pull else (1.0,)
        yield HoleKind(
            part=part,
            name=part.name if part else capital(f"{UNKNOWN} part"),
            hole=hole_words(need),
            holes=spans_of(addresses),
            lines=_lines(here, known=part is not None),
            hardest=worked.address,
            worst=",".join(map(str, worst)) if len(set(worst)) > 1 else "",
            multiple=f"{worked.pull:.2f}",
            pull=_times(factors, numbers.tension_n),
            pressure=None
            if worked.pressure_mpa is None
            else _presses(worked.pressure_mpa, numbers.tension_n, shares),
            covered=covered,
            others=stand_ins(need, part.id if part else None, answers),
            rest=all_that_fit(need, answers, root),
            cautions=tuple(caution.says for caution in here.cautions),
        )


@lru_cache(maxsize=4096)
def _lines(here: PartInHole, *, known: bool) -> tuple[Line, ...]:
    if not known:
        return (Line("Fit", "fit", sentence(f"no fit is claimed. {measure(here.missing)}")),)
    return (
        Line("Fit", "fit", sentence(fit_words(here.fit))),
        Line("String room", "room", sentence(room_words(here.room, here.through, here.thickest_mm))),
        Line("Length", "length", sentence(length_words(here.reach))),
        Line("Turns", "turns", sentence(turns_words(here.turns))),
    )


def _pieces(frame: Frame, answers: Answers) -> Iterator[Piece]:
    for place in places(frame, answers.index.catalogue):
        if isinstance(place.need, PieceNeed):
            part = answers.index.catalogue.get(place.part or "")
            name = part.name if part else f"{UNKNOWN} {place.need.kind}"
            yield Piece(
                part, name, spans_of(place.holes), stand_ins(place.need, part.id if part else None, answers)
            )


def _pairs(numbers: FrameNumbers, answers: Answers) -> Iterator[Pair]:
    """The best two-post part of each pair of holes, pairs on both sides as one, the largest gain first."""
    best: dict[tuple[Address, Address], TwinAdvice] = {}
    for advice in numbers.twins:
        if advice.served.verdict in ("serves", "may serve"):
            best.setdefault(advice.holes, advice)
    alike: dict[tuple[object, ...], list[TwinAdvice]] = {}
    for advice in sorted(best.values(), key=_gain, reverse=True):
        places_of = tuple(sorted(address.number for address in advice.holes))
        shown = advice.spread and (f"{advice.spread.before_mpa:.1f}", f"{advice.spread.after_mpa:.1f}")
        alike.setdefault((places_of, advice.served.part, shown), []).append(advice)
    for first, *mirrored in alike.values():
        spread = first.spread
        yield Pair(
            holes=tuple(f"{one} + {other}" for one, other in (each.holes for each in (first, *mirrored))),
            part=answers.index.catalogue[first.served.part],
            why=reasons_words(first.served.reasons),
            distance=number(first.distance_mm, 1),
            before=_presses(spread.before_mpa, numbers.tension_n) if spread else None,
            after=_presses(spread.after_mpa, numbers.tension_n) if spread else None,
            percent=f"{100 * spread.share:.0f}" if spread else "",
        )


def _gain(advice: TwinAdvice) -> float:
    return advice.spread.before_mpa - advice.spread.after_mpa if advice.spread else -1.0


def _cautions(numbers: FrameNumbers, kinds: Iterable[HoleKind]) -> Iterator[str]:
    yield from (caution.says for caution in numbers.cautions)
    yield from dict.fromkeys(says for kind in kinds for says in kind.cautions)
    if any(kind.part and swells(kind.part.material) for kind in kinds):
        yield SWELLS
