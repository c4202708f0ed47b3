"""`rimbook show` draws one map, or says why it cannot."""

from __future__ import annotations

from pathlib import Path

import pytest

from rimbook import cli
from tests.book.rules.small_book import MAP, PARTS, changed


@pytest.fixture
def maps(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    for name, text in {"maps/lapwing-20.yaml": MAP, "parts/common.yaml": PARTS}.items():
        path = tmp_path / "frames" / name
        path.parent.mkdir(parents=True)
        path.write_text(text, "utf-8")
    monkeypatch.chdir(tmp_path)
    return tmp_path / "frames" / "maps"


def shown(*arguments: str) -> tuple[int, str]:
    code = cli.main(["show", *arguments, "--out", "shown", "--no-open"])
    page = Path("shown/index.html")
    return code, page.read_text("utf-8") if page.exists() else ""


def test_a_good_map_is_drawn(maps: Path) -> None:
    code, page = shown("frames/maps/lapwing-20.yaml")
    assert code == 0
    assert "Nothing is wrong with this map." in page
    assert page.count("<svg") == 3
    assert 'href="alone.css"' in page
    assert Path("shown/alone.css").stat().st_size > 1000


def test_a_bad_map_says_why_it_is_not_drawn(maps: Path) -> None:
    (maps / "bad.yaml").write_text(changed(MAP, ("default: barrel-21", "default: barel-21")), "utf-8")
    code, page = shown("frames/maps/bad.yaml")
    assert code == 1
    assert "barel-21" in page
    assert "barrel-21" in page
    assert "<svg" not in page


def test_nothing_of_a_map_becomes_markup(maps: Path) -> None:
    (maps / "evil.yaml").write_text(changed(MAP, ("Lapwing 20", "<b onclick=x>")), "utf-8")
    _, page = shown("frames/maps/evil.yaml")
    assert "<b onclick" not in page
    assert "&lt;b onclick" in page


@pytest.mark.parametrize("file", ["frames/maps/none.yaml", "elsewhere.yaml"])
def test_what_is_no_map_of_a_book_is_refused(
    maps: Path, capsys: pytest.CaptureFixture[str], file: str
) -> None:
    Path("elsewhere.yaml").write_text(MAP, "utf-8")
    assert shown(file)[0] == 2
    assert file in capsys.readouterr().err


def test_the_drawing_is_opened(maps: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[str] = []
    monkeypatch.setattr("webbrowser.open", opened.append)
    assert cli.main(["show", "frames/maps/lapwing-20.yaml"]) == 0
    assert opened[0].startswith("file://")
    assert opened[0].endswith("/index.html")
