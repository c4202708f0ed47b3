"""Books of any size for measuring: the demo maps again and again, each a little different."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

DEMO = Path(__file__).parents[2] / "frames"

_NAME = re.compile(r"^name: (.*)$", re.MULTILINE)
_SIZE = re.compile(r"inside_mm: \[([0-9.]+), ([0-9.]+)\]")
_DROPPED = re.compile(r"^(variant_of|aliases): .*\n", re.MULTILINE)


def write_book(folder: Path, frames: int) -> Path:
    """Write a book of so many frames below `folder`: the demo itself, then copies.

    Every copy has a name and a head size of its own (up to 1 mm smaller), so that
    nothing worked out for one frame serves another.
    """
    book = folder / "frames"
    shutil.copytree(DEMO, book)
    demo = sorted((DEMO / "maps").glob("*.yaml"))
    for index in range(frames - len(demo)):
        source = demo[index % len(demo)]
        text = _copy(source.read_text(encoding="utf-8"), index)
        (book / "maps" / f"{source.stem}-n{index:05d}.yaml").write_text(text, encoding="utf-8")
    return book


def _copy(text: str, index: int) -> str:
    smaller = (index % 997) / 1000

    def resized(match: re.Match[str]) -> str:
        return f"inside_mm: [{float(match[1]) - smaller:.3f}, {float(match[2]) - smaller:.3f}]"

    text = _NAME.sub(lambda match: f"name: {match[1]} no {index}", _DROPPED.sub("", text), count=1)
    return _SIZE.sub(resized, text, count=1)
