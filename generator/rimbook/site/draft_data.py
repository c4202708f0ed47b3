"""What the drafting page works from: the parts, the frames, and every limit of the rules, as one script.

The browser judges a draft as `rimbook check` judges a map. Whatever number the rules know is said here.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from rimbook.bench.check import RULES
from rimbook.book import by_hole, limits
from rimbook.book.model import Book, Catalogue, Frame
from rimbook.book.rules import (
    barrel_in_bore,
    barrel_through_rim,
    no_future_dates,
    strings_on_each_half,
    strip_holes,
    tension_plausible,
    walk_in_order,
)
from rimbook.book.rules.look_alike import CAPITALS, LATIN, script_ranges
from rimbook.book.rules.words import KINDS
from rimbook.book.shape_data import shape_data
from rimbook.book.text import hidden_names
from rimbook.book.written import WrittenFrame
from rimbook.book.written_values import MAX_LENGTH_MM
from rimbook.rim.rules import hole_gaps, strings_run_straight, twin_pitch
from rimbook.site.handover import handover

FORMAT = 1
DRAFT_FILE = "data/draft.js"


def draft_file(book: Book) -> bytes:
    """The script at `DRAFT_FILE`."""
    return handover("draft", draft_data(book))


def draft_data(book: Book) -> dict[str, Any]:
    """All that the page needs, as values that JSON can hold; see the browser's `draft_problem.js`."""
    return {
        "format": FORMAT,
        "parts": draft_parts(book.parts),
        "frames": draft_frames(book.frames),
        "limits": draft_constants(),
    }


def draft_parts(catalogue: Catalogue) -> dict[str, Any]:
    """What the rules ask of a part, by id; lengths in mm, null where nobody has measured."""
    return {
        part.id: {
            "name": part.name,
            "kind": part.kind,
            "barrel": part.barrel_mm,
            "bore": part.bore_mm,
            "length": part.length_mm and list(part.length_mm),
            "pitch": part.pitch_mm,
            "posts": part.posts,
        }
        for part in catalogue.values()
    }


def draft_frames(frames: Mapping[str, Frame]) -> dict[str, Any]:
    """What the rules ask of the other frames, by slug."""
    return {
        frame.slug: {
            "name": frame.name,
            "maker": frame.maker,
            "aliases": list(frame.aliases),
            "year": frame.year,
            "variant_of": frame.variant_of,
        }
        for frame in frames.values()
    }


def draft_constants() -> dict[str, Any]:
    """Every limit of the rules, lengths in mm and forces in N; see the browser's `draft_problem.js`."""
    return {
        "severities": {rule.name: rule.severity for rule in RULES},
        "shape": shape_data(WrittenFrame),
        "kinds": KINDS,
        "hidden": hidden_names(),
        "look_alike": {chr(letter): chr(like) for letter, like in LATIN.items()},
        "look_alike_capitals": {chr(letter): chr(like) for letter, like in CAPITALS.items()},
        "scripts": script_ranges(),
        "most_named": by_hole.MAX_NAMED,
        "most_faults": by_hole.MAX_REPORTED,
        "longest_mm": MAX_LENGTH_MM,
        "law": {f"{sport} {what}": _limit(limit) for (sport, what), limit in limits.LIMITS.items()},
        "throat_width": _limit(limits.THROAT_WIDTH),
        "length_with_throat": _limit(limits.LENGTH_WITH_THROAT),
        "rounding": limits.ROUNDING,
        "smallest_head_mm": limits.SMALLEST_HEAD_MM,
        "newton": tension_plausible.NEWTON,
        "doubtful_n": dict(limits.TENSION_DOUBTFUL_N),
        "loose_mm": barrel_in_bore.LOOSE_MM,
        "tight_mm": barrel_in_bore.TIGHT_MM,
        "short_mm": barrel_through_rim.SHORT_MM,
        "proud_mm": barrel_through_rim.PROUD_MM,
        "most_of_rim": strip_holes.MOST_OF_RIM,
        "gaps_mm": {sport: list(gaps) for sport, gaps in hole_gaps.GAPS_MM.items()},
        "bend_mm": strings_run_straight.BEND_MM,
        "give_mm": twin_pitch.GIVE_MM,
        "give_derived_mm": twin_pitch.GIVE_DERIVED_MM,
        "years_ahead": no_future_dates.YEARS_AHEAD,
        "days_ahead": no_future_dates.A_DAY.days,
        "most_told": {
            "strings-on-each-half": strings_on_each_half.MOST_TOLD,
            "walk-in-order": walk_in_order.MOST_TOLD,
            "strings-run-straight": strings_run_straight.MOST_TOLD,
        },
    }


def _limit(limit: limits.Limit) -> dict[str, Any]:
    return {"most": limit.most, "rule": limit.rule}
