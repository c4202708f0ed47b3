"""The list of what is kept for offline use: whole, in order, and hardly changed by one frame more."""

from __future__ import annotations

import hashlib
import json
import time
from base64 import urlsafe_b64decode
from typing import Any

from rimbook.site.offline_list import LIST_FILE, Fingerprint, fingerprint, offline_files


def book(frames: int) -> dict[str, Fingerprint]:
    """The files of a site of so many frames."""
    core = ("index.html", "assets/rimbook.css", "data/finder.js")
    found = {path: fingerprint(path.encode()) for path in core}
    for number in range(frames):
        for path in (f"frames/f-{number}/index.html", f"data/frames/f-{number}.json"):
            found[path] = Fingerprint(f"{number:012}", 60_000)
    return found


def read(found: dict[str, Fingerprint]) -> tuple[dict[str, Any], dict[str, list[Any]]]:
    files = dict(offline_files(found))
    first = json.loads(files.pop(LIST_FILE))
    return first, {path: json.loads(text) for path, text in files.items()}


def test_every_file_is_in_one_piece_and_the_pieces_are_in_order() -> None:
    found = book(3_000)
    first, pieces = read(found)
    listed = [tuple(file) for piece in pieces.values() for file in piece]
    assert [path for path, *_ in listed] == sorted(path for path, *_ in listed)
    assert {path: Fingerprint(*rest) for path, *rest in [*listed, *first["core"]]} == found
    assert (first["files"], first["bytes"]) == (len(found), sum(each.size for each in found.values()))
    for (start, digest, size, files, count), (path, piece) in zip(
        first["pieces"], pieces.items(), strict=True
    ):
        assert (start, files, count) == (piece[0][0], len(piece), sum(file[2] for file in piece)), path
        assert size < 120_000, "a piece is read before the first page of it is kept"
        assert len(digest) == 12


def test_one_frame_more_changes_no_more_pieces_than_it_is_in() -> None:
    before, after = read(book(3_000))[0], read(book(3_001))[0]
    digests = {piece[1] for piece in before["pieces"]}
    assert sum(piece[1] not in digests for piece in after["pieces"]) <= 4
    assert len(before["pieces"]) > 10


def test_what_every_page_needs_comes_first_and_what_nobody_opens_is_left_out() -> None:
    names = {
        "index.html": True,
        "finder/index.html": True,
        "offline/index.html": True,
        "assets/rimbook.css": True,
        "assets/scripts/frame.js": True,
        "assets/images/favicon.png": True,
        "data/finder.js": True,
        "frames/plover-76/index.html": False,
        "data/board/plover-76.js": False,
        "assets/picture.png": False,
        "404.html": None,
        "sitemap.xml": None,
        "worker.js": None,
        "offline/list.0.json": None,
        "assets/main.css.map": None,
        "assets/javascripts/lunr/min/lunr.da.min.js": None,
    }
    first, pieces = read({path: fingerprint(b"") for path in names})
    core = {file[0] for file in first["core"]}
    others = {file[0] for piece in pieces.values() for file in piece}
    assert core == {path for path, is_core in names.items() if is_core}
    assert others == {path for path, is_core in names.items() if is_core is False}
    searched = {**{path: fingerprint(b"") for path in names}, "search/search_index.json": fingerprint(b"")}
    assert "assets/javascripts/lunr/min/lunr.da.min.js" in json.dumps(read(searched)[0])


def test_a_reader_is_asked_before_a_large_book_is_kept() -> None:
    """As the page of offline use says: over 3,000 files or 50 MB."""
    assert not read(book(416))[0]["ask"]
    assert read(book(417))[0]["ask"]
    small = {path: Fingerprint("0" * 12, 10) for path in map(str, range(3_001))}
    assert read(small)[0]["ask"]
    del small["0"]
    assert not read(small)[0]["ask"]


def test_a_fingerprint_is_what_a_browser_works_out() -> None:
    """SHA-256 of "abc" is published in FIPS 180-2, appendix B.1: ba7816bf 8f01cfea 41…"""
    digest, size = fingerprint(b"abc")
    assert urlsafe_b64decode(digest).hex() == "ba7816bf8f01cfea41"
    assert hashlib.sha256(b"abc").digest().startswith(urlsafe_b64decode(digest))
    assert size == 3


def test_the_same_files_give_the_same_list_in_whatever_order_they_come() -> None:
    found = book(300)
    assert list(offline_files(found)) == list(offline_files(dict(reversed(found.items()))))


def test_a_book_of_ten_thousand_frames_is_listed_soon() -> None:
    """At most 0.1 ms a frame, of the 7 ms that a frame may take in all."""
    found = book(10_000)
    begun = time.process_time()
    files = dict(offline_files(found))
    assert time.process_time() - begun < 1.0
    assert len(files[LIST_FILE]) < 20_000, "it is asked for again and again"
