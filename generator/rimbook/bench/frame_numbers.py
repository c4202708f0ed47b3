"""All bench numbers of one frame: a record for each hole, and what holds for the whole head."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from rimbook.bench.answers import Answers
from rimbook.bench.caution import Caution
from rimbook.bench.fit import Fit, fit
from rimbook.bench.head_pull import HeadPull, head_pull
from rimbook.bench.length import Reach, reach, reaches
from rimbook.bench.load import forces
from rimbook.bench.needs import HoleNeed, hole_needs, strings_of
from rimbook.bench.pressure import bearing_pressure
from rimbook.bench.reasons import Missing
from rimbook.bench.room import Room, Through, room, thickest, through
from rimbook.bench.sound import hole_cautions, part_cautions
from rimbook.bench.tension import over_limit, usual_tension
from rimbook.bench.thresholds import Thresholds
from rimbook.bench.turns import Turns, turns
from rimbook.bench.twins import TwinAdvice, twin_advice
from rimbook.bench.uncertainty import barrel_size, bore_size
from rimbook.book.model import Address, Catalogue, Frame, Part
from rimbook.rim.types import Rim


@dataclass(frozen=True, slots=True, eq=False)
class PartInHole:
    """What follows from a part in a hole; one and the same for all holes alike.

    `through` judges the sport's usual diameters, `thickest_mm` is the thickest string that runs free
    there as often as it must. Both are None without an inner bore, the second also without a string.
    """

    fit: Fit
    room: Room
    through: tuple[Through, ...] | None
    thickest_mm: float | None
    reach: Reach
    turns: Turns
    missing: tuple[Missing, ...]
    cautions: tuple[Caution, ...]


@dataclass(frozen=True, slots=True)
class HoleNumbers:
    """The numbers of one hole.

    `pull` is the resultant divided by the tension, `pull_n` the same in newtons, and `rank` 1 for the
    hardest-worked hole; holes alike share a rank. `pressure_mpa` is nominal, None where a size is missing.
    """

    address: Address
    part: str | None
    strings: int
    pull: float
    pull_n: float
    rank: int
    pressure_mpa: float | None
    here: PartInHole


@dataclass(frozen=True, slots=True)
class FrameNumbers:
    """The numbers of a frame at one tension (N) and coefficient of friction, hole by hole clockwise.

    `hardest` are the holes of the highest pulls, the hardest first.
    """

    tension_n: float
    friction: float
    holes: Mapping[Address, HoleNumbers]
    hardest: tuple[Address, ...]
    head: HeadPull
    twins: tuple[TwinAdvice, ...]
    cautions: tuple[Caution, ...]


NAMED = 4
"""So many of the hardest-worked holes are named, and those that work as hard as the last of them."""

# Pulls that differ by less are those of mirrored holes, apart from rounding.
_ALIKE = 1e-6


def frame_numbers(
    rim: Rim, answers: Answers, *, tension_n: float | None = None, friction: float = 0.0
) -> FrameNumbers:
    """Work out everything for a frame, with the parts and thresholds of `answers`.

    Without a tension (N) that of `usual_tension` is assumed. Raises ValueError for a tension or a
    coefficient that is none; what is unknown on the map becomes None with what to measure.
    """
    frame, thresholds = rim.frame, answers.thresholds
    tension = usual_tension(frame, thresholds) if tension_n is None else tension_n
    head = head_pull(frame, tension)
    pulls = forces(rim, friction=friction)
    sizes = {address: force.length for address, force in pulls.items()}
    ranks = _ranks(sizes)
    asked = hole_needs(frame)
    alike: dict[tuple[HoleNeed, str | None, Reach | None], PartInHole] = {}
    posts = _twin_posts(frame, answers.index.catalogue, asked, thresholds)
    numbers: dict[Address, HoleNumbers] = {}
    for hole in frame.holes:
        need = asked.get(hole.address)
        if need is None:
            continue
        part = answers.index.catalogue.get(hole.part or "")
        key = (need, hole.part, posts.get(hole.address))
        here = alike.get(key)
        if here is None:
            here = _part_in_hole(answers, need, part.id if part else None, key[2])
            if cautions := hole_cautions(hole):
                here = replace(here, cautions=(*cautions, *here.cautions))
            alike[key] = here
        pull = sizes[hole.address]
        numbers[hole.address] = HoleNumbers(
            hole.address,
            hole.part,
            need.strings,
            pull,
            pull * tension,
            ranks[hole.address],
            _pressure(pull * tension, part, here.reach),
            here,
        )
    limit = over_limit(tension, frame.tension_limit)
    return FrameNumbers(
        tension,
        friction,
        numbers,
        _hardest(sizes),
        head,
        twin_advice(rim, answers, pulls, tension),
        (limit,) if limit else (),
    )


@lru_cache(maxsize=4096)
def _part_in_hole(answers: Answers, need: HoleNeed, part_id: str | None, post: Reach | None) -> PartInHole:
    part, thresholds = answers.index.catalogue.get(part_id or ""), answers.thresholds
    bore = bore_size(need.bore_mm, need.resolution_mm)
    strings = strings_of(need, thresholds)
    faults = part_cautions(part) if part else ()
    if part is None or faults:
        nothing: tuple[Missing, ...] = () if part else ("part",)
        fitted = fit(bore, None, thresholds)
        missing = (*nothing, *(what for what in fitted.missing if what != "barrel"))
        return PartInHole(
            fitted,
            room(None, strings, thresholds),
            None,
            None,
            Reach(),
            Turns(),
            missing,
            faults,
        )
    fitted = fit(bore, barrel_size(part), thresholds)
    held = room(part.bore_mm, strings, thresholds)
    length_mm = part.length_mm[0] if part.length_mm else None
    reached = reach(length_mm, need.depth_mm, thresholds) if post is None else post
    groove_mm = thresholds.string_mm.of(need.sport)[-1] * thresholds.groove_per_string
    turned = turns(
        groove_mm,
        part.bore_mm,
        part.flange_mm,
        need.strings,
        can_turn=part.kind in ("single", "wide"),
        thresholds=thresholds,
    )
    missing = tuple(dict.fromkeys((*fitted.missing, *held.missing, *reached.missing, *turned.missing)))
    if part.bore_mm is None:
        return PartInHole(fitted, held, None, None, reached, turned, missing, ())
    return PartInHole(
        fitted,
        held,
        through(part.bore_mm, need.strings, thresholds.string_mm.of(need.sport), thresholds),
        thickest(part.bore_mm, need.strings, thresholds),
        reached,
        turned,
        missing,
        (),
    )


def _twin_posts(
    frame: Frame, catalogue: Catalogue, asked: Mapping[Address, HoleNeed], thresholds: Thresholds
) -> dict[Address, Reach]:
    """How each post of a two-post part reaches: the longer one sits in the deeper hole."""
    found: dict[Address, Reach] = {}
    for twin in frame.twins:
        part = catalogue.get(twin.part)
        if part and all(address in asked for address in twin.holes):
            depths = tuple(asked[address].depth_mm for address in twin.holes)
            found.update(zip(twin.holes, reaches(part.length_mm, depths, thresholds), strict=True))
    return found


def _pressure(pull_n: float, part: Part | None, reached: Reach) -> float | None:
    if part is None or part.barrel_mm is None or reached.engaged_mm is None:
        return None
    return bearing_pressure(pull_n, part.barrel_mm, reached.engaged_mm)


def _ranks(pulls: Mapping[Address, float]) -> dict[Address, int]:
    ranks: dict[Address, int] = {}
    rank, last = 0, float("inf")
    for index, (address, pull) in enumerate(sorted(pulls.items(), key=lambda each: -each[1])):
        if last - pull > _ALIKE:
            rank, last = index + 1, pull
        ranks[address] = rank
    return ranks


def _hardest(pulls: Mapping[Address, float]) -> tuple[Address, ...]:
    strung = [(pull, address) for address, pull in pulls.items() if pull > _ALIKE]
    strung.sort(key=lambda each: -each[0])
    if len(strung) > NAMED:
        strung = [each for each in strung if each[0] >= strung[NAMED - 1][0] - _ALIKE]
    return tuple(address for _, address in strung)
