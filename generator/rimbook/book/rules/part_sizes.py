"""The sizes of a part can be those of one thing."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import PartsFile
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import mm


def check(file: PartsFile, given: Given) -> Iterator[Finding]:
    for part in file.parts.values():
        path = ("parts", part.id)
        barrel = part.barrel_mm
        if part.bore_mm is not None and barrel is not None and part.bore_mm >= barrel:
            yield Finding(
                (*path, "bore_mm"),
                f"{part.id} has an opening of {mm(part.bore_mm)} in a barrel of {mm(barrel)}.",
                expected=f"less than {mm(barrel)}",
                tip="barrel_mm is measured outside, bore_mm inside.",
            )
        if part.flange_mm is not None and barrel is not None and part.flange_mm <= barrel:
            yield Finding(
                (*path, "flange_mm"),
                f"{part.id} has a flange of {mm(part.flange_mm)} on a barrel of {mm(barrel)}; "
                "it would slip through the bore.",
                expected=f"more than {mm(barrel)}",
            )
        if part.pitch_mm is not None and barrel is not None and part.pitch_mm <= barrel:
            yield Finding(
                (*path, "pitch_mm"),
                f"{part.id} has posts of {mm(barrel)} only {mm(part.pitch_mm)} apart; they would overlap.",
                expected=f"more than {mm(barrel)}",
                tip="pitch_mm is measured from centre to centre.",
            )


RULE = Rule(
    name="part-sizes",
    scope="parts",
    severity="error",
    summary="A flange is wider than its barrel, the opening narrower, and two posts do not overlap.",
    example="barrel-21 has an opening of 2.3 mm in a barrel of 2.05 mm.",
    check=check,
)
