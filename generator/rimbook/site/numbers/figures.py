"""Figures as a page prints them: a true minus sign, no needless zeros, a unit that stays on the line."""

from __future__ import annotations

from math import degrees

from rimbook.site.words import UNKNOWN, number

_STAYS = "\u00a0"


def fig(value: float, unit: str = "", digits: int = 2) -> str:
    """A number rounded to so many places, and its unit."""
    text = number(value, digits)
    text = "0" if text == "-0" else text.replace("-", "−")
    return text + (_STAYS + unit if unit else "")


def maybe(value: float | None, unit: str = "", digits: int = 2) -> str:
    """A number, or the word for one that nobody knows."""
    return UNKNOWN if value is None else fig(value, unit, digits)


def fixed(value: float, digits: int, unit: str = "") -> str:
    """A number with exactly so many places, to set beside a printed one."""
    return f"{value:.{digits}f}".replace("-", "−") + (_STAYS + unit if unit else "")


def angle(radians: float) -> str:
    """An angle in degrees."""
    return f"{fig(degrees(radians), digits=1)}°"
