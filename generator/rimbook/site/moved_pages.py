"""At an old address, the way on: a page for each name that changed, and the list of them as data."""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator, Mapping
from functools import partial

from rimbook.book.model import Catalogue, Moved
from rimbook.site.cross import Cross
from rimbook.site.links import frame_path, link, part_path
from rimbook.site.pages import Page, to_root
from rimbook.site.templates import render

MOVED_FILE = "data/moved.json"


def moved_pages(moved: Moved, cross: Cross, catalogue: Catalogue) -> Iterator[Page]:
    """A page at each old address of a frame and of a part."""
    frames = {slug: frame.full_name for slug, frame in cross.frames.items()}
    parts = {part_id: part.name for part_id, part in catalogue.items()}
    yield from _of_kind("moved-frame", moved.frames, frames, frame_path)
    yield from _of_kind("moved-part", moved.parts, parts, part_path)


def moved_data(moved: Moved) -> bytes:
    """All moved names as JSON, in order of the old name."""
    data = {
        "format": 1,
        "frames": dict(sorted(moved.frames.items())),
        "parts": dict(sorted(moved.parts.items())),
    }
    return (json.dumps(data, ensure_ascii=False, separators=(",", ":")) + "\n").encode()


def _of_kind(
    kind: str, moved: Mapping[str, str], names: Mapping[str, str], path: Callable[[str], str]
) -> Iterator[Page]:
    for old, new in moved.items():
        root = to_root(path(old))
        yield Page(
            path=path(old),
            kind=kind,
            title=f"{old} moved",
            description=f"The page {old} moved: it is {names[new]} now.",
            make=partial(render, "moved.html", old=old, name=names[new], href=link(root, path(new))),
            leads_to=path(new),
        )
