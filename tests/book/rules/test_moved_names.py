"""Old names of frames and parts: read strictly, and held against the names of today."""

from __future__ import annotations

from pathlib import Path

import pytest

from rimbook.bench.check import check
from rimbook.book.load import load_book
from rimbook.book.problems import Problem
from tests.book.rules.small_book import MAP, PARTS, TODAY


def problems(
    folder: Path, frames: str = "{}", parts: str = "{}", *, head: str = "format: 1\n"
) -> list[Problem]:
    """What is wrong with a book whose moved names are these."""
    for name, text in (("maps/lapwing-20.yaml", MAP), ("parts/common.yaml", PARTS)):
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text(text, "utf-8")
    (folder / "moved.yaml").write_text(f"{head}frames: {frames}\nparts: {parts}\n", "utf-8")
    return [each for each in check(load_book(folder), TODAY) if each.file.endswith("moved.yaml")]


def test_an_old_name_of_a_frame_and_of_a_part_pass(tmp_path: Path) -> None:
    assert problems(tmp_path, "{lapwing-old: lapwing-20}", "{barrel-old: barrel-21}") == []
    assert load_book(tmp_path).book.moved.frames == {"lapwing-old": "lapwing-20"}


def test_a_book_without_the_file_has_no_old_names(tmp_path: Path) -> None:
    problems(tmp_path)
    (tmp_path / "moved.yaml").unlink()
    assert load_book(tmp_path).book.moved.frames == {}


@pytest.mark.parametrize(
    ("frames", "parts", "message", "more"),
    [
        ("{lapwing-20: lapwing-20}", "{}", "“lapwing-20” is not an old name: there is a frame", None),
        ("{lapwing-old: lapwin-20}", "{}", "there is no such frame", "lapwing-20"),
        ("{lapwing-old: barrel-21}", "{}", "there is no such frame", None),
        ("{}", "{barrel-old: barel-21}", "there is no such part", "barrel-21"),
        ("{a: b, b: lapwing-20}", "{}", "“a” leads to “b”, which is an old name itself", "lapwing-20"),
        ("{a: b, b: a}", "{}", "“a” leads to “b”, which is an old name itself", "ring"),
        ("{a: a}", "{}", "“a” leads to “a”, which is an old name itself", "ring"),
    ],
)
def test_what_leads_nowhere_is_told(
    tmp_path: Path, frames: str, parts: str, message: str, more: str | None
) -> None:
    first = problems(tmp_path, frames, parts)[0]
    assert first.rule == "moved-names"
    assert message in first.message
    assert first.line == (2 if parts == "{}" else 3)
    assert more is None or more in f"{first.nearest} {first.expected} {first.tip}"


@pytest.mark.parametrize(
    "frames",
    [
        "[lapwing-20]",
        "{lapwing-old: }",
        "{Lapwing Old: lapwing-20}",
        "{../../x: lapwing-20}",
        "{a: ../b}",
        "{a: 1}",
    ],
)
def test_the_file_is_read_strictly(tmp_path: Path, frames: str) -> None:
    assert {each.rule for each in problems(tmp_path, frames)} == {"shape"}


def test_a_key_of_another_name_is_told_with_the_nearest(tmp_path: Path) -> None:
    (found,) = problems(tmp_path, head="format: 1\nframe: {}\n")
    assert (found.rule, found.nearest) == ("shape", "frames")


def test_a_map_that_cannot_be_read_is_there_all_the_same(tmp_path: Path) -> None:
    problems(tmp_path)
    (tmp_path / "maps" / "lapwing-20.yaml").write_text("format: [", "utf-8")
    assert problems_again(tmp_path, "{lapwing-old: lapwing-20}") == []


def problems_again(folder: Path, frames: str) -> list[Problem]:
    (folder / "moved.yaml").write_text(f"format: 1\nframes: {frames}\n", "utf-8")
    return [each for each in check(load_book(folder), TODAY) if each.file.endswith("moved.yaml")]
