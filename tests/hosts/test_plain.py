"""Plain files: the same pages without a theme."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from lxml import html

from rimbook.cli import main
from rimbook.site.pages import Page
from tests.hosts.sample import book
from tests.site.sample import demo_site


def run(tmp_path: Path, *more: str) -> int:
    cache = str(tmp_path / "cache")
    return main(["pages", str(tmp_path / "out"), "--book", str(tmp_path / "frames"), "--cache", cache, *more])


def test_every_page_and_file_is_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    code = main(["pages", str(tmp_path / "out"), "--cache", str(tmp_path / "cache")])
    written = {
        file.relative_to(tmp_path / "out").as_posix()
        for file in (tmp_path / "out").rglob("*.*")
        if file.is_file()
    }
    pages = [each for each in demo_site().values() if isinstance(each, Page)]
    assert code == 0
    listed = {name for name in written if name.startswith("offline/list")}
    assert "offline/list.json" in listed
    assert written - listed == {*demo_site(), "index.html", "assets/plain.css", "worker.js"}
    assert f"{len(pages) + 1} pages" in capsys.readouterr().out


def test_a_page_is_whole_and_finds_its_styles_from_a_folder(tmp_path: Path) -> None:
    book(tmp_path)
    assert run(tmp_path, "--edit-base", "https://example.org/edit/") == 0
    file = tmp_path / "out" / "frames" / "plover-76" / "index.html"
    tree = html.parse(file).getroot()
    assert tree.get("lang") == "en"
    assert "Plover 76" in tree.findtext("head/title")
    for href in tree.xpath("//link[@rel='stylesheet']/@href") + tree.xpath(
        "//nav//a[not(starts-with(@href, '#'))]/@href"
    ):
        assert (file.parent / href).resolve().is_file(), href
    assert tree.xpath("//a[@href='https://example.org/edit/frames/maps/plover-76.yaml']")


def test_a_wrong_book_writes_nothing(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    frames = book(tmp_path)
    (frames / "maps" / "weir-72.yaml").write_text("format: 1\n")
    assert run(tmp_path) == 1
    assert "frames/maps/weir-72.yaml:1:1" in capsys.readouterr().err
    assert not (tmp_path / "out").exists()


def test_a_folder_that_is_no_book_is_said(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert run(tmp_path) == 2
    assert "is no book" in capsys.readouterr().err


@pytest.mark.parametrize("below", ["file", "file/deeper"])
def test_a_folder_that_cannot_be_made_is_a_wrong_call(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], below: str
) -> None:
    book(tmp_path)
    (tmp_path / "file").write_text("not a folder", "utf-8")
    out, cache = tmp_path / below, tmp_path / "cache"
    assert main(["pages", str(out), "--book", str(tmp_path / "frames"), "--cache", str(cache)]) == 2
    told = capsys.readouterr().err
    assert f"rimbook pages: cannot write into {out}: " in told
    assert "Traceback" not in told


def test_a_map_whose_name_is_no_text_is_told_as_check_tells_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book(tmp_path)
    try:
        (tmp_path / "frames/maps/plover-76.yaml").rename(
            tmp_path / "frames/maps" / os.fsdecode(b"a\xff.yaml")
        )
    except OSError:
        pytest.skip("This system takes no such name.")
    assert main(["check", str(tmp_path / "frames" / "maps")]) == 1
    message = "The file name “a\\udcff” cannot be an address of a page."
    assert message in capsys.readouterr().out
    assert run(tmp_path) == 1
    assert message in capsys.readouterr().err
