"""What a caller hands in is looked at once, and refused in a sentence that says what was expected."""

from __future__ import annotations

import math

MOST_MM = 1000.0


def length(what: str, value: float, *, most: float = MOST_MM) -> float:
    """A length in mm, above 0 and at most `most`. Raises ValueError otherwise."""
    if type(value) is float and 0 < value <= most:  # nearly always, and hundreds of times a frame
        return value
    return _above_zero(what, value, "mm", most)


def force(what: str, value: float, *, most: float = 2e4) -> float:
    """A force in newtons, above 0 and at most `most`. Raises ValueError otherwise."""
    if type(value) is float and 0 < value <= most:
        return value
    return _above_zero(what, value, "N", most)


def share(what: str, value: float, *, most: float) -> float:
    """A number without a unit from 0 to `most`. Raises ValueError otherwise."""
    if _is_number(value) and 0 <= value <= most:
        return value
    raise ValueError(f"The {what} is {value!r}; expected a number from 0 to {most:g}.")


def count(what: str, value: int, *, most: int) -> int:
    """A whole number from 0 to `most`. Raises ValueError otherwise."""
    if _is_number(value) and value == int(value) and 0 <= value <= most:
        return value
    raise ValueError(f"The {what} is {value!r}; expected a whole number from 0 to {most}.")


def _above_zero(what: str, value: float, unit: str, most: float) -> float:
    if _is_number(value) and 0 < value <= most:
        return value
    raise ValueError(f"The {what} is {value!r} {unit}; expected more than 0 and at most {most:g} {unit}.")


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool) and math.isfinite(value)
