"""The rules that need to know where the holes are, one a file."""

from __future__ import annotations

from rimbook.book.rules.rule import Rule
from rimbook.rim.rules import hole_gaps, place_on_rim, strings_run_straight, strung_within_law, twin_pitch

RULES: tuple[Rule, ...] = (
    strung_within_law.RULE,
    place_on_rim.RULE,
    hole_gaps.RULE,
    strings_run_straight.RULE,
    twin_pitch.RULE,
)
