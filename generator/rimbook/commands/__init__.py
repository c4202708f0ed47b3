"""The commands, one a file: each module here has `add(subparsers)` and `run(args) -> int`."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace, _SubParsersAction
from collections.abc import Iterable, Iterator
from importlib import import_module
from pathlib import Path
from pkgutil import iter_modules
from typing import TYPE_CHECKING, Protocol, cast

from rimbook.bench.check import check as checked
from rimbook.book.load import Loaded
from rimbook.book.problems import nearest
from rimbook.book.report import Extent, people

if TYPE_CHECKING:
    Subparsers = _SubParsersAction[ArgumentParser]
else:
    Subparsers = _SubParsersAction


NOTHING_WRONG = 0
ERRORS_FOUND = 1
CALLED_WRONGLY = 2
OWN_FAULT = 3

MOST_TOLD = 8
"""So many choices are told where none is near."""

EXIT_CODES = """\
exit codes:
  0  nothing is wrong (warnings and notes are allowed)
  1  there are errors in what people wrote
  2  the command was called wrongly
  3  rimbook itself failed: its own fault, not yours
"""


class Command(Protocol):
    """What a module of this package offers. `add` sets `run` as the default of its parser."""

    def add(self, subparsers: Subparsers) -> None: ...

    def run(self, args: Namespace) -> int: ...


def commands() -> Iterator[Command]:
    """Every command, by name."""
    for name in sorted(module.name for module in iter_modules(__path__)):
        yield cast(Command, import_module(f"{__name__}.{name}"))


def add_book(parser: ArgumentParser) -> None:
    """The option `--book`, the same for every command that reads a whole book."""
    parser.add_argument(
        "--book", type=Path, default=Path("frames"), help="the book's folder (default: frames)", metavar="DIR"
    )


def add_fonts(parser: ArgumentParser) -> None:
    """The option `--fonts` of what is printed with names from a book."""
    parser.add_argument(
        "--fonts",
        type=Path,
        action="append",
        default=[],
        metavar="DIR",
        help="a folder with fonts for names in other scripts; may be given again",
    )


def no_book(folder: Path) -> str | None:
    """Why a folder is no book, or None where it is one."""
    return None if (folder / "maps").is_dir() else f"{folder} is no book: it has no folder maps."


def errors_told(loaded: Loaded) -> bool:
    """Say what is wrong in a book that something is to be made from. Gives whether anything is."""
    errors = [problem for problem in checked(loaded) if problem.severity == "error"]
    if errors:
        extent = Extent(loaded.map_count, len(loaded.book.parts), len(loaded.clubs))
        print(people(errors, extent), end="", file=sys.stderr)
    return bool(errors)


def did_you_mean(word: str, choices: Iterable[str]) -> str:
    """The nearest choice as a question to put behind a sentence, or nothing where none is near."""
    near = nearest(word, choices)
    return f" Did you mean {near}?" if near else ""


def to_choose_from(word: str, choices: Iterable[str]) -> str:
    """The nearest choice, or where none is near the first of all, to put behind a sentence."""
    known = sorted(choices)
    more = " …" if len(known) > MOST_TOLD else ""
    few = f" There is {', '.join(known[:MOST_TOLD])}{more}." if known else ""
    return did_you_mean(word, known) or few


def say(command: str, *lines: str) -> None:
    """Tell a person something beside the output."""
    for line in lines:
        print(f"rimbook {command}: {line}", file=sys.stderr)


def called_wrongly(command: str, *lines: str) -> int:
    """Say what is wrong with a call. Gives the exit code for it."""
    say(command, *lines)
    return CALLED_WRONGLY
