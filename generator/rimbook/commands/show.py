"""`rimbook show`: draw one map and open the drawing."""

from __future__ import annotations

import tempfile
import webbrowser
from argparse import ArgumentParser, Namespace
from pathlib import Path

from rimbook.bench.check import check
from rimbook.book.load import load_book
from rimbook.commands import ERRORS_FOUND, NOTHING_WRONG, Subparsers, called_wrongly
from rimbook.commands.check import book_folder
from rimbook.hosts.alone import write_alone
from rimbook.site.one_map import one_map


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "show",
        help="draw one map and open the drawing",
        description="Draw one map, with all that is wrong with it, and open the drawing in a browser.",
    )
    parser.add_argument("file", type=Path, metavar="FILE", help="a map inside a book")
    parser.add_argument("--out", type=Path, metavar="DIR", help="where to write (default: a new folder)")
    parser.add_argument("--no-open", action="store_true", help="only write, and say where")
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    if not args.file.is_file():
        return called_wrongly("show", f"There is no {args.file} here.")
    folder = book_folder(args.file.absolute().parent)
    if folder is None:
        return called_wrongly("show", f"{args.file} lies in no book.")
    loaded = load_book(folder)
    path = args.file.absolute().parent.resolve() / args.file.name
    name = f"{folder.name}/{path.relative_to(folder).as_posix()}"
    problems = [problem for problem in check(loaded) if problem.file == name]
    found = [file.frame for file in loaded.maps.values() if file.document.file == name]
    is_drawable = found and not any(problem.severity == "error" for problem in problems)
    title = found[0].name if found else args.file.name
    body = one_map(title, found[0] if is_drawable else None, loaded.book.parts, problems)
    page = write_alone(args.out or Path(tempfile.mkdtemp(prefix="rimbook-show-")), title, body)
    print(page)
    if not args.no_open:
        webbrowser.open(page.absolute().as_uri())
    return NOTHING_WRONG if is_drawable else ERRORS_FOUND
