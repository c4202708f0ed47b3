"""Who measured and who confirmed, as values that JSON can hold."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from typing import Any

from rimbook.book.model import Confirmed, Measured


def measured_data(measured: Measured | None) -> dict[str, Any] | None:
    """Who measured, when and how finely; see `data_shapes.Measured`."""
    if measured is None:
        return None
    return {
        "by": measured.by,
        "on": _day(measured.on),
        "with": measured.tool,
        "resolution_mm": measured.resolution_mm,
    }


def confirmed_data(confirmed: Iterable[Confirmed]) -> list[dict[str, Any]]:
    """Who found the same on another racket; see `data_shapes.Confirmed`."""
    return [{"by": each.by, "on": _day(each.on)} for each in confirmed]


def _day(on: date | None) -> str | None:
    return on.isoformat() if on else None
