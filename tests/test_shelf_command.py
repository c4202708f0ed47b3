"""What a person types for a shelf, and what they are told."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from rimbook.cli import main
from rimbook.commands import CALLED_WRONGLY, ERRORS_FOUND, NOTHING_WRONG

BOOK = str(Path(__file__).parents[1] / "frames")


def test_the_plan_is_told_and_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    table = tmp_path / "shelf.csv"
    assert main(["shelf", "weir-lane", "--book", BOOK, "--csv", str(table)]) == NOTHING_WRONG
    told = capsys.readouterr().out
    assert told.startswith("Order today\n")
    assert "Cannot be planned: Gimlet 64" in told
    assert "worth" not in told
    assert table.read_bytes().startswith(b"part,name,kind,")


def test_prices_and_stock_of_a_shop(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    prices = tmp_path / "prices.csv"
    prices.write_text(
        "kind,part,count,price,currency,seller\nsold,alder-bumper,1,4.80,EUR,\nshelf,plover-set,9,,,\n",
        "utf-8",
    )
    assert main(["shelf", "weir-lane", "--book", BOOK, "--prices", str(prices)]) == NOTHING_WRONG
    told = capsys.readouterr().out
    assert "1 x Alder bumper (1 pack of 1) for 4.80 EUR, at once" in told
    assert "worth (EUR)" in told
    assert "x Plover full set" not in told


def test_a_season_side_by_side(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    used = tmp_path / "used.csv"
    used.write_text("part,count,weeks\nplover-crown,20,52\nnix,3,\nbad row\n", "utf-8")
    assert main(["shelf", "weir-lane", "--book", BOOK, "--used", str(used)]) == ERRORS_FOUND
    told = capsys.readouterr()
    assert "4.32 -> 12.16" in told.out
    assert "4.32, 1.00" in told.out
    assert "no drawer of this shelf has nix" in told.err
    assert f"{used}:4: It has 1 cells; expected 3" in told.err


@pytest.mark.parametrize("level", ["0", "1", "-0.5", "nan"])
def test_a_service_level_that_cannot_be(level: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["shelf", "weir-lane", "--book", BOOK, f"--service={level}"]) == CALLED_WRONGLY
    assert "expected a number between 0 and 1" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        (["weir-lan"], "Did you mean weir-lane?"),
        (["no such club at all"], "There is weir-lane."),
        (["weir-lane", "--used", "no-such.csv"], "no-such.csv cannot be read: No such file"),
        (["weir-lane", "--csv", "no-such/shelf.csv"], "cannot be written"),
    ],
)
def test_a_wrong_call_says_what_is_expected(
    typed: list[str], told: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["shelf", *typed, "--book", BOOK]) == CALLED_WRONGLY
    assert told in capsys.readouterr().err


def test_a_list_that_is_no_text_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    prices = tmp_path / "prices.csv"
    prices.write_bytes(b"kind,part\xd3")
    assert main(["shelf", "weir-lane", "--book", BOOK, "--prices", str(prices)]) == CALLED_WRONGLY
    assert "is no text in UTF-8" in capsys.readouterr().err


@pytest.mark.parametrize("typed", ["weir-lane", "weir-lane.yaml", "frames/clubs/weir-lane.yaml"])
def test_a_club_is_named_by_its_file(typed: str) -> None:
    assert main(["shelf", typed, "--book", BOOK]) == NOTHING_WRONG


@pytest.mark.parametrize(
    ("right", "wrong", "told"),
    [
        ("service_level: 0.95", "service_level: 1", "expected  less than 1.0"),
        ("frame: plover-76", "frame: plovver-76", "nearest   plover-76"),
        ("barrel-20:", "barrel-200:", "nearest   barrel-20"),
        ("name: ", "name: [", "weir-lane.yaml"),
    ],
)
def test_a_club_with_a_mistake_is_no_plan(
    right: str, wrong: str, told: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book = tmp_path / "frames"
    shutil.copytree(BOOK, book)
    club = book / "clubs" / "weir-lane.yaml"
    text = club.read_text("utf-8")
    assert right in text
    club.write_text(text.replace(right, wrong, 1), "utf-8")
    assert main(["shelf", "weir-lane", "--book", str(book)]) == ERRORS_FOUND
    said = capsys.readouterr()
    assert said.out == ""
    assert told in said.err
    assert "frames/clubs/weir-lane.yaml:" in said.err
