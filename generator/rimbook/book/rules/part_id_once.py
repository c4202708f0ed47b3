"""An id names one part, whichever file gives it."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import Loaded
from rimbook.book.rules.rule import Finding, Given, Rule


def check(loaded: Loaded, given: Given) -> Iterator[Finding]:
    first: dict[str, str] = {}
    for file in loaded.parts_files:
        for part_id in file.parts:
            if part_id in first:
                line = next(
                    other.document.mark(("parts", part_id), key=True).line
                    for other in loaded.parts_files
                    if other.document.file == first[part_id]
                )
                yield Finding(
                    ("parts", part_id),
                    f"There is a part {part_id} already, in {first[part_id]} line {line}.",
                    key=True,
                    file=file.document.file,
                    tip="The first one stands. Rename or delete this one.",
                )
            first.setdefault(part_id, file.document.file)


RULE = Rule(
    name="part-id-once",
    scope="book",
    severity="error",
    summary="An id names one part in the whole catalogue.",
    example="There is a part barrel-21 already, in frames/parts/common.yaml line 3.",
    check=check,
)
