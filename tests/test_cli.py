"""The command `rimbook check` as a contributor and a forge call it."""

from __future__ import annotations

import io
import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from rimbook import cli
from rimbook.bench import check as bench_check
from rimbook.commands import check as command
from rimbook.commands import commands
from tests.book.rules.small_book import MAP, PARTS, changed

ROOT = Path(__file__).parents[1]


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a small good book in it, in which the command is called."""
    for name, text in {"maps/lapwing-20.yaml": MAP, "parts/common.yaml": PARTS}.items():
        path = tmp_path / "frames" / name
        path.parent.mkdir(parents=True)
        path.write_text(text, "utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path


def write_map(folder: Path, slug: str, *swaps: tuple[str, str]) -> None:
    (folder / "frames" / "maps" / f"{slug}.yaml").write_text(changed(MAP, *swaps), "utf-8")


BROKEN = (("Lapwing 20", "Broken"), ("default: barrel-21", "default: barel-21"))
DOUBTFUL = (("Lapwing 20", "Doubtful"), ("28 lb", "28 kg"))


def test_a_good_book_is_one_line_and_code_0(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["check"]) == 0
    assert capsys.readouterr() == ("Nothing wrong in 1 map and 5 parts.\n", "")


def test_errors_are_code_1_and_begin_with_a_place_from_here(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    write_map(folder, "broken", *BROKEN)
    assert cli.main(["check"]) == 1
    assert capsys.readouterr().out.startswith("frames/maps/broken.yaml:18:12  error")
    monkeypatch.chdir(folder / "frames" / "parts")
    assert cli.main(["check", ".."]) == 1
    assert capsys.readouterr().out.startswith("../maps/broken.yaml:18:12  error")


def test_one_bad_file_hides_no_other(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    write_map(folder, "broken", *BROKEN)
    (folder / "frames" / "maps" / "unreadable.yaml").write_text("name: [", "utf-8")
    assert cli.main(["check", "--as", "json"]) == 1
    told = json.loads(capsys.readouterr().out)
    assert {problem["rule"] for problem in told["problems"]} == {"readable", "part-exists"}
    assert told["counts"]["maps"] == 3


def test_warnings_are_code_0_unless_asked_otherwise(folder: Path) -> None:
    write_map(folder, "doubtful", *DOUBTFUL)
    assert cli.main(["check"]) == 0
    assert cli.main(["check", "--warnings-fail"]) == 1


def test_only_the_files_asked_for_are_told_though_all_are_read(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    write_map(folder, "broken", *BROKEN)
    assert cli.main(["check", "frames/maps/lapwing-20.yaml"]) == 0
    assert capsys.readouterr().out == "Nothing wrong in 1 map and 0 parts.\n"
    assert cli.main(["check", "frames/parts"]) == 0
    assert cli.main(["check", "frames/parts", "frames/maps/broken.yaml"]) == 1
    assert capsys.readouterr().out.endswith("1 error in 1 file, of 1 map and 5 parts.\n")


@pytest.mark.parametrize(
    ("path", "said"),
    [("nowhere", "There is no nowhere here."), ("elsewhere", "elsewhere lies in no book.")],
)
def test_a_path_outside_a_book_is_a_wrong_call(
    folder: Path, capsys: pytest.CaptureFixture[str], path: str, said: str
) -> None:
    (folder / "elsewhere").mkdir()
    assert cli.main(["check", path]) == 2
    told = capsys.readouterr()
    assert told.out == ""
    assert f"rimbook check: {said}\n" in told.err


def test_a_book_without_maps_and_parts_is_not_called_good(folder: Path) -> None:
    for path in (folder / "frames").rglob("*.yaml"):
        path.unlink()
    assert cli.main(["check"]) == 2


@pytest.mark.parametrize(
    "arguments", [[], ["chek"], ["check", "--as", "xml"], ["check", "--changed-from", "no"]]
)
def test_a_wrong_call_is_code_2(folder: Path, arguments: list[str]) -> None:
    try:
        code = cli.main(arguments)
    except SystemExit as stop:
        code = stop.code if isinstance(stop.code, int) else -1
    assert code == 2


def test_a_rule_that_fails_is_code_3_and_told_whatever_file_was_asked_for(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def fail(frame: object) -> None:
        raise ZeroDivisionError("no rim")

    monkeypatch.setattr(bench_check, "place", fail)
    assert cli.main(["check", "frames/parts"]) == 3
    out = capsys.readouterr().out
    assert "Placing the holes failed: this is rimbook's own fault." in out
    assert "ZeroDivisionError: no rim (test_cli.py, line " in out


def test_a_command_that_fails_is_code_3(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(command, "load_book", lambda _: 1 / 0)
    assert cli.main(["check"]) == 3
    assert "rimbook failed: this is its own fault." in capsys.readouterr().err


def test_changed_files_are_read_from_a_list_or_from_standard_input(
    folder: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    write_map(folder, "broken", *BROKEN)
    write_map(folder, "other", ("Lapwing 20", "Other"), BROKEN[1])
    (folder / "changed.txt").write_text("README.md\nframes/maps/other.yaml\n", "utf-8")
    assert cli.main(["check", "--as", "forge", "--changed-from", "changed.txt"]) == 1
    from_list = capsys.readouterr().out
    assert from_list.startswith("::error file=frames/maps/other.yaml,line=18,col=12,")
    monkeypatch.setattr(sys, "stdin", io.StringIO("frames/maps/other.yaml\n"))
    assert cli.main(["check", "--as", "forge", "--changed-from", "-"]) == 1
    assert capsys.readouterr().out == from_list


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


@pytest.mark.parametrize(
    ("variables", "coloured"),
    [({}, True), ({"NO_COLOR": "1"}, False), ({"NO_COLOR": ""}, True), ({"TERM": "dumb"}, False)],
)
def test_colour_is_for_terminals_that_want_it(
    folder: Path, monkeypatch: pytest.MonkeyPatch, variables: dict[str, str], coloured: bool
) -> None:
    """https://no-color.org: set and not empty, whatever its value, means no colour."""
    for name in ("NO_COLOR", "TERM"):
        monkeypatch.delenv(name, raising=False)
    for name, value in variables.items():
        monkeypatch.setenv(name, value)
    write_map(folder, "broken", *BROKEN)
    terminal = Terminal()
    monkeypatch.setattr(sys, "stdout", terminal)
    assert cli.main(["check"]) == 1
    assert ("\x1b[" in terminal.getvalue()) is coloured


def rimbook(*arguments: str, cwd: Path, **variables: str) -> subprocess.CompletedProcess[bytes]:
    """The program as a process of its own."""
    environment = os.environ | {"PYTHONPATH": str(ROOT / "generator")} | variables
    call = [sys.executable, "-m", "rimbook", *arguments]
    return subprocess.run(call, cwd=cwd, env=environment, capture_output=True, check=False, timeout=60)


def test_the_module_can_be_run_and_a_poor_terminal_does_not_break_it(folder: Path) -> None:
    write_map(folder, "broken", *BROKEN)
    done = rimbook("check", cwd=folder, PYTHONIOENCODING="ascii")
    assert done.returncode == 1
    assert b"no part \\u201cbarel-21\\u201d" in done.stdout
    assert done.stderr == b""


def test_the_help_says_what_the_exit_codes_mean(folder: Path) -> None:
    for arguments in (["--help"], ["check", "--help"]):
        done = rimbook(*arguments, cwd=folder)
        assert done.returncode == 0
        assert b"exit codes:\n  0  nothing is wrong" in done.stdout


def test_every_command_is_found_by_its_file() -> None:
    names = {path.stem for path in Path(command.__file__).parent.glob("*.py")} - {"__init__"}
    assert len(list(commands())) == len(names)
    assert "check" in names


def test_the_book_of_the_project_has_no_errors(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(ROOT)
    assert cli.main(["check"]) == 0
    assert "Nothing wrong in " in capsys.readouterr().out


def test_what_shape_hides_follows_once_it_is_mended_and_the_report_says_that_it_may(
    folder: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    more = "frames/maps/broken.yaml was not checked to its end: mend these first, more may follow.\n"
    steps = (("mains: 6", "mains: six"), ("m1 m2 m3 c1", "m1 m2 m3c1"), BROKEN[1])
    for step, rule in enumerate(("shape", "meaning", "part-exists")):
        write_map(folder, "broken", BROKEN[0], *steps[step:])
        assert cli.main(["check"]) == 1
        told = capsys.readouterr().out
        assert f"[{rule}]" in told
        assert told.endswith(more) is (rule != "part-exists")


@pytest.mark.parametrize(
    ("call", "says"),
    [
        (["chek"], "Did you mean check?"),
        (["start", "A", "--maker", "B", "--sport", "badmintn"], "Did you mean badminton?"),
        (["check", "--as", "jsn"], "Did you mean json?"),
        (["qqqq"], "choose from"),
    ],
)
def test_a_wrong_word_is_told_the_nearest(
    capsys: pytest.CaptureFixture[str], call: list[str], says: str
) -> None:
    with pytest.raises(SystemExit) as stopped:
        cli.main(call)
    assert stopped.value.code == 2
    assert says in capsys.readouterr().err
