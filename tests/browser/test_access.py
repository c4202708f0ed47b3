"""Everybody can use every page: axe finds nothing, and what axe cannot see is tried."""

from __future__ import annotations

import re
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page, expect

from rimbook.draw.palette import TEXT
from tests.browser.kinds_of_page import PAGES, file_of
from tests.watch import watched_page

WIDTHS = (360, 1440)
COLOUR_RULES = ("color-contrast", "link-in-text-block")
"""What depends on the palette; everything else is the same in light and dark."""


@cache
def axe() -> str:
    return (files("axe_playwright_python") / "axe.min.js").read_text("utf-8")


def violations(page: Page, rules: tuple[str, ...] = ()) -> list[str]:
    """What axe finds against WCAG 2.2 A and AA and its own best practice, one line each."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(axe())
    tags = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
    only = {"type": "rule", "values": rules} if rules else {"type": "tag", "values": tags}
    found: list[dict[str, Any]] = page.evaluate(
        """(runOnly) => axe.run({ runOnly, resultTypes: ["violations"], preload: false })
        .then((all) => all.violations)""",
        only,
    )
    return [f"{one['id']}: {node['target']} {node['html'][:120]}" for one in found for node in one["nodes"]]


@pytest.mark.parametrize("name", PAGES)
def test_axe_finds_nothing(browser: Browser, built_site: Path, site_url: str, name: str) -> None:
    """Light and dark, on a phone and on a desk; and nothing fails while a page is served."""
    with watched_page(browser, 320) as (page, faults):
        page.emulate_media(reduced_motion="reduce")
        # What leads on from an old address at once would leave nothing to look at.
        page.route(
            "**/scripts/moved.js", lambda route: route.fulfill(body="", content_type="text/javascript")
        )
        asked = f"{site_url}/{file_of(built_site, name)}"
        page.goto(asked)
        expect(page.locator("h1")).to_be_visible()
        assert urlsplit(page.url).path == urlsplit(asked).path
        assert _too_wide(page) == []
        found = {}
        for width in WIDTHS:
            _widen(page, width)
            found[width, "light"] = violations(page)
        page.locator("label[title='Switch to dark']").click()
        for width in WIDTHS:
            _widen(page, width)
            found[width, "dark"] = violations(page, COLOUR_RULES)
    assert {where: lines for where, lines in found.items() if lines} == {}
    assert faults == []


def test_a_frame_is_no_wider_than_a_phone_without_scripts(
    browser: Browser, built_site: Path, site_url: str
) -> None:
    context = browser.new_context(viewport={"width": 360, "height": 640}, java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{site_url}/{file_of(built_site, 'frame')}")
    metrics = context.new_cdp_session(page).send("Page.getLayoutMetrics")
    context.close()
    assert metrics["cssContentSize"]["width"] == 360


@pytest.mark.parametrize("name", ["home", "finder", "board", "frames", "frame", "part", "rules"])
def test_axe_finds_nothing_on_plain_pages(browser: Browser, plain_site: Path, name: str) -> None:
    file = "index.html" if name == "home" else file_of(plain_site, name)
    with watched_page(browser, 320) as (page, faults):
        page.goto((plain_site / file).as_uri())
        expect(page.locator("h1")).to_be_visible()
        assert _too_wide(page) == []
        assert violations(page) == []
        page.emulate_media(color_scheme="dark")
        assert violations(page, COLOUR_RULES) == []
    assert faults == []


def test_axe_finds_nothing_while_a_menu_is_open(browser: Browser, site_url: str) -> None:
    with watched_page(browser, 360) as (page, faults):
        page.emulate_media(reduced_motion="reduce")
        page.goto(f"{site_url}/frames/plover-76/index.html")
        page.locator("label.md-header__button[for='__drawer']").click()
        expect(page.locator(".md-nav--primary")).to_be_in_viewport()
        assert violations(page) == []
    assert faults == []


def test_axe_would_find_what_is_wrong(page: Page) -> None:
    """The tool is trusted only as far as it is seen to bite."""
    page.set_content(
        "<html lang='en'><title>A</title><main><h1>A</h1><p style='color: #777'>4.48 to 1</p>"
        "<img src='data:,'>"
        "<p><button style='width: 10px; height: 10px; padding: 0' aria-label='a'></button>"
        "<button style='width: 10px; height: 10px; padding: 0' aria-label='b'></button></p></main></html>"
    )
    found = {line.split(":")[0] for line in violations(page)}
    assert found == {"color-contrast", "image-alt", "target-size"}


def test_the_way_to_the_content_is_the_first_stop(page: Page, site_url: str, plain_site: Path) -> None:
    for address in (f"{site_url}/regrommet.html", (plain_site / "frames/index.html").as_uri()):
        page.goto(address)
        page.keyboard.press("Tab")
        skip = page.locator(":focus")
        expect(skip).to_have_text(re.compile("Skip to content"))
        expect(skip).to_be_in_viewport()
        page.keyboard.press("Enter")
        expect(page.locator("h1:target")).to_be_in_viewport()


def test_nothing_moves_for_those_who_ask_for_it(page: Page, site_url: str) -> None:
    address = f"{site_url}/frames/plover-76/index.html"
    page.goto(address)
    assert _moving(page) > 0
    page.emulate_media(reduced_motion="reduce")
    page.goto(address)
    assert _moving(page) == 0


@pytest.mark.parametrize(("scheme", "ink"), [("light", TEXT.light), ("dark", TEXT.dark)])
def test_drawings_on_plain_pages_follow_the_device(
    page: Page, plain_site: Path, scheme: Any, ink: str
) -> None:
    page.emulate_media(color_scheme=scheme)
    page.goto((plain_site / "frames/plover-76/index.html").as_uri())
    red, green, blue = (int(ink[at : at + 2], 16) for at in (1, 3, 5))
    expect(page.locator(".drawing text").first).to_have_css("fill", f"rgb({red}, {green}, {blue})")


def _widen(page: Page, width: int) -> None:
    """Another width, and so high that no bar lies over anything: half a target would count as a small one."""
    page.set_viewport_size({"width": width, "height": 9_000})


def _too_wide(page: Page) -> list[str]:
    """What makes the page scroll to the right: WCAG 2.2, 1.4.10. Tables and drawings scroll by themselves."""
    outside: list[str] = page.evaluate(
        """() => document.documentElement.scrollWidth <= innerWidth ? [] :
        [...document.querySelectorAll("main *")]
          .filter((one) => one.getBoundingClientRect().right > innerWidth && !one.closest(".rb-scroll"))
          .map((one) => one.outerHTML.slice(0, 120))"""
    )
    return outside


def _moving(page: Page) -> int:
    """How many elements take more than a moment to change."""
    count: int = page.evaluate(
        """() => [...document.querySelectorAll("*")].filter((one) => {
          const style = getComputedStyle(one);
          return [style.transitionDuration, style.animationDuration].some(
            (all) => all.split(",").some((time) => parseFloat(time) > 0.001));
        }).length"""
    )
    return count
