"""`rimbook tidy` as a contributor calls it."""

from __future__ import annotations

from pathlib import Path

import pytest

from rimbook import cli

UNTIDY = "name: A   \nformat: 1\n"
TIDY = "format: 1\nname: A\n"


@pytest.fixture
def file(tmp_path: Path) -> Path:
    folder = tmp_path / "maps"
    folder.mkdir()
    file = folder / "a.yaml"
    file.write_text(UNTIDY, "utf-8")
    return file


def test_a_file_is_tidied_and_named_once(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(["tidy", str(file)]) == 0
    assert file.read_text("utf-8") == TIDY
    assert capsys.readouterr().out == f"{file}\n"
    assert cli.main(["tidy", str(file)]) == 0
    assert capsys.readouterr().out == ""


def test_only_say_changes_nothing(file: Path) -> None:
    assert cli.main(["tidy", "--only-say", str(file)]) == 1
    assert file.read_text("utf-8") == UNTIDY


def test_a_file_that_cannot_be_read_is_told_and_left(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file.write_text("a: [", "utf-8")
    assert cli.main(["tidy", str(file)]) == 1
    assert f"{file}:2:1:" in capsys.readouterr().err
    assert file.read_text("utf-8") == "a: ["


def test_a_link_is_not_followed(file: Path, capsys: pytest.CaptureFixture[str]) -> None:
    link = file.with_name("b.yaml")
    link.symlink_to(file)
    assert cli.main(["tidy", str(link)]) == 2
    assert "not a plain file" in capsys.readouterr().err
