"""The whole site from a folder, with no network: nothing is missing, and nobody is asked."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from urllib.parse import unquote

import pytest
from lxml import html
from playwright.sync_api import Browser, expect

from tests.watch import watched_page

# What a browser loads by itself. Only `a` is left, which a reader follows.
LOADED = "//*[not(self::a)]/@href | //@src | //@srcset | //@poster | //@data[parent::object] | //form/@action"
# Says where the page stands, and loads nothing.
NOT_LOADED = "//link[@rel='canonical']/@href | //a/@href"

CSS_URL = re.compile(r"url\(\s*[\"']?([^\"')]+)|@import\s+[\"']([^\"']+)")


@cache
def tree_of(file: Path) -> html.HtmlElement:
    return html.parse(file).getroot()


@cache
def anchors_of(file: Path) -> frozenset[str]:
    return frozenset(tree_of(file).xpath("//@id | //a/@name"))


def pages_of(site: Path) -> list[Path]:
    return sorted(file for file in site.rglob("*.html") if file.name != "404.html")


@pytest.fixture(params=["themed", "plain"])
def site(request: pytest.FixtureRequest) -> Path:
    folder: Path = request.getfixturevalue({"themed": "built_site", "plain": "plain_site"}[request.param])
    return folder


def test_everything_that_a_page_loads_lies_beside_it(site: Path) -> None:
    count = 0
    for file in pages_of(site):
        canonical = tree_of(file).xpath("//link[@rel='canonical']/@href")
        for address in tree_of(file).xpath(LOADED):
            if address in canonical or address.startswith("data:"):
                continue
            assert not re.match(r"[a-z]+:|/", address), f"{file}: {address}"
            assert _target(file, address).is_file(), f"{file}: {address}"
            count += 1
    assert count > 500


def test_every_link_leads_to_a_page_and_an_anchor_or_out_of_the_site(site: Path) -> None:
    count, outside = 0, set()
    for file in pages_of(site):
        for address in tree_of(file).xpath("//a/@href"):
            if re.match(r"[a-z]+:", address):
                outside.add(address.split("/")[2])
                continue
            target = _target(file, address)
            assert target.is_file(), f"{file}: {address}"
            anchor = unquote(address.partition("#")[2])
            if "=" in anchor:  # what a script is told, not a place on the page
                continue
            if anchor and target.suffix == ".html":
                assert anchor in anchors_of(target), f"{file}: {address}"
            count += 1
    assert count > 5_000
    assert outside <= {"example.org"}, "a link to another host is for a reader to follow: is it meant?"


def test_style_sheets_load_nothing_from_elsewhere(site: Path) -> None:
    sheets = sorted(site.rglob("*.css"))
    assert sheets
    for sheet in sheets:
        for match in CSS_URL.finditer(sheet.read_text("utf-8")):
            address = match[1] or match[2]
            assert address.startswith(("data:", "#")) or _target(sheet, address).is_file(), (
                f"{sheet}: {address}"
            )


def test_the_page_for_lost_addresses_begins_at_the_top(built_site: Path) -> None:
    """A server shows it at any depth, so that nothing in it may hang on where it is shown."""
    for address in _addresses(built_site / "404.html"):
        assert address.startswith("/"), address
        assert (built_site / address.partition("#")[0].removeprefix("/")).is_file(), address


def _addresses(file: Path) -> Iterator[str]:
    for address in tree_of(file).xpath(f"{LOADED} | {NOT_LOADED}"):
        if not re.match(r"#|[a-z]+:", address) and address not in (".", "/."):
            yield address


def _target(file: Path, address: str) -> Path:
    path = unquote(re.split("[#?]", address)[0])
    return (file.parent / path).resolve() if path else file


def test_from_the_first_page_to_a_hole_on_a_phone_without_a_network(
    browser: Browser, built_site: Path
) -> None:
    with watched_page(browser, 360) as (page, faults):
        asked: list[str] = []
        page.context.set_offline(True)
        page.on("request", lambda request: asked.append(request.url))
        page.goto((built_site / "index.html").as_uri())
        page.get_by_label("Frame, maker, bore, part or word").fill("plover 76")
        page.get_by_role("link", name="Plover 76").first.click()
        row = page.locator("tr#R9")
        expect(row.locator("td").nth(1)).to_have_text("2.7")
        row.scroll_into_view_if_needed()
        expect(row).to_be_in_viewport()
    assert faults == []
    assert [url for url in asked if not url.startswith(("file:", "data:", "blob:"))] == []
    assert len(asked) > 10
