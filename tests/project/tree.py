"""The files of the project, as a fresh clone holds them."""

from __future__ import annotations

import subprocess
from functools import cache
from pathlib import Path

ROOT = Path(__file__).parents[2]
BINARY = {".png", ".woff2"}


@cache
def tracked() -> tuple[Path, ...]:
    """Every file that git keeps or would keep, relative to the root."""
    command = ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z"]
    listed = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True).stdout
    return tuple(sorted(Path(name) for name in listed.split("\0") if name and (ROOT / name).is_file()))


def text(path: Path | str) -> str:
    """A file of the project, read with its line endings as they are."""
    return (ROOT / path).read_bytes().decode("utf-8")


def texts() -> dict[Path, str]:
    """Every file that holds text."""
    return {path: text(path) for path in tracked() if path.suffix not in BINARY}
