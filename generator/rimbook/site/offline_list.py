"""The list of what a browser keeps for offline use: every file, its fingerprint and size, in small pieces.

`offline/list.json` has what every page needs, and where the other pieces begin. The others, as
`offline/list.0.json`, have all other files in order of path. A piece begins anew at a path whose own checksum
says so: a new frame changes one piece and moves none.
"""

from __future__ import annotations

import hashlib
import json
import zlib
from base64 import urlsafe_b64encode
from collections.abc import Iterator, Mapping, Sequence
from typing import NamedTuple

from rimbook.site.pages import KINDS

FORMAT = 1
FOLDER = "offline/"
LIST_FILE = f"{FOLDER}list.json"
WORKER_FILE = "worker.js"

PIECE = 256
"""So many files are in a piece on average."""

ASK_OVER_FILES = 3_000
ASK_OVER_BYTES = 50_000_000
"""A book over one of these is kept as a whole only where the reader asks for it."""

_SEARCH_INDEX = "search/search_index.json"
_SEARCH = ("assets/javascripts/lunr/", "assets/javascripts/workers/")
_FOR_MACHINES = frozenset({"404.html", "sitemap.xml", "sitemap.xml.gz", WORKER_FILE, LIST_FILE})
_SHELL = (".css", ".js", ".woff", ".woff2", ".ico", ".svg")
_NEEDED = frozenset(
    {"index.html", "assets/images/favicon.png"}
    | {
        f"{KINDS[name].pattern}index.html"
        for name in ("finder", "board", "fits", "prices", "my-shelf", "draft", "offline")
    }
)


class Fingerprint(NamedTuple):
    """A short name for exactly these bytes, which a browser can work out as well, and how many there are."""

    digest: str
    size: int


def fingerprint(data: bytes) -> Fingerprint:
    """The first 72 bits of SHA-256, as 12 letters that may stand in an address."""
    return Fingerprint(urlsafe_b64encode(hashlib.sha256(data).digest()[:9]).decode(), len(data))


def offline_files(found: Mapping[str, Fingerprint]) -> Iterator[tuple[str, bytes]]:
    """The pieces of the list of a site whose files by path are `found`: path and content, the first last."""
    kept = {path: each for path, each in found.items() if not _left_out(path, found)}
    # As JavaScript orders strings: by their units of 16 bits.
    ordered = sorted(kept, key=lambda path: path.encode("utf-16-be"))
    core = [path for path in ordered if _is_core(path)]
    pieces = []
    for number, paths in enumerate(_pieces([path for path in ordered if not _is_core(path)])):
        text = _json([[path, *kept[path]] for path in paths])
        size = sum(kept[path].size for path in paths)
        pieces.append([paths[0], *fingerprint(text), len(paths), size])
        yield f"{FOLDER}list.{number}.json", text
    size = sum(each.size for each in kept.values())
    first = {
        "format": FORMAT,
        "ask": len(kept) > ASK_OVER_FILES or size > ASK_OVER_BYTES,
        "files": len(kept),
        "bytes": size,
        "core": [[path, *kept[path]] for path in core],
        "pieces": pieces,
    }
    yield LIST_FILE, _json(first)


def _left_out(path: str, found: Mapping[str, Fingerprint]) -> bool:
    """Whether no reader ever opens a file and no page loads it."""
    if path in _FOR_MACHINES or path.endswith(".map") or path.startswith(f"{FOLDER}list."):
        return True
    return path.startswith(_SEARCH) and _SEARCH_INDEX not in found


def _is_core(path: str) -> bool:
    """Whether every page needs a file, or the way to every page leads through it."""
    if path.startswith("assets/"):
        return path.endswith(_SHELL) or path in _NEEDED
    return path in _NEEDED or (path.startswith("data/") and path.count("/") == 1 and path.endswith(".js"))


def _pieces(paths: Sequence[str]) -> Iterator[Sequence[str]]:
    start = 0
    for end in range(1, len(paths) + 1):
        if end == len(paths) or zlib.crc32(paths[end].encode()) % PIECE == 0:
            yield paths[start:end]
            start = end


def _json(value: object) -> bytes:
    return (json.dumps(value, ensure_ascii=False, separators=(",", ":")) + "\n").encode()
