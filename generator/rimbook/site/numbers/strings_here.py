"""The strings of one hole, one by one: which it is, how it turns, and its leg outside the rim."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from rimbook.bench.tension import Station, along
from rimbook.site.numbers.shown import Shown


class Bend(NamedTuple):
    """A string that turns in the hole.

    `outside` is the sharper turn (radians) at the two ends of its leg outside the rim, 0 without one.
    """

    name: str
    station: Station
    outside: float


def bends(shown: Shown, friction: float) -> list[Bend]:
    """The strings that turn in the hole of the example, in the order in which they are strung.

    Ends that are only tied off there are left out: see `ends`.
    """
    found = []
    for path in shown.rim.paths:
        stations = along(shown.rim, path, shown.numbers.tension_n, friction)
        for index, station in enumerate(stations):
            if station.address == shown.hole.address and 0 < index < len(path.legs):
                outside = [
                    max(station.turn, stations[other].turn)
                    for other, leg in ((index - 1, path.legs[index - 1]), (index + 1, path.legs[index]))
                    if leg.run == "outside"
                ]
                found.append((station, max(outside, default=0.0)))
    strings = sorted(shown.hole.passes, key=lambda each: each.kind != "m")
    names = map(str, strings) if len(strings) == len(found) else _counted()
    return [Bend(name, *each) for name, each in zip(names, found, strict=False)]


def ends(shown: Shown) -> int:
    """How many ends of a string are tied off in the hole."""
    tips = [tip for path in shown.rim.paths if path.legs for tip in (path.legs[0].start, path.legs[-1].end)]
    return tips.count(shown.hole.address)


def _counted() -> Iterator[str]:
    count = 0
    while True:
        count += 1
        yield f"String {count}"
