"""The parts of the cases that the build and the browser share."""

from __future__ import annotations

from typing import Any

from rimbook.book.model import Measured, Part


def part_of(name: str, written: dict[str, Any]) -> Part:
    """A part as `tests/cases/fits.json` has it."""
    length, resolution = written["length_mm"], written["resolution_mm"]
    return Part(
        name,
        name,
        written["kind"],
        barrel_mm=written["barrel_mm"],
        bore_mm=written["bore_mm"],
        length_mm=None if length is None else (length,),
        flange_mm=written["flange_mm"],
        tolerance_mm=written["tolerance_mm"],
        packs=tuple(written["packs"]),
        measured=None if resolution is None else Measured("a-handle", resolution_mm=resolution),
    )
