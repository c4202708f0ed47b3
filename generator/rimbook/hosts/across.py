"""The rules that look at more than one map, held against frames that were read before."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Any, NoReturn

from rimbook.book.load import Loaded, MapFile, MovedFile, PartsFile, catalogue
from rimbook.book.model import Book, Frame
from rimbook.book.reader import Document
from rimbook.book.rules import RULES
from rimbook.book.rules.rule import Given, Rule

_BY_NAME: Mapping[str, Rule] = {rule.name: rule for rule in RULES}


def agrees(
    about: Mapping[str, Frame],
    parts_files: Sequence[PartsFile],
    moved: MovedFile | None,
    across: Mapping[str, Sequence[str]],
    today: date,
    whole: Callable[[], Mapping[str, Frame]],
) -> bool:
    """Whether no rule finds an error. `across` names for each map the rules that look at others.

    `about` are the frames without what is in them. Those as they were read are fetched by `whole`
    only where a rule looks inside one: so far none does.

    Only whether: what is wrong and where is for `rimbook check` to say, which reads every
    file again and so knows the lines.
    """
    try:
        closed = {slug: _closed(frame) for slug, frame in about.items()}
        return _agree(closed, parts_files, moved, across, today)
    except LooksInside:
        return _agree(whole(), parts_files, moved, across, today)


def _agree(
    frames: Mapping[str, Frame],
    parts_files: Sequence[PartsFile],
    moved: MovedFile | None,
    across: Mapping[str, Sequence[str]],
    today: date,
) -> bool:
    maps = {slug: _unread(frame) for slug, frame in frames.items()}
    loaded = Loaded(maps, tuple(parts_files), (), len(maps), moved=moved)
    given = Given(Book(frames, catalogue(loaded.parts_files)), today)
    return not any(
        (finding.severity or rule.severity) == "error"
        for rule, subject in _asked(loaded, across)
        if rule.severity == "error"  # a case may weigh less than its rule, never more
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


class LooksInside(Exception):
    """A rule asked for the holes, strips or twins of a frame."""


class _Closed(tuple[Any, ...]):
    """What is in a frame, as seen by who has only what is written about it."""

    __slots__ = ()

    def __iter__(self) -> NoReturn:
        raise LooksInside

    def __len__(self) -> NoReturn:
        raise LooksInside

    def __getitem__(self, index: object) -> NoReturn:
        raise LooksInside

    def __contains__(self, item: object) -> NoReturn:
        raise LooksInside


_CLOSED = _Closed()


def _closed(frame: Frame) -> Frame:
    return replace(frame, holes=_CLOSED, strips=_CLOSED, twins=_CLOSED)
