"""`rimbook pages`: write the generated site as plain files."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace
from pathlib import Path

from rimbook.commands import ERRORS_FOUND, NOTHING_WRONG, Subparsers, add_book, called_wrongly, no_book
from rimbook.hosts.plain import CannotWrite, write_plain
from rimbook.hosts.workshop import Workshop, WrongBook
from rimbook.site.publish import publish
from rimbook.site.settings import Settings


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "pages",
        help="write the generated pages as plain files",
        description="Write all generated pages and data files below a folder, for any server of files.",
    )
    parser.add_argument(
        "folder", type=Path, metavar="DIR", help="where to write; files of the same name are replaced"
    )
    add_book(parser)
    parser.add_argument(
        "--cache",
        type=Path,
        default=Path(".cache/rimbook"),
        help="where finished entries are kept between builds (default: .cache/rimbook)",
        metavar="DIR",
    )
    parser.add_argument(
        "--edit-base", metavar="URL", help="web address to which the path of a file is added to correct it"
    )
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    if fault := no_book(args.book):
        return called_wrongly("pages", fault)
    settings = Settings(args.edit_base)
    workshop = Workshop(args.book, args.cache, lambda words: print(words, file=sys.stderr))
    try:
        count = write_plain(publish(workshop.source(), settings), args.folder)
    except WrongBook as wrong:
        print(wrong, file=sys.stderr)
        return ERRORS_FOUND
    except CannotWrite as why:
        return called_wrongly("pages", f"cannot write into {args.folder}: {why}.")
    print(f"{count:,} pages in {args.folder}")
    return NOTHING_WRONG
