"""`rimbook start`: write the beginning of a map, with a proposed walk."""

from __future__ import annotations

import re
import sys
from argparse import ArgumentParser, ArgumentTypeError, Namespace
from pathlib import Path
from typing import get_args

from rimbook.book.first_map import Beginning, first_map
from rimbook.book.limits import SMALLEST_HEAD_MM
from rimbook.book.model import Head, Sport
from rimbook.book.written_values import slug_of
from rimbook.commands import NOTHING_WRONG, Subparsers, add_book, called_wrongly
from rimbook.rim.propose import propose

_SIZE = re.compile(r"(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)")
_LARGEST_MM = 500.0


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "start",
        help="begin a map of a frame",
        description="Write a map to begin with: a proposed walk for you to put right, a word on every "
        "key, and unknown wherever nothing was measured yet.",
    )
    parser.add_argument("name", help="what is printed on the frame, as 'Sandpiper 76'")
    parser.add_argument("--maker", required=True, help="who makes it")
    parser.add_argument("--sport", required=True, choices=get_args(Sport))
    parser.add_argument("--mains", required=True, type=_count, help="how many, on both halves together")
    parser.add_argument("--crosses", required=True, type=_count)
    parser.add_argument(
        "--head",
        required=True,
        type=_size,
        metavar="WIDTHxHEIGHT",
        help="the line of the holes in millimetres, as 186x244",
    )
    parser.add_argument(
        "--exponent",
        type=float,
        help="for shoulders squarer than an ellipse: 2 is an ellipse, more is squarer",
    )
    parser.add_argument(
        "--holes", type=_count, help="how many the whole frame has; then as many are shared as that needs"
    )
    add_book(parser)
    parser.add_argument("--out", metavar="FILE", help="where to write; - prints (default: in the book)")
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    if args.mains % 2:
        return called_wrongly(
            "start", f"{args.mains} mains are not even: each half has as many as the other."
        )
    if args.exponent is not None and not 1.5 <= args.exponent <= 6:
        return called_wrongly("start", f"The exponent {args.exponent:g} is out of range: expected 1.5 to 6.")
    width, height = args.head
    head = Head("ellipse", width, height)
    if args.exponent not in (None, 2):
        head = Head("superellipse", width, height, args.exponent)
    known = Beginning(args.name, args.maker, args.sport, head, args.mains, args.crosses)
    text = first_map(known, propose(head, args.mains, args.crosses, args.holes))
    if args.out == "-":
        sys.stdout.write(text)
        return NOTHING_WRONG
    slug = slug_of(args.name)
    if not slug and not args.out:
        return called_wrongly("start", f"{args.name!r} gives no file name: say where to write with --out.")
    file = Path(args.out) if args.out else args.book / "maps" / f"{slug}.yaml"
    if not file.parent.is_dir():
        return called_wrongly("start", f"There is no folder {file.parent}.")
    try:
        with file.open("x", encoding="utf-8", newline="\n") as stream:
            stream.write(text)
    except FileExistsError:
        return called_wrongly("start", f"{file} is there already; nothing was written.")
    print(f"{file}\nPut the walk right with the racket in your hand, then: rimbook check {file}")
    return NOTHING_WRONG


def _count(text: str) -> int:
    if not re.fullmatch(r"[1-9]\d{0,2}", text):
        raise ArgumentTypeError(f"{text!r} is no count")
    return int(text)


def _size(text: str) -> tuple[float, float]:
    found = _SIZE.fullmatch(text.strip())
    if not found:
        raise ArgumentTypeError(f"{text!r} is no size: expected width and height, as 186x244")
    width, height = float(found[1]), float(found[2])
    if not all(SMALLEST_HEAD_MM <= side <= _LARGEST_MM for side in (width, height)):
        raise ArgumentTypeError(
            f"{text!r} is no head: expected {SMALLEST_HEAD_MM:g} to {_LARGEST_MM:g} mm each way"
        )
    return width, height
