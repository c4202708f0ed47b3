"""The parts list of a full change, and the pin that pushes a part out."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.parts_list import Needed, regrommet
from rimbook.bench.pins import pin
from rimbook.bench.thresholds import COMMON
from rimbook.book.model import Catalogue
from rimbook.site.numbers.figures import fig, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import KIND_NAMES, UNKNOWN, counted


def _here(shown: Shown) -> Iterator[Example]:
    frame, catalogue = shown.frame, shown.catalogue
    needed = regrommet(frame, catalogue)
    loose = [hole for hole in frame.drilled if hole.strip is None and hole.twin is None]
    yield Example(
        f"A full change of {frame.name}",
        (
            Line(
                "Single parts",
                f"{counted(len(frame.drilled), 'drilled hole')} less those under twins and strips",
                str(len(loose)),
            ),
            Line(
                "Pieces in all",
                f"{len(loose)} + {len(frame.twins)} + {len(frame.strips)}",
                str(sum(line.count for line in needed)),
            ),
        ),
        "",
        Table(
            "The list",
            ("Part", "Kind", "Pieces", "Holes filled"),
            tuple(_row(line, catalogue) for line in needed),
        ),
    )
    part = shown.part
    found = pin(part) if part else None
    opening, barrel = (part.bore_mm, part.barrel_mm) if part else (None, None)
    yield Example(
        f"The pin for {part.name if part else 'an unknown part'}, in {shown.named}",
        (
            Line(
                "Opening and barrel",
                "from the catalogue",
                f"{maybe(opening)} and {maybe(barrel, 'mm')}",
            ),
            Line(
                "Pin",
                "the middle of the two, to a tenth where that still lies between them",
                f"about {fig(found.size_mm, 'mm')}" if found else UNKNOWN,
            ),
        ),
    )


def _row(line: Needed, catalogue: Catalogue) -> tuple[str, ...]:
    part = catalogue.get(line.part or "")
    name = part.name if part else line.part or line.strip or UNKNOWN
    return name, KIND_NAMES[part.kind] if part else UNKNOWN, str(line.count), str(len(line.holes))


TOPIC = Topic(
    slug="parts",
    title="The parts list, and the pin for a part",
    asks="What do I need for a full change, and what pushes the old parts out?",
    words=texts(
        """
        Every drilled hole takes one single part, unless a twin or a strip covers it. A twin counts once
        for its two holes, a strip once for all of its own. A part that nobody knows is counted as
        unknown and stays on the list.

        A pin must be thicker than the opening inside the part, or it slides through, and thinner than
        the barrel, or it jams in the frame. The size shown is the middle of the two, to a tenth of a
        millimetre.
        """
    ),
    formulas=(
        Formula("parts-list", "Pieces of a full change", "N = (H − H_twins − H_strips) + W + S"),
        Formula("pin", "Size of the pin", "x = (B + d)/2, B < x < d"),
    ),
    symbols=(
        Symbol("N", "pieces of a full change"),
        Symbol("H", "drilled holes, with or without a string"),
        Symbol("H_twins", "holes that twins fill"),
        Symbol("H_strips", "holes that strips fill"),
        Symbol("W", "number of twins"),
        Symbol("S", "number of strips"),
        Symbol("x", "diameter of the pin", "mm"),
        Symbol("B", "opening inside the barrel", "mm"),
        Symbol("d", "outer diameter of the barrel", "mm"),
    ),
    sources=texts(
        f"""
        The list is a count.

        The pin: {COMMON}.
        """
    ),
    assumes=texts(
        """
        Every hole is filled anew, also those without a string.

        The pin is straight and has a flat end.
        """
    ),
    stops=texts(
        """
        A part that is split, worn open or glued may need another pin, or pliers.

        A barrel or an opening that nobody measured gives no pin.
        """
    ),
    caution="Wear eye protection when you push parts out: they fly. Hold the frame, not the hole. "
    "Push straight and slowly.",
    here=_here,
)
