"""What changed in the book lately, out of the history that git keeps.

Each commit that touches the book is held against the one before it. Only the maps it changed are read, with
the catalogue of both sides, so that a large book costs no more than a small one; what came out is kept by the
pair of commits. Where there is no git, or no history, the page says so and nothing fails.
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator, Sequence
from contextlib import suppress
from datetime import date
from pathlib import Path, PurePosixPath
from typing import NamedTuple

from pydantic import TypeAdapter, ValidationError

from rimbook.book.load import Loaded, load_book
from rimbook.hosts.cache import digest, program_version, write_whole
from rimbook.hosts.states import git, unpack
from rimbook.site.changes.change import Change
from rimbook.site.changes.of_book import compare
from rimbook.site.history_page import MOST_SENTENCES, History, Step, Told, unknown_history

MOST_STEPS = 30
MOST_MAPS = 200
"""A commit that touches more maps than this is counted, not told."""

_STEP = TypeAdapter(Step)


class Commit(NamedTuple):
    """A commit that touched the book, the one before it (empty for the first of all), and its day."""

    name: str
    before: str
    on: date


def history(book: Path, kept: Path) -> History:
    """The latest steps of a book. `kept` is the folder in which finished steps are kept."""
    if git(book, "rev-parse", "--verify", "--quiet", "HEAD") is None:
        return unknown_history()
    commits = list(_commits(book))
    shallow = git(book, "rev-parse", "--is-shallow-repository") == b"true\n"
    steps = [step for commit in commits[:MOST_STEPS] if (step := _step(book, commit, kept, shallow=shallow))]
    if shallow and not steps:
        return History(why_not="Only the newest state of the book is at hand here, not its history.")
    return History(tuple(steps), cut=shallow or len(commits) > MOST_STEPS)


def _commits(book: Path) -> Iterator[Commit]:
    """The commits of the main line that touch the book, the newest first; one more than is told."""
    asked = ("--first-parent", "--no-show-signature", f"--max-count={MOST_STEPS + 1}", "--format=%H %P %cs")
    listed = git(book, "log", *asked, "--", ".")
    for line in (listed or b"").decode("ascii", "replace").splitlines():
        name, *before, on = line.split()
        yield Commit(name, before[0] if before else "", date.fromisoformat(on))


def _step(book: Path, commit: Commit, kept: Path, *, shallow: bool) -> Step | None:
    """What one commit changed, kept from build to build; None where it changed nothing that is told."""
    if shallow and not commit.before:
        return None  # what looks like the first of all is only the oldest at hand
    key = digest(program_version().encode(), commit.name.encode(), commit.before.encode())
    file = kept / f"{commit.name}.step"
    with suppress(OSError, ValidationError):
        head, _, data = file.read_bytes().partition(b"\n")
        if head.decode("ascii", "replace") == f"{key} {digest(data)}":
            step = _STEP.validate_json(data)
            return step if step.told or step.more else None
    step = _made(book, commit)
    data = _STEP.dump_json(step)
    with suppress(OSError):
        write_whole(file, f"{key} {digest(data)}\n".encode() + data)
    return step if step.told or step.more else None


def _made(book: Path, commit: Commit) -> Step:
    slugs = _touched(book, commit)
    if len(slugs) > MOST_MAPS:
        return Step(commit.on, (), len(slugs))
    with tempfile.TemporaryDirectory(prefix="rimbook-") as folder:
        before = _state(book, commit.before, slugs, Path(folder) / "before")
        after = _state(book, commit.name, slugs, Path(folder) / "after")
    unread = {slug for slug in slugs if _is_unread(slug, before) or _is_unread(slug, after)}
    changes = [
        change
        for change in compare(before.book, after.book).changes
        if change.thing == "part" or change.id not in unread
    ]
    told = tuple(Told(each.thing, each.id, each.text, each.breaking) for each in _ranked(changes))
    return Step(commit.on, told[:MOST_SENTENCES], max(0, len(told) - MOST_SENTENCES))


def _ranked(changes: Sequence[Change]) -> list[Change]:
    """As they were found; where not all can be told, what can break comes first."""
    if len(changes) <= MOST_SENTENCES:
        return list(changes)
    return sorted(changes, key=lambda change: not change.breaking)


def _touched(book: Path, commit: Commit) -> tuple[str, ...]:
    """The slugs of the maps that a commit touched."""
    empty = git(book, "hash-object", "-t", "tree", "--stdin") or b""
    before = commit.before or empty.decode("ascii", "replace").strip()
    listed = git(
        book, "diff", "--no-ext-diff", "--name-only", "--no-renames", "--relative", "-z", before, commit.name
    )
    paths = [PurePosixPath(name) for name in (listed or b"").decode("utf-8", "replace").split("\0") if name]
    return tuple(sorted({path.stem for path in paths if path.parts[:1] == ("maps",)}))


def _state(book: Path, commit: str, slugs: Sequence[str], into: Path) -> Loaded:
    """The catalogue and some maps as they were at a commit; nothing where there was no book."""
    for name in ("maps", "parts"):
        (into / name).mkdir(parents=True)
    listed = git(book, "ls-tree", "-r", "--name-only", "-z", commit) if commit else None
    names = (listed or b"").decode("utf-8", "replace").split("\0")
    wanted = [name for name in names if name and _is_wanted(PurePosixPath(name), slugs)]
    archive = git(book, "archive", "--format=tar", commit, "--", *wanted) if wanted else None
    if archive is not None:
        unpack(archive, into)
    return load_book(into)


def _is_wanted(path: PurePosixPath, slugs: Sequence[str]) -> bool:
    if path.parts[0] == "maps":
        return path.stem in slugs
    return path.parts[0] == "parts" or path == PurePosixPath("moved.yaml")


def _is_unread(slug: str, state: Loaded) -> bool:
    """Whether a map was there and could not be read."""
    named = (PurePosixPath(problem.file) for problem in state.problems)
    return slug not in state.maps and any(path.stem == slug for path in named)
