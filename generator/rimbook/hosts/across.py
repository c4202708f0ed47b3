"""The rules that look at more than one map, held against frames that were read before."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from datetime import date

from rimbook.book.load import Loaded, MapFile, MovedFile, PartsFile, catalogue
from rimbook.book.model import Book, Frame
from rimbook.book.reader import Document
from rimbook.book.rules import RULES
from rimbook.book.rules.rule import Given, Rule

_BY_NAME: Mapping[str, Rule] = {rule.name: rule for rule in RULES}


def agrees(
    frames: Mapping[str, Frame],
    parts_files: Sequence[PartsFile],
    moved: MovedFile | None,
    across: Mapping[str, Sequence[str]],
    today: date,
) -> bool:
    """Whether no rule finds an error. `across` names for each map the rules that look at others.

    Only whether: what is wrong and where is for `rimbook check` to say, which reads every
    file again and so knows the lines.
    """
    maps = {slug: _unread(frame) for slug, frame in frames.items()}
    loaded = Loaded(maps, tuple(parts_files), (), len(maps), moved=moved)
    given = Given(Book(frames, catalogue(loaded.parts_files)), today)
    return not any(
        (finding.severity or rule.severity) == "error"
        for rule, subject in _asked(loaded, across)
        for finding in rule.check(subject, given)
    )


def _asked(loaded: Loaded, across: Mapping[str, Sequence[str]]) -> Iterator[tuple[Rule, object]]:
    for slug, names in across.items():
        for name in names:
            yield _BY_NAME[name], loaded.maps[slug]
    for rule in RULES:
        if rule.scope == "parts":
            yield from ((rule, file) for file in loaded.parts_files)
        elif rule.scope == "book":
            yield rule, loaded


def _unread(frame: Frame) -> MapFile:
    """A map whose text is not at hand."""
    return MapFile(frame, Document(frame.source, "", {}, {}, {}))
