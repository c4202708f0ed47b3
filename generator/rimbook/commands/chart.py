"""`rimbook chart`: a wall chart of one frame, or of all frames of a club."""

from __future__ import annotations

import os
from argparse import ArgumentParser, ArgumentTypeError, Namespace
from dataclasses import replace
from pathlib import Path
from typing import get_args

from rimbook.book.load import Loaded, load_book
from rimbook.book.model import Catalogue, PaperName
from rimbook.commands import (
    ERRORS_FOUND,
    NOTHING_WRONG,
    Subparsers,
    add_book,
    called_wrongly,
    did_you_mean,
    errors_told,
    no_book,
    say,
)
from rimbook.draw.chart import Look, Shown, TooSmall, chart_pdf, chart_svg, unprinted
from rimbook.draw.lettering import NEAREST_M
from rimbook.draw.paper import PAPERS
from rimbook.draw.typeset import Unprintable
from rimbook.rim.place import place
from rimbook.site.links import frame_path
from rimbook.site.prints import club_look, club_shown, frame_look


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "chart",
        help="print a wall chart of a frame or a club",
        description="Write a wall chart as PDF or SVG: one frame large, or every frame of a club.",
    )
    parser.add_argument(
        "name", metavar="FRAME|CLUB", help="a frame or a club, by its file's name without .yaml"
    )
    add_book(parser)
    parser.add_argument(
        "--paper", choices=get_args(PaperName), help="default: A2, or what the club's file says"
    )
    way = parser.add_mutually_exclusive_group()
    way.add_argument("--landscape", action="store_true", default=None, help="hang it wide")
    way.add_argument("--portrait", dest="landscape", action="store_false", help="hang it high (default)")
    parser.add_argument(
        "--black-and-white", action="store_true", default=None, help="for a printer without colours"
    )
    parser.add_argument(
        "--distance",
        type=_distance,
        metavar="METRES",
        help="from how far it must be read; a paper too small for that is refused "
        "(default: what the club's file says; a frame is drawn as large as the paper allows)",
    )
    parser.add_argument("--format", choices=("pdf", "svg"), default="pdf", help="default: pdf")
    parser.add_argument(
        "--out", type=Path, metavar="FILE", help="default: the name, the paper and the format"
    )
    parser.add_argument(
        "--fonts",
        type=Path,
        action="append",
        default=[],
        metavar="DIR",
        help="a folder with fonts for scripts that ours has not; may be given again",
    )
    parser.add_argument(
        "--site-url",
        default=os.environ.get("RIMBOOK_SITE_URL") or None,
        metavar="URL",
        help="address of the published site, for codes to scan (default: RIMBOOK_SITE_URL)",
    )
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    if fault := no_book(args.book):
        return called_wrongly("chart", fault)
    if lost := next((folder for folder in args.fonts if not folder.is_dir()), None):
        return called_wrongly("chart", f"There is no folder {lost} with fonts.")
    loaded = load_book(args.book)
    if errors_told(loaded):
        return ERRORS_FOUND
    name = args.name.removesuffix(".yaml")
    if name not in loaded.maps and name not in loaded.clubs:
        meant = did_you_mean(name, [*loaded.maps, *loaded.clubs])
        return called_wrongly("chart", f"There is no frame and no club {args.name} in {args.book}.{meant}")
    shown, look = _asked(loaded, name, args)
    try:
        for line in unprinted(shown, loaded.book.parts, look):
            say("chart", f"no font for {line}. Give a folder with --fonts.")
        files = _write(shown, loaded.book.parts, look, args, name)
    except TooSmall as error:
        say("chart", str(error))
        return ERRORS_FOUND
    except Unprintable as error:
        return called_wrongly("chart", str(error))
    except OSError as error:
        return called_wrongly("chart", f"{args.out} cannot be written: {error.strerror}.")
    print("\n".join(map(str, files)))
    return NOTHING_WRONG


def _asked(loaded: Loaded, name: str, args: Namespace) -> tuple[tuple[Shown, ...], Look]:
    url = f"{args.site_url.rstrip('/')}/" if args.site_url else None
    if name in loaded.maps:
        frame = loaded.maps[name].frame
        shown: tuple[Shown, ...] = (Shown(place(frame), frame_path(name)),)
        look = frame_look(frame, args.paper or "A2", url)
    else:
        club = loaded.clubs[name].club
        shown = club_shown(club, [loaded.maps[each.frame].frame for each in club.frames])
        look = club_look(club, url)
    paper = PAPERS[args.paper] if args.paper else look.paper
    landscape = look.paper.landscape if args.landscape is None else args.landscape
    return shown, replace(
        look,
        paper=paper.turned(landscape=landscape),
        distance_m=args.distance or look.distance_m,
        black_and_white=look.black_and_white if args.black_and_white is None else args.black_and_white,
        fonts=tuple(folder.resolve() for folder in args.fonts),
    )


def _write(
    shown: tuple[Shown, ...], catalogue: Catalogue, look: Look, args: Namespace, name: str
) -> list[Path]:
    out: Path = args.out or Path(f"{name}-chart-{look.paper.name.lower()}.{args.format}")
    if args.format == "pdf":
        out.write_bytes(chart_pdf(shown, catalogue, look))
        return [out]
    sheets = chart_svg(shown, catalogue, look)
    files = (
        [out] if len(sheets) == 1 else [out.with_stem(f"{out.stem}-{n}") for n in range(1, len(sheets) + 1)]
    )
    for file, sheet in zip(files, sheets, strict=True):
        file.write_bytes(sheet)
    return files


def _distance(text: str) -> float:
    try:
        value = float(text)
    except ValueError:
        value = 0.0
    if not NEAREST_M <= value <= 20:
        raise ArgumentTypeError(f"{text} is no distance: {NEAREST_M} to 20 metres")
    return value
