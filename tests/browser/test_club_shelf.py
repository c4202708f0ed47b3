"""The page of a club's shelf in a browser: what is seen of it on a phone and on paper."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.browser.paper import PAPERS, printed, sheets
from tests.browser.shelf_demo import CLUB_PAGE


@pytest.mark.parametrize("page", [360], indirect=True)
def test_the_caption_of_a_wide_table_is_seen_whole(page: Page, built_site: Path) -> None:
    page.goto(f"{built_site.as_uri()}/{CLUB_PAGE}")
    table = page.locator("#shelf .rb-scroll")
    assert table.evaluate("(box) => box.scrollWidth > box.clientWidth + 100")
    seen = table.bounding_box()
    for moved in (0, 150):
        table.evaluate("(box, by) => { box.scrollLeft = by; }", moved)
        caption = table.locator("caption").bounding_box()
        assert seen
        assert caption
        assert seen["x"] <= caption["x"]
        assert caption["x"] + caption["width"] <= seen["x"] + seen["width"]


@pytest.mark.parametrize("paper", PAPERS)
def test_on_paper_the_heading_of_the_shelf_stands_with_its_table(
    page: Page, built_site: Path, paper: str
) -> None:
    page.goto(f"{built_site.as_uri()}/{CLUB_PAGE}")
    found = sheets(printed(page, paper))
    (sheet,) = (sheet for sheet in found if "The shelf" in sheet)
    assert "19 drawers; of 14 something is kept." in sheet
    assert "order at once. What each drawer serves, and how much to keep" in sheet
    assert "Stock as of 1 March 2027." in found[0]
