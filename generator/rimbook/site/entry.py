"""Everything of a frame's page that follows from the frame and the catalogue alone.

This is the costly part of the site, and it can be worked out for each frame by
itself: a host may spread frames over processes and keep what came out.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

from markupsafe import Markup

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import frame_numbers
from rimbook.bench.needs import places
from rimbook.bench.parts_list import regrommet
from rimbook.book.model import Address, Catalogue
from rimbook.draw.face import face
from rimbook.draw.legend import legend
from rimbook.draw.load import steps_words
from rimbook.draw.unrolled import unrolled
from rimbook.rim.types import Rim
from rimbook.site.bench_view import bench_view
from rimbook.site.data_files import frame_data
from rimbook.site.draft_maps import written_value
from rimbook.site.frame_view import view
from rimbook.site.handover import data_block, json_text
from rimbook.site.links import frame_path
from rimbook.site.pages import to_root
from rimbook.site.sheet_data import sheet_data
from rimbook.site.shelf_places import shelf_places
from rimbook.site.sold import Sets
from rimbook.site.summary import Summary, summarise
from rimbook.site.templates import render


class Content(NamedTuple):
    """What the files of a frame are made of: its page's body, its data as JSON, and JSON for two scripts.

    `shelf` is what its places ask of a shelf, `draft` the map as the drafting page opens it.
    """

    body: bytes
    data: str
    shelf: str
    draft: str


class Entry(NamedTuple):
    """A frame's share of the site: what other pages say of it, and its own files."""

    summary: Summary
    content: Content


class Drawing(NamedTuple):
    """A drawing as it stands on a page, and the layers that a reader can switch off."""

    name: str
    caption: str
    label: str
    layers: tuple[tuple[str, str], ...]
    svg: Markup


LAYERS = (
    ("strings", "strings"),
    ("parts", "strips and twins"),
    ("addresses", "hole names"),
    ("bore-numbers", "bores"),
    ("tie-offs", "tie-offs"),
    ("load", "load"),
)


_LOAD = "load"
"""The layer that starts switched off."""


def entry(rim: Rim, sets: Sets, answers: Answers) -> Entry:
    """Draw and describe one placed frame.

    `sets` is `sets_of` the catalogue of `answers`; both are worked out once for all frames.
    """
    frame, catalogue = rim.frame, answers.index.catalogue
    needed = regrommet(frame, catalogue)
    numbers = frame_numbers(rim, answers)
    asked = places(frame, catalogue)
    pulls = {address: hole.pull for address, hole in numbers.holes.items()}
    root = to_root(frame_path(frame.slug))
    body = render(
        "frame.html",
        view=view(rim, needed, pulls, catalogue, sets),
        drawings=_drawings(rim, catalogue, pulls),
        bench=bench_view(rim, numbers, answers, root),
        sheet=data_block(sheet_data(frame, asked, numbers, answers, sets)),
        load=_LOAD,
        load_steps=steps_words(),
        root=root,
    )
    content = Content(
        body.encode(),
        frame_data(rim, pulls, needed),
        json_text(shelf_places(frame, asked, answers)),
        json_text(written_value(frame, catalogue)),
    )
    return Entry(summarise(frame, needed, asked), content)


def face_drawing(body: bytes) -> bytes:
    """The face drawing out of the body of an entry: the first drawing there is."""
    start = body.index(b"<svg")
    return body[start : body.index(b"</svg>", start) + len(b"</svg>")]


def _drawings(rim: Rim, catalogue: Catalogue, pulls: Mapping[Address, float]) -> tuple[Drawing, ...]:
    name = rim.frame.name
    return (
        Drawing(
            "face",
            "Seen face on, handle down",
            f"Drawing of {name}, face on",
            LAYERS,
            Markup(face(rim, catalogue, pulls=pulls)),  # noqa: S704 - the drawing escapes every text in it
        ),
        Drawing(
            "unrolled",
            "The rim unrolled, from the middle of the head down each side to the middle of the throat",
            f"Unrolled rim of {name}",
            LAYERS,
            Markup(unrolled(rim, catalogue, pulls=pulls)),  # noqa: S704 - as above
        ),
        Drawing(
            "legend",
            "What the signs mean",
            f"Legend to the drawings of {name}",
            (),
            Markup(legend(rim, catalogue)),  # noqa: S704 - as above
        ),
    )
