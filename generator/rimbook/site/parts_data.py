"""The catalogue as data for other programs. Removing or renaming a key is a breaking change."""

from __future__ import annotations

import json
from typing import Any

from rimbook.book.model import Catalogue, Part
from rimbook.site.links import link, part_path
from rimbook.site.provenance_data import measured_data

FORMAT = 1
PARTS_FILE = "data/parts.json"


def all_parts(catalogue: Catalogue) -> bytes:
    """The list of all parts as JSON."""
    data = {"format": FORMAT, "parts": [part_data(part) for part in catalogue.values()]}
    return (json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False) + "\n").encode()


def part_data(part: Part) -> dict[str, Any]:
    """One part as values that JSON can hold; see `data_shapes.PartData`."""
    return {
        "id": part.id,
        "name": part.name,
        "kind": part.kind,
        "maker": part.maker,
        "barrel_mm": part.barrel_mm,
        "bore_mm": part.bore_mm,
        "length_mm": part.length_mm,
        "flange_mm": part.flange_mm,
        "pitch_mm": part.pitch_mm,
        "tolerance_mm": part.tolerance_mm,
        "posts": part.posts,
        "bumper": part.bumper,
        "contains": dict(part.contains),
        "frames": part.frames,
        "packs": part.packs,
        "material": part.material,
        "measured": measured_data(part.measured),
        "url": link("", part_path(part.id)),
    }
