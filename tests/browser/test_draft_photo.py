"""Measuring from a photo on the drafting page: by keys from end to end, and with a pointer."""

from __future__ import annotations

import math
import re
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from rimbook.book.load import load_book
from rimbook.rim.outline import at, curve
from rimbook.rim.places import places
from tests.browser.draft_hand import rows, said, sum_of, written
from tests.browser.painted import SIZE, Photo, Spot, dark_middle, painted
from tests.browser.test_access import violations

FRAME = load_book(Path(__file__).parents[2] / "frames").book.frames["plover-76"]
SHEET = [(105.0, 148.5), (105.0, -148.5), (-105.0, -148.5), (-105.0, 148.5)]
"""A4 upright (ISO 216: 210 by 297 mm), clockwise from the corner that begins a long side."""
LAST = 38


def true_place(number: int) -> float:
    """Another place than the one derived: up to 0.6 mm off it."""
    derived = next(each for hole, each in places(FRAME).items() if str(hole) == f"R{number}")
    return derived.along_mm + 0.6 * math.sin(number)


@pytest.fixture(scope="module")
def photo(tmp_path_factory: pytest.TempPathFactory) -> Photo:
    """The sheet, the two middles, and the holes down the right side and then the left."""
    line = curve(FRAME.head)
    half = FRAME.head.height_mm / 2
    down = [true_place(number) for number in range(1, LAST + 1)]
    alongs = [*down, *(line.length_mm - place for place in down)]
    spots = [(float(x), float(y)) for x, y in (at(line, along)[0] for along in alongs)]
    found = painted(tmp_path_factory.mktemp("photo") / "rim.png", SHEET, [(0, half), (0, -half), *spots])
    dots = [dark_middle(found, spot) for spot in found.seen[4:]]
    assert all(math.dist(*pair) < 0.2 for pair in zip(dots, found.seen[4:], strict=True))
    return Photo(found.file, found.seen[:4] + dots)


@pytest.fixture
def opened(page: Page, plain_site: Path, photo: Photo) -> Locator:
    """The stage with the photo on it."""
    page.goto((plain_site / "draft/index.html").as_uri() + "#map=plover-76")
    expect(rows(page)).to_be_visible()
    page.get_by_text("Measure places from a photo").click()
    page.get_by_label("Photo of the frame, face on").set_input_files(photo.file)
    expect(said(page)).to_contain_text(f"{SIZE[0]} by {SIZE[1]} pixels")
    expect(page.get_by_label("Corner 1 to corner 2")).to_have_value("297")
    expect(page.get_by_label("Corner 2 to corner 3")).to_have_value("210")
    return page.get_by_role("application", name="Photo")


def steer(page: Page, spot: Spot) -> None:
    """The sight onto the pixel nearest to a spot, by arrows."""
    text = page.locator(".rb-draft-photo-at").inner_text()
    now = [round(float(number)) for number in re.findall(r"[\d.]+", text)]
    for axis, (less, more) in enumerate((("ArrowLeft", "ArrowRight"), ("ArrowUp", "ArrowDown"))):
        by = round(spot[axis]) - now[axis]
        for _ in range(abs(by) // 20):
            page.keyboard.press(f"Shift+{more if by > 0 else less}")
        for _ in range(abs(by) % 20):
            page.keyboard.press(more if by > 0 else less)
        if not by:
            page.keyboard.press(more)
            page.keyboard.press(less)


def test_a_rim_is_measured_by_keys_within_a_tenth(page: Page, opened: Locator, photo: Photo) -> None:
    before = written(page)["measured"]
    opened.focus()
    for spot in photo.seen:
        steer(page, spot)
        page.keyboard.press("Enter")
    result = page.locator(".rb-draft-photo-result")
    expect(result).to_contain_text("in the photo, 244.0 mm in the draft")
    expect(result).to_contain_text(f"root mean square of {LAST} holes")
    expect(result).to_contain_text("pixel / √12")
    expect(result.locator("tbody tr")).to_have_count(2 * LAST)
    assert violations(page) == []
    page.get_by_role("button", name="Take these places").press("Enter")
    expect(said(page)).to_contain_text(f"{2 * LAST} places are in the draft")
    found = written(page)
    wrong = [abs(found["places_mm"][number - 1] - true_place(number)) for number in range(1, LAST + 1)]
    assert max(wrong) < 0.1
    assert (
        max(
            abs(true_place(number) - places(FRAME)[FRAME.holes[number - 1].address].along_mm)
            for number in range(1, LAST + 1)
        )
        > 0.5
    )
    assert found["measured"] == before
    assert re.search(r"Places along the rim: photo, 0\.\d+ mm a pixel\.$", found["note"])
    expect(sum_of(page)).not_to_contain_text("error")
    page.get_by_role("button", name="Undo", exact=True).click()
    assert "places_mm" not in written(page)


def click(page: Page, spot: Spot) -> None:
    x, y = on_screen(page, spot)
    page.mouse.click(x, y)


def on_screen(page: Page, spot: Spot) -> Spot:
    """Where the window shows a pixel of the photo."""
    x, y = page.locator(".rb-draft-photo-drawing").evaluate(
        """(drawing, [x, y]) => {
          const found = new DOMPoint(x, y).matrixTransform(drawing.getScreenCTM());
          return [found.x, found.y];
        }""",
        list(spot),
    )
    return float(x), float(y)


def asked(page: Page) -> Locator:
    return page.locator(".rb-draft-photo .rb-draft-now")


@pytest.mark.parametrize("page", [360, 1280], indirect=True)
def test_points_are_picked_mended_skipped_and_undone(page: Page, opened: Locator, photo: Photo) -> None:
    opened.scroll_into_view_if_needed()
    opened.evaluate("stage => stage.scrollIntoView({ block: 'center' })")
    for spot in photo.seen[:6]:
        click(page, spot)
    expect(asked(page)).to_have_text("Pick R1")
    table = page.locator(".rb-draft-photo-table tbody")

    # Holes stand close together on a small photo: a click beside a mark is the next hole all the same.
    for spot in photo.seen[6:9]:
        click(page, spot)
    expect(asked(page)).to_have_text("Pick R4")
    expect(table.locator("tr")).to_have_count(3)
    for _ in range(3):
        page.get_by_role("button", name="Undo pick").click()
    expect(asked(page)).to_have_text("Pick R1")
    opened.evaluate("stage => stage.scrollIntoView({ block: 'center' })")

    # The sight stands where the hole is expected: that alone is no measurement.
    opened.focus()
    page.keyboard.press("Enter")
    expect(said(page)).to_contain_text("Move the sight onto the hole first")
    page.keyboard.press("s")
    expect(asked(page)).to_have_text("Pick R2")
    page.keyboard.press("Backspace")
    expect(asked(page)).to_have_text("Pick R1")
    page.keyboard.press("s")

    # A hole too far down is told, and so is one that lies before the one above it.
    page.get_by_label("Picked next").select_option("R5")
    click(page, photo.seen[6 + 6])
    expect(said(page)).to_contain_text("Nearer to where R7 is expected.")
    expect(table.locator("tr")).to_have_count(1)
    page.get_by_label("Picked next").select_option("R6")
    click(page, photo.seen[6 + 2])
    page.get_by_role("button", name="Take these places").click()
    expect(said(page)).to_contain_text("R6 lies before R5")
    assert "places_mm" not in written(page)

    # A mark that is dragged takes its place along with it.
    was = table.locator("tr").last.inner_text()
    opened.evaluate("stage => stage.scrollIntoView({ block: 'center' })")
    page.mouse.move(*on_screen(page, photo.seen[6 + 2]))
    page.mouse.down()
    x, y = on_screen(page, photo.seen[6 + 9])
    page.mouse.move(x, y, steps=4)
    page.mouse.up()
    expect(table.locator("tr").last).not_to_have_text(was)
    page.get_by_role("button", name="Take these places").click()
    expect(said(page)).to_contain_text("2 places are in the draft")
    wide = page.evaluate("document.documentElement.scrollWidth - document.documentElement.clientWidth")
    assert wide <= 0


def test_a_file_that_is_no_picture_is_refused(page: Page, opened: Locator, tmp_path: Path) -> None:
    wrong = tmp_path / "rim.png"
    wrong.write_text("no picture", "utf-8")
    page.get_by_label("Photo of the frame, face on").set_input_files(wrong)
    expect(said(page)).to_contain_text("rim.png cannot be shown as a picture")
    expect(opened).to_be_visible()


def test_a_wrong_sheet_is_told(page: Page, opened: Locator, photo: Photo) -> None:
    opened.evaluate("stage => stage.scrollIntoView({ block: 'center' })")
    for spot in photo.seen[:6]:
        click(page, spot)
    caution = page.locator(".rb-draft-photo-result .rb-caution")
    expect(caution).to_have_count(0)
    page.get_by_label("Rectangle in the photo").select_option("A3 sheet")
    expect(caution).to_contain_text(re.compile(r"4[12]\.\d % more than the draft has"))
    page.get_by_label("Corner 1 to corner 2").fill("200")
    expect(page.get_by_label("Rectangle in the photo")).to_have_value("")
    page.get_by_label("Corner 1 to corner 2").fill("wide")
    expect(page.locator(".rb-draft-photo .rb-draft-wrong").first).to_contain_text("how long and how wide")
