"""`rimbook start` writes a map that the book takes, and that any YAML 1.2 parser reads as meant."""

from __future__ import annotations

from io import StringIO
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from ruamel.yaml import YAML

from rimbook import cli
from rimbook.book.first_map import SCHEMA, scalar
from rimbook.book.written_values import slug_of
from tests.book.rules.small_book import PARTS

CALL = [
    "start", "Sandpiper 76", "--maker", "Saltmarsh Works", "--sport", "badminton",
    "--mains", "22", "--crosses", "21", "--head", "184x242", "--holes", "76",
]  # fmt: skip


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    folder = tmp_path / "frames"
    (folder / "maps").mkdir(parents=True)
    (folder / "parts").mkdir()
    (folder / "parts" / "common.yaml").write_text(PARTS, "utf-8")
    monkeypatch.chdir(tmp_path)
    return folder


def test_what_it_writes_passes_the_check(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert cli.main(CALL) == 0
    assert cli.main(["check", "frames/maps/sandpiper-76.yaml"]) == 0
    assert "Nothing wrong in 1 map" in capsys.readouterr().out


def test_another_parser_reads_what_was_meant(book: Path) -> None:
    """ruamel.yaml, YAML 1.2."""
    cli.main(CALL)
    read = YAML(typ="safe").load((book / "maps" / "sandpiper-76.yaml").read_text("utf-8"))
    assert (read["name"], read["mains"], read["crosses"]) == ("Sandpiper 76", 22, 21)
    assert len(read["walk"].split()) == 38
    assert read["bore_mm"] == "unknown"


def test_the_editor_is_told_the_schema(book: Path) -> None:
    cli.main(CALL)
    assert f"$schema={SCHEMA}" in (book / "maps" / "sandpiper-76.yaml").read_text("utf-8").splitlines()[0]
    assert (Path(__file__).parents[1] / "frames" / "maps" / SCHEMA).resolve().is_file()


def test_nothing_is_overwritten(book: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = book / "maps" / "sandpiper-76.yaml"
    file.write_text("mine", "utf-8")
    assert cli.main(CALL) == 2
    assert file.read_text("utf-8") == "mine"
    assert "is there already" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("swap", "says"),
    [
        (("22", "21"), "not even"),
        (("184x242", "184"), "no size"),
        (("184x242", "18x24"), "no head"),
        (("Sandpiper 76", "⁂"), "gives no file name"),
        (("Sandpiper 76", "../../etc"), "frames"),
    ],
)
def test_what_is_wrong_is_said(
    book: Path, capsys: pytest.CaptureFixture[str], swap: tuple[str, str], says: str
) -> None:
    call = [swap[1] if word == swap[0] else word for word in CALL]
    try:
        code = cli.main(call)
    except SystemExit as stopped:
        code = int(str(stopped.code))
    out = capsys.readouterr()
    assert says in out.err + out.out
    if swap[1] == "../../etc":
        assert code == 0
        assert (book / "maps" / "etc.yaml").is_file()
    else:
        assert code == 2
        assert not list((book / "maps").iterdir())


@pytest.mark.parametrize(
    "name", ["no", "12", "a: b", "# c", "“x”", "é", '"', "- d", "x #y", "null", "1.5", "a\nb"]
)
def test_a_name_comes_back_as_it_was(name: str) -> None:
    assert YAML(typ="safe").load(StringIO(f"name: {scalar(name)}\n"))["name"] == name


@given(st.text(min_size=1, max_size=30))
def test_any_text_comes_back_as_it_was(text: str) -> None:
    if all(sign.isprintable() for sign in text):
        assert YAML(typ="safe").load(StringIO(f"name: {scalar(text)}\n"))["name"] == text


def test_a_file_name_has_small_letters_digits_and_hyphens() -> None:
    assert slug_of("Plöver  76 (2025)") == "plover-76-2025"
