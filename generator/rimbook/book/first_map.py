"""A map to begin with: a word on every key, and `unknown` wherever nobody has measured."""

from __future__ import annotations

import json
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from textwrap import fill

from rimbook.book.model import Head, Sport
from rimbook.book.walk import Place, write_place

_PLAIN = re.compile(r"[A-Za-z][\w ,.'&/()-]*", re.ASCII)
_MEANS_MORE = frozenset({"true", "false", "null", "yes", "no", "on", "off", "unknown"})
_WIDTH = 76

SCHEMA = "../../generator/rimbook/schemas/map.schema.json"
"""Where an editor finds the schema of a map, as seen from frames/maps/."""


@dataclass(frozen=True, slots=True)
class Beginning:
    """What a person knows before the first hole is looked at."""

    name: str
    maker: str
    sport: Sport
    head: Head
    mains: int
    crosses: int


def scalar(text: str) -> str:
    """A text as YAML reads it back, whatever stands in it: plain if that is safe, else quoted."""
    is_plain = _PLAIN.fullmatch(text) and text == text.strip() and text.lower() not in _MEANS_MORE
    return text if is_plain and ": " not in text else json.dumps(text, ensure_ascii=False)


def first_map(known: Beginning, walk: Sequence[Place]) -> str:
    """The text of a map that `rimbook check` lets pass; what is still to be measured is unknown."""
    head = known.head
    shape = f"outline: {head.outline}, inside_mm: [{head.width_mm:g}, {head.height_mm:g}]"
    if head.exponent is not None:
        shape += f", exponent: {head.exponent:g}"
    if head.taper is not None:
        shape += f", taper: {head.taper:g}"
    return "\n".join(
        [
            f"# yaml-language-server: $schema={SCHEMA}",
            "# Hold the racket face on, handle down. All lengths are millimetres.",
            "# Write `unknown` wherever you cannot measure. Look for cracks before anything else, and cover",
            "# your eyes when you push a part out.",
            "format: 1",
            f"name: {scalar(known.name)}",
            f"maker: {scalar(known.maker)}",
            f"sport: {known.sport}",
            "# Width and height of the line on which the holes sit, from hole to hole.",
            f"head: {{{shape}}}",
            "rim_depth_mm: unknown         # through the rim, along a hole",
            f"mains: {known.mains}",
            f"crosses: {known.crosses}",
            "# The walk, from the middle of the head down one side to the middle of the throat, as",
            "# strings drawn straight would meet the rim. It is a proposal: put it right hole by hole.",
            "# m3 is the third main from the centre line, c5 the fifth cross from the head, m9+c1 one",
            "# hole for both, a dot a hole without a string, x a place that is not drilled. A side that",
            "# differs gets a walk of its own under `left`.",
            "walk: >-",
            *_folded(write_place(place) for place in walk),
            "# Holes in which a string ends, as R8 or L31: `stringing: {tie_offs: [R8, L8, R31, L31]}`.",
            "stringing: {pieces: 2, mains_start: head, crosses_start: head}",
            "# The drilled holes: `{default: 2.1, 2.7: [9-11, R31]}`. 9 is that hole on both sides.",
            "bore_mm: unknown",
            "# What sits there, by the ids of frames/parts/: a default, then `bore 2.7: …`, `37-38: …`.",
            "fitted: {default: unknown}",
            "# Moulded strips, from the first hole clockwise to the last:",
            "# strips:",
            "#   - {name: crown strip, holes: [L6, R6], part: unknown}",
            "# As printed on the frame:",
            "# tension_limit: 28 lb",
            "# Who measured, when, with what, and the smallest step that it shows:",
            "# measured: {by: your-handle, on: 2026-11-21, with: calliper, resolution_mm: 0.05}",
            "",
        ]
    )


def _folded(words: Iterable[str]) -> list[str]:
    return fill(
        " ".join(words), _WIDTH, initial_indent="  ", subsequent_indent="  ", break_on_hyphens=False
    ).split("\n")
