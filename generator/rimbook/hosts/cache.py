"""Entries kept on disk between builds: one file a map, as text, never as code.

A file is taken only when it was written by the same version of the program from
the same map and catalogue, and its checksum holds. Whatever else lies there is
made anew. Files are replaced in one step, so two builds at once do no harm. The checksum
finds accidents: who can write into the folder could have written any page anyway.
"""

from __future__ import annotations

import hashlib
import os
from dataclasses import dataclass
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from itertools import accumulate
from pathlib import Path
from typing import Literal, NamedTuple
from zlib import crc32

import rimbook

State = Literal["kept", "none", "edited", "foreign", "damaged"]

_MAGIC = "rimbook-entry"
_ROOMS = ("book", "rim", "bench", "draw", "site")
_WRITERS = ("jinja2", "markupsafe", "pydantic-core")


class Kept(NamedTuple):
    """One kept entry: what others show of it and the frame's record, as JSON, then what its files hold."""

    brief: bytes
    record: bytes
    body: bytes
    data: bytes
    shelf: bytes
    draft: bytes


@dataclass(frozen=True, slots=True)
class Cache:
    """Where entries are kept. `spill` takes those that `folder` cannot hold, until the build ends."""

    folder: Path
    spill: Path

    def read(self, slug: str, key: str) -> tuple[Kept | None, State]:
        """The entry kept for a map, if it is the right one, and what was found."""
        kept, state = _read(self._file(self.folder, slug), key)
        if kept is None:
            spilt, _ = _read(self._file(self.spill, slug), key)
            if spilt is not None:
                return spilt, "kept"
        return kept, state

    def write(self, slug: str, key: str, kept: Kept) -> bool:
        """Keep an entry. False where the folder could not hold it and it was spilt."""
        text = _packed(key, kept)
        try:
            write_whole(self._file(self.folder, slug), text)
        except OSError:
            write_whole(self._file(self.spill, slug), text)
            return False
        return True

    @staticmethod
    def _file(folder: Path, slug: str) -> Path:
        return folder / f"{slug}.entry"


def write_whole(file: Path, data: bytes) -> None:
    """Write a file so that nobody ever reads half of it."""
    part = file.with_name(f".{file.name}.{os.getpid()}.part")
    file.parent.mkdir(parents=True, exist_ok=True)
    try:
        part.write_bytes(data)
        part.replace(file)
    except BaseException:
        part.unlink(missing_ok=True)
        raise


def digest(*pieces: bytes) -> str:
    """A short name for exactly these bytes."""
    found = hashlib.blake2b(digest_size=20)
    for piece in pieces:
        found.update(len(piece).to_bytes(8, "big"))
        found.update(piece)
    return found.hexdigest()


@cache
def program_version() -> str:
    """A name for everything that turns a map into an entry: our own files, and what renders them.

    Worked out once a process, while the files still are what was imported.
    """
    root = Path(rimbook.__file__).parent
    files = sorted(file for room in _ROOMS for file in (root / room).rglob("*") if _is_source(file))
    pieces = [piece for file in files for piece in (str(file.relative_to(root)).encode(), file.read_bytes())]
    return digest(rimbook.__version__.encode(), *map(_version, _WRITERS), *pieces)


def _is_source(file: Path) -> bool:
    return file.suffix in (".py", ".html", ".css", ".json", ".typ") and file.is_file()


def _version(package: str) -> bytes:
    try:
        return version(package).encode()
    except PackageNotFoundError:
        return b""


def _packed(key: str, kept: Kept) -> bytes:
    """A head of one line (kind, version, key, lengths, checksum), and the pieces after it."""
    text = b"".join(kept)
    lengths = ",".join(str(len(piece)) for piece in kept)
    head = f"{_MAGIC} {program_version()} {key} {lengths} {_sum(text)}\n"
    return head.encode() + text


def _read(file: Path, key: str) -> tuple[Kept | None, State]:
    try:
        head, _, text = file.read_bytes().partition(b"\n")
    except FileNotFoundError:
        return None, "none"
    except OSError:
        return None, "damaged"
    words = head.decode("ascii", "replace").split(" ")
    if len(words) != 5 or words[0] != _MAGIC:
        return None, "damaged"
    if words[1] != program_version():
        return None, "foreign"
    kept = _unpacked(words[3], text)
    if kept is None or words[4] != _sum(text):
        return None, "damaged"
    return (kept, "kept") if words[2] == key else (None, "edited")


def _unpacked(lengths: str, text: bytes) -> Kept | None:
    try:
        sizes = [int(word) for word in lengths.split(",")]
    except ValueError:
        return None
    if len(sizes) != len(Kept._fields) or min(sizes) < 0 or sum(sizes) != len(text):
        return None
    ends = list(accumulate(sizes))
    return Kept(*(text[end - size : end] for size, end in zip(sizes, ends, strict=True)))


def _sum(text: bytes) -> str:
    return f"{crc32(text):08x}"
