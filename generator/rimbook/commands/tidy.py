"""`rimbook tidy`: bring files of the book into its own form."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from collections.abc import Sequence
from pathlib import Path

from rimbook.book.reader import Unreadable, read
from rimbook.book.tidy import CannotTidy, tidy
from rimbook.book.written import WrittenFrame, WrittenParts
from rimbook.commands import ERRORS_FOUND, NOTHING_WRONG, Subparsers, called_wrongly

_ORDERS: dict[str, Sequence[str]] = {
    "maps": tuple(WrittenFrame.model_fields),
    "parts": tuple(WrittenParts.model_fields),
}


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "tidy",
        help="bring maps and parts into the book's form",
        description="Put the keys in the order of the guide and take away stray blanks. Comments stay with "
        "what they stand above, and no fact is touched.",
    )
    parser.add_argument("files", nargs="+", type=Path, metavar="FILE")
    parser.add_argument(
        "--only-say", action="store_true", help="name the files that would change, and end with 1"
    )
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    changed = 0
    failed = False
    for file in args.files:
        order = _ORDERS.get(file.absolute().parent.name, ())
        if file.is_symlink() or not file.is_file():
            return called_wrongly("tidy", f"{file} is not a plain file.")
        try:
            source = file.read_bytes()
            text = tidy(read(source, str(file)), order)
        except Unreadable as unreadable:
            for problem in unreadable.problems:
                print(f"{problem.file}:{problem.line}:{problem.column}: {problem.message}", file=sys.stderr)
            failed = True
            continue
        except CannotTidy:
            print(f"{file}: left alone, since tidying would change what it says.", file=sys.stderr)
            continue
        if text.encode() == source:
            continue
        changed += 1
        print(file)
        if not args.only_say:
            file.write_text(text, "utf-8", newline="\n")
    if failed or (args.only_say and changed):
        return ERRORS_FOUND
    return NOTHING_WRONG
