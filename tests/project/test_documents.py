"""What the documents promise is there, and what they show is true."""

from __future__ import annotations

import argparse
import re
import shutil
from math import radians
from pathlib import Path

import pytest

from rimbook.bench.check import check
from rimbook.bench.load import resultant
from rimbook.book.limits import LIMITS
from rimbook.book.load import load_book
from rimbook.book.written import WrittenFrame
from rimbook.cli import parser
from rimbook.draw.load import pull_words
from rimbook.draw.palette import CLASSES, UNKNOWN, limits
from rimbook.rim.places import DERIVED_GAP_MM
from rimbook.site.entry import LAYERS
from rimbook.site.frame_view import PLACES
from tests.project.tree import ROOT, text, tracked

DOCUMENTS = [path for path in tracked() if path.suffix == ".md"]
WRITTEN_PAGES = [path for path in DOCUMENTS if path.parts[0] == "site_src"]
MAPS = [
    (path, match[1])
    for path in DOCUMENTS
    for match in re.finditer(r"```yaml\n(format: 1\nname: .*?)```", text(path), re.DOTALL)
    if "\nwalk: " in match[1]
]
CLUBS = [
    (path, match[1])
    for path in DOCUMENTS
    for match in re.finditer(r"```yaml\n(format: 1\nname: .*?)```", text(path), re.DOTALL)
    if "\nwalk: " not in match[1]
]


def commands_of_make() -> set[str]:
    phony = re.search(r"^\.PHONY: (.*)$", text("Makefile"), re.MULTILINE)
    assert phony
    return set(phony[1].split())


def commands_of_rimbook() -> set[str]:
    actions = [action for action in parser()._actions if isinstance(action, argparse._SubParsersAction)]
    return {name for action in actions for name in action.choices}


def table_rows(page: str, heading: str) -> list[list[str]]:
    """The cells of the first table below a heading, without its head."""
    below = text(page).split(f"\n## {heading}", 1)[1]
    lines = re.findall(r"^\|.*\|$", below.split("\n## ", 1)[0], re.MULTILINE)
    return [[cell.strip() for cell in line.strip("|").split("|")] for line in lines[2:]]


@pytest.mark.parametrize("path", DOCUMENTS, ids=str)
def test_every_command_in_a_document_exists(path: Path) -> None:
    blocks = re.findall(r"```console\n(.*?)```", text(path), re.DOTALL)
    quoted = re.findall(r"`([^`\n]+)`", text(path)) + [
        line for block in blocks for line in block.splitlines()
    ]
    known = {
        "make": commands_of_make(),
        ".venv/bin/rimbook": commands_of_rimbook(),
        "rimbook": commands_of_rimbook(),
    }
    words = [line.split() for line in quoted]
    missing = [line[:2] for line in words if len(line) > 1 and line[1] not in known.get(line[0], {line[1]})]
    assert missing == []


def test_the_readme_names_the_two_commands_first() -> None:
    assert re.findall(r"^make (\w+)", text("README.md"), re.MULTILINE)[:2] == ["site", "test"]


@pytest.mark.parametrize("path", [path for path in DOCUMENTS if len(path.parts) == 1], ids=str)
def test_every_link_of_a_document_leads_somewhere(path: Path) -> None:
    targets = [target.split("#")[0] for target in re.findall(r"\]\(([^)\s]+)\)", text(path))]
    assert [target for target in targets if "://" not in target and not (ROOT / target).exists()] == []


def test_every_file_that_the_developers_page_names_is_there() -> None:
    named = re.findall(r"`([\w.-]+(?:/[\w.-]*)+)`", text("DEVELOPERS.md"))
    homes = (ROOT, ROOT / "generator" / "rimbook")
    assert len(named) > 20
    assert [name for name in named if not any((home / name).exists() for home in homes)] == []


@pytest.mark.parametrize(("path", "written"), MAPS, ids=[str(path) for path, _ in MAPS])
def test_a_map_in_a_document_is_right(path: Path, written: str, tmp_path: Path) -> None:
    frames = shutil.copytree(ROOT / "frames", tmp_path / "frames")
    (frames / "maps" / "sandpiper-76.yaml").write_text(written, encoding="utf-8")
    problems = [problem for problem in check(load_book(frames)) if "sandpiper-76" in problem.file]
    assert [f"{problem.place}: {problem.message}" for problem in problems if problem.severity != "note"] == []


@pytest.mark.parametrize(("path", "written"), CLUBS, ids=[str(path) for path, _ in CLUBS])
def test_a_club_in_a_document_is_right(path: Path, written: str, tmp_path: Path) -> None:
    frames = shutil.copytree(ROOT / "frames", tmp_path / "frames")
    (frames / "clubs" / "reed-street.yaml").write_text(written, encoding="utf-8")
    problems = [problem for problem in check(load_book(frames)) if "reed-street" in problem.file]
    assert [f"{problem.place}: {problem.message}" for problem in problems] == []


def test_there_is_a_club_on_the_page_of_prints() -> None:
    assert [path.name for path, _ in CLUBS] == ["prints.md"]


def test_there_is_a_map_in_the_readme_and_in_the_guide() -> None:
    assert {path.name for path, _ in MAPS} >= {"README.md", "contribute.md"}


@pytest.mark.parametrize("path", WRITTEN_PAGES, ids=str)
def test_a_written_page_says_what_it_is(path: Path) -> None:
    head = re.match(r"---\ntitle: .+\ndescription: .+\n---\n\n# ", text(path))
    assert head, "begin with title, description and a first heading"


@pytest.mark.parametrize("path", WRITTEN_PAGES, ids=str)
def test_the_footnotes_of_a_written_page_match(path: Path) -> None:
    written = text(path)
    told = set(re.findall(r"^\[\^(\w+)\]:", written, re.MULTILINE))
    assert set(re.findall(r"\[\^(\w+)\](?!:)", written)) == told


@pytest.mark.parametrize("path", WRITTEN_PAGES, ids=str)
def test_a_written_page_carries_no_style_script_or_foreign_file(path: Path) -> None:
    assert re.findall(r"style=|<script|<style|<iframe|!\[[^\]]*\]\(\w+:", text(path)) == []


def test_the_page_on_reading_names_the_shapes_of_the_drawings() -> None:
    drawn = [[known.shape, limits(known)] for known in CLASSES] + [["question mark", "unknown"]]
    assert UNKNOWN.shape == "question"
    assert table_rows("site_src/reading.md", "The two drawings") == drawn


def test_the_page_on_reading_explains_the_columns_and_switches_of_a_frame() -> None:
    page, template = text("site_src/reading.md"), text("generator/rimbook/site/templates/frame.html")
    table = template[template.index('data-rb-table="holes"') :]
    columns = re.findall(r'<th scope="col">([^<]+)</th>', table[: table.index("</thead>")])
    assert re.findall(r"^(.+)\n:   ", page[page.index("## The hole table") :], re.MULTILINE) == columns
    assert [words for _, words in LAYERS if f"*{words}*" not in page] == []
    assert [words for words in PLACES.values() if f"*{words}*" not in page.lower()] == []
    assert f"**{pull_words(1.4)}**" in page


def test_the_page_on_numbers_has_the_pulls_that_are_worked_out() -> None:
    rows = table_rows("site_src/numbers.md", "Pull")
    turned = {int(re.match(r"\d+", turn)[0]): float(pull) for turn, pull in rows}  # type: ignore[index]
    assert turned == {turn: round(resultant(radians(turn)), 2) for turn in (0, 30, 60, 90, 120, 180)}


def test_the_page_on_numbers_has_the_limits_that_are_checked() -> None:
    rows = {
        sport.lower(): f"{whole} {strung}"
        for sport, whole, strung, _ in table_rows("site_src/numbers.md", "Limits")
    }
    missing = [
        (sport, what, limit.most)
        for (sport, what), limit in LIMITS.items()
        if f"{limit.most:g}" not in re.findall(r"\d+(?:\.\d+)?", rows[sport])
    ]
    assert missing == []


def test_the_page_on_numbers_has_the_gap_that_is_kept() -> None:
    assert f"at least {DERIVED_GAP_MM:g} mm" in text("site_src/numbers.md")


def test_the_guide_lists_the_keys_of_a_map() -> None:
    rows = table_rows("site_src/contribute.md", "All the keys of a map")
    fields = WrittenFrame.model_fields
    needed = [name for name, field in fields.items() if field.is_required()]
    assert sorted(key.strip("`") for key, _ in rows) == sorted(fields)
    assert sorted(key.strip("`") for key, _ in rows[:8]) == sorted(needed)


@pytest.mark.parametrize("page", ["site_src/contribute.md", "CONTRIBUTING.md"])
def test_the_commands_of_the_guide_work_as_written(page: str) -> None:
    typed = "".join(re.findall(r"```console\n(.*?)```", text(page), re.DOTALL)).splitlines()
    commands = [line for line in typed if line and not line.startswith(" ")]
    assert [line for line in commands if not line.startswith(("make ", ".venv/bin/rimbook "))] == []
    assert re.search(r"`make check` once.*`\.venv/`", text(page), re.DOTALL)
