"""What the page of measured holes works from: the parts, the thresholds and every sentence, as one script.

The browser ranks as `bench.serves.ranked` does. Whatever can be settled without the hole is settled here.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rimbook.bench.fit import SWELLS, swells
from rimbook.bench.reasons import MEASURE, SENTENCES
from rimbook.bench.room import MOST_STRINGS, RATIOS
from rimbook.bench.sound import DEEPEST_RIM_MM, LARGEST_BORE_MM, THICKEST_STRING_MM, part_cautions
from rimbook.bench.thresholds import CLOSE_MM, DEFAULT, Thresholds, as_data
from rimbook.bench.uncertainty import barrel_size
from rimbook.book.model import Catalogue, Part
from rimbook.site.frame_view import pin_words
from rimbook.site.handover import handover
from rimbook.site.links import link, part_path
from rimbook.site.sold import Sets, sets_of, sold
from rimbook.site.words import KIND_NAMES

FORMAT = 1
FITS_FILE = "data/fits.js"

COARSEST_STEP_MM = 1.0
"""The coarsest resolution that a measured hole may have (`bench.serves.Wanted`)."""

CAUTIONS = {
    "cracked": "A cracked frame is not strung: look round the hole and along the whole rim first. "
    "No new grommet mends a crack.",
    "eyes": "Wear eye protection when you push, pull or cut parts: they fly.",
    "trim": "Cut after fitting, never before, and never below the face of the rim. Hold the frame still, "
    "take a sharp blade, and cut away from your hand.",
    "driving": "A part that needs driving is pressed in straight and slowly. Use no hammer and no heat; "
    "where it stops half way, take it out.",
    "dry": SWELLS,
    "drill": "Do not drill, file or ream a hole to make a part fit: it cuts the fibres that carry the load.",
}
"""What is said beside the answer where the risk is there, by name."""


def fits_file(catalogue: Catalogue, thresholds: Thresholds = DEFAULT) -> bytes:
    """The script at `FITS_FILE`."""
    return handover("fits", fits_data(catalogue, thresholds))


def fits_data(catalogue: Catalogue, thresholds: Thresholds = DEFAULT) -> dict[str, Any]:
    """All that the page needs, as values that JSON can hold; see the browser's `fits_data.js`."""
    sets = sets_of(catalogue)
    alone = [part for part in catalogue.values() if part.kind in ("single", "wide")]
    return {
        "format": FORMAT,
        "thresholds": as_data(thresholds),
        "close_mm": CLOSE_MM,
        "ratios": RATIOS,
        "most": {
            "bore": LARGEST_BORE_MM,
            "depth": DEEPEST_RIM_MM,
            "string": THICKEST_STRING_MM,
            "strings": MOST_STRINGS,
            "step": COARSEST_STEP_MM,
        },
        "sentences": dict(SENTENCES),
        "measure": dict(MEASURE),
        "cautions": CAUTIONS,
        "parts": [_part(part, sets) for part in alone if not any(_unfit(part))],
        "unjudged": [
            {"name": part.name, "path": _path(part), "why": " ".join(why)}
            for part in alone
            if (why := list(_unfit(part)))
        ],
    }


def _part(part: Part, sets: Sets) -> dict[str, Any]:
    barrel = barrel_size(part)
    return {
        "id": part.id,
        "name": part.name,
        "path": _path(part),
        "kind": KIND_NAMES[part.kind],
        "barrel_mm": part.barrel_mm,
        "barrel_u_mm": barrel and barrel.u_mm,
        "bore_mm": part.bore_mm,
        "length_mm": part.length_mm[0] if part.length_mm else None,
        "alone": part.sold_alone,
        "sold": sold(part, sets),
        "pin": pin_words(part),
        "material": part.material,
        "swells": swells(part.material),
    }


def _unfit(part: Part) -> Iterator[str]:
    """Why no fit of this part is ever claimed."""
    if part.barrel_mm is None:
        yield f"Nobody has measured its barrel. {MEASURE['barrel']}"
    yield from (caution.says for caution in part_cautions(part))


def _path(part: Part) -> str:
    return link("", part_path(part.id))
