"""What a chart says beside a drawing, in words and sizes."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import date
from typing import Any

from rimbook.bench.parts_list import Needed, regrommet
from rimbook.bench.pins import pin
from rimbook.book.model import Address, Catalogue, Frame, Part, Units
from rimbook.book.rules.words import runs
from rimbook.draw.key import Key, key
from rimbook.draw.words import bore_words, places_words
from rimbook.rim.types import Rim

MM_PER_INCH = 25.4

CAUTIONS = (
    "Look for cracks first: a cracked frame is not strung.",
    "Cover your eyes when you push, pull or cut parts. Cut away from your hand.",
    "Never heat a frame, never drill it, never string above the limit printed on it.",
    "The maker’s limit and a qualified stringer’s judgement come before this chart.",
)

SIGNS = (
    "A number in the drawing is the bore in mm, a letter a strip or two-post part of the list. "
    "R and L count from the middle of the head to the throat."
)


def size(value_mm: float, units: Units) -> str:
    """`2.7 mm`, or `2.7 mm (0.106 in)` for those who measure in inches."""
    shown, *inches = sizes(value_mm, units)
    return f"{shown} ({inches[0]})" if inches else shown


def sizes(value_mm: float, units: Units) -> list[str]:
    """The same as one line or two."""
    shown = f"{bore_words(value_mm)} mm"
    return [shown] if units == "metric" else [shown, f"{value_mm / MM_PER_INCH:.3f} in"]


def day(value: date) -> str:
    """`4 October 2026`, the same in every locale."""
    months = "January February March April May June July August September October November December"
    return f"{value.day} {months.split()[value.month - 1]} {value.year}"


def card_words(rim: Rim, catalogue: Catalogue, units: Units) -> Mapping[str, Any]:
    """All words of one frame's card, as plain values."""
    frame, known = rim.frame, key(rim.frame, catalogue)
    return {
        "name": frame.name,
        "maker": f"{frame.maker} · {frame.sport}" + (f" · {frame.year}" if frame.year else ""),
        "pattern": f"{frame.mains} mains × {frame.crosses} crosses · {len(frame.drilled)} holes",
        "bores": _bores(known, units),
        "signs": _signs(frame),
        "parts": _parts(frame, catalogue, known, units),
        "limit": _limit(frame),
        "source": [_measured(frame), _confirmed(frame), f"{places_words(rim)}."],
    }


def _bores(known: Key, units: Units) -> list[dict[str, str]]:
    rows = []
    for bores in known.bores:
        for bore, count in bores.counts:
            plural = "hole" if count == 1 else "holes"
            name = "bore unknown" if bore is None else size(bore, units)
            usual = " (no number)" if bore == known.common_mm and bore is not None else ""
            rows.append({"style": bores.known.style, "words": f"{name}: {count} {plural}{usual}"})
    return rows


def _signs(frame: Frame) -> list[dict[str, str]]:
    kinds: list[tuple[str, str, list[Address]]] = [
        ("shared", "shared", [hole.address for hole in frame.drilled if hole.shared]),
        ("tie-off", "tie-offs", [hole.address for hole in frame.holes if hole.tie_off]),
        ("undrilled", "not drilled", [hole.address for hole in frame.holes if not hole.drilled]),
    ]
    rows = [{"style": style, "words": f"{words}: {runs(holes)}"} for style, words, holes in kinds if holes]
    if not any(hole.tie_off for hole in frame.holes):
        rows.append({"style": "tie-off", "words": "tie-offs: unknown"})
    return rows


def _parts(frame: Frame, catalogue: Catalogue, known: Key, units: Units) -> list[dict[str, Any]]:
    rows = []
    for line in regrommet(frame, catalogue):
        part = catalogue.get(line.part) if line.part else None
        several = part is not None and part.kind in ("strip", "twin-even", "twin-uneven")
        named = ("part", line.part) if line.part else ("strip", line.strip or "")
        letter = known.letters.get(named, "") if several or line.strip else ""
        rows.append({"letter": letter, "count": f"{line.count} ×", **_part(line, part, units)})
    return rows


def _part(line: Needed, part: Part | None, units: Units) -> dict[str, Any]:
    if part is None:
        return {
            "name": line.part or (f"{line.strip}: part unknown" if line.strip else "part unknown"),
            "pin": [],
        }
    found = pin(part)
    return {"name": part.name, "pin": sizes(found.size_mm, units) if found else ["unknown"]}


def _limit(frame: Frame) -> str:
    limit = frame.tension_limit
    if limit is None:
        return "Maker’s limit: unknown here; read it on the frame."
    return f"Maker’s limit: {limit.value:g} {limit.unit}; the one on the frame counts."


def _measured(frame: Frame) -> str:
    measured = frame.measured
    if measured is None:
        return "Nobody has signed this map: take every number as unconfirmed."
    words = f"Measured by {measured.by}"
    words += f", {day(measured.on)}" if measured.on else ", day not written down"
    return words + (f", with {measured.tool}." if measured.tool else ".")


def _confirmed(frame: Frame) -> str:
    if not frame.confirmed:
        return "Nobody else has confirmed it yet."
    people = (f"{each.by}, {day(each.on)}" if each.on else each.by for each in frame.confirmed)
    return f"Confirmed by {'; '.join(people)}."
