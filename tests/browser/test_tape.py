"""The tape printed by the browser: true to scale, and corrected by what the reader measured."""

from __future__ import annotations

from pathlib import Path

import pypdfium2
import pytest
from playwright.sync_api import Page, expect

from rimbook.site.tape_page import ROOM_MM

DPI = 600


def bar_mm(pdf: bytes) -> float:
    """The longest dark line of the first page, the proof bar's, measured in its picture."""
    picture = pypdfium2.PdfDocument(pdf)[0].render(scale=DPI / 72).to_pil().convert("L")
    dark = picture.point(lambda grey: 255 if grey < 128 else 0)
    rows = (dark.crop((0, y, dark.width, y + 1)).tobytes() for y in range(0, dark.height, 2))
    return max(len(run) for row in rows for run in row.split(b"\0")) * 25.4 / DPI


@pytest.fixture
def tape(page: Page, built_site: Path) -> Page:
    """A tape's page, opened from its folder."""
    page.goto((built_site / "frames/sluice-66/tape/index.html").as_uri())
    return page


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_bar_is_printed_true(tape: Page, paper: str) -> None:
    assert bar_mm(tape.pdf(format=paper)) == pytest.approx(100, abs=0.15)


def test_the_bar_is_seen_on_a_dark_screen(tape: Page) -> None:
    tape.emulate_media(media="screen", color_scheme="dark")
    tape.reload()
    bar, words = (
        tape.locator(f".rb-tape {what}").first.evaluate("drawn => getComputedStyle(drawn).fill")
        for what in (".bar-black", "text")
    )
    assert bar == words


def test_a_printer_that_is_off_is_put_right(tape: Page) -> None:
    tape.get_by_label("Still off?").fill("98,7 mm")
    expect(tape.get_by_role("status").first).to_contain_text("101.32 %")
    assert bar_mm(tape.pdf(format="A4")) * 0.987 == pytest.approx(100, abs=0.15)
    tape.reload()
    expect(tape.get_by_label("Still off?")).to_have_value("98.7")


@pytest.mark.parametrize("typed", ["", "9", "111", "a hundred"])
def test_what_cannot_be_changes_nothing(tape: Page, typed: str) -> None:
    before = tape.locator("[data-rb-width] svg").first.get_attribute("width")
    tape.get_by_label("Still off?").fill(typed)
    expect(tape.get_by_role("status").first).to_contain_text("90 to 110 mm")
    assert tape.locator("[data-rb-width] svg").first.get_attribute("width") == before


def test_pieces_fit_on_upright_paper_at_any_correction(tape: Page) -> None:
    """A4 is 210 mm wide, the margins of the print take 12 mm on each side; the least bar stretches most."""
    assert ROOM_MM * 100 / 90 <= 210 - 24
    widths = tape.locator("[data-rb-width]").evaluate_all("all => all.map(e => Number(e.dataset.rbWidth))")
    assert max(widths) <= ROOM_MM
