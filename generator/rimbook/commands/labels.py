"""`rimbook labels`: labels for the drawers of parts."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace, RawDescriptionHelpFormatter
from collections.abc import Iterable
from dataclasses import replace
from pathlib import Path

from rimbook.book.load import load_book
from rimbook.book.model import LabelSheet
from rimbook.commands import (
    ERRORS_FOUND,
    EXIT_CODES,
    NOTHING_WRONG,
    Subparsers,
    add_book,
    add_fonts,
    called_wrongly,
    errors_told,
    no_book,
    to_choose_from,
)
from rimbook.draw.labels_sheet import labels_pdf
from rimbook.draw.paper import PAPERS
from rimbook.draw.typeset import Unprintable
from rimbook.site.drawer_labels import club_labels, drawer_labels

SHEET = LabelSheet()


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "labels",
        help="print labels for the drawers of parts",
        description="Write labels for the drawers of parts as a PDF: of the drawers that a club's shelf\n"
        "keeps filled, of all parts that its frames take where it has no shelf, or of the parts you name.\n"
        "Count the rows and columns of your sheet of labels and measure its margins and gaps; try the grid\n"
        "on plain paper first, with --borders.",
        epilog=EXIT_CODES,
        formatter_class=RawDescriptionHelpFormatter,
    )
    which = parser.add_mutually_exclusive_group(required=True)
    which.add_argument("club", nargs="?", metavar="CLUB", help="the drawers of a club, by its file's name")
    which.add_argument("--parts", nargs="+", metavar="PART", help="these parts, by catalogue id")
    grid = parser.add_argument_group("the sheet of labels, in millimetres")
    grid.add_argument("--rows", type=int, help=f"default: the club's, or {SHEET.rows}")
    grid.add_argument("--columns", type=int, help=f"default: the club's, or {SHEET.columns}")
    grid.add_argument(
        "--margins",
        type=float,
        nargs=4,
        metavar=("TOP", "RIGHT", "BOTTOM", "LEFT"),
        help=f"white edges of the paper (default: the club's, or {_list(SHEET.margins_mm)})",
    )
    grid.add_argument(
        "--gap",
        type=float,
        nargs=2,
        metavar=("ACROSS", "DOWN"),
        help=f"from label to label (default: the club's, or {_list(SHEET.gap_mm)})",
    )
    grid.add_argument("--paper", choices=PAPERS, help=f"default: the club's, or {SHEET.paper}")
    grid.add_argument(
        "--skip", type=int, default=0, metavar="N", help="so many labels of the first sheet are used already"
    )
    grid.add_argument("--borders", action="store_true", help="draw the edge of every label")
    parser.add_argument(
        "--site-url", metavar="URL", help="where the site of this book lies: each label gets a code to scan"
    )
    add_book(parser)
    add_fonts(parser)
    parser.add_argument(
        "--out",
        type=Path,
        default=Path("labels.pdf"),
        metavar="FILE",
        help="where to write (default: labels.pdf)",
    )
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    if fault := no_book(args.book):
        return called_wrongly("labels", fault)
    loaded = load_book(args.book)
    if errors_told(loaded):
        return ERRORS_FOUND
    book = loaded.book
    asked, known = ([args.club], book.clubs) if args.club else (args.parts, book.parts)
    for each in asked:
        if each not in known:
            what = "club" if args.club else "part"
            return called_wrongly("labels", f"There is no {what} {each!r}.{to_choose_from(each, known)}")
    club = book.clubs[args.club] if args.club else None
    slugs = [each.frame for each in club.frames] if club else list(book.frames)
    frames = [book.frames[slug] for slug in dict.fromkeys(slugs)]
    try:
        wanted = (
            club_labels(club, frames, book.parts, args.site_url)
            if club
            else drawer_labels(args.parts, frames, book.parts, args.site_url)
        )
        if club and club.shelf and not wanted:
            return called_wrongly(
                "labels", f"The shelf that {club.source} plans keeps nothing in any drawer."
            )
        pdf = labels_pdf(
            wanted,
            book.parts,
            _sheet(args, club.labels if club else SHEET),
            skip=args.skip,
            borders=args.borders,
            fonts=tuple(args.fonts),
        )
    except (ValueError, Unprintable) as error:
        return called_wrongly("labels", str(error))
    try:
        args.out.write_bytes(pdf)
    except OSError as error:
        return called_wrongly("labels", f"{args.out} cannot be written: {error.strerror}.")
    print(f"{args.out}\nPrint it at 100 %, on plain paper first, and hold it against a sheet of labels.")
    return NOTHING_WRONG


def _sheet(args: Namespace, usual: LabelSheet) -> LabelSheet:
    """The usual sheet with what was typed in its place."""
    typed = {
        "paper": args.paper,
        "rows": args.rows,
        "columns": args.columns,
        "margins_mm": args.margins and tuple(args.margins),
        "gap_mm": args.gap and tuple(args.gap),
    }
    return replace(usual, **{name: value for name, value in typed.items() if value is not None})


def _list(sizes: Iterable[float]) -> str:
    return " ".join(f"{size:g}" for size in sizes)
