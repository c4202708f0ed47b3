"""Old addresses in both hosts: a browser goes on by itself, under the policy and from a folder as well."""

from __future__ import annotations

from pathlib import Path
from urllib.parse import quote

import pytest
from lxml import html
from playwright.sync_api import Browser, Page, expect

from rimbook.hosts.plain import write_plain
from rimbook.hosts.workshop import WrongBook
from rimbook.site.publish import publish
from rimbook.site.settings import Settings
from tests.hosts.sample import book, workshop
from tests.serving import served

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
        assert tree.xpath("//head/noscript/meta[@http-equiv='refresh']/@content") == [
            f"0; url=../../{target}/index.html"
        ]
        assert tree.xpath("//head/meta[@http-equiv='Content-Security-Policy']")
        assert tree.xpath("//head/meta[@name='robots']/@content") == ["noindex"]
        assert tree.xpath("//main//a/@href") == [f"../../{target}/index.html"]
    assert (
        not html.parse(plain / "frames/plover-76/index.html").getroot().xpath("//meta[@http-equiv='refresh']")
    )


@pytest.fixture(params=["plain", "theme"])
def host(request: pytest.FixtureRequest) -> tuple[Path, str]:
    """A site of each host, and an old name of Plover 76 there."""
    if request.param == "plain":
        return request.getfixturevalue("plain"), "plover-old"
    return request.getfixturevalue("built_site"), "plover-seventy-six"


@pytest.mark.parametrize("behind", ["", "#R12", "#sheet=1.a%20b&x=é"])
def test_a_browser_goes_on_from_a_folder_with_what_stands_behind_the_hash(
    host: tuple[Path, str], page: Page, behind: str
) -> None:
    site, old = host
    page.goto(f"{(site / f'frames/{old}/index.html').as_uri()}{behind}")
    page.wait_for_url(f"**/frames/plover-76/index.html{quote(behind, safe='#%=&.')}")
    assert "Plover 76" in page.title()


def test_a_browser_goes_on_from_a_server_and_the_hole_is_marked(host: tuple[Path, str], page: Page) -> None:
    site, old = host
    with served(site) as top:
        page.goto(f"{top}/frames/{old}/#R12")
        page.wait_for_url(f"{top}/frames/plover-76/index.html#R12")
        expect(page.locator("tr#R12")).to_be_in_viewport()
        assert page.evaluate("history.length") <= 2  # the way back does not lead to the old address


def test_a_part_goes_on_as_well(plain: Path, page: Page) -> None:
    page.goto(f"{(plain / 'parts/barrel-old/index.html').as_uri()}#frames")
    page.wait_for_url("**/parts/barrel-21-short/index.html#frames")


def test_without_scripts_a_browser_goes_on_by_itself(host: tuple[Path, str], browser: Browser) -> None:
    site, old = host
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((site / f"frames/{old}/index.html").as_uri())
    page.wait_for_url("**/frames/plover-76/index.html")
    context.close()


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
