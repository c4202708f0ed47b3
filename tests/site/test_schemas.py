"""The JSON Schemas: right by the standard, true of every file, and never older than the models."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from datetime import date
from functools import cache
from itertools import chain
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jsonschema import Draft7Validator
from ruamel.yaml import YAML

import rimbook
from rimbook.book.address import address, selector
from rimbook.book.walk import read_walk
from rimbook.book.written_values import ADDRESS, FITTED_KEY, SELECTOR, WALK
from rimbook.cli import main
from rimbook.site.pages import Asset
from rimbook.site.schemas import SCHEMAS, Schema, schema, schema_text
from tests.book.maps import MAP, problems_of
from tests.site.sample import ROOT, demo_site, published, small_book

COMMITTED = Path(rimbook.__file__).parent / "schemas"
WRITTEN = ("map.schema.json", "parts.schema.json", "club.schema.json", "moved.schema.json")
MAPS = sorted((ROOT / "frames" / "maps").glob("*.yaml"))
CLUBS = sorted((ROOT / "frames" / "clubs").glob("*.yaml"))
PARTS = sorted((ROOT / "frames" / "parts").glob("*.yaml"))
DATA = {
    path: "data-frame.schema.json"
    if path.startswith("data/frames/")
    else f"data-{Path(path).stem}.schema.json"
    for path in demo_site()
    if re.fullmatch(r"data/(?:(?:frames|parts|moved)|frames/[^/]+)\.json", path)
}


@cache
def validator(name: str, closed: bool = False) -> Draft7Validator:
    """Checks against a schema; a closed one takes no key but its own, so that every key is described."""
    made = schema(name)
    if closed:
        for node in nodes(made):
            if "properties" in node:
                node.setdefault("additionalProperties", False)
    return Draft7Validator(made, format_checker=Draft7Validator.FORMAT_CHECKER)


def nodes(node: Any) -> Iterator[Schema]:
    """Every schema within a schema, itself first."""
    if not isinstance(node, dict):
        return
    yield node
    for key, value in node.items():
        if key in ("properties", "patternProperties", "definitions"):
            yield from chain.from_iterable(map(nodes, value.values()))
        elif key in ("allOf", "anyOf"):
            yield from chain.from_iterable(map(nodes, value))
        elif key in ("items", "additionalProperties", "propertyNames"):
            yield from nodes(value)


def faults(name: str, value: object, closed: bool = False) -> list[str]:
    """What a schema finds wrong."""
    return [f"{error.json_path}: {error.message}" for error in validator(name, closed).iter_errors(value)]


def parsed(text: str) -> Any:
    """YAML 1.2 as an editor reads it, by a parser that is not ours; days and keys are text, as in JSON."""
    return plain(YAML(typ="safe", pure=True).load(text))


def plain(value: Any) -> Any:
    if isinstance(value, dict):
        return {str(key): plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [plain(inner) for inner in value]
    return value.isoformat() if isinstance(value, date) else value


@pytest.mark.parametrize("name", SCHEMAS)
def test_a_schema_is_one_by_its_own_standard(name: str) -> None:
    made = schema(name)
    Draft7Validator.check_schema(made)
    for node in nodes(made):
        assert set(node) <= set(Draft7Validator.META_SCHEMA["properties"])
        assert "$ref" not in node or len(node) == 1, "draft 07 overlooks what stands beside a reference"
        if "$ref" in node:
            assert node["$ref"].removeprefix("#/definitions/") in made["definitions"]


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_key_says_what_it_is_for(name: str) -> None:
    made = schema(name)
    assert made["title"]
    for node in nodes(made):
        for key, inner in node.get("properties", {}).items():
            if key != "default":
                target = made["definitions"].get(inner.get("$ref", "").removeprefix("#/definitions/"), inner)
                assert target.get("description"), key


@pytest.mark.parametrize("name", WRITTEN)
def test_every_key_that_people_write_shows_an_example(name: str) -> None:
    made = schema(name)
    keys = [(key, inner) for node in nodes(made) for key, inner in node.get("properties", {}).items()]
    assert [key for key, inner in keys if key != "default" and not inner.get("examples")] == []
    assert len(keys) >= 3


@pytest.mark.parametrize("name", SCHEMAS)
def test_every_example_keeps_to_its_own_schema(name: str) -> None:
    whole = validator(name)
    examples = 0
    for node in nodes(schema(name)):
        for example in node.get("examples", []):
            assert [error.message for error in whole.evolve(schema=node).iter_errors(example)] == []
            examples += 1
    assert examples


@pytest.mark.parametrize("name", SCHEMAS)
def test_the_schema_beside_the_program_is_not_stale(name: str) -> None:
    stale = "run `rimbook schemas generator/rimbook/schemas`"
    assert (COMMITTED / name).read_bytes() == schema_text(name), stale


def test_no_schema_is_left_over_beside_the_program() -> None:
    assert {path.name for path in COMMITTED.iterdir()} == set(SCHEMAS)


@pytest.mark.parametrize("name", SCHEMAS)
def test_a_schema_is_published(name: str) -> None:
    asset = demo_site()[f"schemas/{name}"]
    assert isinstance(asset, Asset)
    assert json.loads(asset.data) == schema(name)


def test_the_command_writes_them_all(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["schemas", str(tmp_path / "new" / "folder")]) == 0
    written = {path.name: path.read_bytes() for path in (tmp_path / "new" / "folder").iterdir()}
    assert written == {name: schema_text(name) for name in SCHEMAS}
    assert capsys.readouterr().out == f"{len(SCHEMAS)} schemas in {tmp_path / 'new' / 'folder'}\n"


def test_the_command_says_where_it_cannot_write(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "file").write_text("")
    assert main(["schemas", str(tmp_path / "file")]) == 2
    assert f"cannot write into {tmp_path / 'file'}" in capsys.readouterr().err


@pytest.mark.parametrize("path", MAPS, ids=lambda path: path.stem)
def test_a_map_keeps_to_its_schema(path: Path) -> None:
    assert faults("map.schema.json", parsed(path.read_text("utf-8"))) == []


@pytest.mark.parametrize("path", PARTS, ids=lambda path: path.stem)
def test_a_parts_file_keeps_to_its_schema(path: Path) -> None:
    assert faults("parts.schema.json", parsed(path.read_text("utf-8"))) == []


@pytest.mark.parametrize("path", CLUBS, ids=lambda path: path.stem)
def test_a_club_file_keeps_to_its_schema(path: Path) -> None:
    assert faults("club.schema.json", parsed(path.read_text("utf-8"))) == []


def test_the_moved_names_keep_to_their_schema() -> None:
    written = (ROOT / "frames" / "moved.yaml").read_text("utf-8")
    assert faults("moved.schema.json", parsed(written)) == []
    for wrong in ("frames: {Old: new}", "frames: {old: New}", "frame: {old: new}", "frames: {old: 1}"):
        assert faults("moved.schema.json", parsed(f"format: 1\n{wrong}\n")), wrong


@pytest.mark.parametrize("path", DATA)
def test_a_data_file_keeps_to_its_schema(path: str) -> None:
    asset = demo_site()[path]
    assert isinstance(asset, Asset)
    assert faults(DATA[path], json.loads(asset.data), closed=True) == []


def test_every_kind_of_data_file_is_held_against_a_schema() -> None:
    assert set(DATA.values()) == set(SCHEMAS) - set(WRITTEN)


def test_what_nobody_knows_keeps_to_the_schema() -> None:
    for path, asset in published(small_book()).items():
        if isinstance(asset, Asset) and re.fullmatch(r"data/(frames/)?[a-z0-9-]+\.json", path):
            name = "data-frame" if path.count("/") == 2 else f"data-{Path(path).stem}"
            assert faults(f"{name}.schema.json", json.loads(asset.data), closed=True) == []


@pytest.mark.parametrize("path", ["data/frames.json", "data/frames/plover-76.json", "data/parts.json"])
def test_no_key_of_a_data_file_can_go_unnoticed(path: str) -> None:
    """Removing or renaming a key is a breaking change."""
    asset = demo_site()[path]
    assert isinstance(asset, Asset)
    removed = 0
    for keys in described_keys(schema(DATA[path])):
        data = json.loads(asset.data)
        holder = next(each for each in mappings(data) if keys <= set(each))
        for key in sorted(keys):
            value = holder.pop(key)
            assert faults(DATA[path], data), key
            holder[key] = value
            removed += 1
    assert removed >= 10


def described_keys(whole: Schema) -> list[set[str]]:
    return [set(node["properties"]) for node in nodes(whole) if "properties" in node]


def mappings(value: Any) -> Iterator[dict[str, Any]]:
    """Every mapping within a value, the inner ones last."""
    if isinstance(value, dict):
        yield value
    inside = value.values() if isinstance(value, dict) else value if isinstance(value, list) else ()
    yield from chain.from_iterable(map(mappings, inside))


def test_an_older_schema_lets_a_new_key_pass() -> None:
    asset = demo_site()["data/frames/plover-76.json"]
    assert isinstance(asset, Asset)
    data = json.loads(asset.data)
    for holder in (data, data["holes"][0], data["outline"]):
        holder["new_key"] = 1
    assert faults("data-frame.schema.json", data) == []


REFUSED = [
    ("format: 1", "format: 2"),
    ("name: Plover 20", "nmae: Plover 20"),
    ("sport: badminton", "sport: cricket"),
    ("outline: ellipse", "outline: egg"),
    ("[186, 244]", "[186]"),
    ("[186, 244]", "[186, 0]"),
    ("[186, 244]", "[186, 2440]"),
    ("rim_depth_mm: 9.4", "rim_depth_mm: thick"),
    ("rim_depth_mm: 9.4", "rim_depth_mm: {11.0: [8]}"),
    ("mains: 6", "mains: six"),
    ("mains: 6", "mains: 6.5"),
    ("m1 m2 m3 c1", "m1 m2 k3 c1"),
    ("m1 m2 m3 c1", "m1 m2 m03 c1"),
    ("m1 m2 m3 c1", "m1, m2, m3, c1"),
    ("m3+c3", "m3+c3+c2"),
    ("2.7: [8]", "2.7: 8"),
    ("2.7: [8]", "2.7: [R8-9]"),
    ("2.7: [8]", "2.7: [0]"),
    ("2.7: [8]", "wide: [8]"),
    ("unknown: [R4]", "unknown: [r4]"),
    ("bore 2.7: wide-27", "bore wide: wide-27"),
    ("bore 2.7: wide-27", "R9-L: wide-27"),
    ("bore 2.7: wide-27", "8: {part: wide-27}"),
    ("tie_offs: [R5, L5]", "tie_offs: [5]"),
    ("tie_offs: [R5, L5]", "tie_offs: [R5-R6]"),
    ("tie_offs: [R5, L5]", "pieces: 3"),
    ("stringing:", "strips: [{name: crown, holes: [crown, R2], part: crown}]\nstringing:"),
    ("stringing:", "strips: [{name: crown, holes: [L2, R2]}]\nstringing:"),
    ("stringing:", "tension_limit: 28\nstringing:"),
    ("stringing:", "tension_limit: 28 stone\nstringing:"),
    ("stringing:", "measured: {by: a-handle, on: 4.10.2026}\nstringing:"),
    ("stringing:", "measured: {by: a-handle, on: 2026-W40-1}\nstringing:"),
    ("stringing:", "measured: {by: A Person}\nstringing:"),
    ("stringing:", "variant_of: Plover 19\nstringing:"),
]


@pytest.mark.parametrize(("right", "wrong"), REFUSED)
def test_a_slip_is_seen_in_the_editor_as_by_the_check(right: str, wrong: str) -> None:
    assert MAP.count(right) == 1
    written = MAP.replace(right, wrong)
    assert problems_of(written)
    assert faults("map.schema.json", parsed(written))


ACCEPTED = [
    ("rim_depth_mm: 9.4", "rim_depth_mm: unknown"),
    ("rim_depth_mm: 9.4\n", ""),
    ("rim_depth_mm: 9.4", "rim_depth_mm: {default: unknown, 11.0: [R8], 12: [1-2, L3-L4]}"),
    ("{default: 2.1, 2.7: [8], unknown: [R4]}", "2"),
    ("2.7: [8]", "'2.70': ['8']"),
    ("2.7: [8]", "2.7: []"),
    ("walk: >-", "walk: |"),
    ("walk: >-\n", "walk: >+\n\n"),
    ("bore 2.7: wide-27", "'bore 2.70': wide-27"),
    ("bore 2.7: wide-27", "R1: unknown\n  1-3: short-21\n  L4-R4: short-21\n  R7: wide-27"),
    ("tie_offs: [R5, L5]", "pieces: 1, mains_start: throat, crosses_start: throat, first_cross: L"),
    ("stringing:", "strips: [{name: crown, holes: [L2, R2], part: unknown}]\nstringing:"),
    ("stringing:", "strips: [{name: side, holes: [2, 4], part: crown}]\nstringing:"),
    ("stringing:", "strips: [{name: side, holes: ['2', '4'], part: crown}]\nstringing:"),
    ("stringing:", "left: {walk: m1 m2 m3 c1 c2 . x m3+c3 m2 m1}\nstringing:"),
    ("stringing:", "places_mm: [1, 2.5, unknown, 4, 5, 6, 7, 8, 9, 10]\nstringing:"),
    ("stringing:", "tension_limit: 12.5 kg\nyear: 2024\nvariant_of: plover-19\nnote: So.\nstringing:"),
    ("stringing:", "year:\nnote:\nmeasured:\nspacing_mm:\nstringing:"),
    ("stringing:", "measured: {by: a-handle, on: 2026-10-04, with: ruler, resolution_mm: 0.5}\nstringing:"),
    ("outline: ellipse", "outline: superellipse, exponent: 2.2"),
    ("outline: ellipse", "outline: teardrop, taper: 0.4"),
    (
        "outline: ellipse, inside_mm: [186, 244]",
        "outline: points, points_mm: [[0, 9], [5, 5], [5, -5], [0, -9], [-5, -5], [-5, 5]]",
    ),
]


@pytest.mark.parametrize(("usual", "other"), ACCEPTED)
def test_what_the_check_lets_pass_is_not_marked_in_the_editor(usual: str, other: str) -> None:
    assert MAP.count(usual) == 1
    written = MAP.replace(usual, other)
    assert problems_of(written) == ()
    assert faults("map.schema.json", parsed(written)) == []


def test_a_part_whose_id_is_none_is_marked() -> None:
    part = {"name": "Short", "kind": "single"}
    assert faults("parts.schema.json", {"format": 1, "parts": {"short-21": part}}) == []
    assert faults("parts.schema.json", {"format": 1, "parts": {"Short 21": part}})
    assert faults("parts.schema.json", {"format": 1, "parts": {}})


WORDS = st.text("mcxRL.+-0129 \n", max_size=12)
PLACES = st.from_regex(r"[mc][0-9]{1,4}(\+[mc]?[0-9]{1,2}){0,2}|[mcx.]{1,2}", fullmatch=True)
WALKS = st.lists(PLACES, max_size=3).map(" ".join)
HOLES = st.from_regex(r"[RL]?[0-9]{1,5}(-[RL]?[0-9]{1,5})?", fullmatch=True)


@given(WORDS | WALKS)
def test_the_pattern_of_a_walk_is_that_of_its_reader(text: str) -> None:
    _, wrong = read_walk(text)
    twice = [fault for fault in wrong if "the same string" in fault.message]  # no pattern can tell
    assert (re.search(WALK, text) is not None) == (len(wrong) == len(twice))


@given(WORDS | HOLES)
def test_the_patterns_of_holes_are_those_of_their_readers(text: str) -> None:
    word = text.strip()
    assert (re.search(SELECTOR, word) is not None) == (selector(word) is not None)
    assert (re.search(ADDRESS, word) is not None) == (address(word) is not None)
    if selector(word) is not None:
        assert re.search(FITTED_KEY, word)
