"""Read the folder `frames/`: the catalogue first, then every map against it.

One bad file never hides another: whatever can be read is read, and all
problems are handed back together.
"""

from __future__ import annotations

import os
import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from stat import S_ISREG

from rimbook.book.model import Book, Catalogue, Club, Frame, Moved, Part
from rimbook.book.problems import Problem
from rimbook.book.reader import MAX_BYTES, Document, Unreadable, read
from rimbook.book.settle import settle_frame, settle_part
from rimbook.book.settle_club import settle_club
from rimbook.book.shape import hold
from rimbook.book.text import hidden_character, shown
from rimbook.book.written import WrittenFrame, WrittenParts
from rimbook.book.written_club import WrittenClub
from rimbook.book.written_moved import WrittenMoved
from rimbook.book.written_values import MAX_SLUG, SLUG

RULE = "readable"
FOLDERS = ("maps", "parts", "clubs")


@dataclass(frozen=True, slots=True, eq=False)
class MapFile:
    """A map that could be read: its record, and the text it came from. It equals itself alone."""

    frame: Frame
    document: Document


@dataclass(frozen=True, slots=True)
class PartsFile:
    """A catalogue file that could be read."""

    parts: Mapping[str, Part]
    document: Document


@dataclass(frozen=True, slots=True)
class ClubFile:
    """A club file that could be read."""

    club: Club
    document: Document


@dataclass(frozen=True, slots=True)
class MovedFile:
    """The file of moved names, if it could be read."""

    moved: Moved
    document: Document


@dataclass(frozen=True, slots=True)
class Loaded:
    """All that could be read of a book, and all that stood in the way."""

    maps: Mapping[str, MapFile]
    parts_files: tuple[PartsFile, ...]
    problems: tuple[Problem, ...]
    map_count: int
    clubs: Mapping[str, ClubFile] = field(default_factory=dict)
    moved: MovedFile | None = None

    @property
    def book(self) -> Book:
        """The records alone."""
        frames = {slug: file.frame for slug, file in self.maps.items()}
        clubs = {slug: file.club for slug, file in self.clubs.items()}
        moved = self.moved.moved if self.moved else Moved()
        return Book(frames, catalogue(self.parts_files), clubs, moved)


def load_book(folder: Path) -> Loaded:
    """Read everything below `folder`. File names in problems begin with its name."""
    parts_files, problems = load_parts(folder)
    parts = catalogue(parts_files)
    maps: dict[str, MapFile] = {}
    paths = map_paths(folder)
    for path in paths:
        loaded, found = load_map(path, parts, folder)
        problems += found
        if loaded and loaded.frame.slug in maps:
            first = maps[loaded.frame.slug].document.file
            message = f"There is a map of this name already: {first}."
            problems += (loaded.document.problem(RULE, (), message, tip="Rename one of the two files."),)
        elif loaded:
            maps[loaded.frame.slug] = loaded
    clubs, of_clubs = load_clubs(folder)
    moved, of_moved = load_moved(folder)
    problems += (*of_clubs, *of_moved, *linked_folders(folder))
    return Loaded(maps, parts_files, problems, len(paths), clubs, moved)


def catalogue(files: tuple[PartsFile, ...]) -> Catalogue:
    """All parts of all files, by id; where two files give one id, the first stands."""
    parts: dict[str, Part] = {}
    for file in files:
        for part_id, part in file.parts.items():
            parts.setdefault(part_id, part)
    return dict(sorted(parts.items()))


def map_paths(folder: Path) -> list[Path]:
    """Every map of a book, in the order of its slugs."""
    return _yaml_files(folder / "maps")


def load_parts(folder: Path) -> tuple[tuple[PartsFile, ...], tuple[Problem, ...]]:
    """Read the catalogue below `folder`."""
    files: list[PartsFile] = []
    problems: tuple[Problem, ...] = ()
    for path in _yaml_files(folder / "parts"):
        name = display_name(path, folder)
        document, found = _document(path, name)
        if hidden_character(name):
            message = f"The file name {shown(path.name)} holds what nobody can read."
            problems += (Problem(RULE, "error", name, 1, 1, message, tip="Rename the file."),)
        elif document:
            written, more = hold(document, WrittenParts)
            found += more
            if written:
                parts = {key: settle_part(key, part, name) for key, part in written.parts.items()}
                files.append(PartsFile(parts, document))
        problems += found
    return tuple(files), problems


def load_clubs(folder: Path) -> tuple[Mapping[str, ClubFile], tuple[Problem, ...]]:
    """Read the clubs below `folder`, in order of slug. A book need not have any."""
    clubs: dict[str, ClubFile] = {}
    problems: tuple[Problem, ...] = ()
    for path in _yaml_files(folder / "clubs"):
        document, found = _document(path, display_name(path, folder))
        problems += found
        if document is None:
            continue
        club, found = club_from(document, path.stem)
        problems += found
        if club and path.stem in clubs:
            message = f"There is a club of this name already: {clubs[path.stem].document.file}."
            problems += (document.problem(RULE, (), message, tip="Rename one of the two files."),)
        elif club:
            clubs[path.stem] = club
    return clubs, problems


def club_from(document: Document, slug: str) -> tuple[ClubFile | None, tuple[Problem, ...]]:
    """A club from a document that was read already."""
    if fault := _no_slug(slug, document):
        return None, (fault,)
    written, problems = hold(document, WrittenClub)
    return (ClubFile(settle_club(slug, written, document.file), document) if written else None), problems


def load_moved(folder: Path) -> tuple[MovedFile | None, tuple[Problem, ...]]:
    """Read the moved names of a book, `moved.yaml`. A book need not have any."""
    path = folder / "moved.yaml"
    if not path.exists() and not path.is_symlink():
        return None, ()
    document, problems = _document(path, display_name(path, folder))
    if document is None:
        return None, problems
    written, problems = hold(document, WrittenMoved)
    return (MovedFile(Moved(written.frames, written.parts), document) if written else None), problems


def linked_folders(folder: Path) -> tuple[Problem, ...]:
    """A problem for each folder of the book that is only a link: what lies behind it is not read."""
    found = [folder / name for name in FOLDERS if (folder / name).is_symlink()]
    for name in FOLDERS:
        for top, folders, _ in os.walk(folder / name) if folder / name not in found else ():
            found += [path for path in map(Path(top).joinpath, folders) if path.is_symlink()]
    message = "This folder is a link to another place; what lies there is not read."
    return tuple(Problem(RULE, "error", display_name(path, folder), 1, 1, message) for path in sorted(found))


def load_map(
    path: Path, parts: Catalogue, folder: Path, source: bytes | None = None
) -> tuple[MapFile | None, tuple[Problem, ...]]:
    """Read one map against the catalogue. `source` is its content, where that is at hand."""
    name = display_name(path, folder)
    document, problems = _document(path, name, source)
    if document is None:
        return None, problems
    return map_from(document, path.stem, parts)


def map_from(document: Document, slug: str, parts: Catalogue) -> tuple[MapFile | None, tuple[Problem, ...]]:
    """A map from a document that was read already."""
    if fault := _no_slug(slug, document):
        return None, (fault,)
    written, problems = hold(document, WrittenFrame)
    if written is None:
        return None, problems
    frame, problems = settle_frame(slug, written, document, parts)
    return (MapFile(frame, document) if frame else None), problems


def _no_slug(slug: str, document: Document) -> Problem | None:
    if re.fullmatch(SLUG, slug) and len(slug) <= MAX_SLUG:
        return None
    message = f"The file name {shown(slug)} cannot be an address of a page."
    return document.problem(
        RULE, (), message, expected=f"small letters, digits and single hyphens, at most {MAX_SLUG}"
    )


def display_name(path: Path, folder: Path) -> str:
    """How a file is named to people: from the book's folder on, with forward slashes."""
    return f"{folder.name}/{path.relative_to(folder).as_posix()}"


def _yaml_files(folder: Path) -> list[Path]:
    if folder.is_symlink():
        return []
    found = (path for pattern in ("*.yaml", "*.yml") for path in folder.rglob(pattern))
    return sorted(found, key=lambda path: (path.stem, path.as_posix()))


def content(path: Path) -> bytes | None:
    """What a plain file holds, up to one byte more than is ever read. None where it is no plain file.

    Raises OSError where it cannot be read.
    """
    if not S_ISREG(path.lstat().st_mode):
        return None
    with path.open("rb") as stream:
        return stream.read(MAX_BYTES + 1)


def _document(
    path: Path, name: str, source: bytes | None = None
) -> tuple[Document | None, tuple[Problem, ...]]:
    try:
        if source is None:
            source = content(path)
        if source is None:
            raise Unreadable([Problem(RULE, "error", name, 1, 1, "This is not a plain file.")])
        if len(source) > MAX_BYTES:
            size = path.stat().st_size
            message = f"The file has {size:,} bytes; at most {MAX_BYTES:,} are read."
            raise Unreadable([Problem(RULE, "error", name, 1, 1, message)])
        return read(source, name), ()
    except Unreadable as unreadable:
        return None, unreadable.problems
    except OSError as error:
        return None, (Problem(RULE, "error", name, 1, 1, f"The file cannot be read: {error.strerror}."),)
