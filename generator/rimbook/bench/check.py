"""Hold a whole book against all rules, those of its words and those of its geometry."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from pathlib import PurePosixPath
from typing import NamedTuple

from rimbook.book.load import Loaded, MapFile
from rimbook.book.problems import UNPLACEABLE, Problem, in_order
from rimbook.book.rules import RULES as BOOK_RULES
from rimbook.book.rules.rule import Given, Rule
from rimbook.book.rules.run import own_fault, run
from rimbook.rim.place import place
from rimbook.rim.rules import RULES as RIM_RULES
from rimbook.rim.rules.placed import PlacedMap

RULES: tuple[Rule, ...] = BOOK_RULES + RIM_RULES

# With measured places out of order, these would only say so again.
_ECHOES = frozenset(("hole-gaps", "strings-run-straight", "twin-pitch"))
_ECHOED = frozenset(("places-increase", "place-on-rim"))


class Entry(NamedTuple):
    """One rule as a page lists it."""

    name: str
    scope: str
    severity: str
    summary: str
    example: str


# What the reader refuses before any rule is asked.
_READING = (
    Entry(
        "readable",
        "map",
        "error",
        "A file is one plain YAML document in UTF-8, without anchors, tags or hidden characters.",
        "The key “mains” stands twice; the first is in line 8.",
    ),
    Entry(
        "shape",
        "map",
        "error",
        "A file has the keys of its format, and each holds the sort of value that it is for.",
        "There is no key “mians” here.",
    ),
    Entry(
        "meaning",
        "map",
        "error",
        "The words of a map mean something: places of the walk, holes that exist, an outline with its sizes.",
        "“m3c1” is no place of a walk.",
    ),
)


def catalogue() -> tuple[Entry, ...]:
    """All rules in the order in which they are asked, for a page that lists them."""
    asked = (Entry(rule.name, rule.scope, rule.severity, rule.summary, rule.example) for rule in RULES)
    return (*_READING, *asked)


def check(loaded: Loaded, today: date | None = None) -> tuple[Problem, ...]:
    """Every problem of a book, those of reading it first found included, in order of place."""
    given = Given(
        book=loaded.book,
        today=today or date.today(),
        unread_maps=_unread(loaded, "maps") - loaded.maps.keys(),
        parts_unread=bool(_unread(loaded, "parts")),
    )
    return in_order([*loaded.problems, *_problems(loaded, given)])


def _problems(loaded: Loaded, given: Given) -> Iterator[Problem]:
    by_scope = {
        scope: [rule for rule in BOOK_RULES if rule.scope == scope]
        for scope in ("map", "parts", "club", "book")
    }
    for map_file in loaded.maps.values():
        yield from _of_map(by_scope["map"], map_file, given)
    for parts_file in loaded.parts_files:
        yield from run(by_scope["parts"], parts_file, parts_file.document, given)
    for club_file in loaded.clubs.values():
        yield from run(by_scope["club"], club_file, club_file.document, given)
    documents = {file.document.file: file.document for file in loaded.maps.values()}
    documents |= {file.document.file: file.document for file in loaded.parts_files}
    documents |= {loaded.moved.document.file: loaded.moved.document} if loaded.moved else {}
    yield from run(by_scope["book"], loaded, None, given, documents)


def _of_map(rules: list[Rule], file: MapFile, given: Given) -> list[Problem]:
    found = list(run(rules, file, file.document, given))
    if not any(problem.rule in UNPLACEABLE for problem in found):
        found += _placed(file, given)
    echoes = _ECHOES if any(problem.rule in _ECHOED for problem in found) else frozenset()
    return [problem for problem in found if problem.rule not in echoes]


def _placed(file: MapFile, given: Given) -> Iterator[Problem]:
    try:
        rim = place(file.frame)
    except Exception as error:
        yield own_fault("Placing the holes", file.document.file, error)
        return
    yield from run(RIM_RULES, PlacedMap(file.frame, file.document, rim), file.document, given)


def _unread(loaded: Loaded, folder: str) -> frozenset[str]:
    """Names of the files in one folder of the book that have problems of reading."""
    paths = [PurePosixPath(problem.file) for problem in loaded.problems]
    return frozenset(path.stem for path in paths if path.parts[1:2] == (folder,))
