"""The book as it was: out of a folder, or out of the history that git keeps."""

from __future__ import annotations

import io
import subprocess
import tarfile
from pathlib import Path


class NoSuchState(Exception):
    """There is no such state of the book; the text says what was tried."""


def state_at(base: str, book: Path, into: Path) -> Path:
    """The folder of the book as it was at `base`: a folder itself, or a commit, branch or tag of git.

    What git has is written below `into`. Raises NoSuchState.
    """
    if Path(base).is_dir():
        return Path(base)
    top = _git(book, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{base}^{{commit}}")
    if top is None:
        raise NoSuchState(f"{base!r} is neither a folder nor a commit, branch or tag that git knows here.")
    archive = _git(book, "archive", "--format=tar", top.decode().strip(), ".")
    if archive is None:
        raise NoSuchState(f"The folder {book} was not there at {base!r}.")
    folder = into / book.resolve().name
    folder.mkdir(parents=True)
    with tarfile.open(fileobj=io.BytesIO(archive)) as tar:
        tar.extractall(folder, filter="data")
    return folder


def _git(folder: Path, *arguments: str) -> bytes | None:
    try:
        done = subprocess.run(["git", "-C", folder, *arguments], capture_output=True, check=False)  # noqa: S603, S607
    except OSError:
        return None
    return done.stdout if done.returncode == 0 else None
