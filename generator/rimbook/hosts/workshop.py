"""A whole book made into entries: by as many processes as there is work for, and only where it changed."""

from __future__ import annotations

import os
import shutil
import tempfile
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from concurrent.futures import ProcessPoolExecutor
from concurrent.futures.process import BrokenProcessPool
from contextlib import suppress
from dataclasses import dataclass, field
from datetime import date
from functools import partial
from multiprocessing import get_context
from pathlib import Path
from weakref import finalize

from rimbook.bench.check import check
from rimbook.bench.thresholds import DEFAULT, Thresholds
from rimbook.book.load import (
    MovedFile,
    PartsFile,
    catalogue,
    linked_folders,
    load_book,
    load_clubs,
    load_moved,
    load_parts,
    map_paths,
)
from rimbook.book.model import Book, Club, Frame, Moved
from rimbook.book.problems import Problem
from rimbook.book.report import Extent, people
from rimbook.book.rules import RULES
from rimbook.book.rules.rule import Given
from rimbook.book.rules.run import run
from rimbook.hosts import making
from rimbook.hosts.across import agrees
from rimbook.hosts.cache import Cache, State, digest, program_version, write_whole
from rimbook.hosts.history import history
from rimbook.hosts.kept_prints import kept_prints
from rimbook.hosts.making import Bench, Made
from rimbook.hosts.processes import settle, start_method
from rimbook.hosts.progress import Tell, progress
from rimbook.site.entry import Content
from rimbook.site.publish import Source
from rimbook.site.sold import sets_of

FEW = 24
"""So many maps are made sooner than another process has started."""

CLUB_RULES = tuple(rule for rule in RULES if rule.scope == "club")

_WRONG: Mapping[State, str] = {"damaged": "were damaged", "foreign": "were from another version"}


class WrongBook(Exception):
    """The book has errors; the text is that of `rimbook check`."""


@dataclass
class Workshop:
    """Makes the entries of a book and hands them out.

    `folder` is the book's folder, `cache` where entries are kept between builds, `thresholds` the bench's.
    It may be used again after the book has changed; then it does only what is new: `known` has what came
    of each map the last time.
    """

    folder: Path
    cache: Path
    tell: Tell = print
    thresholds: Thresholds = DEFAULT
    known: dict[str, Made] = field(default_factory=dict, repr=False)
    spill: Path | None = field(default=None, repr=False)

    def source(self) -> Source:
        """Check and make everything. Raises WrongBook where the book has errors."""
        parts_files, problems = load_parts(self.folder)
        bench = self._bench(parts_files)
        paths = {path.stem: path for path in map_paths(self.folder)}
        made = list(self._made(bench, list(paths.values())))
        self.known = {each.slug: each._replace(problems=()) for each in made if each.brief is not None}
        problems += tuple(problem for each in made for problem in each.problems)
        moved, of_moved = load_moved(self.folder)
        problems += (*of_moved, *linked_folders(self.folder))
        if any(problem.severity == "error" for problem in problems):
            raise WrongBook(people(problems, _extent(len(paths), parts_files)))
        twice = len(paths) < len(map_paths(self.folder))
        if twice or not self._agrees(bench, parts_files, moved, paths, made):
            raise WrongBook(self._all_that_is_wrong())
        briefs = [each.brief for each in made if each.brief is not None]
        if warnings := sum(brief.warnings for brief in briefs):
            self.tell(f"{warnings:,} warnings in the maps: rimbook check tells them")
        return Source(
            summaries=[brief.summary for brief in briefs],
            fetch=lambda slug: self._fetch(bench, paths[slug]),
            catalogue=bench.parts,
            record=lambda slug: self._record(bench, paths[slug]),
            clubs=self._clubs(bench, paths),
            keep=kept_prints(self.cache / "prints"),
            moved=moved.moved if moved else Moved(),
            history=partial(history, self.folder, self.cache / "history"),
        )

    def _clubs(self, bench: Bench, paths: Mapping[str, Path]) -> Mapping[str, Club]:
        """The clubs of the book, held against the frames that they name."""
        files, problems = load_clubs(self.folder)
        named = {each.frame for file in files.values() for each in file.club.frames} & paths.keys()
        frames = {slug: self._record(bench, paths[slug]) for slug in sorted(named)}
        given = Given(Book(frames, bench.parts), bench.today)
        problems += tuple(
            problem for file in files.values() for problem in run(CLUB_RULES, file, file.document, given)
        )
        if any(problem.severity == "error" for problem in problems):
            raise WrongBook(self._all_that_is_wrong())
        return {slug: file.club for slug, file in files.items()}

    def _bench(self, parts_files: tuple[PartsFile, ...]) -> Bench:
        if self.spill is None:
            self.spill = Path(tempfile.mkdtemp(prefix="rimbook-"))
            finalize(self, shutil.rmtree, self.spill, ignore_errors=True)
        parts = catalogue(parts_files)
        return Bench(
            folder=self.folder,
            parts=parts,
            given=digest(*(repr(each).encode() for each in (self.thresholds, *parts.values()))),
            sets=sets_of(parts),
            thresholds=self.thresholds,
            cache=Cache(self.cache, self.spill),
            today=date.today(),
        )

    def _made(self, bench: Bench, paths: Sequence[Path]) -> Iterator[Made]:
        """What came of each map: first those that were kept, then those made now."""
        left: list[Path] = []
        states: Counter[State] = Counter()
        for path in paths:
            key = bench.key(path)
            known = self.known.get(path.stem)
            if known is not None and known.key == key:
                yield known
                continue
            brief, state = making.remembered(bench, path.stem, key)
            states[state] += 1
            if brief is None:
                left.append(path)
            else:
                yield Made(path.stem, key, brief)
        for wrong, words in _WRONG.items():
            if states[wrong]:
                self.tell(f"{states[wrong]:,} kept entries in {self.cache} {words} and are made anew")
        spilt = False
        new = _many(bench, left) if len(left) > FEW else _few(bench, left)
        for made in progress(new, len(left), "maps drawn", self.tell):
            spilt = spilt or made.spilt
            yield made
        if spilt:
            self.tell(f"nothing can be kept in {self.cache}: the next build starts from nothing")

    def _agrees(
        self,
        bench: Bench,
        parts_files: Sequence[PartsFile],
        moved: MovedFile | None,
        paths: Mapping[str, Path],
        made: Sequence[Made],
    ) -> bool:
        """Whether the maps and parts agree with each other. What agreed before is not asked again."""
        texts = [file.document.text for file in parts_files]
        texts += [moved.document.text] if moved else []
        everything = [program_version(), bench.today.isoformat(), *texts, *(each.key for each in made)]
        name = digest(*(piece.encode() for piece in everything)).encode()
        verdict = self.cache / "agreed"
        if _content(verdict) == name:
            return True
        briefs = {each.slug: each.brief for each in made if each.brief is not None}
        about = {slug: brief.about for slug, brief in briefs.items()}
        across = {slug: brief.across for slug, brief in briefs.items() if brief.across}
        whole = partial(self._records, bench, paths)
        if len(briefs) < len(made) or not agrees(about, parts_files, moved, across, bench.today, whole):
            return False
        with suppress(OSError):
            write_whole(verdict, name)
        return True

    def _records(self, bench: Bench, paths: Mapping[str, Path]) -> dict[str, Frame]:
        return {slug: self._record(bench, path) for slug, path in paths.items()}

    def _record(self, bench: Bench, path: Path) -> Frame:
        try:
            return making.record(bench, path)
        except LookupError:  # it was changed since it was made, and is wrong now
            raise WrongBook(self._all_that_is_wrong()) from None

    def _fetch(self, bench: Bench, path: Path) -> Content:
        try:
            return making.fetch(bench, path)
        except LookupError:
            raise WrongBook(self._all_that_is_wrong()) from None

    def _all_that_is_wrong(self) -> str:
        """The report of a book that is read once more as a whole."""
        loaded = load_book(self.folder)
        problems: tuple[Problem, ...] = check(loaded)
        if not any(problem.severity == "error" for problem in problems):
            return "The maps were changed while they were read. Build again."
        return people(problems, _extent(loaded.map_count, loaded.parts_files))


def _extent(maps: int, parts_files: Iterable[PartsFile]) -> Extent:
    return Extent(maps, sum(len(file.parts) for file in parts_files))


def _few(bench: Bench, left: Iterable[Path]) -> Iterator[Made]:
    for path in left:
        yield making.make(bench, path)


def _many(bench: Bench, left: Sequence[Path]) -> Iterator[Made]:
    """Spread over processes; where they cannot be had, one after the other."""
    done = 0
    program_version()  # here, so that no process has to work it out by itself
    try:
        with ProcessPoolExecutor(
            os.cpu_count(), mp_context=get_context(start_method()), initializer=_set_up, initargs=(bench,)
        ) as pool:
            for made in pool.map(_make, left, chunksize=8):
                done += 1
                yield made
    except (BrokenProcessPool, OSError):
        yield from _few(bench, left[done:])


_BENCH: list[Bench] = []


def _set_up(bench: Bench) -> None:
    _BENCH[:] = [bench]
    settle()


def _make(path: Path) -> Made:
    return making.make(_BENCH[0], path)


def _content(file: Path) -> bytes:
    try:
        return file.read_bytes()
    except OSError:
        return b""
