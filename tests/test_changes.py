"""`rimbook changes` as a reviewer and a forge call it: on folders and on the history of git."""

from __future__ import annotations

import json
import subprocess
from pathlib import Path

import pytest

from rimbook import cli
from tests.book.rules.small_book import MAP, PARTS, changed


def git(*arguments: str) -> None:
    who = ["-c", "user.name=A", "-c", "user.email=a@example.org", "-c", "commit.gpgsign=false"]
    subprocess.run(["git", *who, *arguments], check=True, capture_output=True)


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A book in a repository, changed since the tag `old`."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("GITHUB_STEP_SUMMARY", raising=False)
    for name, text in {"maps/lapwing-20.yaml": MAP, "parts/common.yaml": PARTS}.items():
        path = tmp_path / "frames" / name
        path.parent.mkdir(parents=True)
        path.write_text(text, "utf-8")
    git("init", "--quiet")
    git("add", ".")
    git("commit", "--quiet", "--message", "Begin")
    git("tag", "old")
    (tmp_path / "frames" / "maps" / "lapwing-20.yaml").write_text(changed(MAP, ("28 lb", "26 lb")), "utf-8")
    return tmp_path / "frames"


def test_the_history_is_compared_with_what_lies_here(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["changes", "old"]) == 0
    assert "Tension limit 28 lb → 26 lb." in capsys.readouterr().out


def test_nothing_that_lies_here_is_touched(book: Path) -> None:
    cli.main(["changes", "old"])
    assert "26 lb" in (book / "maps" / "lapwing-20.yaml").read_text("utf-8")


@pytest.mark.parametrize("base", ["none", "--help-me", "--output=x", "old; touch x"])
def test_a_state_that_is_not_there_is_said(book: Path, capsys: pytest.CaptureFixture[str], base: str) -> None:
    assert cli.main(["changes", "--", base]) == 2
    assert "neither a folder nor a commit" in capsys.readouterr().err
    assert not Path("x").exists()


def test_json_for_other_programs(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    cli.main(["changes", "old", "--as", "json"])
    told = json.loads(capsys.readouterr().out)
    assert told["changes"] == [
        {
            "thing": "frame",
            "id": "lapwing-20",
            "sentence": "tension limit 28 lb → 26 lb.",
            "holes": [],
            "breaking": False,
        }
    ]


def test_a_forge_gets_warnings_and_a_summary(
    book: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("GITHUB_STEP_SUMMARY", "summary.md")
    (book / "maps" / "lapwing-20.yaml").unlink()
    assert cli.main(["changes", "old", "--as", "forge"]) == 0
    lines = capsys.readouterr().out.splitlines()
    assert lines[0].startswith("::warning title=can break what others use::lapwing-20: Lapwing 20")
    assert lines[1].startswith("::stop-commands::")
    assert lines[-1] == f"::{lines[1].removeprefix('::stop-commands::')}::"
    assert "**Can break:**" in Path("summary.md").read_text("utf-8")


def test_pages_are_written_where_asked(book: Path) -> None:
    assert cli.main(["changes", "old", "--pages", "shown"]) == 0
    assert "Tension limit" in Path("shown/index.html").read_text("utf-8")
