"""Whether the sizes of a part or a hole can be true at all."""

from __future__ import annotations

from rimbook.bench.caution import Caution
from rimbook.book.model import Hole, Part

LARGEST_BORE_MM = 15.0
DEEPEST_RIM_MM = 60.0
THICKEST_STRING_MM = 3.0


def part_cautions(part: Part) -> tuple[Caution, ...]:
    """What contradicts itself in a part's sizes. Such a part is never said to serve."""
    found = []
    barrel, bore, flange = part.barrel_mm, part.bore_mm, part.flange_mm
    if barrel is not None and bore is not None and bore >= barrel:
        says = f"{part.id} has an inner bore of {bore:g} mm in a barrel of {barrel:g} mm: measure it again."
        found.append(Caution("bore over barrel", says))
    if barrel is not None and flange is not None and barrel >= flange:
        says = (
            f"{part.id} has a barrel of {barrel:g} mm but a flange of {flange:g} mm: it would pull through."
        )
        found.append(Caution("barrel over flange", says))
    if barrel is not None and part.pitch_mm is not None and part.pitch_mm <= barrel:
        says = (
            f"{part.id} has posts of {barrel:g} mm only {part.pitch_mm:g} mm apart: measure the pitch again."
        )
        found.append(Caution("posts under pitch", says))
    if len(part.length_mm or ()) > 1 and part.kind not in ("twin-even", "twin-uneven"):
        says = f"{part.id} has two lengths of post, which only a two-post part can have."
        found.append(Caution("one barrel, two lengths", says))
    return tuple(found)


def hole_cautions(hole: Hole) -> tuple[Caution, ...]:
    """What is so large at a hole that it was surely mistyped, and spoils the numbers that follow."""
    found = []
    if hole.bore_mm is not None and hole.bore_mm > LARGEST_BORE_MM:
        found.append(_beyond(hole, f"a bore of {hole.bore_mm:g} mm", LARGEST_BORE_MM))
    if hole.rim_depth_mm is not None and hole.rim_depth_mm > DEEPEST_RIM_MM:
        found.append(_beyond(hole, f"a rim depth of {hole.rim_depth_mm:g} mm", DEEPEST_RIM_MM))
    return tuple(found)


def _beyond(hole: Hole, what: str, most_mm: float) -> Caution:
    says = f"{hole.address} has {what}; no racket is known to go beyond {most_mm:g} mm: measure it again."
    return Caution("beyond any racket", says)
