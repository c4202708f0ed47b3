"""Every threshold and constant of the bench in one value, with where it comes from.

Most are common practice of the trade, for which no published source was found. A site may set its own.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import asdict, dataclass, field, fields, replace
from itertools import pairwise
from typing import Any, Generic, TypeVar

from rimbook.book.model import Sport
from rimbook.book.problems import nearest

COMMON = "common practice, no published source"
ASSUMED = "assumption"

CLOSE_MM = 1e-9
"""Lengths nearer than this are the same: sums of tenths of a millimetre are not exact."""

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class BySport(Generic[T]):
    """One value for each sport."""

    badminton: T
    squash: T
    tennis: T
    racquetball: T

    def of(self, sport: Sport) -> T:
        """The value of one sport."""
        value: T = getattr(self, sport)
        return value


def _about(unit: str, says: str, source: str) -> dict[str, str]:
    return {"unit": unit, "says": says, "source": source}


def _set(default: float, unit: str, says: str, source: str = COMMON) -> Any:
    return field(default=default, metadata=_about(unit, says, source))


@dataclass(frozen=True, slots=True)
class Thresholds:
    """What divides one bench word from the next. Raises ValueError where a value contradicts another.

    Clearances are bore less barrel: above zero there is air, below zero the barrel is squeezed.
    """

    drops_out_over_mm: float = _set(0.25, "mm", "more clearance than this: the part drops out")
    finger_over_mm: float = _set(
        0.10, "mm", "more clearance than this: a finger pushes it in; up to it: snug"
    )
    driving_under_mm: float = _set(0.0, "mm", "less clearance than this: it needs driving")
    seats_down_to_mm: float = _set(-0.15, "mm", "less clearance than this: it will not seat")
    coverage: float = _set(
        math.sqrt(3),
        "",
        "limits of a size lie this many standard uncertainties from it",
        "JCGM 100:2008 (GUM) 4.3.7: a uniform distribution of half-width a has u = a/√3, so √3·u is a",
    )
    threading_mm: float = _set(0.10, "mm", "room beyond the strings that lets them be threaded easily")
    flush_within_mm: float = _set(0.2, "mm", "a barrel this near to the rim depth is flush")
    proud_up_to_mm: float = _set(1.5, "mm", "a barrel that stands out farther is cut after fitting")
    leave_proud_mm: float = _set(0.5, "mm", "what a cut leaves standing")
    hold_share: float = _set(0.75, "", "share of the rim depth that a barrel must fill to hold")
    groove_per_string: float = _set(1.25, "", "width of a worn groove, as a multiple of the string", ASSUMED)
    land_per_string: float = _set(
        0.5, "", "width of flange round the bore, in strings, that can be turned to"
    )
    friction: float = _set(
        0.10,
        "",
        "coefficient of friction of string on grommet, where friction is asked for",
        "assumption: no published value for string on grommet was found; tabulated values for nylon scatter "
        "from 0.04 to 0.32 and are routinely misapplied (Blau, Tribology International 34 (2001) 585)",
    )
    pitch_play_mm: float = _set(0.3, "mm", "how far posts may be bent to meet their holes")
    derived_place_mm: float = _set(0.5, "mm", "how far off a worked-out place of a hole may be", ASSUMED)
    near_fit_mm: float = _set(0.15, "mm", "a barrel wrong by no more than this is a near miss", ASSUMED)
    near_room_mm: float = _set(0.2, "mm", "room lacking by no more than this is a near miss", ASSUMED)
    near_length_mm: float = _set(2.0, "mm", "a barrel short by no more than this is a near miss", ASSUMED)
    near_pitch_mm: float = _set(0.5, "mm", "a pitch wrong by no more than this is a near miss", ASSUMED)
    string_mm: BySport[tuple[float, ...]] = field(
        default=BySport((0.62, 0.66, 0.70), (1.10, 1.20, 1.30), (1.20, 1.25, 1.30, 1.35), (1.20, 1.25, 1.30)),
        metadata=_about(
            "mm",
            "usual string diameters, thinnest first",
            "badminton: 0.62 to 0.70 mm in Sensors 2023, 23(13), 5957; tennis: 1.2 to 1.35 mm in Proceedings "
            "2018, 2(6), 264; squash and racquetball: from memory",
        ),
    )
    usual_tension_lb: BySport[float] = field(
        default=BySport(24.0, 26.0, 55.0, 30.0),
        metadata=_about(
            "lb",
            "the tension at which numbers are shown until the reader sets another",
            "assumption; badminton: a tension tried in Sensors 2023, 23(13), 5957; others from memory",
        ),
    )

    def __post_init__(self) -> None:
        for name, value in self._numbers():
            if not math.isfinite(value):
                raise ValueError(f"{name} is {value}; expected a finite number.")
            if value < 0 and name not in ("driving_under_mm", "seats_down_to_mm"):
                raise ValueError(f"{name} is {value:g}; expected 0 or more.")
            if value == 0 and name in ("groove_per_string", "derived_place_mm"):
                raise ValueError(f"{name} is 0; expected more than 0.")
        self._in_order("seats_down_to_mm", "driving_under_mm", "finger_over_mm", "drops_out_over_mm")
        self._in_order("leave_proud_mm", "proud_up_to_mm")
        if self.hold_share > 1:
            raise ValueError(f"hold_share is {self.hold_share:g}; expected 0 to 1.")
        for sport, diameters in asdict(self.string_mm).items():
            if not diameters or list(diameters) != sorted(set(diameters)) or diameters[0] <= 0:
                raise ValueError(f"string_mm of {sport} is {diameters}; expected diameters, thinnest first.")
        for sport, tension in asdict(self.usual_tension_lb).items():
            if tension <= 0:
                raise ValueError(f"usual_tension_lb of {sport} is {tension:g}; expected more than 0.")

    def _numbers(self) -> Iterator[tuple[str, float]]:
        for name, value in asdict(self).items():
            for number in value.values() if isinstance(value, dict) else (value,):
                for one in number if isinstance(number, tuple) else (number,):
                    yield name, one

    def _in_order(self, *names: str) -> None:
        for low, high in pairwise(names):
            if getattr(self, low) > getattr(self, high):
                raise ValueError(
                    f"{low} is {getattr(self, low):g} and {high} is {getattr(self, high):g}; "
                    f"expected {low} to be no more than {high}."
                )


DEFAULT = Thresholds()


def as_data(thresholds: Thresholds) -> dict[str, Any]:
    """The thresholds as plain JSON values, for the browser."""
    return {name: _plain(value) for name, value in asdict(thresholds).items()}


def about() -> dict[str, dict[str, str]]:
    """Unit, meaning and source of each threshold, by its name."""
    return {each.name: dict(each.metadata) for each in fields(Thresholds)}


def changed(changes: Mapping[str, Any], base: Thresholds = DEFAULT) -> Thresholds:
    """The thresholds with some set anew, as in a site's configuration.

    A value by sport may name only the sports that differ. Raises ValueError, naming the nearest
    choice, for a name or a sport that is none, and for a value that is no number.
    """
    known = {each.name: getattr(base, each.name) for each in fields(Thresholds)}
    new: dict[str, Any] = {}
    for name, value in changes.items():
        _known(name, known, "threshold")
        new[name] = (
            _sports(name, value, known[name]) if isinstance(known[name], BySport) else _real(name, value)
        )
    return replace(base, **new)


def _sports(name: str, value: Any, old: BySport[Any]) -> BySport[Any]:
    if not isinstance(value, Mapping):
        raise ValueError(f"{name} is {value!r}; expected a value for each sport.")
    new: dict[str, Any] = {}
    for sport, given in value.items():
        _known(sport, asdict(old), "sport")
        if isinstance(old.of(sport), tuple):
            if not isinstance(given, list | tuple):
                raise ValueError(f"{name} of {sport} is {given!r}; expected a list of diameters.")
            new[sport] = tuple(_real(name, one) for one in given)
        else:
            new[sport] = _real(name, given)
    return replace(old, **new)


def _known(name: str, choices: Mapping[str, object], what: str) -> None:
    if name not in choices:
        close = nearest(str(name), choices)
        hint = f"nearest: {close}" if close else f"expected one of {', '.join(choices)}"
        raise ValueError(f"{name!r} is no {what}; {hint}.")


def _real(name: str, value: object) -> float:
    if isinstance(value, int | float) and not isinstance(value, bool):
        return float(value)
    raise ValueError(f"{name} is {value!r}; expected a number.")


def _plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _plain(one) for key, one in value.items()}
    return list(value) if isinstance(value, tuple) else value
