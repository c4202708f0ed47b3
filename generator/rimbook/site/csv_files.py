"""The book as tables for spreadsheets and for programs that read CSV.

RFC 4180: a comma between cells, CRLF after each line, quotes where a cell needs them. UTF-8
without a byte order mark, one line of column names. What is unknown is an empty cell.
Removing or renaming a column is a breaking change; a new one goes to the right end.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache

from rimbook.book.model import Catalogue, Part
from rimbook.site.links import frame_path, link, part_path
from rimbook.site.summary import Summary

FRAMES_TABLE = "data/frames.csv"
PARTS_TABLE = "data/parts.csv"

HOLE_COLUMNS = (
    "address",
    "along_mm",
    "x_mm",
    "y_mm",
    "place",
    "passes",
    "shared",
    "tie_off",
    "bore_mm",
    "rim_depth_mm",
    "part",
    "strip",
    "twin_with",
    "pull",
)
FRAME_COLUMNS = (
    "slug",
    "name",
    "maker",
    "sport",
    "year",
    "variant_of",
    "mains",
    "crosses",
    "holes",
    "bores",
    "parts",
    "unknown_parts",
    "source",
    "url",
)
PART_COLUMNS = (
    "id",
    "name",
    "kind",
    "maker",
    "barrel_mm",
    "bore_mm",
    "length_mm",
    "second_length_mm",
    "flange_mm",
    "pitch_mm",
    "tolerance_mm",
    "posts",
    "bumper",
    "contains",
    "frames",
    "packs",
    "material",
    "measured_by",
    "measured_on",
    "source",
    "url",
)

Cell = str | int | float | None

# A spreadsheet takes text that begins so for a formula. Some also begin a new cell at a semicolon, a tab
# or a line end, and some take the wide forms of the signs for the signs.
_FORMULA = re.compile(r"(?:^|(?<=[;\t\r\n]))(?= *[=+\-@＝＋－＠])|^(?=[\t\r\n\0])")

# Outline and path, most of a frame's data, are not read. No text can hold the key: its quotes are escaped.
_HOLES = '"holes":'
_DIGITS = json.JSONDecoder(parse_float=str)


def frame_table(slug: str) -> str:
    """Where a frame's table lies."""
    return f"data/frames/{slug}.csv"


def hole_rows(data: str) -> bytes:
    """A frame's holes, one a row, from its JSON: the same digits, without working anything out again."""
    holes, _ = _DIGITS.raw_decode(data, data.index(_HOLES) + len(_HOLES))
    return table(
        HOLE_COLUMNS,
        [
            (
                hole["address"],
                hole["along_mm"],
                *hole["at_mm"],
                hole["place"],
                "+".join(hole["passes"]) or ".",
                _yes(len(hole["passes"]) > 1),
                _yes(hole["tie_off"]),
                hole["bore_mm"],
                hole["rim_depth_mm"],
                plain(hole["part"]),
                plain(hole["strip"]),
                hole["twin_with"],
                hole["pull"],
            )
            for hole in holes
        ],
    )


def frame_rows(summaries: Iterable[Summary]) -> bytes:
    """All frames, one a row."""
    return table(
        FRAME_COLUMNS,
        (
            (
                frame.slug,
                plain(frame.name),
                plain(frame.maker),
                frame.sport,
                frame.year,
                frame.variant_of,
                frame.mains,
                frame.crosses,
                frame.holes,
                plain(_counts(frame.bores)),
                plain(_counts(frame.parts)),
                frame.unknown_parts,
                plain(frame.source),
                link("", frame_path(frame.slug)),
            )
            for frame in summaries
        ),
    )


def part_rows(catalogue: Catalogue) -> bytes:
    """All parts, one a row."""
    return table(PART_COLUMNS, map(_part, catalogue.values()))


def _part(part: Part) -> Sequence[Cell]:
    lengths = part.length_mm or ()
    measured = part.measured
    return (
        plain(part.id),
        plain(part.name),
        part.kind,
        plain(part.maker),
        part.barrel_mm,
        part.bore_mm,
        lengths[0] if lengths else None,
        lengths[1] if len(lengths) > 1 else None,
        part.flange_mm,
        part.pitch_mm,
        part.tolerance_mm,
        part.posts,
        _yes(part.bumper),
        plain(_counts(part.contains)),
        plain(" ".join(part.frames)),
        " ".join(map(str, part.packs)),
        plain(part.material),
        plain(measured.by) if measured else None,
        measured.on.isoformat() if measured and measured.on else None,
        plain(part.source),
        link("", part_path(part.id)),
    )


@lru_cache(maxsize=1024)
def plain(text: str | None) -> str | None:
    """Text as a cell that no spreadsheet takes for a formula: an apostrophe goes before such a beginning."""
    return _FORMULA.sub("'", text) if text else text


def _counts(counts: Mapping[str, int]) -> str:
    """`2.1=60 2.7=16`: no spreadsheet makes a date or a time of it."""
    return " ".join(f"{name}={count}" for name, count in counts.items())


def _yes(value: bool) -> str:
    """As in JSON."""
    return "true" if value else "false"


def table(columns: Sequence[str], rows: Iterable[Sequence[Cell]]) -> bytes:
    """A whole file: the names of its columns, then its rows."""
    text = io.StringIO(newline="")
    writer = csv.writer(text, lineterminator="\r\n")
    writer.writerow(columns)
    writer.writerows(rows)
    return text.getvalue().encode()
