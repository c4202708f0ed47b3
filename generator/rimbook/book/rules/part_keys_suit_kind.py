"""A part gives the sizes that its kind has, and no others."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import PartsFile
from rimbook.book.model import PartKind
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import KINDS, counted, listed

_TWINS: tuple[PartKind, ...] = ("twin-even", "twin-uneven")
_OWNERS: dict[str, tuple[PartKind, ...]] = {
    "contains": ("set",),
    "frames": ("set",),
    "posts": ("strip",),
    "bumper": ("strip",),
    "pitch_mm": _TWINS,
    "barrel_mm": ("single", "wide", *_TWINS, "strip"),
    "bore_mm": ("single", "wide", *_TWINS, "strip"),
    "length_mm": ("single", "wide", *_TWINS, "strip"),
    "flange_mm": ("single", "wide", *_TWINS, "strip"),
}


def check(file: PartsFile, given: Given) -> Iterator[Finding]:
    for part in file.parts.values():
        path = ("parts", part.id)
        for key in file.document.at(path):
            owners = _OWNERS.get(key)
            if owners and part.kind not in owners:
                few = listed(KINDS[kind] for kind in owners) if len(owners) < 3 else "other kinds"
                yield Finding(
                    (*path, key),
                    f"{part.id} is {KINDS[part.kind]}; {key} belongs to {few}.",
                    key=True,
                    tip="Leave the key out, or mend the kind.",
                )
        lengths = len(part.length_mm or ())
        wanted = 2 if part.kind == "twin-uneven" else 1
        if part.kind != "set" and lengths and lengths != wanted:
            yield Finding(
                (*path, "length_mm"),
                f"{part.id} is {KINDS[part.kind]} and has {counted(wanted, 'length')}, not {lengths}.",
                expected="[10.5, 16], the posts clockwise" if wanted == 2 else "one number",
            )
        elif part.kind == "twin-uneven" and part.length_mm and part.length_mm[0] == part.length_mm[1]:
            yield Finding(
                (*path, "length_mm"),
                f"{part.id} is an uneven twin, but both posts have the same length.",
                nearest="twin-even",
            )


RULE = Rule(
    name="part-keys-suit-kind",
    scope="parts",
    severity="error",
    summary="A part has only the keys of its kind: pitch for twins, posts for strips, contents for sets.",
    example="barrel-21 is a single part; pitch_mm belongs to an even twin and an uneven twin.",
    check=check,
)
