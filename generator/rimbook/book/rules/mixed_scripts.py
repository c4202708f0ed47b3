"""A word of a name keeps to one script: a look-alike letter of another is a slip, and may be a trick."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.book.load import Loaded
from rimbook.book.model import Frame
from rimbook.book.reader import Path
from rimbook.book.rules.look_alike import mixed_word
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.book.rules.words import listed
from rimbook.book.text import shown


def check(loaded: Loaded, given: Given) -> Iterator[Finding]:
    for file in loaded.maps.values():
        yield from _of_names(_frame_names(file.frame), file.document.file)
    for parts in loaded.parts_files:
        names: list[tuple[Path, str]] = [
            (("parts", part.id, key), name)
            for part in parts.parts.values()
            for key, name in (("name", part.name), ("maker", part.maker))
            if name
        ]
        yield from _of_names(names, parts.document.file)


def _frame_names(frame: Frame) -> list[tuple[Path, str]]:
    aliases: list[tuple[Path, str]] = [
        (("aliases", index), alias) for index, alias in enumerate(frame.aliases)
    ]
    return [(("name",), frame.name), (("maker",), frame.maker), *aliases]


def _of_names(names: list[tuple[Path, str]], file: str) -> Iterator[Finding]:
    for path, name in names:
        if found := mixed_word(name):
            word, scripts = found
            yield Finding(
                path,
                f"{shown(word)} has letters of several scripts: {listed(scripts)}.",
                file=file,
                tip="Type the word anew in one script.",
            )


RULE = Rule(
    name="mixed-scripts",
    scope="book",
    severity="warning",
    summary="Each word of a name keeps to one script, so that no letter stands for another that looks alike.",
    example="“Lарwing” has letters of several scripts: Cyrillic and Latin.",
    check=check,
)
