"""The page of a part: its sizes, how it is sold, and the frames and holes it serves."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from typing import Any, NamedTuple

from markupsafe import Markup

from rimbook.book.model import Catalogue, Measured, Part
from rimbook.draw.section import section
from rimbook.site.cross import Cross, bore_order
from rimbook.site.exchange import Exchange
from rimbook.site.frame_view import pin_words
from rimbook.site.links import part_path
from rimbook.site.pages import Page, to_root
from rimbook.site.paging import sheets
from rimbook.site.part_stands import part_stands
from rimbook.site.set_frames import Served, frames_for, gives
from rimbook.site.settings import Settings
from rimbook.site.sold import Sets, packs
from rimbook.site.templates import render
from rimbook.site.words import KIND_NAMES, counted, day, listed, mm, size

CALLIPER = "measure with a calliper"

MOST_FRAMES = 24
"""So many frames that a set would serve are named."""

MOST_BESIDE = 3
"""So many frames stand beside the contents of their set."""

MOST_SETS = 24
"""So many sets that hold a part are named."""


class Size(NamedTuple):
    """A size of a part in words; `advice` says how to measure it where it is unknown."""

    name: str
    value: str | None
    advice: str = CALLIPER


def part_pages(
    part: Part,
    catalogue: Catalogue,
    sets: Sets,
    cross: Cross,
    settings: Settings,
    book: Callable[[], Exchange],
) -> Iterator[Page]:
    """The page of a part, and further pages where it serves many frames.

    `book` gives the interchange of the whole book when a page is made.
    """
    frames = cross.chosen(cross.by_part.get(part.id, ()))
    for sheet in sheets(part_path(part.id), frames):
        served = {
            "part": part,
            "count": len(frames),
            "sheet": sheet,
            "cross": cross,
            "root": to_root(sheet.path),
        }
        if sheet.number == 1:
            make = partial(_whole_body, part, catalogue, sets, settings, book, served)
        else:
            make = partial(render, "part_more.html", **served)
        yield Page(
            path=sheet.path,
            kind="part" if sheet.number == 1 else "part-more",
            title=f"{part.name}{sheet.suffix}",
            description=(
                f"{part.name}, {KIND_NAMES[part.kind]}: sizes, packs, and the "
                f"{counted(len(frames), 'frame')} of this book it serves."
            ),
            make=make,
            edit=part.source or None,
        )


def _whole_body(
    part: Part,
    catalogue: Catalogue,
    sets: Sets,
    settings: Settings,
    book: Callable[[], Exchange],
    served: Mapping[str, Any],
) -> str:
    is_set = part.kind == "set"
    holding = sets.holding.get(part.id, ())
    return render(
        "part.html",
        **served,
        **(
            _set(part, catalogue, served["cross"])
            if is_set
            else _served(part, served["cross"], served["root"])
        ),
        stands=None if is_set else part_stands(part, book(), served["root"]),
        kind=KIND_NAMES[part.kind],
        sizes=sizes(part),
        drawing=None if is_set else Markup(section(part)),  # noqa: S704 - it escapes every text in it
        packs=packs(part),
        pin=None if is_set else pin_words(part),
        holding=holding[:MOST_SETS],
        holding_count=len(holding),
        measured=_measured(part.measured),
        edit_url=settings.edit_url(part.source),
    )


def _set(part: Part, catalogue: Catalogue, cross: Cross) -> dict[str, Any]:
    """What a set holds, what the frames it is made for take of that, and what other frames get from it."""
    made_for = [cross.frames[slug] for slug in part.frames if slug in cross.frames]
    others, count = frames_for(part, cross, catalogue, MOST_FRAMES)
    return {
        "contents": [(held, catalogue.get(held), count) for held, count in part.contains.items()],
        "beside": made_for[:MOST_BESIDE],
        "made_for": [Served(frame, gives(part, frame, catalogue)) for frame in made_for],
        "gone": [slug for slug in part.frames if slug not in cross.frames],
        "others": others,
        "others_count": count,
    }


def _served(part: Part, cross: Cross, root: str) -> dict[str, Any]:
    """The bores a part sits in, with the holes of each, and where it stands in the matrices."""
    frames = cross.chosen(cross.by_part.get(part.id, ()))
    holes: Counter[str] = Counter()
    for frame in frames:
        for bore, use in frame.uses.items():
            if count := use.parts.get(part.id):
                holes[bore] += count
    return {
        "bores": [(bore, holes[bore]) for bore in sorted(holes, key=bore_order)],
        "matrices": list(cross.matrix.of_sports("parts", frames, root)),
    }


def sizes(part: Part) -> list[Size]:
    """The sizes that a part of this kind has, known or not. A set has none of its own."""
    if part.kind == "set":
        return []
    found = [
        Size("Barrel, outside", _mm(part.barrel_mm)),
        Size("Opening inside", _mm(part.bore_mm), "measure with pins, the largest that slides in"),
        Size(
            "Length under the flange",
            None if part.length_mm is None else f"{listed([size(each) for each in part.length_mm])} mm",
        ),
        Size("Flange", _mm(part.flange_mm)),
    ]
    if part.kind in ("twin-even", "twin-uneven") or part.pitch_mm is not None:
        found.append(Size("Pitch, post to post", _mm(part.pitch_mm)))
    if part.kind == "strip":
        found.append(Size("Posts", None if part.posts is None else str(part.posts), "count them"))
        found.append(Size("Bumper", "yes, it guards the rim" if part.bumper else "no"))
    if part.tolerance_mm is not None:
        found.append(Size("Stated tolerance", f"± {mm(part.tolerance_mm)}"))
    if part.material is not None:
        found.append(Size("Material", part.material))
    return found


def _mm(value: float | None) -> str | None:
    return None if value is None else mm(value)


def _measured(measured: Measured | None) -> str:
    if measured is None:
        return "Nobody has signed these sizes yet: take them as unconfirmed."
    words = f"Measured by {measured.by}"
    words += f" on {day(measured.on)}" if measured.on else ""
    words += f" with {measured.tool}" if measured.tool else ""
    return words + (f", read to {mm(measured.resolution_mm)}." if measured.resolution_mm else ".")
