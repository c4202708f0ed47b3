"""Every long list sorts by its columns, as the hole table does."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

LISTS = {
    "frames/index.html": "Holes",
    "sports/badminton/index.html": "Maker",
    "bores/index.html": "Holes",
    "bores/2.7/index.html": "Holes",
    "parts/index.html": "Barrel",
    "parts/barrel-21-short/index.html": "Pieces",
    "parts/plover-set/index.html": "In the set",
    "strips/index.html": "Posts",
    "sets/index.html": "For",
}


@pytest.mark.parametrize("file", LISTS)
def test_a_list_sorts_by_what_its_column_says(page: Page, built_site: Path, file: str) -> None:
    page.goto((built_site / file).as_uri())
    heading = page.locator("th", has_text=re.compile(f"^{LISTS[file]}$"))
    table = page.locator("table[data-rb-sortable]", has=heading).first
    expect(table.locator("thead button").first).to_be_visible()
    place = table.locator("thead th").all_text_contents().index(LISTS[file])
    before = column(table, place)
    assert len(before) > 1
    table.locator("thead th").nth(place).get_by_role("button").click()
    expect(table.locator("thead th").nth(place)).to_have_attribute("aria-sort", "ascending")
    after = column(table, place)
    assert sorted(after) == sorted(before)
    known = [text for text in after if text not in ("unknown", "")]
    assert known == sorted(known, key=lambda text: (leading(text), text.casefold()))
    assert after[: len(known)] == known, "what is unknown comes last"


def column(table: Locator, place: int) -> list[str]:
    rows = table.locator("tbody tr").all()
    return [" ".join(row.locator("th, td").nth(place).inner_text().split()) for row in rows]


def leading(text: str) -> float:
    """The number at the beginning of a cell; words stand together."""
    first = text.split()[0].replace(",", "") if text else ""
    return float(first) if first.replace(".", "", 1).isdigit() else 0.0
