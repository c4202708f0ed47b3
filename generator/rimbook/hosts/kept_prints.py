"""Files to print, kept on disk between builds, and taken while all that they were made from is the same."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from contextlib import suppress
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path

from rimbook.hosts.cache import digest, program_version, write_whole
from rimbook.site.prints import Keep

_MADE_BY = ("typst", "segno", "font-source-sans-pro")


def kept_prints(folder: Path) -> Keep:
    """Keeps each file in a folder, under a key of what it is made from, our own program and what sets type.

    A damaged or foreign file is made anew; where the folder cannot be written, nothing is kept.
    """

    def keep(name: str, pieces: Sequence[bytes], make: Callable[[], bytes]) -> bytes:
        file = folder / f"{name.replace('/', '.')}.print"
        key = digest(program_version().encode(), *map(_version, _MADE_BY), *pieces)
        with suppress(OSError):
            head, _, data = file.read_bytes().partition(b"\n")
            if head.decode("ascii", "replace") == f"{key} {digest(data)}":
                return data
        data = make()
        with suppress(OSError):
            write_whole(file, f"{key} {digest(data)}\n".encode() + data)
        return data

    return keep


@cache
def _version(package: str) -> bytes:
    try:
        return version(package).encode()
    except PackageNotFoundError:
        return b""
