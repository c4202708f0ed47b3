"""Which characters the fonts at hand can print, read from the files' own `cmap` tables (OpenType 1.9)."""

from __future__ import annotations

import struct
import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from functools import lru_cache
from pathlib import Path

INSTEAD = "◊"
"""Stands for each character that no font has."""

_COLLECTION = b"ttcf"
_FORMS = ("*.ttf", "*.otf", "*.ttc", "*.otc")
_WHOLE_UNICODE = ((3, 10), (0, 6), (0, 4), (3, 1), (0, 3))


@lru_cache(maxsize=8)
def printable(folders: tuple[Path, ...]) -> frozenset[int]:
    """The code points for which some font in the folders has a glyph. A file that is no font has none."""
    files = sorted(file for folder in folders for form in _FORMS for file in folder.rglob(form))
    return frozenset().union(*map(_of_file, files))


def replaced(text: str, known: frozenset[int]) -> str:
    """The text with INSTEAD for each character that is not known; marks that join to one go with it."""
    if text.isascii():
        return text
    kept: list[str] = []
    for character in text:
        if ord(character) in known or character.isspace():
            kept.append(character)
        elif not (unicodedata.category(character)[0] == "M" and kept and kept[-1] == INSTEAD):
            kept.append(INSTEAD)
    return "".join(kept)


def missing(texts: Iterable[str], known: frozenset[int]) -> tuple[str, ...]:
    """For each script that lacks letters a line: `Thai: U+0E0A U+0E21`, scripts in order of name."""
    lacking = sorted({c for text in texts for c in text if ord(c) not in known and not c.isspace()})
    scripts: dict[str, list[str]] = {}
    for character in lacking:
        scripts.setdefault(_script(character), []).append(f"U+{ord(character):04X}")
    return tuple(f"{script}: {_some(codes)}" for script, codes in sorted(scripts.items()))


def _some(codes: Sequence[str], most: int = 8) -> str:
    more = f" and {len(codes) - most} more" if len(codes) > most else ""
    return " ".join(codes[:most]) + more


def _script(character: str) -> str:
    """The script by the first word of the character's name: the standard library has no table of scripts."""
    word = unicodedata.name(character, "UNNAMED").split()[0]
    return {"CJK": "Chinese characters", "UNNAMED": "unnamed"}.get(word, word.capitalize())


def _of_file(file: Path) -> frozenset[int]:
    try:
        data = file.read_bytes()
        starts: tuple[int, ...] = (0,)
        if data[:4] == _COLLECTION:
            (count,) = struct.unpack_from(">I", data, 8)
            starts = struct.unpack_from(f">{count}I", data, 12)
        return frozenset(code for start in starts for code in _of_font(data, start))
    except (OSError, struct.error):
        return frozenset()


def _of_font(data: bytes, start: int) -> Iterator[int]:
    (tables,) = struct.unpack_from(">H", data, start + 4)
    for at in range(tables):
        tag, _, offset, _ = struct.unpack_from(">4sIII", data, start + 12 + 16 * at)
        if tag == b"cmap":
            yield from _of_cmap(data, offset)
            return


def _of_cmap(data: bytes, start: int) -> Iterator[int]:
    (count,) = struct.unpack_from(">H", data, start + 2)
    records = (struct.unpack_from(">HHI", data, start + 4 + 8 * at) for at in range(count))
    offsets = {(platform, encoding): offset for platform, encoding, offset in records}
    best = next((offsets[kind] for kind in _WHOLE_UNICODE if kind in offsets), None)
    if best is None:
        return
    (form,) = struct.unpack_from(">H", data, start + best)
    if form == 12:
        yield from _groups(data, start + best)
    elif form == 4:
        yield from _segments(data, start + best)


def _groups(data: bytes, at: int) -> Iterator[int]:
    (count,) = struct.unpack_from(">I", data, at + 12)
    for index in range(count):
        first, last, _ = struct.unpack_from(">III", data, at + 16 + 12 * index)
        yield from range(first, min(last, 0x10FFFF) + 1)


def _segments(data: bytes, at: int) -> Iterator[int]:
    (twice,) = struct.unpack_from(">H", data, at + 6)
    count = twice // 2
    ends = struct.unpack_from(f">{count}H", data, at + 14)
    starts = struct.unpack_from(f">{count}H", data, at + 16 + twice)
    offsets_at = at + 16 + 3 * twice
    deltas = struct.unpack_from(f">{count}H", data, at + 16 + 2 * twice)
    offsets = struct.unpack_from(f">{count}H", data, offsets_at)
    for index, (first, last) in enumerate(zip(starts, ends, strict=True)):
        for code in range(first, last + 1):
            if code == 0xFFFF:
                continue
            if offsets[index]:
                place = offsets_at + 2 * index + offsets[index] + 2 * (code - first)
                (glyph,) = struct.unpack_from(">H", data, place)
            else:
                glyph = (code + deltas[index]) & 0xFFFF
            if glyph:
                yield code
