"""What a report looks like: for people, for a forge, for programs; and that it stays harmless."""

from __future__ import annotations

import json
import re
from dataclasses import replace

import pytest

from rimbook.book.problems import Problem
from rimbook.book.report import Extent, as_json, forge, people

EXTENT = Extent(3, 40)

MISSING = Problem(
    "part-exists",
    "error",
    "frames/maps/plover-76.yaml",
    12,
    7,
    "The catalogue has no part “barel-21”.",
    hole="9, 13",
    nearest="barrel-21",
)
GAP = Problem("hole-gaps", "warning", "frames/maps/plover-76.yaml", 9, 100, "R2 and R3 lie 120 mm apart.")
UNUSED = Problem("unused-part", "note", "frames/parts/common.yaml", 3, 3, "barrel-99 sits in no frame.")
HOSTILE = "\x1b[31m\u202egnp\x07\r\n::error::owned\n%0A::stop-commands::x"


def test_a_good_book_is_one_line() -> None:
    assert people([], EXTENT) == "Nothing wrong in 3 maps and 40 parts.\n"
    assert forge([], EXTENT) == "Nothing wrong in 3 maps and 40 parts.\n"


def test_people_read_the_place_first_then_what_is_wrong_and_how_to_mend_it() -> None:
    assert people([MISSING, GAP], EXTENT) == (
        "frames/maps/plover-76.yaml:9:100  warning  R2 and R3 lie 120 mm apart.  [hole-gaps]\n"
        "frames/maps/plover-76.yaml:12:7   error    The catalogue has no part “barel-21”.  [part-exists]\n"
        "    hole      9, 13\n"
        "    nearest   barrel-21\n"
        "\n"
        "1 error and 1 warning in 1 file, of 3 maps and 40 parts.\n"
    )


def test_files_stand_apart() -> None:
    other = replace(MISSING, file="frames/maps/alder.yaml")
    blocks = people([MISSING, other], EXTENT).split("\n\n")
    assert [block.split(":")[0] for block in blocks[:-1]] == [other.file, MISSING.file]
    assert blocks[-1] == "2 errors in 2 files, of 3 maps and 40 parts.\n"


@pytest.mark.parametrize("rule", ["readable", "shape", "meaning", "walk-in-order"])
def test_a_file_that_was_not_checked_to_its_end_is_named_last(rule: str) -> None:
    stopped = replace(MISSING, rule=rule)
    *_, last = people([stopped, GAP], EXTENT).splitlines()
    assert last == f"{MISSING.file} was not checked to its end: mend these first, more may follow."
    others = [replace(stopped, file=f"frames/maps/{number}.yaml") for number in range(9)]
    *_, last = people(others, EXTENT).splitlines()
    assert last.endswith("and 4 more were not checked to their end: mend these first, more may follow.")
    assert "checked" not in people([MISSING, GAP], EXTENT)


def test_notes_are_counted_and_told_only_when_asked_for() -> None:
    assert people([UNUSED], EXTENT) == "Nothing wrong in 3 maps and 40 parts. 1 note left out: see --notes.\n"
    assert "barrel-99" in people([UNUSED], EXTENT, notes=True)
    assert "notice" not in forge([UNUSED], EXTENT)
    assert "::notice file=frames/parts/common.yaml,line=3,col=3" in forge([UNUSED], EXTENT, notes=True)


def test_colour_marks_the_severity_and_nothing_else() -> None:
    coloured = people([MISSING, GAP], EXTENT, colour=True)
    assert re.sub(r"\x1b\[[0-9;]*m", "", coloured) == people([MISSING, GAP], EXTENT)
    assert re.findall(r"\x1b\[[0-9;]+m(\w+)", coloured) == ["warning", "error"]


def hostile() -> Problem:
    return replace(MISSING, file=f"frames/maps/{HOSTILE}.yaml", message=HOSTILE, found=HOSTILE, tip=HOSTILE)


def test_hostile_text_is_shown_and_does_nothing() -> None:
    told = people([hostile()], EXTENT)
    assert not re.search(r"[\x00-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]", told)
    assert "\\u001b[31m\\u202egnp\\u0007\\r\\n::error::owned" in told
    assert len(told.splitlines()) == 7


def test_long_text_is_cut_short() -> None:
    told = people([replace(MISSING, found="x" * 100_000)], EXTENT)
    assert len(told) < 2000
    assert "…" in told


def commands_in(told: str) -> list[str]:
    """The lines that a forge reads as commands."""
    lines = told.split("\n")
    stop = next(index for index, line in enumerate(lines) if line.startswith("::stop-commands::"))
    return [line for line in lines[:stop] if line.startswith("::")]


def test_a_forge_gets_one_command_a_problem_with_all_that_helps() -> None:
    (command,) = commands_in(forge([MISSING], EXTENT))
    assert command == (
        "::error file=frames/maps/plover-76.yaml,line=12,col=7,title=part-exists"
        "::The catalogue has no part “barel-21”.%0Ahole: 9, 13%0Anearest: barrel-21"
    )


def test_commands_are_escaped_as_the_forge_asks() -> None:
    """GitHub's own toolkit: data escapes %, CR and LF, properties escape : and , as well."""
    (command,) = commands_in(forge([replace(MISSING, file="a,b:c%.yaml", message="100 % a:b, c")], EXTENT))
    assert command.startswith("::error file=a%2Cb%3Ac%25.yaml,line=12,")
    assert "::100 %25 a:b, c%0A" in command


def test_hostile_text_makes_no_command_of_its_own() -> None:
    told = forge([hostile()], EXTENT)
    assert len(commands_in(told)) == 1
    assert "\r" not in told
    assert [line for line in told.split("\n") if line.startswith("::error::")] == []


def test_the_list_below_is_closed_to_commands_by_a_mark_it_cannot_contain() -> None:
    lines = forge([MISSING], EXTENT).rstrip("\n").split("\n")
    mark = lines[-1].strip(":")
    assert lines.count(f"::stop-commands::{mark}") == lines.count(f"::{mark}::") == 1
    other = forge([replace(MISSING, message=f"::{mark}::")], EXTENT).rstrip("\n").split("\n")
    assert other[-1] != f"::{mark}::"


def test_a_forge_gets_ten_of_a_kind_those_of_changed_files_first_and_the_number_left() -> None:
    many = [replace(MISSING, line=line) for line in range(1, 31)]
    changed = replace(MISSING, file="frames/maps/zander.yaml")
    told = forge([*many, changed, GAP], EXTENT, changed={changed.file})
    commands = commands_in(told)
    assert [command.split(" ")[0] for command in commands] == ["::error"] * 10 + ["::warning"]
    assert f"file={changed.file}," in commands[0]
    assert "21 more errors in the list below.\n" in told
    assert told.count("barel-21”.  [part-exists]") == 31


def test_nothing_is_said_to_be_left_out_when_ten_fit() -> None:
    assert "more" not in forge([replace(MISSING, line=line) for line in range(1, 11)], EXTENT)


def test_json_holds_everything_in_order_notes_too() -> None:
    whole = json.loads(as_json([UNUSED, MISSING, GAP], EXTENT))
    assert whole["format"] == 1
    assert whole["counts"] == {
        "error": 1,
        "warning": 1,
        "note": 1,
        "maps": 3,
        "parts": 40,
        "clubs": 0,
        "moved": 0,
    }
    assert [problem["rule"] for problem in whole["problems"]] == ["hole-gaps", "part-exists", "unused-part"]
    assert whole["problems"][1] == {
        "rule": "part-exists",
        "severity": "error",
        "file": "frames/maps/plover-76.yaml",
        "line": 12,
        "column": 7,
        "message": "The catalogue has no part “barel-21”.",
        "hole": "9, 13",
        "found": None,
        "expected": None,
        "nearest": "barrel-21",
        "tip": None,
    }


@pytest.mark.parametrize("form", [people, forge, as_json])
def test_the_order_of_finding_does_not_matter(form: object) -> None:
    assert callable(form)
    assert form([MISSING, GAP, UNUSED], EXTENT) == form([UNUSED, GAP, MISSING], EXTENT)
