"""One map from its file to a kept entry: read, checked, drawn. The work of one process among several."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple, NoReturn

from pydantic import TypeAdapter

from rimbook.bench.answers import Answers
from rimbook.bench.part_index import index_parts
from rimbook.bench.thresholds import Thresholds
from rimbook.book.load import MapFile, content, load_map
from rimbook.book.model import Book, Catalogue, Frame
from rimbook.book.problems import Problem
from rimbook.book.rules import RULES as BOOK_RULES
from rimbook.book.rules.rule import Given, Rule
from rimbook.book.rules.run import own_fault, run
from rimbook.hosts.cache import Cache, Kept, State, digest
from rimbook.rim.place import place
from rimbook.rim.rules import RULES as RIM_RULES
from rimbook.rim.rules.placed import PlacedMap
from rimbook.rim.types import Rim
from rimbook.site.entry import Content, entry
from rimbook.site.sold import Sets
from rimbook.site.summary import Summary

MAP_RULES: tuple[Rule, ...] = tuple(rule for rule in BOOK_RULES if rule.scope == "map")

FRAME = TypeAdapter(Frame)


class Brief(NamedTuple):
    """What a build remembers of a map: its summary, and what rules that look at several maps need of it.

    `about` is the frame without its holes, strips and twins. `across` names the rules of maps that look at
    other maps; `warnings` counts what the others found that is no error.
    """

    summary: Summary
    about: Frame
    across: tuple[str, ...]
    warnings: int


BRIEF = TypeAdapter(Brief)


class Made(NamedTuple):
    """What came of one map under a key: a brief, or the problems that stand in the way of its page."""

    slug: str
    key: str
    brief: Brief | None
    problems: tuple[Problem, ...] = ()
    spilt: bool = False


@dataclass(frozen=True, slots=True, eq=False)
class Bench:
    """Everything a process needs to work through maps by itself.

    `given` is a name for all that every entry follows from, whatever its map: catalogue and thresholds.
    """

    folder: Path
    parts: Catalogue
    given: str
    sets: Sets
    thresholds: Thresholds
    cache: Cache
    today: date

    def key(self, path: Path) -> str:
        """A name for all that a map's entry follows from: its text, where it lies, and what is given.

        Empty where the file cannot be read, which is never the key of an entry.
        """
        return self.key_of(path, _content(path))

    def key_of(self, path: Path, text: bytes | None) -> str:
        """The same for a map that was read already."""
        if text is None:
            return ""
        # A file's name need not be text; the reader says so of it.
        name = os.fsencode(path.relative_to(self.folder).as_posix())
        return digest(name, self.given.encode(), text)


def _content(path: Path) -> bytes | None:
    try:
        return content(path)
    except OSError:
        return None


def remembered(bench: Bench, slug: str, key: str) -> tuple[Brief | None, State]:
    """The brief of an entry that is still good, and what was found in its place."""
    found, state = bench.cache.read(slug, key)
    return (BRIEF.validate_json(found.brief) if found else None), state


def make(bench: Bench, path: Path) -> Made:
    """Read, check and draw one map, and keep what came of it."""
    slug, text = path.stem, _content(path)
    key = bench.key_of(path, text)
    file, problems = load_map(path, bench.parts, bench.folder, text)
    if file is None:
        return Made(slug, key, None, problems)
    if text is None:  # it could be read after all
        return make(bench, path)
    rim, found, across = checked(file, bench)
    problems += found
    if rim is None or any(problem.severity == "error" for problem in problems):
        return Made(slug, key, None, problems)
    try:
        made = entry(rim, bench.sets, _answers(bench))
    except Exception as error:
        fault = own_fault("Drawing the page", file.document.file, error)
        return Made(slug, key, None, (*problems, fault))
    about = replace(file.frame, holes=(), strips=(), twins=())
    brief = Brief(made.summary, about, across, sum(problem.severity == "warning" for problem in problems))
    body, *texts = made.content
    kept = Kept(BRIEF.dump_json(brief), FRAME.dump_json(file.frame), body, *map(str.encode, texts))
    held = bench.cache.write(slug, key, kept)
    return Made(slug, key, brief, problems, spilt=not held)


@lru_cache(maxsize=1)
def _answers(bench: Bench) -> Answers:
    """What a process has worked out of the catalogue, kept from map to map."""
    return Answers(index_parts(bench.parts), bench.thresholds)


def fetch(bench: Bench, path: Path) -> Content:
    """What was made of a map before. Raises LookupError where the map has become wrong since."""
    _, _, body, *texts = _found(bench, path)
    return Content(body, *map(bytes.decode, texts))


def record(bench: Bench, path: Path) -> Frame:
    """The frame of a map that was made before. Raises LookupError where the map has become wrong since."""
    return FRAME.validate_json(_found(bench, path).record)


def _found(bench: Bench, path: Path) -> Kept:
    """What was kept of a map; made once more where map or program have changed since."""
    for _ in range(2):
        found, _ = bench.cache.read(path.stem, bench.key(path))
        if found is not None:
            return found
        make(bench, path)
    raise LookupError(path.stem)


def checked(file: MapFile, bench: Bench) -> tuple[Rim | None, tuple[Problem, ...], tuple[str, ...]]:
    """Hold one map against the rules that need nothing but itself and the catalogue.

    Gives the placed frame, the problems, and the names of the rules that looked at other maps.
    """
    given = Given(Book(Elsewhere(), bench.parts), bench.today)
    problems: list[Problem] = []
    across: list[str] = []
    for rule in MAP_RULES:
        try:
            problems += run((rule,), file, file.document, given)
        except LooksElsewhere:
            across.append(rule.name)
    if any(problem.severity == "error" for problem in problems):
        return None, tuple(problems), tuple(across)
    try:
        rim = place(file.frame)
    except Exception as error:
        problems.append(own_fault("Placing the holes", file.document.file, error))
        return None, tuple(problems), tuple(across)
    problems += run(RIM_RULES, PlacedMap(file.frame, file.document, rim), file.document, given)
    return rim, tuple(problems), tuple(across)


class LooksElsewhere(BaseException):
    """A rule asked for another map. No `Exception`, so that it passes those who catch all of them."""


class Elsewhere(Mapping[str, Frame]):
    """The other maps of the book, as seen by a process that knows only one."""

    def __getitem__(self, slug: str) -> NoReturn:
        raise LooksElsewhere

    def __iter__(self) -> Iterator[str]:
        raise LooksElsewhere

    def __len__(self) -> NoReturn:
        raise LooksElsewhere
