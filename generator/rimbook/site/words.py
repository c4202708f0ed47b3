"""Numbers, days and lists in plain words."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from rimbook.book.model import PartKind

UNKNOWN = "unknown"

KIND_NAMES: dict[PartKind, str] = {
    "single": "single",
    "wide": "wide",
    "twin-even": "even twin",
    "twin-uneven": "uneven twin",
    "strip": "strip",
    "set": "set",
}


def number(value: float, digits: int = 2) -> str:
    """A number without needless zeros: 2.10 is 2.1, and 9.0 is 9."""
    text = f"{value:.{digits}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def size(value: float | None) -> str:
    """A size of a bore or a part as the drawings have it, `2.0` or `2.75`, or `unknown`."""
    if value is None:
        return UNKNOWN
    text = number(value)
    return text if "." in text else f"{text}.0"


def mm(value: float | None) -> str:
    """A size with its unit, or `unknown`."""
    return UNKNOWN if value is None else f"{size(value)} mm"


def ordinal(count: int) -> str:
    """1st, 2nd, 3rd, 4th … 11th … 21st."""
    ending = "th" if count % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(count % 10, "th")
    return f"{count}{ending}"


def counted(count: int, one: str, many: str | None = None) -> str:
    """`1 hole`, `2 holes`, `1,000 holes`."""
    return f"{count:,} {one if count == 1 else many or one + 's'}"


def percent(known: int, of: int) -> int:
    """A share in whole per cent: 0 and 100 only where it is none and all."""
    if known in (0, of):
        return 100 if known else 0
    return min(99, max(1, round(100 * known / of)))


def listed(words: Sequence[str], last: str = "and") -> str:
    """`a`, `a and b`, `a, b and c`."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"


def day(value: date) -> str:
    """`4 October 2026`, the same in every locale."""
    months = "January February March April May June July August September October November December"
    return f"{value.day} {months.split()[value.month - 1]} {value.year}"


def capital(text: str) -> str:
    """The text with its first letter large and the rest as it is."""
    return text[:1].upper() + text[1:]
