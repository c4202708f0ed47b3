"""The thresholds of the bench as a reader sees them: value, meaning, and where it comes from."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import asdict
from typing import NamedTuple

from rimbook.bench.thresholds import DEFAULT, BySport, Thresholds, about
from rimbook.site.numbers.figures import fig
from rimbook.site.words import capital


class Row(NamedTuple):
    """One threshold in words. `usual` is what it is elsewhere, where this site has set its own."""

    name: str
    value: str
    says: str
    source: str
    usual: str


def rows(thresholds: Thresholds, names: Iterable[str] | None = None) -> list[Row]:
    """The thresholds named, or all of them."""
    told = about()
    found = []
    for name in told if names is None else names:
        entry = told[name]
        value, usual = (_words(getattr(each, name), entry["unit"]) for each in (thresholds, DEFAULT))
        found.append(Row(name, value, entry["says"], entry["source"], "" if value == usual else usual))
    return found


def _words(value: float | BySport[float] | BySport[tuple[float, ...]], unit: str) -> str:
    if not isinstance(value, BySport):
        return fig(value, unit)
    sports = [f"{sport} {_list(each, unit)}" for sport, each in asdict(value).items()]
    return capital("; ".join(sports))


def _list(value: float | tuple[float, ...], unit: str) -> str:
    if not isinstance(value, tuple):
        return fig(value, unit)
    return f"{', '.join(fig(each) for each in value[:-1])}{', ' if value[1:] else ''}{fig(value[-1], unit)}"
