"""The board of my frames: its page, and for each frame a card and a drawing that it loads."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from rimbook.book.model import Catalogue
from rimbook.site.board_card import BoardPart, board_card, board_file
from rimbook.site.entry import Content, face_drawing
from rimbook.site.pages import KINDS, Asset, Page, to_root
from rimbook.site.sold import Sets, sold
from rimbook.site.spans import plain, spans
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import KIND_NAMES, UNKNOWN, counted, listed


def board_page() -> Page:
    """The page on which a reader's own frames stand side by side."""
    kind = KINDS["board"]
    return Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="The frames you keep, side by side, with one combined parts list.",
        make=partial(render, "board.html", title=kind.title, root=to_root(kind.pattern)),
    )


def board_files(
    frame: Summary, fetch: Callable[[str], Content], catalogue: Catalogue, sets: Sets
) -> Iterator[Asset]:
    """A frame's card and its face drawing. `fetch` gives what its files are made of."""
    yield Asset(board_file(frame.slug), lambda: _card(frame, fetch(frame.slug).shelf, catalogue, sets))
    yield Asset(drawing_file(frame.slug), lambda: face_drawing(fetch(frame.slug).body))


def drawing_file(slug: str) -> str:
    """Where the face drawing of a frame lies as a file of its own."""
    return f"frames/{slug}/face.svg"


def _card(frame: Summary, shelf: str, catalogue: Catalogue, sets: Sets) -> bytes:
    parts = _parts(frame, catalogue, sets)
    return board_card(frame.slug, frame.full_name, drawing_file(frame.slug), _facts(frame), parts, shelf)


def _facts(frame: Summary) -> Iterator[tuple[str, str]]:
    yield "Maker", frame.maker
    yield "Sport", frame.sport
    yield "Strings", frame.pattern
    yield "Holes", counted(frame.holes, "hole")
    bores = [f"{bore} mm: {counted(count, 'hole')}" for bore, count in frame.bores.items()]
    unknown = frame.holes - sum(frame.bores.values())
    yield "Bores", listed(bores + ([f"unknown: {counted(unknown, 'hole')}"] if unknown else []))
    yield "Shared", plain(spans(frame.shared)) or "none"


def _parts(frame: Summary, catalogue: Catalogue, sets: Sets) -> Iterator[BoardPart]:
    for part_id, count in frame.parts.items():
        part = catalogue.get(part_id)
        if part is not None:
            yield BoardPart(part.id, part.name, KIND_NAMES[part.kind], count, sold(part, sets))
    if frame.unknown_parts:
        yield BoardPart(None, "part unknown", UNKNOWN, frame.unknown_parts, UNKNOWN)
