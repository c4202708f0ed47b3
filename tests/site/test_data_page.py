"""The page on data for other programs: what it shows is what the files hold."""

from __future__ import annotations

import json
import re
from pathlib import Path
from typing import Any

import pytest

from rimbook.site.csv_files import FRAME_COLUMNS, HOLE_COLUMNS, PART_COLUMNS
from rimbook.site.pages import Asset
from rimbook.site.schemas import SCHEMAS, schema
from rimbook.site.shelf_csv import COLUMNS as SHELF_COLUMNS
from tests.site.sample import ROOT, demo_site

PAGE = (ROOT / "site_src" / "data.md").read_text("utf-8")
EXCERPTS = re.findall(r"^From `([^`]+)`:\n\n```(?:json|csv)\n(.*?)^```", PAGE, re.MULTILINE | re.DOTALL)
EXAMPLE = re.findall(r"^```python\n(.*?)^```", PAGE, re.MULTILINE | re.DOTALL)

# Each table of keys on the page in order: its schema, and the part of the schema it tells of.
KEY_TABLES = (
    ("data-frames.schema.json", "ListedFrame"),
    ("data-frame.schema.json", None),
    ("data-frame.schema.json", "Hole"),
    ("data-frame.schema.json", "Outline"),
    ("data-frame.schema.json", "StringPath"),
    ("data-frame.schema.json", "Leg"),
    ("data-frame.schema.json", "Needed"),
    ("data-frame.schema.json", "Measured"),
    ("data-frame.schema.json", "Confirmed"),
    ("data-parts.schema.json", "PartData"),
    ("data-parts.schema.json", "Measured"),
    ("data-moved.schema.json", None),
)


def text(path: str) -> str:
    asset = demo_site()[path]
    assert isinstance(asset, Asset)
    return asset.data.decode()


def within(excerpt: Any, whole: Any) -> bool:
    """Whether an excerpt is what the whole holds: every key of a mapping, some of the values of a list."""
    if isinstance(excerpt, dict):
        return list(excerpt) == list(whole) and all(within(excerpt[key], whole[key]) for key in excerpt)
    if isinstance(excerpt, list):
        return all(any(within(each, other) for other in whole) for each in excerpt)
    return type(excerpt) is type(whole) and excerpt == whole


def tables(head: str) -> list[list[list[str]]]:
    """The rows of every table with this head, cell by cell."""
    found = re.findall(rf"^{re.escape(head)}\n\| --- .*\n((?:\|.*\n)+)", PAGE, re.MULTILINE)
    return [
        [[cell.strip() for cell in row.strip("|").split(" | ")] for row in rows.splitlines()]
        for rows in found
    ]


def test_there_is_an_excerpt_of_each_kind_of_file() -> None:
    assert [path for path, _ in EXCERPTS] == [
        "data/frames.json",
        "data/frames/plover-76.json",
        "data/parts.json",
        "data/moved.json",
        "data/frames/plover-76.csv",
    ]


@pytest.mark.parametrize(("path", "excerpt"), EXCERPTS, ids=[path for path, _ in EXCERPTS])
def test_an_excerpt_is_what_the_file_holds(path: str, excerpt: str) -> None:
    if path.endswith(".csv"):
        lines = text(path).split("\r\n")
        head, *rows = excerpt.splitlines()
        assert head == lines[0]
        assert rows
        assert set(rows) <= set(lines[1:])
    else:
        assert within(json.loads(excerpt), json.loads(text(path)))


def test_an_excerpt_of_something_else_is_found_out() -> None:
    assert within({"a": [{"b": 1}]}, {"a": [{"b": 0}, {"b": 1}]})
    for other in ({"a": [{"b": 2}]}, {"a": [{"b": 1, "c": 1}]}, {}, {"a": [{"b": 1.0}]}):
        assert not within(other, {"a": [{"b": 0}, {"b": 1}]})


def test_the_tables_of_keys_say_what_the_schemas_say() -> None:
    told = [{key.strip("`"): words for key, words in rows} for rows in tables("| key | what it holds |")]
    known = []
    for name, part in KEY_TABLES:
        whole = schema(name)
        keys = (whole["definitions"][part] if part else whole)["properties"]
        known.append(
            {
                key: (whole["definitions"].get(inner.get("$ref", "").rpartition("/")[2]) or inner)[
                    "description"
                ]
                for key, inner in keys.items()
            }
        )
    assert told == known
    assert [list(each) for each in told] == [list(each) for each in known]


def test_the_columns_are_those_of_the_tables() -> None:
    (rows,) = tables("| table | columns |")
    assert [re.findall(r"`(\w+)`", columns) for _, columns in rows] == [
        list(columns) for columns in (HOLE_COLUMNS, FRAME_COLUMNS, PART_COLUMNS, SHELF_COLUMNS)
    ]


def test_every_file_that_the_page_leads_to_is_there() -> None:
    links = set(re.findall(r"\]\(((?:data|schemas)/[^)]+)\)", PAGE))
    assert links <= set(demo_site())
    assert {link for link in links if link.startswith("schemas/")} == {f"schemas/{name}" for name in SCHEMAS}


def test_the_line_for_editors_leads_from_a_map_to_its_schema() -> None:
    found = re.search(r"^# yaml-language-server: \$schema=(\S+)$", PAGE, re.MULTILINE)
    assert found
    target = (ROOT / "frames" / "maps" / found[1]).resolve()
    assert json.loads(target.read_text("utf-8")) == schema("map.schema.json")


def test_the_example_runs(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "site" / "data" / "frames.json"
    file.parent.mkdir(parents=True)
    file.write_text(text("data/frames.json"), "utf-8")
    monkeypatch.chdir(tmp_path)
    assert len(EXAMPLE) == 1
    exec(EXAMPLE[0], {})
    assert "plover-76 16\n" in capsys.readouterr().out


def test_the_promise_names_the_format_that_is_written() -> None:
    formats = {
        json.loads(text(path))["format"] for path in demo_site() if re.fullmatch(r"data/\S+\.json", path)
    }
    assert formats == {1}
    assert "**`format` is 1**" in PAGE
