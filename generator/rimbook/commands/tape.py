"""`rimbook tape`: the rim of a frame as a paper tape, true to scale."""

from __future__ import annotations

import sys
from argparse import ArgumentParser, Namespace, RawDescriptionHelpFormatter
from pathlib import Path

from rimbook.book.load import load_book
from rimbook.book.report import Extent, people
from rimbook.commands import (
    ERRORS_FOUND,
    EXIT_CODES,
    NOTHING_WRONG,
    Subparsers,
    add_book,
    add_fonts,
    called_wrongly,
    did_you_mean,
    no_book,
    say,
)
from rimbook.draw.paper import PAPERS
from rimbook.draw.tape import outside_of
from rimbook.draw.tape_sheet import tape_pdf
from rimbook.draw.typeset import Unprintable
from rimbook.rim.path import NotDrawable
from rimbook.rim.place import place
from rimbook.rim.types import Rim


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "tape",
        help="print a frame's rim as a paper tape",
        description="Write the rim of a frame as a paper tape, true to scale, as a PDF. Print it at 100 %,\n"
        "measure its proof bar, and where that is off make the tape again with --measured.\n"
        "By itself the tape lies inside the head, on the line of the holes. For the outside, wind a strip\n"
        "of paper once round where the tape is to lie, measure it, and give its length with --round.",
        epilog=EXIT_CODES,
        formatter_class=RawDescriptionHelpFormatter,
    )
    parser.add_argument("frame", metavar="FRAME", help="a frame by the name of its map, as plover-76")
    parser.add_argument("--paper", choices=PAPERS, default="A4", help="default: A4")
    parser.add_argument(
        "--measured",
        type=float,
        default=100.0,
        metavar="MM",
        help="what the 100 mm of the proof bar measured on your print",
    )
    where = parser.add_mutually_exclusive_group()
    where.add_argument(
        "--round", type=float, metavar="MM", help="the way once round the outside, where the tape is to lie"
    )
    where.add_argument(
        "--outside", type=float, metavar="MM", help="how far outside the line of the holes it is to lie"
    )
    add_book(parser)
    add_fonts(parser)
    parser.add_argument("--out", type=Path, metavar="FILE", help="where to write (default: FRAME-tape.pdf)")
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    if fault := no_book(args.book):
        return called_wrongly("tape", fault)
    loaded = load_book(args.book)
    found = loaded.maps.get(args.frame)
    if found is None:
        own = [problem for problem in loaded.problems if Path(problem.file).stem == args.frame]
        if own:
            sys.stderr.write(people(own, Extent(maps=1, parts=0)))
            return ERRORS_FOUND
        return called_wrongly(
            "tape", f"There is no frame {args.frame!r}.{did_you_mean(args.frame, loaded.maps)}"
        )
    try:
        rim = place(found.frame)
        pdf = tape_pdf(
            rim,
            loaded.book.parts,
            paper=PAPERS[args.paper],
            measured_mm=args.measured,
            outside_mm=_outside(args, rim),
            fonts=tuple(args.fonts),
        )
    except NotDrawable as error:
        say("tape", f"{found.document.file}: {error}")
        return ERRORS_FOUND
    except (ValueError, Unprintable) as error:
        return called_wrongly("tape", str(error))
    file = args.out or Path(f"{args.frame}-tape.pdf")
    try:
        file.write_bytes(pdf)
    except OSError as error:
        return called_wrongly("tape", f"{file} cannot be written: {error.strerror}.")
    print(f"{file}\nPrint it at 100 %, and measure the bar before you cut.")
    return NOTHING_WRONG


def _outside(args: Namespace, rim: Rim) -> float | None:
    """How far outside the line of the holes. Raises ValueError where the way round is shorter than it."""
    if args.round is None:
        given: float | None = args.outside
        return given
    outside = outside_of(rim.curve, args.round)
    if not outside >= 0:
        raise ValueError(
            f"{args.round:g} mm is no way round the outside: the line of the holes is "
            f"{rim.curve.length_mm:.1f} mm long."
        )
    return outside
