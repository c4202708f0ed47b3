"""Every exception changes something: one that never applies is rather a slip."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from rimbook.book.load import MapFile
from rimbook.book.rules import where
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import listed, runs
from rimbook.book.text import shown


def check(file: MapFile, given: Given) -> Iterator[Finding]:
    yield from _idle_lengths(file, "bore_mm")
    yield from _idle_lengths(file, "rim_depth_mm")
    yield from _idle_parts(file)


def _idle_lengths(file: MapFile, name: Literal["bore_mm", "rim_depth_mm"]) -> Iterator[Finding]:
    written = file.document.at((name,))
    if not isinstance(written, dict):
        return
    default = written.get("default")
    for key, holes in written.items():
        if key == "default":
            continue
        if _same(key, default):
            yield Finding(
                (name, key),
                f"{name} is {key} by default; the exception {shown(key)} changes nothing.",
                key=True,
                severity="warning",
            )
        elif not holes:
            yield Finding((name, key), f"{name} {shown(key)} names no holes.", key=True)


def _same(first: object, second: object) -> bool:
    try:
        return float(str(first)) == float(str(second))
    except ValueError:
        return str(first) == str(second)


def _idle_parts(file: MapFile) -> Iterator[Finding]:
    frame = file.frame
    lines = where.fitted_lines(file)
    default = next((line.part for line in lines if line.key == "default"), None)
    has_default = any(line.key == "default" for line in lines)
    for line in lines:
        if line.key == "default":
            continue
        if not line.named:
            bores = sorted({hole.bore_mm for hole in frame.drilled if hole.bore_mm is not None})
            yield Finding(
                line.path,
                f"{shown(line.key)} never applies: no such hole is drilled.",
                key=True,
                expected=f"a bore of {listed(f'{bore:g}' for bore in bores)}"
                if line.key.startswith("bore ") and bores
                else None,
                nearest=_nearest_bore(line.key, bores),
            )
        elif not line.kept:
            in_strip = all(frame.hole(at).strip is not None for at in line.named)
            yield Finding(
                line.path,
                f"{shown(line.key)} never applies: "
                + (
                    "a strip covers these holes." if in_strip else "other lines say what sits in these holes."
                ),
                hole=runs(line.named),
                key=True,
            )
        elif has_default and line.part == default and _only_repeats_default(line, lines):
            yield Finding(
                line.path,
                f"{shown(line.key)} changes nothing: "
                f"{shown(line.part or 'unknown', quote=False)} is the default.",
                key=True,
                severity="warning",
            )


def _only_repeats_default(line: where.Line, lines: tuple[where.Line, ...]) -> bool:
    """Whether no line between the default and this one says otherwise about any of its holes."""
    before = lines[: lines.index(line)]
    return not any(set(other.named) & set(line.named) for other in before if other.key != "default")


def _nearest_bore(key: str, bores: list[float]) -> str | None:
    word = key.removeprefix("bore ").strip()
    if not key.startswith("bore ") or not bores:
        return None
    try:
        wanted = float(word)
    except ValueError:
        return None
    return f"bore {min(bores, key=lambda bore: abs(bore - wanted)):g}"


RULE = Rule(
    name="no-idle-lines",
    scope="map",
    severity="error",
    summary="Every exception applies to some hole and differs from the default.",
    example="“bore 2.9” never applies: no such hole is drilled.",
    check=check,
)
