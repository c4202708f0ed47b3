"""Reading the folder: one bad file never hides another."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from rimbook.book.load import load_book
from tests.book.maps import MAP

PARTS_FILE = """\
format: 1
parts:
  short-21: {name: Short, kind: single, packs: [25]}
  wide-27: {name: W, kind: wide}
"""
MORE_PARTS = """\
format: 1
parts:
  Bad Id: {name: a, kind: single}
  twin: {name: a, kind: twin, length_mm: [1, 2, 3]}
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    frames = tmp_path / "frames"
    (frames / "maps").mkdir(parents=True)
    (frames / "parts").mkdir()
    (frames / "parts" / "all.yaml").write_text(PARTS_FILE, encoding="utf-8")
    (frames / "maps" / "plover-20.yaml").write_text(MAP, encoding="utf-8")
    return frames


def test_the_demo_book_is_read_without_a_problem() -> None:
    loaded = load_book(Path(__file__).parents[2] / "frames")
    assert loaded.problems == ()
    assert len(loaded.book.frames) >= 14
    assert len(loaded.book.parts) >= 40
    assert len({frame.maker for frame in loaded.book.frames.values()}) >= 4


def test_good_maps_are_read_beside_bad_ones(folder: Path) -> None:
    bad = {
        "a-syntax": b"name: [",
        "b-bytes": b"name: \xff",
        "c-empty": b"",
        "d-list": b"- 1",
        "e-large": b"#" * 10_000_000,
    }
    for slug, source in bad.items():
        (folder / "maps" / f"{slug}.yaml").write_bytes(source)
    loaded = load_book(folder)
    assert list(loaded.maps) == ["plover-20"]
    assert loaded.map_count == 6
    assert [problem.file for problem in loaded.problems] == [f"frames/maps/{slug}.yaml" for slug in bad]


def test_a_link_in_the_folder_is_not_followed(folder: Path, tmp_path: Path) -> None:
    secret = tmp_path / "secret"
    secret.write_text("name: x", encoding="utf-8")
    (folder / "maps" / "link.yaml").symlink_to(secret)
    assert [problem.message for problem in load_book(folder).problems] == ["This is not a plain file."]


def test_two_files_of_one_name_are_told(folder: Path) -> None:
    (folder / "maps" / "plover-20.yml").write_text(MAP, encoding="utf-8")
    messages = [problem.message for problem in load_book(folder).problems]
    assert messages == ["There is a map of this name already: frames/maps/plover-20.yaml."]


def test_a_part_that_is_no_part_is_told_with_its_place(folder: Path) -> None:
    (folder / "parts" / "more.yaml").write_text(MORE_PARTS, encoding="utf-8")
    found = [f"{p.line}:{p.column} {p.message}" for p in load_book(folder).problems]
    assert found == [
        "3:3 “Bad Id” cannot be a key.",
        "4:25 parts.twin.kind cannot be “twin”.",
        "4:42 parts.twin.length_mm cannot be a list of 3.",
    ]


def test_a_catalogue_file_whose_name_is_no_text_is_told(folder: Path) -> None:
    try:
        (folder / "parts" / "all.yaml").rename(folder / "parts" / os.fsdecode(b"all\xff.yaml"))
    except OSError:
        pytest.skip("This system takes no such name.")
    messages = [problem.message for problem in load_book(folder).problems]
    assert messages == ["The file name “all\\udcff.yaml” holds what nobody can read."]
