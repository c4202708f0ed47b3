"""`rimbook shelf`: what a club keeps of each part, and what to order today."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace, RawDescriptionHelpFormatter
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from rimbook.bench.answers import Answers
from rimbook.bench.part_index import index_parts
from rimbook.bench.shelf_files import Fault, Prices, read_prices, read_used
from rimbook.bench.shelf_plan import plan, stocked
from rimbook.bench.shelf_terms import terms_of
from rimbook.bench.shelf_update import learn
from rimbook.book.load import load_book
from rimbook.book.model import Club, Shelf
from rimbook.commands import (
    ERRORS_FOUND,
    EXIT_CODES,
    NOTHING_WRONG,
    Subparsers,
    add_book,
    called_wrongly,
    errors_told,
    no_book,
    say,
    to_choose_from,
)
from rimbook.site.shelf_csv import shelf_rows
from rimbook.site.shelf_report import lessons, report


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "shelf",
        help="plan a club's shelf of parts",
        description="Say what a club keeps of each part, what to order today and why, and what cannot\n"
        "be planned. What the club's file leaves out is assumed, and said to be.",
        epilog="A price list has the columns kind, part, count, price, currency, seller, as the site's page\n"
        "of prices saves it. For the parts in its rows of kind shelf, these stand in place of the stock in\n"
        "the club's file. It stays on this machine.\n\n"
        "A file of counts has the columns part, count, weeks: so many pieces were used in so many weeks\n"
        "(no weeks: a year).\n\n" + EXIT_CODES,
        formatter_class=RawDescriptionHelpFormatter,
    )
    parser.add_argument("club", metavar="CLUB", help="the club, by the name of its file")
    parser.add_argument("--service", type=float, metavar="LEVEL", help="service level between 0 and 1")
    parser.add_argument("--prices", type=Path, metavar="FILE", help="price list and stock (CSV)")
    parser.add_argument("--used", type=Path, metavar="FILE", help="counts of what was used (CSV)")
    parser.add_argument("--csv", type=Path, metavar="FILE", help="write the plan there as a table as well")
    add_book(parser)
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    if fault := no_book(args.book):
        return called_wrongly("shelf", fault)
    loaded = load_book(args.book)
    if errors_told(loaded):
        return ERRORS_FOUND
    book, slug = loaded.book, Path(args.club).name.removesuffix(".yaml")
    if slug not in book.clubs:
        return called_wrongly("shelf", f"There is no club {args.club!r}.{to_choose_from(slug, book.clubs)}")
    club = book.clubs[slug]
    try:
        prices, wrong_prices = read_prices(_text(args.prices)) if args.prices else (Prices(), ())
        used, wrong_counts = read_used(_text(args.used)) if args.used else ((), ())
        shelf = plan(
            _with_stock(club, prices),
            book.frames,
            Answers(index_parts(book.parts)),
            terms_of(club, args.service),
        )
    except OSError as error:
        return called_wrongly("shelf", f"{error.filename} cannot be read: {error.strerror}.")
    except ValueError as error:
        return called_wrongly("shelf", str(error))
    _faults(args.prices, wrong_prices)
    _faults(args.used, wrong_counts)
    if used:
        filled, learned, unknown = learn(shelf.drawers, used, shelf.terms)
        for each in unknown:
            say("shelf", f"{args.used}: no drawer of this shelf has {each.part}; its count is left out.")
        print("\n".join(lessons(learned, book.parts)))
        stock = club.shelf.stock if club.shelf else {}
        shelf = stocked(shelf, filled, {**stock, **prices.shelf}, book.parts)
    names = {slug: frame.name for slug, frame in book.frames.items()}
    print("\n".join(report(shelf, book.parts, names, prices)))
    if args.csv:
        try:
            args.csv.write_bytes(shelf_rows(shelf, book.parts))
        except OSError as error:
            return called_wrongly("shelf", f"{args.csv} cannot be written: {error.strerror}.")
    return ERRORS_FOUND if wrong_prices or wrong_counts else NOTHING_WRONG


def _with_stock(club: Club, prices: Prices) -> Club:
    """The club with what a shop's list says is on its shelf."""
    shelf = club.shelf or Shelf()
    return replace(club, shelf=replace(shelf, stock={**shelf.stock, **prices.shelf}))


def _text(path: Path) -> str:
    """Raises ValueError where it is no text."""
    try:
        return path.read_text(encoding="utf-8")
    except UnicodeError:
        raise ValueError(f"{path} is no text in UTF-8: save the table as CSV in UTF-8.") from None


def _faults(path: Path, faults: Iterable[Fault]) -> None:
    for fault in faults:
        say("shelf", f"{path}:{fault.row}: {fault.message}")
