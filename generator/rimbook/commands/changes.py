"""`rimbook changes`: what differs between two states of the book."""

from __future__ import annotations

import json
import os
import sys
import tempfile
from argparse import ArgumentParser, Namespace
from dataclasses import asdict
from pathlib import Path

from rimbook.book.forge_words import as_data, as_property, no_commands
from rimbook.book.load import Loaded, load_book, map_paths
from rimbook.commands import NOTHING_WRONG, Subparsers, add_book, called_wrongly, no_book
from rimbook.hosts.alone import write_alone
from rimbook.hosts.states import NoSuchState, state_at
from rimbook.site.changes.of_book import Changes, compare
from rimbook.site.changes.page import as_markdown, as_text, changes_page


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "changes",
        help="say what changed in the book",
        description="Compare the book with an older state of it: sentences, what follows elsewhere, and what "
        "can break for those who use the data.",
    )
    parser.add_argument("base", metavar="BASE", help="a commit, branch or tag of git, or a folder")
    add_book(parser)
    parser.add_argument(
        "--as",
        dest="form",
        choices=("people", "forge", "json"),
        default="people",
        help="how to print: for people, for a forge's log and summary, or as JSON (default: people)",
    )
    parser.add_argument("--pages", type=Path, metavar="DIR", help="write drawings before and after there too")
    parser.add_argument(
        "--site",
        default="../site/",
        metavar="URL",
        help="the way from those drawings to the built site (default: ../site/)",
    )
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    if fault := no_book(args.book):
        return called_wrongly("changes", fault)
    with tempfile.TemporaryDirectory(prefix="rimbook-") as folder:
        try:
            base = load_book(state_at(args.base, args.book, Path(folder)))
        except NoSuchState as none:
            return called_wrongly("changes", str(none))
    now = load_book(args.book)
    unread = {path.stem for path in map_paths(args.book)} - now.maps.keys()
    changes = compare(base.book, now.book, unread=unread)
    if args.pages:
        page = changes_page(changes, base.book, now.book, now.book.moved.frames, args.site)
        write_alone(args.pages, "What changes", page)
    _print(changes, args.form, now)
    return NOTHING_WRONG


def _print(changes: Changes, form: str, now: Loaded) -> None:
    if form == "json":
        told = [asdict(change) | {"holes": list(map(str, change.holes))} for change in changes.changes]
        whole = {"format": 1, "changes": told, "follows": changes.follows}
        print(json.dumps(whole, indent=2))
        return
    if form == "forge":
        for change in changes.breaking:
            file = now.maps.get(change.id)
            where = f"file={as_property(file.document.file)}," if file else ""
            print(
                f"::warning {where}title=can break what others use::{as_data(f'{change.id}: {change.text}')}"
            )
        summary = os.environ.get("GITHUB_STEP_SUMMARY")
        if summary:
            with Path(summary).open("a", encoding="utf-8") as stream:
                stream.write(as_markdown(changes))
        sys.stdout.write(no_commands(as_text(changes)))
        return
    sys.stdout.write(as_text(changes))
