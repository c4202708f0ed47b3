"""Old addresses in both hosts: a browser goes on by itself, under the policy and from a folder as well."""

from __future__ import annotations

from pathlib import Path

import pytest
from lxml import html
from playwright.sync_api import Page

from rimbook.hosts.plain import write_plain
from rimbook.hosts.workshop import WrongBook
from rimbook.site.publish import publish
from rimbook.site.settings import Settings
from tests.hosts.sample import book, workshop

MOVED = "format: 1\nframes: {plover-old: plover-76}\nparts: {barrel-old: barrel-21-short}\n"


@pytest.fixture
def plain(tmp_path: Path) -> Path:
    frames = book(tmp_path, ("plover-76",))
    (frames / "moved.yaml").write_text(MOVED, "utf-8")
    shop, _ = workshop(tmp_path, frames)
    write_plain(publish(shop.source(), Settings()), tmp_path / "site")
    return tmp_path / "site"


def test_the_way_on_stands_in_the_head_of_the_page(plain: Path) -> None:
    for path, target in (
        ("frames/plover-old", "frames/plover-76"),
        ("parts/barrel-old", "parts/barrel-21-short"),
    ):
        tree = html.parse(plain / path / "index.html").getroot()
        assert tree.xpath("//head/meta[@http-equiv='refresh']/@content") == [
            f"0; url=../../{target}/index.html"
        ]
        assert tree.xpath("//head/meta[@http-equiv='Content-Security-Policy']")
        assert tree.xpath("//head/meta[@name='robots']/@content") == ["noindex"]
        assert tree.xpath("//main//a/@href") == [f"../../{target}/index.html"]
    assert (
        not html.parse(plain / "frames/plover-76/index.html").getroot().xpath("//meta[@http-equiv='refresh']")
    )


def test_a_browser_goes_on_from_a_folder(plain: Path, page: Page) -> None:
    page.goto((plain / "frames/plover-old/index.html").as_uri())
    page.wait_for_url("**/frames/plover-76/index.html")
    assert "Plover 76" in page.title()


def test_a_browser_goes_on_in_the_theme(built_site: Path, page: Page) -> None:
    page.goto((built_site / "frames/plover-seventy-six/index.html").as_uri())
    page.wait_for_url("**/frames/plover-76/index.html")


def test_the_map_of_the_site_does_not_name_an_old_address(built_site: Path) -> None:
    text = (built_site / "sitemap.xml").read_text("utf-8")
    assert "plover-seventy-six" not in text


@pytest.mark.parametrize(
    "wrong",
    [
        MOVED.replace("plover-76", "plover-67"),
        MOVED.replace("plover-old", "plover-76"),
        "format: 1\nframes: [",
    ],
)
def test_a_wrong_list_stops_the_build_also_when_all_else_was_kept(tmp_path: Path, wrong: str) -> None:
    frames = book(tmp_path, ("plover-76",))
    (frames / "moved.yaml").write_text(MOVED, "utf-8")
    shop, _ = workshop(tmp_path, frames)
    assert shop.source().moved.frames == {"plover-old": "plover-76"}
    (frames / "moved.yaml").write_text(wrong, "utf-8")
    with pytest.raises(WrongBook, match=r"moved\.yaml"):
        shop.source()


def test_a_linked_folder_stops_the_build(tmp_path: Path) -> None:
    frames = book(tmp_path, ("plover-76",))
    (tmp_path / "elsewhere").mkdir()
    (frames / "maps" / "more").symlink_to(tmp_path / "elsewhere")
    shop, _ = workshop(tmp_path, frames)
    with pytest.raises(WrongBook, match="link to another place"):
        shop.source()
