"""The page on which a reader drafts a map, and all that its script has to know of the book."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import partial
from typing import Any, NamedTuple, cast
from urllib.parse import quote

from rimbook.book.model import Book, Catalogue
from rimbook.draw import palette, symbols
from rimbook.site.cross import Cross
from rimbook.site.draft_data import DRAFT_FILE, draft_file
from rimbook.site.draft_maps import piece_file, piece_name, pieces
from rimbook.site.entry import Content
from rimbook.site.handover import handover, handover_text, json_text
from rimbook.site.links import link
from rimbook.site.pages import KINDS, Asset, Page, to_root
from rimbook.site.settings import Settings
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import UNKNOWN

SITE_FILE = "data/draft-site.js"

MOST_TYPICAL = 6
"""How many bores of a sport are offered before any is typed."""

_EDIT = re.compile(r"(https?://[^?#]+?)/edit/([^/?#]+)/([^?#]*)")


class Forge(NamedTuple):
    """Where a new file is begun on a forge: the address that takes `filename` and `value`, and the folder."""

    new: str
    folder: str


def draft_pages(
    cross: Cross, catalogue: Catalogue, fetch: Callable[[str], Content], settings: Settings
) -> Iterator[Page | Asset]:
    """The page, the rules it checks by, and every map for it to open."""
    kind = KINDS["draft"]
    yield Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="Draft the grommet map of a frame: a proposed walk, put right hole by hole and checked.",
        make=partial(render, "draft.html", title=kind.title, root=to_root(kind.pattern)),
    )
    book = Book(cast(Any, cross.frames), catalogue)  # of other frames the rules ask what a summary says
    yield Asset(DRAFT_FILE, partial(draft_file, book))
    yield Asset(SITE_FILE, partial(_site_file, cross, settings))
    for piece in pieces(cross.frames):
        yield Asset(piece_file(piece), partial(_piece_data, piece, fetch))


def draft_link(root: str, slug: str) -> str:
    """The page with a map of the book opened in it."""
    return link(root, KINDS["draft"].pattern, f"map={slug}")


def _piece_data(piece: Sequence[str], fetch: Callable[[str], Content]) -> bytes:
    """The script of a piece: written maps by slug."""
    maps = ",".join(f"{json_text(slug)}:{fetch(slug).draft}" for slug in piece)
    return handover_text(piece_name(piece), f"{{{maps}}}")


def _site_file(cross: Cross, settings: Settings) -> bytes:
    return handover("draft-site", site_data(cross.frames.values(), settings))


def site_data(frames: Iterable[Summary], settings: Settings) -> dict[str, Any]:
    """What the page has to know of the site: how bores are drawn, which are typical, where maps lie."""
    frames = list(frames)
    folders = {frame.source.rpartition("/")[0] for frame in frames if "/" in frame.source}
    folder = min(folders, default="frames/maps")
    forge = forge_of(settings.edit_base, folder)
    return {
        "marks": {
            "ring": symbols.RING,
            "classes": [
                {
                    "style": each.style,
                    "limit": each.limit_mm,
                    "outline": each.outline,
                    "words": palette.limits(each),
                }
                for each in palette.CLASSES
            ],
        },
        "typical": typical_bores(frames),
        "pieces": [piece[0] for piece in pieces(frame.slug for frame in frames)],
        "folder": folder,
        "forge": forge and forge._asdict(),
        "edit": settings.edit_base,
    }


def typical_bores(frames: Iterable[Summary]) -> dict[str, list[float]]:
    """The bores that most frames of each sport have, the smallest first, in mm."""
    counts: defaultdict[str, Counter[float]] = defaultdict(Counter)
    for frame in frames:
        counts[frame.sport].update(float(bore) for bore in frame.uses if bore != UNKNOWN)
    return {
        sport: sorted(sorted(found, key=lambda bore: (-found[bore], bore))[:MOST_TYPICAL])
        for sport, found in sorted(counts.items())
    }


def forge_of(edit_base: str | None, folder: str) -> Forge | None:
    """Where a new map is begun, as GitHub documents under "Creating new files"; None where nobody can say.

    An address such as `https://forge.example/owner/book/edit/main/` becomes
    `https://forge.example/owner/book/new/main`.
    """
    match = _EDIT.fullmatch(edit_base or "")
    if not match or match[1].endswith("/-"):
        return None
    way = match[3]
    return Forge(f"{match[1]}/new/{match[2]}", f"{way}{quote(folder)}")
