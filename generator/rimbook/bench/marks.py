"""What fit, room and reach each say for or against a part: reasons, and a place in the ranking."""

from __future__ import annotations

import math
from dataclasses import dataclass

from rimbook.bench.fit import FIT_WORDS, Fit, FitWord
from rimbook.bench.length import Reach, ReachWord
from rimbook.bench.reasons import Reason, ReasonCode, unknown
from rimbook.bench.room import Room, RoomWord
from rimbook.bench.thresholds import CLOSE_MM, Thresholds

_FIT_GRADE: dict[FitWord, int] = dict(zip(FIT_WORDS, (3, 1, 0, 2, 3), strict=True))
_UNKNOWN_FIT = 4
_ROOM_GRADE: dict[RoomWord | None, int] = {"runs free": 0, "tight": 1, None: 2, "will not go": 3}
_REACH_GRADE: dict[ReachWord | None, int] = {"flush": 0, "proud": 0, "trim": 1, None: 2, "short": 3}


@dataclass(frozen=True, slots=True)
class Mark:
    """One aspect of a part in a hole.

    `fails` is the reason why it does not serve, `near` whether it misses by little, `doubt` whether it
    is not known for sure. Ranking goes by `grade`, then by `off`, the least first.
    """

    reasons: tuple[Reason, ...] = ()
    fails: ReasonCode | None = None
    near: bool = False
    doubt: bool = False
    grade: int = 0
    off: int = 0


def failing(reason: Reason, near_mm: float, grade: int = 0, off: int = 0) -> Mark:
    """The mark of a part that fails in one thing: a near miss if by no more than `near_mm`."""
    return Mark((reason,), reason.code, (reason.mm or 0.0) <= near_mm + CLOSE_MM, False, grade, off)


def of_fit(fitted: Fit, thresholds: Thresholds) -> Mark:
    """The mark of a fit. Without bore or barrel no fit is claimed: it fails, and not by little."""
    if fitted.word is None or fitted.clearance_mm is None:
        return Mark(unknown(fitted.missing), "unknown", grade=_UNKNOWN_FIT)
    clearance = fitted.clearance_mm
    off = nanometres(clearance - (thresholds.driving_under_mm + thresholds.finger_over_mm) / 2)
    grade = _FIT_GRADE[fitted.word]
    if fitted.word == "drops out":
        over = Reason("too loose", clearance - thresholds.drops_out_over_mm)
        return failing(over, thresholds.near_fit_mm, grade, off)
    if fitted.word == "will not seat":
        over = Reason("too tight", thresholds.seats_down_to_mm - clearance)
        return failing(over, thresholds.near_fit_mm, grade, off)
    doubts = unknown(fitted.missing)
    if fitted.loosest == "drops out":
        doubts += (Reason("may be loose"),)
    if fitted.tightest == "will not seat":
        doubts += (Reason("may be tight"),)
    return Mark(doubts, doubt=bool(doubts), grade=grade, off=off)


def of_room(strings: Room, thresholds: Thresholds) -> Mark:
    """The mark of the room for the strings. Of two with room enough, the thicker wall is better."""
    grade = _ROOM_GRADE[strings.word]
    if strings.word is None:
        return Mark(unknown(strings.missing), doubt=True, grade=grade)
    spare_mm = strings.spare_mm or 0.0
    if strings.word == "will not go":
        return failing(Reason("no room", -spare_mm), thresholds.near_room_mm, grade)
    reasons = (
        (Reason("strings tight", thresholds.threading_mm - spare_mm),) if strings.word == "tight" else ()
    )
    return Mark(reasons, grade=grade, off=nanometres(max(0.0, spare_mm)))


def of_reach(post: Reach, thresholds: Thresholds) -> Mark:
    """The mark of a post's length. The best one ends where a cut would leave it."""
    grade = _REACH_GRADE[post.word]
    if post.word is None or post.proud_mm is None:
        return Mark(unknown(post.missing), doubt=True, grade=grade)
    off = nanometres(post.proud_mm - thresholds.leave_proud_mm)
    if post.word != "short":
        reasons = (Reason("trim", post.trim_mm),) if post.word == "trim" else ()
        return Mark(reasons, grade=grade, off=off)
    short = failing(Reason("too short", -post.proud_mm), thresholds.near_length_mm, grade, off)
    if post.holds:
        return short
    return Mark((*short.reasons, Reason("lets go")), short.fails, False, False, grade, off)


def of_pitch(off_mm: float, give_mm: float | None, thresholds: Thresholds) -> Mark:
    """The mark of two posts that are off their holes by so much, known to within `give_mm`, or not at all."""
    off = nanometres(off_mm)
    over_mm = abs(off_mm) - thresholds.pitch_play_mm
    if over_mm > (give_mm or 0.0) + CLOSE_MM:
        return failing(Reason("pitch off", over_mm), thresholds.near_pitch_mm, off=off)
    if give_mm is None or over_mm + give_mm > CLOSE_MM:
        return Mark((Reason("pitch unsure"),), doubt=True, off=off)
    return Mark(off=off)


def nanometres(value_mm: float) -> int:
    """A length without its sign as a whole number, so that Python and the browser sort alike."""
    return math.floor(abs(value_mm) * 1e6 + 0.5)
