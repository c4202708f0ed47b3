"""The page of measured holes with catalogues that are odd, long, of another edition, or not there."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

from playwright.sync_api import Browser, Page, expect

from rimbook.book.model import Measured, Part
from tests.browser.fits_site import write_fits
from tests.site.sample import demo_book
from tests.watch import watched_page

DEPTH = "Rim depth at the hole, mm"
HOSTILE = "<img src=x onerror=alert(1)>"


def test_data_that_are_not_there_are_missed_in_words(browser: Browser, tmp_path: Path) -> None:
    write_fits(tmp_path, demo_book().parts)
    (tmp_path / "data/fits.js").unlink()
    with watched_page(browser) as (page, faults):
        page.goto((tmp_path / "fits/index.html").as_uri())
        expect(page.get_by_role("status")).to_contain_text(
            "data/fits.js could not be loaded. Load the page again"
        )
    assert all("fits.js" in fault for fault in faults)


def test_data_of_another_edition_are_refused_in_words(page: Page, tmp_path: Path) -> None:
    write_fits(tmp_path, demo_book().parts)
    (tmp_path / "data/fits.js").write_text('rimbook.put("fits", {"format": 99});', "utf-8")
    page.goto((tmp_path / "fits/index.html").as_uri())
    expect(page.get_by_role("status")).to_contain_text(
        "of another edition than this page. Load the page again"
    )


def test_words_of_strangers_stay_words(page: Page, tmp_path: Path) -> None:
    bare = Part(
        "a", HOSTILE, "single", HOSTILE, 2.05, 1.3, (10.5,), 4.2, packs=(1,), material=f"nylon {HOSTILE}"
    )
    parts = {each.id: each for each in (bare, replace(bare, id="b", barrel_mm=None))}
    write_fits(tmp_path, parts)
    page.goto(f"{(tmp_path / 'fits/index.html').as_uri()}#bore=2.1&depth={HOSTILE}")
    expect(page.locator("#rb-fits-depth-wrong")).to_contain_text(HOSTILE)
    page.get_by_label(DEPTH).fill("")
    expect(page.locator("h3 a")).to_have_text([HOSTILE])
    expect(page.locator("summary")).to_have_text("Not judged: 1 part with sizes that nobody can rely on")
    expect(page.locator("details li")).to_contain_text("Nobody has measured its barrel.")
    expect(page.locator("img")).to_have_count(0)


def test_a_long_list_comes_in_pieces(page: Page, tmp_path: Path) -> None:
    known = Measured("a-handle", resolution_mm=0.02)
    some = (
        Part(f"part-{at:02}", f"Part {at:02}", "single", None, 2.05, 1.3, measured=known) for at in range(45)
    )
    write_fits(tmp_path, {part.id: part for part in some})
    page.goto(f"{(tmp_path / 'fits/index.html').as_uri()}#bore=2.1")
    expect(page.locator("h3")).to_have_count(20)
    page.get_by_role("button", name="Show more").click()
    expect(page.locator("h3")).to_have_count(40)
    expect(page.get_by_role("link", name="Part 20")).to_be_focused()
    page.get_by_role("button", name="Show more").click()
    expect(page.locator("h3")).to_have_count(45)
    expect(page.get_by_role("button", name="Show more")).to_have_count(0)
