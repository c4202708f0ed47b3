"""One file of the book, taken all the way: read, checked, and drawn where nothing is wrong with it."""

from __future__ import annotations

import time
import traceback
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from pathlib import Path
from random import Random

from rimbook.bench.answers import Answers
from rimbook.bench.check import check
from rimbook.bench.part_index import index_parts
from rimbook.book.load import Loaded, MovedFile, PartsFile, club_from, load_book, map_from
from rimbook.book.model import Moved
from rimbook.book.problems import Problem
from rimbook.book.reader import Document, Unreadable, read
from rimbook.book.report import Extent, as_json, forge, people
from rimbook.book.rules.run import OWN_FAULT_RULE
from rimbook.book.settle import settle_part
from rimbook.book.shape import hold
from rimbook.book.written import WrittenParts
from rimbook.book.written_moved import WrittenMoved
from rimbook.rim.place import place
from rimbook.site.entry import entry
from rimbook.site.sold import sets_of
from tests.fuzz.mutate import mutated

FRAMES = Path(__file__).parents[2] / "frames"
TODAY = date(2026, 11, 30)

MOST_SECONDS = 20.0
"""Of the processor, for one file: hundreds of times what an honest one takes, so only a runaway fails."""


@dataclass(frozen=True, slots=True)
class Fault:
    """A file that the program stumbled over, and how."""

    seed: int
    file: str
    source: bytes
    words: str


@cache
def demo() -> Loaded:
    """The demo book, into which one wrong file is put at a time."""
    return load_book(FRAMES)


@cache
def sources() -> tuple[tuple[str, bytes], ...]:
    """Every file of the demo book, by its path within the book."""
    return tuple(
        (path.relative_to(FRAMES).as_posix(), path.read_bytes()) for path in sorted(FRAMES.rglob("*.yaml"))
    )


def judged(seed: int) -> Fault | None:
    """One mutated file of the demo book. The same seed gives the same file."""
    random = Random(seed)
    file, source = random.choice(sources())
    source = mutated(source, random)
    words = fault_of(file, source)
    return Fault(seed, file, source, words) if words else None


def fault_of(file: str, source: bytes) -> str | None:
    """What goes wrong with a file besides its problems: a traceback, an own fault, or too long a time."""
    start = time.process_time()
    try:
        problems = _problems(file, source)
    except Exception:
        return traceback.format_exc(limit=-6)
    seconds = time.process_time() - start
    if seconds > MOST_SECONDS:
        return f"It took {seconds:.1f} s."
    own = [problem for problem in problems if problem.rule == OWN_FAULT_RULE]
    return f"{own[0].message} {own[0].found}" if own else None


def _problems(file: str, source: bytes) -> tuple[Problem, ...]:
    try:
        document = read(source, f"frames/{file}")
        loaded = _with(file, document)
    except Unreadable as unreadable:
        loaded = replace(demo(), problems=unreadable.problems)
    problems = check(loaded, TODAY)
    extent = Extent(loaded.map_count, 1)
    for text in (people(problems, extent, notes=True), forge(problems, extent), as_json(problems, extent)):
        text.encode()
    _draw(file, loaded, problems)
    return problems


def _with(file: str, document: Document) -> Loaded:
    """The demo book with one file put in the place of the one it had."""
    book, kind, slug = demo(), file.split("/")[0], Path(file).stem
    if kind == "maps":
        one, problems = map_from(document, slug, book.book.parts)
        maps = (
            {**book.maps, slug: one} if one else {key: each for key, each in book.maps.items() if key != slug}
        )
        return replace(book, maps=maps, problems=problems)
    if kind == "clubs":
        club, problems = club_from(document, slug)
        return replace(book, clubs={slug: club} if club else {}, problems=problems)
    if kind == "parts":
        written, problems = hold(document, WrittenParts)
        files = [each for each in book.parts_files if each.document.file != document.file]
        if written:
            parts = {key: settle_part(key, part, document.file) for key, part in written.parts.items()}
            files.append(PartsFile(parts, document))
        return replace(book, parts_files=tuple(files), problems=problems)
    names, problems = hold(document, WrittenMoved)
    moved = MovedFile(Moved(names.frames, names.parts), document) if names else None
    return replace(book, moved=moved, problems=problems)


def _draw(file: str, loaded: Loaded, problems: tuple[Problem, ...]) -> None:
    """The page of a map with which nothing is wrong."""
    slug = Path(file).stem
    wrong = any(problem.severity == "error" for problem in problems)
    if file.startswith("maps/") and slug in loaded.maps and not wrong:
        parts = loaded.book.parts
        entry(place(loaded.maps[slug].frame), sets_of(parts), Answers(index_parts(parts)))
