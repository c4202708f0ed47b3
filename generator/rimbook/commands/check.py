"""`rimbook check`: hold maps, parts and clubs against the rules, and say what is wrong where."""

from __future__ import annotations

import os
import sys
from argparse import ArgumentParser, Namespace, RawDescriptionHelpFormatter
from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

from rimbook.bench.check import check
from rimbook.book.load import load_book, map_paths
from rimbook.book.problems import Problem
from rimbook.book.report import Extent, as_json, forge, people
from rimbook.book.rules.run import OWN_FAULT_RULE
from rimbook.commands import (
    ERRORS_FOUND,
    EXIT_CODES,
    NOTHING_WRONG,
    OWN_FAULT,
    Subparsers,
    called_wrongly,
)


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "check",
        help="check maps, parts and clubs",
        description="Check maps, parts and clubs. The whole book is read in any case, since maps name parts\n"
        "and sets name maps; only problems in the given files or folders are told.",
        epilog=EXIT_CODES,
        formatter_class=RawDescriptionHelpFormatter,
    )
    parser.add_argument(
        "paths",
        nargs="*",
        type=Path,
        default=[Path("frames")],
        metavar="PATH",
        help="a book's folder, or files or folders inside it (default: frames)",
    )
    parser.add_argument(
        "--as",
        dest="form",
        choices=("people", "forge", "json"),
        default="people",
        help="how to print: for people, as annotations of a forge, or as JSON (default: people)",
    )
    parser.add_argument("--notes", action="store_true", help="tell the notes too, not only their number")
    parser.add_argument(
        "--warnings-fail", action="store_true", help="end with code 1 on warnings as well as on errors"
    )
    parser.add_argument(
        "--changed-from",
        type=Path,
        metavar="FILE",
        help="with --as forge: a list of changed files, one a line, that come first (- reads the list "
        "from standard input)",
    )
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    asked: dict[Path, list[Path]] = {}
    for given in args.paths:
        path = _absolute(given)
        folder = book_folder(path)
        if folder is None:
            return called_wrongly(
                "check",
                f"{given} lies in no book." if path.exists() else f"There is no {given} here.",
                "A book is a folder with the folders maps and parts in it; frames, usually.",
            )
        asked.setdefault(folder, []).append(path)
    try:
        changed = _changed(args.changed_from)
    except OSError as error:
        return called_wrongly("check", f"{args.changed_from} cannot be read: {error.strerror}.")
    problems: list[Problem] = []
    extent = Extent(0, 0)
    for folder, paths in asked.items():
        found, part_of_it = _check_book(folder, paths)
        problems += found
        extent = Extent(
            extent.maps + part_of_it.maps,
            extent.parts + part_of_it.parts,
            extent.clubs + part_of_it.clubs,
            extent.moved + part_of_it.moved,
        )
    if extent == Extent(0, 0) and not problems:
        return called_wrongly("check", f"There is no map and no part in {' or '.join(map(str, args.paths))}.")
    if args.form == "json":
        text = as_json(problems, extent)
    elif args.form == "forge":
        text = forge(problems, extent, changed=changed, notes=args.notes)
    else:
        text = people(problems, extent, colour=_colour(), notes=args.notes)
    sys.stdout.write(_printable(text))
    return _code(problems, warnings_fail=args.warnings_fail)


def book_folder(path: Path) -> Path | None:
    """The book that a path is, or lies in: the nearest folder that holds `maps` and `parts`."""
    if not path.exists():
        return None
    folders = (path, *path.parents)
    return next((folder for folder in folders if all((folder / n).is_dir() for n in ("maps", "parts"))), None)


def _check_book(folder: Path, paths: Sequence[Path]) -> tuple[list[Problem], Extent]:
    """The problems in the files and folders asked for, and how much these hold.

    Files are named as seen from here, so that an editor finds them. Rimbook's
    own faults are told wherever they come up.
    """
    loaded = load_book(folder)

    def asked(path: Path) -> bool:
        return any(path.is_relative_to(one) for one in paths)

    problems = [
        replace(problem, file=_from_here(folder.parent / problem.file))
        for problem in check(loaded)
        if problem.rule == OWN_FAULT_RULE or asked(folder.parent / problem.file)
    ]
    maps = sum(asked(path) for path in map_paths(folder))
    parts = sum(len(file.parts) for file in loaded.parts_files if asked(folder.parent / file.document.file))
    clubs = sum(asked(folder.parent / file.document.file) for file in loaded.clubs.values())
    moved = 0
    if loaded.moved and asked(folder.parent / loaded.moved.document.file):
        moved = len(loaded.moved.moved.frames) + len(loaded.moved.moved.parts)
    return problems, Extent(maps, parts, clubs, moved)


def _absolute(path: Path) -> Path:
    """The whole path. A link that is a file stays one: the reader refuses it by its own name."""
    return path.resolve() if path.is_dir() else path.parent.resolve() / path.name


def _from_here(path: Path) -> str:
    return Path(os.path.relpath(path)).as_posix()


def _changed(path: Path | None) -> frozenset[str]:
    if path is None:
        return frozenset()
    text = sys.stdin.read() if str(path) == "-" else path.read_text("utf-8", "replace")
    return frozenset(line.strip() for line in text.splitlines() if line.strip())


def _colour() -> bool:
    """Colour on a terminal alone, and never where NO_COLOR is set (https://no-color.org)."""
    return sys.stdout.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


def _printable(text: str) -> str:
    """The text as the terminal's encoding can carry it."""
    encoding = sys.stdout.encoding or "utf-8"
    return text.encode(encoding, "backslashreplace").decode(encoding)


def _code(problems: Sequence[Problem], *, warnings_fail: bool) -> int:
    if any(problem.rule == OWN_FAULT_RULE for problem in problems):
        return OWN_FAULT
    failing = ("error", "warning") if warnings_fail else ("error",)
    return ERRORS_FOUND if any(problem.severity in failing for problem in problems) else NOTHING_WRONG
