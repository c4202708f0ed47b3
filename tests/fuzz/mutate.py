"""Files of the book as nobody would write them: bytes turned over, values put where they do not belong."""

from __future__ import annotations

import json
from collections.abc import Callable
from random import Random
from typing import Any

from rimbook.book.reader import Path, Unreadable, read

# What parsers, numbers and geometry have stumbled over elsewhere.
WORDS: tuple[bytes, ...] = (
    b"\x00", b"\xff\xfe", b"\xef\xbb\xbf", b"\xed\xa0\x80", b"\xf0\x9f\x91\x9f", b"\xe2\x80\xae", b"\xc2\x85",
    b"&a ", b"*a", b"!!python/object:x ", b"<<: ", b"---\n", b"...\n", b"%YAML 1.1\n", b"- ", b"? ", b": ",
    b"{", b"}", b"[", b"]", b"|\n", b">-\n", b"#", b"\t", b"\r", b"\n\n", b"'", b'"', b"\\", b"@", b"`",
    b"null", b"true", b"unknown", b"default", b".nan", b"-.inf", b"1e308", b"1e-308", b"0x7f", b"0o17", b"-0",
    b"9" * 40, b"1" * 5000, b"m1 ", b"c1 ", b"m9+c1 ", b"x ", b". ", b"R1-L1", b"R9999", b"1-200",
    b"../../etc/passwd", b"<script>", b"{{ 7*7 }}", b"=1+1", b"#let x = 1",
)  # fmt: skip
VALUES: tuple[Any, ...] = (
    None, True, False, 0, 1, 2, -1, 3, 7, 60, 199, 200, 201, 1000, 1001, 9999, 10**18, 0.0, -0.0, 1e-9, 0.001,
    0.1, 0.5, 1.5, 2.0, 6, 93.0, 999.999, 1e6, 1e308, "", " ", "unknown", "default", "x", ".", "m1", "c1 c1",
    "m1 m1", "R1", "L1", "1-2", "R2-L2", "R9-R1", "a" * 300, "2026-02-30", "9999-12-31", "28 lb", "999 kg",
    "points", "teardrop", "superellipse", "ellipse", "\u202e", "\ufeff", "а", [], {}, [[]], [0, 0], [1, 1000],
    [1000, 1], {"default": "unknown"}, {"default": 1, "2": ["1-200"]}, ["unknown"] * 200, [[0, 0]] * 6,
    [[0, 1], [1, 0], [0, -1], [-1, 0], [0, 1], [0, 1]], [[0, 0], [1, 1], [2, 2], [3, 3], [4, 4], [5, 5.1]],
    [[-5, 0], [5, 9], [-5, 9], [5, 0], [-3, 4], [3, 4]],
)  # fmt: skip

Turn = Callable[[bytes, Random], bytes]


def mutated(source: bytes, random: Random) -> bytes:
    """The file with some faults: most have few, some have many."""
    turn = _values if random.random() < 0.6 else _bytes
    for _ in range(random.choice((1, 1, 1, 2, 3, 8))):
        source = turn(source, random)
    return source


def _bytes(source: bytes, random: Random) -> bytes:
    return random.choice(_BYTE_TURNS)(source, random) if source else random.choice(WORDS)


def _span(source: bytes, random: Random) -> tuple[int, int]:
    start = random.randrange(len(source))
    return start, min(len(source), start + random.choice((1, 1, 3, 10, 80, 600)))


def _turn_over(source: bytes, random: Random) -> bytes:
    at = random.randrange(len(source))
    return source[:at] + bytes([random.randrange(256)]) + source[at + 1 :]


def _take_out(source: bytes, random: Random) -> bytes:
    start, end = _span(source, random)
    return source[:start] + source[end:]


def _repeat(source: bytes, random: Random) -> bytes:
    start, end = _span(source, random)
    times = random.choice((1, 2, 50, 3000))
    return source[:end] + source[start:end] * min(times, 300_000 // (end - start)) + source[end:]


def _put_in(source: bytes, random: Random) -> bytes:
    at = random.randrange(len(source))
    return source[:at] + random.choice(WORDS) * random.choice((1, 1, 1, 40)) + source[at:]


def _swap_lines(source: bytes, random: Random) -> bytes:
    lines = source.split(b"\n")
    one, other = (random.randrange(len(lines)) for _ in range(2))
    lines[one], lines[other] = lines[other], lines[one]
    return b"\n".join(lines)


def _cut(source: bytes, random: Random) -> bytes:
    return source[: random.randrange(len(source))]


_BYTE_TURNS: tuple[Turn, ...] = (
    _turn_over,
    _turn_over,
    _take_out,
    _repeat,
    _put_in,
    _put_in,
    _swap_lines,
    _cut,
)


def _values(source: bytes, random: Random) -> bytes:
    """The file with one value changed, written as JSON, which is YAML too."""
    try:
        value = read(source, "frames/fuzz.yaml").value
    except Unreadable:
        return _bytes(source, random)
    path = random.choice(_paths(value, ()))
    changed = _changed(value, path, random)
    return json.dumps(changed, ensure_ascii=False).encode("utf-8", "surrogatepass")


def _paths(value: Any, path: Path) -> list[Path]:
    inside = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    return [path, *(found for key, inner in inside for found in _paths(inner, (*path, key)))]


def _changed(value: Any, path: Path, random: Random) -> Any:
    if not path:
        return _other(value, random)
    key, *rest = path
    holder: Any = dict(value) if isinstance(value, dict) else list(value)
    if rest:
        holder[key] = _changed(holder[key], tuple(rest), random)
    elif random.random() < 0.15:
        del holder[key]
    elif isinstance(holder, dict) and random.random() < 0.1:
        holder[str(random.choice(VALUES))[:80]] = holder.pop(key)
    else:
        holder[key] = _other(holder[key], random)
    return holder


def _other(value: Any, random: Random) -> Any:
    """Something else of the same sort where one comes to mind, otherwise anything."""
    if random.random() < 0.4:
        return random.choice(VALUES)
    if isinstance(value, bool):
        return not value
    if isinstance(value, int | float):
        return random.choice(
            (value * random.choice((0.1, 0.5, 0.99, 1.01, 2, 10, -1)), value + random.choice((-1, 1)))
        )
    if isinstance(value, list) and value:
        return random.choice(
            (
                value * random.choice((2, 40)),
                value[::-1],
                [value[0]] * len(value),
                value[1:],
                sorted(value, key=str),
            )
        )
    if isinstance(value, str) and value:
        words = value.split()
        random.shuffle(words)
        return random.choice(
            (" ".join(words), value * 2, value[: len(value) // 2], value.upper(), f"{value} x")
        )
    return random.choice(VALUES)
