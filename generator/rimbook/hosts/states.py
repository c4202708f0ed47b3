"""The book as it was: out of a folder, or out of the history that git keeps."""

from __future__ import annotations

import io
import subprocess
import tarfile
from pathlib import Path

LONGEST_SECONDS = 120


class NoSuchState(Exception):
    """There is no such state of the book; the text says what was tried."""


def state_at(base: str, book: Path, into: Path) -> Path:
    """The folder of the book as it was at `base`: a folder itself, or a commit, branch or tag of git.

    What git has is written below `into`. Raises NoSuchState.
    """
    if Path(base).is_dir():
        return Path(base)
    top = git(book, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{base}^{{commit}}")
    if top is None:
        raise NoSuchState(f"{base!r} is neither a folder nor a commit, branch or tag that git knows here.")
    archive = git(book, "archive", "--format=tar", top.decode().strip(), ".")
    if archive is None:
        raise NoSuchState(f"The folder {book} was not there at {base!r}.")
    folder = into / book.resolve().name
    folder.mkdir(parents=True)
    unpack(archive, folder)
    return folder


def unpack(archive: bytes, into: Path) -> None:
    """Write the plain files of an archive below a folder. Links and all else are left out."""
    with tarfile.open(fileobj=io.BytesIO(archive)) as tar:
        for member in tar:
            if member.isfile():
                tar.extract(member, into, filter="data")


def git(folder: Path, *arguments: str) -> bytes | None:
    """What git prints when it is asked in a folder; None where it fails, takes too long, or is not there."""
    command: list[str | Path] = ["git", "-C", folder, *arguments]
    try:
        done = subprocess.run(  # noqa: S603
            command, capture_output=True, check=False, stdin=subprocess.DEVNULL, timeout=LONGEST_SECONDS
        )
    except (OSError, subprocess.TimeoutExpired):
        return None
    return done.stdout if done.returncode == 0 else None
