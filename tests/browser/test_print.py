"""Pages on paper, A4 and Letter: little ink, nothing cut, nothing that only a screen needs."""

from __future__ import annotations

import re
from io import BytesIO
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect
from pypdf import PdfReader

from tests.browser.kinds_of_page import PAGES, file_of, stay
from tests.draw.colour import contrast
from tests.watch import watched_page

# Most sheets that a page of the demo may take, on either paper.
MOST_SHEETS = {
    "frame": 7,
    "part": 2,
    "frames": 2,
    "parts": 4,
    "sets": 4,
    "rules": 6,
    "matrix-sport": 3,
    "board-kept": 3,
    "regrommet.md": 5,
    "safety.md": 4,
}
PAPERS = {"A4": (210.0, 297.0), "Letter": (215.9, 279.4)}
"""Width and height in mm: ISO 216 and ANSI/ASME Y14.1, size A."""

HOLE_HEADS = ("Hole", "String", "Bore", "Part", "Strip or twin", "Counted", "Place")
FRAME = "frames/plover-76/index.html"
HOLES = [f"{side}{number}" for side in "RL" for number in range(1, 39)]

SCREEN_ONLY = (
    "Skip to content",
    "Find another frame",
    "Correct this map",
    "At the bench",
    "tap it",
    "Show strings",
)


def printed(page: Page, paper: str) -> list[str]:
    """The text of each sheet, as it stands there. Backgrounds are printed, if there are any."""
    data = page.pdf(format=paper, print_background=True)
    sheets = PdfReader(BytesIO(data)).pages
    for sheet in sheets:
        width, height = (
            float(length) * 25.4 / 72 for length in (sheet.mediabox.width, sheet.mediabox.height)
        )
        assert sorted((width, height)) == pytest.approx(sorted(PAPERS[paper]), abs=0.5)
    return [" ".join(sheet.extract_text().split()) for sheet in sheets]


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("name", MOST_SHEETS)
def test_a_page_takes_few_sheets_and_none_is_nearly_empty(
    page: Page, built_site: Path, name: str, paper: str
) -> None:
    page.goto(f"{built_site.as_uri()}/{file_of(built_site, name)}")
    expect(page.locator("main")).to_be_visible()
    sheets = printed(page, paper)
    assert len(sheets) <= MOST_SHEETS[name]
    assert min(map(len, sheets)) > 80


@pytest.mark.parametrize("paper", PAPERS)
def test_the_face_of_every_frame_is_on_the_first_sheet_and_the_unrolled_rim_on_the_second(
    page: Page, built_site: Path, paper: str
) -> None:
    """However many facts a map has, they leave no sheet half empty."""
    files = sorted(
        file
        for file in (built_site / "frames").glob("*/index.html")
        if "data-rb-drawing" in file.read_text("utf-8")
    )
    assert len(files) == 17
    for file in files:
        page.goto(file.as_uri())
        first, second, *_ = printed(page, paper)
        assert "Seen face on, handle down" in first, file
        assert "rim unrolled, head at the top" in second, file


@pytest.mark.parametrize("paper", PAPERS)
def test_a_frame_on_paper(page: Page, built_site: Path, paper: str) -> None:
    page.emulate_media(color_scheme="dark")
    page.goto((built_site / FRAME).as_uri())
    sheets = printed(page, paper)
    whole = " ".join(sheets)

    rows = [
        re.findall(r"([RL]\d+) (?:m|c)\d+(?: \+ c\d+)?(?: shared)?(?: tie-off)? 2\.[17] ", text)
        for text in sheets
    ]
    assert [hole for found in rows for hole in found] == HOLES[:38] + HOLES[:37:-1]
    with_rows = [text for text, found in zip(sheets, rows, strict=True) if found]
    assert len(with_rows) > 1
    for text in with_rows:
        assert " ".join(HOLE_HEADS) in text

    for title in ("face on, handle down", "rim unrolled, head at the top"):
        assert sum(f"Plover 76 · {title}" in text for text in sheets) == 1
    unrolled = next(text for text in sheets if "rim unrolled, head at the top" in text)
    assert set(HOLES) <= set(unrolled.split())

    assert "A cracked frame is not strung" in whole
    assert "eye protection" in whole
    assert "Do not string above it" in whole
    assert [words for words in SCREEN_ONLY if words in whole] == []
    assert "://" not in whole


@pytest.mark.parametrize("name", [name for name in PAGES if name != "404"])
def test_paper_is_white_and_words_are_dark(browser: Browser, built_site: Path, name: str) -> None:
    """Printed from a folder, by a device that shows dark pages, with every script run without a fault."""
    with watched_page(browser) as (page, faults):
        page.emulate_media(color_scheme="dark", reduced_motion="reduce")
        stay(page)
        page.goto(f"{built_site.as_uri()}/{file_of(built_site, name)}")
        expect(page.locator("main")).to_be_visible()
        page.emulate_media(media="print")
        painted, words, cut = page.evaluate(PAPER)
    assert painted == []
    assert {colour for colour in words if contrast(_hex(colour), "#ffffff") < 4.5} == set()
    assert cut == []
    assert faults == []


def test_a_plain_page_is_printed_as_well(page: Page, plain_site: Path) -> None:
    page.emulate_media(color_scheme="dark", reduced_motion="reduce")
    page.goto((plain_site / FRAME).as_uri())
    sheets = printed(page, "A4")
    assert len(sheets) <= MOST_SHEETS["frame"]
    assert [words for words in (*SCREEN_ONLY, "Rules of the book") if words in " ".join(sheets)] == []
    page.emulate_media(media="print")
    painted, words, cut = page.evaluate(PAPER)
    assert (painted, cut) == ([], [])
    assert {colour for colour in words if contrast(_hex(colour), "#ffffff") < 4.5} == set()


def _hex(colour: str) -> str:
    """A computed colour on white paper, as `#rrggbb`."""
    *parts, alpha = [*map(float, re.findall(r"[\d.]+", colour.removeprefix("color(srgb"))), 1.0][:4]
    scale = 255 if colour.startswith("color(") else 1
    return "#" + "".join(f"{int(part * scale * alpha + 255 * (1 - alpha) + 0.5):02x}" for part in parts)


@pytest.mark.parametrize(
    ("colour", "on_paper"),
    [
        ("rgb(0, 128, 255)", "#0080ff"),
        ("rgba(0, 0, 0, 0.5)", "#808080"),
        ("color(srgb 1 0 0 / 0.5)", "#ff8080"),
        ("color(srgb 1 1 0)", "#ffff00"),
    ],
)
def test_colours_are_read_as_a_browser_writes_them(colour: str, on_paper: str) -> None:
    assert _hex(colour) == on_paper


PAPER = """() => {
  const seen = [...document.querySelectorAll("body, body *")].filter((one) => one.checkVisibility());
  const name = (one) => one.outerHTML.slice(0, 120);
  const clear = ["rgba(0, 0, 0, 0)", "rgb(255, 255, 255)"];
  const painted = seen.filter((one) => {
    const style = getComputedStyle(one);
    const bare = style.backgroundImage === "none" && style.boxShadow === "none";
    return !bare || !clear.includes(style.backgroundColor);
  });
  const words = new Set();
  for (const one of seen) {
    const own = [...one.childNodes].some((node) => node.nodeType === 3 && node.data.trim());
    if (own && !one.closest("svg")) words.add(getComputedStyle(one).color);
  }
  const whole = "tr, figure, .rb-caution, .admonition, .rb-facts > div";
  const cut = seen.filter((one) => one.matches(whole) && getComputedStyle(one).breakInside !== "avoid"
    || one.matches("thead") && getComputedStyle(one).display !== "table-header-group"
    || one.matches(".rb-scroll") && getComputedStyle(one).overflowX !== "visible");
  return [painted.map(name), [...words], cut.map(name)];
}"""
