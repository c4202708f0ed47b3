"""The data files of the whole book: its frames and its parts as lists and tables, and the schemas."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial

from rimbook.book.model import Catalogue, Moved
from rimbook.site.cross import Cross
from rimbook.site.csv_files import FRAMES_TABLE, PARTS_TABLE, frame_rows, part_rows
from rimbook.site.data_files import FRAMES_FILE, all_frames
from rimbook.site.moved_pages import MOVED_FILE, moved_data
from rimbook.site.pages import Asset
from rimbook.site.parts_data import PARTS_FILE, all_parts
from rimbook.site.schemas import FOLDER, SCHEMAS, schema_text
from rimbook.site.summary import Summary

BOOK_FILES = (
    FRAMES_FILE,
    FRAMES_TABLE,
    PARTS_FILE,
    PARTS_TABLE,
    MOVED_FILE,
    *(f"{FOLDER}{name}" for name in SCHEMAS),
)


def book_files(
    frames: Sequence[Summary], catalogue: Catalogue, moved: Moved, cross: Cross
) -> Iterator[Asset]:
    """The files named in BOOK_FILES, in that order. `frames` are in order of slug."""
    yield Asset(FRAMES_FILE, partial(all_frames, frames, cross.confidence))
    yield Asset(FRAMES_TABLE, partial(frame_rows, frames))
    yield Asset(PARTS_FILE, partial(all_parts, catalogue))
    yield Asset(PARTS_TABLE, partial(part_rows, catalogue))
    yield Asset(MOVED_FILE, partial(moved_data, moved))
    yield from (Asset(f"{FOLDER}{name}", partial(schema_text, name)) for name in SCHEMAS)
