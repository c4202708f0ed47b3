"""The tables for spreadsheets: whole, the same as the other data, and harmless."""

from __future__ import annotations

import csv
import io
import json
import re
from dataclasses import replace
from typing import Any

import pytest

from rimbook.bench.load import pull
from rimbook.bench.parts_list import regrommet
from rimbook.book.model import Book, Frame, Part
from rimbook.rim.place import place
from rimbook.site.csv_files import (
    FRAME_COLUMNS,
    HOLE_COLUMNS,
    PART_COLUMNS,
    frame_rows,
    hole_rows,
    part_rows,
    plain,
)
from rimbook.site.data_files import frame_data
from rimbook.site.pages import Asset
from rimbook.site.shelf_csv import COLUMNS as SHELF_COLUMNS
from rimbook.site.summary import summarise
from tests.site.sample import demo_book, demo_site, published, small_book, small_frame, small_parts

TABLES = [path for path in demo_site() if path.endswith(".csv")]
SLUGS = list(demo_book().frames)

# The grammar of RFC 4180, section 2, as one pattern; characters beyond ASCII as RFC 7111, section 2, allows.
FIELD = r'(?:"(?:[^"]|"")*"|[^",\x00-\x1f\x7f]*)'
RECORD = rf"{FIELD}(?:,{FIELD})*"
RFC_4180 = re.compile(rf"(?:{RECORD}\r\n)+")


def table(path: str) -> str:
    asset = demo_site()[path]
    assert isinstance(asset, Asset)
    return asset.data.decode()


def data(path: str) -> Any:
    asset = demo_site()[path]
    assert isinstance(asset, Asset)
    return json.loads(asset.data)


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text, newline=""), strict=True))


def holes_of(frame: Frame) -> list[dict[str, str]]:
    rim = place(frame)
    needed = regrommet(frame, small_parts())
    return rows(hole_rows(frame_data(rim, pull(rim), needed)).decode())


def test_there_is_a_table_for_each_frame_and_shelf_and_two_for_the_book() -> None:
    assert set(TABLES) == {
        "data/frames.csv",
        "data/parts.csv",
        *(f"data/frames/{slug}.csv" for slug in SLUGS),
        *(f"data/shelves/{slug}.csv" for slug in demo_book().clubs),
    }


@pytest.mark.parametrize("path", TABLES)
def test_a_table_keeps_to_rfc_4180(path: str) -> None:
    text = table(path)
    assert RFC_4180.fullmatch(text)
    own = {"data/frames.csv": FRAME_COLUMNS, "data/parts.csv": PART_COLUMNS}
    columns = SHELF_COLUMNS if path.startswith("data/shelves/") else own.get(path, HOLE_COLUMNS)
    lines = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert lines[0] == list(columns)
    assert {len(line) for line in lines} == {len(columns)}


@pytest.mark.parametrize(
    ("name", "written"),
    [
        ("b\r\nbb", '"b\r\nbb"'),  # RFC 4180, section 2, rule 6
        ('b"bb', '"b""bb"'),  # RFC 4180, section 2, rule 7
        ("b,bb", '"b,bb"'),  # RFC 4180, section 2, rule 6
        (" b ", " b "),  # RFC 4180, section 2, rule 4: spaces are part of a field
        ("Brachvogel 76 · Großer Brachvogel", "Brachvogel 76 · Großer Brachvogel"),
    ],
)
def test_text_comes_back_as_it_was(name: str, written: str) -> None:
    frame = replace(small_frame(), name=name)
    text = frame_rows([summarise(frame, regrommet(frame, small_parts()))]).decode()
    assert f",{written}," in text
    assert RFC_4180.fullmatch(text)
    assert rows(text)[0]["name"] == name


@pytest.mark.parametrize("slug", SLUGS)
def test_the_holes_are_those_of_the_other_data_to_the_last_digit(slug: str) -> None:
    found = data(f"data/frames/{slug}.json")["holes"]
    table_rows = rows(table(f"data/frames/{slug}.csv"))
    for hole, row in zip(found, table_rows, strict=True):
        assert row == {
            "address": hole["address"],
            "along_mm": str(hole["along_mm"]),
            "x_mm": str(hole["at_mm"][0]),
            "y_mm": str(hole["at_mm"][1]),
            "place": hole["place"],
            "passes": "+".join(hole["passes"]) or ".",
            "shared": "true" if len(hole["passes"]) == 2 else "false",
            "tie_off": "true" if hole["tie_off"] else "false",
            "bore_mm": "" if hole["bore_mm"] is None else str(hole["bore_mm"]),
            "rim_depth_mm": "" if hole["rim_depth_mm"] is None else str(hole["rim_depth_mm"]),
            "part": hole["part"] or "",
            "strip": hole["strip"] or "",
            "twin_with": hole["twin_with"] or "",
            "pull": str(hole["pull"]),
        }


def test_the_strings_of_a_hole_are_written_as_on_the_walk() -> None:
    """Common practice, no published source: a shared hole carries two strings."""
    by_address = {row["address"]: row for row in holes_of(small_frame())}
    assert by_address["R2"]["passes"] == "m2+c1"
    assert by_address["R2"]["shared"] == "true"
    assert by_address["R5"]["passes"] == "."
    assert by_address["R5"]["shared"] == "false"


def test_the_two_holes_of_a_twin_name_each_other() -> None:
    by_address = {row["address"]: row["twin_with"] for row in holes_of(small_frame())}
    assert by_address["R7"] == "L7"
    assert by_address["L7"] == "R7"
    assert by_address["R1"] == ""


def test_what_nobody_knows_is_an_empty_cell() -> None:
    row = next(row for row in holes_of(small_frame()) if row["address"] == "R4")
    assert [row[name] for name in ("bore_mm", "rim_depth_mm", "part")] == ["", "", ""]


def test_a_name_cannot_pass_for_the_list_of_holes() -> None:
    frame = replace(small_frame(), name='"holes":[]', maker='"holes":[')
    assert holes_of(frame) == holes_of(small_frame())


def test_the_frames_are_those_of_the_other_data() -> None:
    for frame, row in zip(data("data/frames.json")["frames"], rows(table("data/frames.csv")), strict=True):
        for key in ("slug", "name", "maker", "sport", "url"):
            assert row[key] == frame[key]
        for key in ("mains", "crosses", "holes"):
            assert int(row[key]) == frame[key]
        assert counts(row["bores"]) == frame["bores"]
        written = demo_book().frames[frame["slug"]]
        assert row["year"] == ("" if written.year is None else str(written.year))
        needed = data(f"data/frames/{frame['slug']}.json")["regrommet"]
        assert counts(row["parts"]) == {line["part"]: line["count"] for line in needed if line["part"]}
        unknown = [line["count"] for line in needed if line["part"] is None]
        assert int(row["unknown_parts"]) == sum(unknown)


def test_the_parts_are_those_of_the_other_data() -> None:
    for part, row in zip(data("data/parts.json")["parts"], rows(table("data/parts.csv")), strict=True):
        for key in ("id", "name", "kind", "url"):
            assert row[key] == part[key]
        for key in ("barrel_mm", "bore_mm", "flange_mm", "pitch_mm", "tolerance_mm", "posts"):
            assert row[key] == ("" if part[key] is None else str(part[key]))
        lengths = [row["length_mm"], row["second_length_mm"]]
        assert [float(length) for length in lengths if length] == (part["length_mm"] or [])
        assert [int(pack) for pack in row["packs"].split()] == part["packs"]
        assert row["frames"].split() == part["frames"]
        assert counts(row["contains"]) == part["contains"]
        assert row["bumper"] == ("true" if part["bumper"] else "false")
        assert row["measured_by"] == (part["measured"]["by"] if part["measured"] else "")


def counts(cell: str) -> dict[str, int]:
    return {name: int(count) for name, count in (pair.rsplit("=", 1) for pair in cell.split())}


# The beginnings are those of OWASP, "CSV Injection", and of ASVS 5.0, requirement 1.2.10; the wide forms of
# the signs, and the semicolon that parts cells in some countries, from memory.
FORMULAS = [
    ('=HYPERLINK("//example.org")', '\'=HYPERLINK("//example.org")'),
    ("+1+1", "'+1+1"),
    ("-1+1", "'-1+1"),
    ("@SUM(A1)", "'@SUM(A1)"),
    ("\t=1+1", "'\t'=1+1"),
    ("\r=1+1", "'\r'=1+1"),
    ("\n=1+1", "'\n'=1+1"),
    ("\0=1+1", "'\0=1+1"),
    (" =1+1", "' =1+1"),
    ("＝1+1", "'＝1+1"),
    ("－1", "'－1"),
    ("Wren;=1+1", "Wren;'=1+1"),
    ("Wren; @x", "Wren;' @x"),
    ("Wren\t-1", "Wren\t'-1"),
]


@pytest.mark.parametrize(("text", "guarded"), FORMULAS)
def test_no_text_is_taken_for_a_formula(text: str, guarded: str) -> None:
    assert plain(text) == guarded


@pytest.mark.parametrize(
    "text", ["Plover 76", "m9+c1", "2.1=60 2.7=16", "twin-21", "a;b", "a @ b", "'quoted'", "", None]
)
def test_other_text_stays_as_it_is(text: str | None) -> None:
    assert plain(text) == text


def test_no_cell_of_a_hostile_book_begins_as_a_formula() -> None:
    bad = "=1+1"
    frame = small_frame()
    strips = tuple(replace(strip, name=bad, part=bad) for strip in frame.strips)
    holes = tuple(replace(hole, part=bad) for hole in frame.holes)
    frame = replace(frame, name=bad, maker=bad, source=bad, strips=strips, holes=holes)
    parts = {
        each.id: replace(each, name=bad, maker=bad, material=bad, source=bad)
        for each in (*small_parts().values(), Part(bad, bad, "set", contains={bad: 1}, frames=(bad,)))
    }
    site = published(Book({frame.slug: frame}, parts))
    seen = 0
    for path, asset in site.items():
        if isinstance(asset, Asset) and path.endswith(".csv"):
            for row in rows(asset.data.decode()):
                assert [cell for cell in row.values() if cell.startswith("=")] == []
                seen += sum(cell.startswith("'=1+1") for cell in row.values())
    assert seen > 40


def test_a_negative_number_stays_a_number() -> None:
    row = next(row for row in holes_of(small_frame()) if row["address"] == "L2")
    assert float(row["x_mm"]) < 0


def test_the_same_book_gives_the_same_bytes() -> None:
    one, other = published(small_book()), published(small_book())
    for path in (path for path in one if path.endswith(".csv")):
        first, second = one[path], other[path]
        assert isinstance(first, Asset)
        assert isinstance(second, Asset)
        assert first.data == second.data


def test_a_catalogue_without_parts_is_a_line_of_names() -> None:
    assert part_rows({}) == (",".join(PART_COLUMNS) + "\r\n").encode()
