"""What a person types for a tape and for labels, and what they are told."""

from __future__ import annotations

from pathlib import Path

import pytest

from rimbook.cli import main
from rimbook.commands import CALLED_WRONGLY, NOTHING_WRONG

BOOK = str(Path(__file__).parents[1] / "frames")


@pytest.mark.parametrize(
    "typed",
    [
        ["tape", "plover-76"],
        ["tape", "plover-76", "--paper", "Letter", "--measured", "98.7"],
        ["tape", "plover-76", "--round", "742"],
        ["tape", "plover-76", "--outside", "0"],
        ["labels", "weir-lane"],
        ["labels", "weir-lane", "--skip", "5", "--borders", "--site-url", "https://example.org/"],
        ["labels", "--parts", "barrel-21-short", "plover-crown", "--rows", "5", "--columns", "2"],
    ],
)
def test_a_pdf_is_written(typed: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    file = tmp_path / "made.pdf"
    assert main([*typed, "--book", BOOK, "--out", str(file)]) == NOTHING_WRONG
    assert file.read_bytes().startswith(b"%PDF-")
    assert "100 %" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        (["tape", "plower-76"], "Did you mean plover-76?"),
        (["tape", "plover-76", "--measured", "50"], "expected 90 to 110 mm"),
        (["tape", "plover-76", "--round", "600"], "the line of the holes is 687.7 mm long"),
        (["tape", "plover-76", "--round", "nan"], "no way round the outside"),
        (["tape", "plover-76", "--outside", "-1"], "expected 0 to 60 mm"),
        (["labels", "weir-lan"], "Did you mean weir-lane?"),
        (["labels", "--parts", "barrel-21-shor"], "Did you mean barrel-21-short?"),
        (["labels", "weir-lane", "--rows", "30"], "at most 15 rows and 5 columns"),
        (["labels", "weir-lane", "--skip", "24"], "expected 0 to 23"),
    ],
)
def test_a_wrong_call_says_what_is_expected(
    typed: list[str], told: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "made.pdf"
    assert main([*typed, "--book", BOOK, "--out", str(file)]) == CALLED_WRONGLY
    assert told in capsys.readouterr().err
    assert not file.exists()


def test_a_map_that_cannot_be_read_is_told(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "maps").mkdir()
    (tmp_path / "maps" / "bad-1.yaml").write_text("format: 1\nname: [\n", encoding="utf-8")
    assert main(["tape", "bad-1", "--book", str(tmp_path)]) == 1
    assert "bad-1.yaml:" in capsys.readouterr().err


def test_a_club_with_a_frame_that_has_no_map(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    for name in ("maps", "parts", "clubs"):
        (tmp_path / name).mkdir()
    club = "format: 1\nname: Nowhere\nframes: [plover-76]\n"
    (tmp_path / "clubs" / "nowhere.yaml").write_text(club, encoding="utf-8")
    assert main(["labels", "nowhere", "--book", str(tmp_path)]) == 1
    told = capsys.readouterr().err
    assert "clubs/nowhere.yaml:3:10" in told
    assert "plover-76" in told
