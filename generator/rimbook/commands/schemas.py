"""`rimbook schemas`: write the JSON Schemas of maps, parts files and data files."""

from __future__ import annotations

from argparse import ArgumentParser, Namespace
from pathlib import Path

from rimbook.commands import CALLED_WRONGLY, NOTHING_WRONG, Subparsers, say
from rimbook.site.schemas import SCHEMAS, schema_text


def add(subparsers: Subparsers) -> None:
    parser: ArgumentParser = subparsers.add_parser(
        "schemas",
        help="write the JSON Schemas, for editors and for other programs",
        description="Write the JSON Schemas of maps, parts files and data files into a folder.",
    )
    parser.add_argument(
        "folder", type=Path, metavar="DIR", help="where to write; files of the same name are replaced"
    )
    parser.set_defaults(run=run)


def run(args: Namespace) -> int:
    try:
        args.folder.mkdir(parents=True, exist_ok=True)
        for name in SCHEMAS:
            (args.folder / name).write_bytes(schema_text(name))
    except OSError as error:
        say("schemas", f"cannot write into {args.folder}: {error.strerror}.")
        return CALLED_WRONGLY
    print(f"{len(SCHEMAS)} schemas in {args.folder}")
    return NOTHING_WRONG
