"""The drafting page as a newcomer uses it: from nothing to a map that the check lets pass, by keyboard."""

from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from rimbook.cli import main
from tests.browser.draft_hand import begin, mark, rows, said, tab_to, to, written, yaml_text

ROOT = Path(__file__).parents[2]
WALK = (
    "m1 m2 m3 m4 m5 m6 m7 m8 m9+c1 m10+c2 m11+c3 c4 c5 c6 c7 c8 c9 c10 c11 c12 c13 c14 c15 c16 c17 c18 "
    "m11+c19 c20 m10 m9+c21 m8 m7 m6 m5 m4 m3 m2 m1"
)


@pytest.fixture(scope="session")
def draft(plain_site: Path) -> str:
    """The page in its folder, where a browser allows least."""
    return (plain_site / "draft/index.html").as_uri()


def check(text: str, name: str, folder: Path, capsys: pytest.CaptureFixture[str]) -> tuple[int, str]:
    """What `rimbook check` says of a map laid into the demo book."""
    shutil.copytree(ROOT / "frames", folder / "frames")
    file = folder / "frames/maps" / name
    file.write_text(text, "utf-8")
    code = main(["check", str(file), "--notes"])
    return code, capsys.readouterr().out


def test_from_nothing_to_a_valid_map_by_keyboard_alone(
    page: Page, draft: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """76 holes, 22 by 21, 10 of them shared, two bores, a strip, twins, tie-offs, and who measured."""
    page.goto(draft)
    for label, text in (
        ("Name", "Dunlin 76"),
        ("Maker", "Saltmarsh Works"),
        ("Sport", "badminton"),
        ("Mains", "22"),
        ("Crosses", "21"),
        ("Width of the line", "186"),
        ("Height of the line", "244"),
        ("Outline", "ellipse with squarer"),
        ("Exponent", "2.15"),
        ("Holes counted", "76"),
    ):
        tab_to(page, label)
        if page.evaluate("document.activeElement.tagName") == "SELECT":
            page.keyboard.type(text)
        else:
            page.keyboard.press("Control+A")
            page.keyboard.type(text)
    page.keyboard.press("Enter")
    expect(said(page)).to_contain_text("76 holes in all, 10 of them shared")
    expect(rows(page)).to_be_focused()

    # The walk that the racket has, where it is another than the proposed one.
    walk = WALK.split()
    page.keyboard.press("Home")
    for word in walk:
        page.keyboard.type(word)
        page.keyboard.press("Enter")
    assert written(page)["walk"].split() == walk

    # One key a hole: 2.1 everywhere, run by run, then 2.7 where strings share or end.
    page.keyboard.press("b")
    keys = {
        name.split()[1]: name.split()[0] for name in page.locator(".rb-draft-pens button").all_inner_texts()
    }
    page.keyboard.press("Home")
    page.keyboard.press("Shift+End")
    page.keyboard.press(keys["2.1"])
    mark(page, 8, 11)
    page.keyboard.press(keys["2.7"])
    for number in (27, 30, 33):
        to(page, number)
        page.keyboard.press(keys["2.7"])
    page.keyboard.press("ArrowUp")
    assert written(page)["bore_mm"] == {"default": 2.1, 2.7: ["8-11", 27, 30, 33]}

    # Tie-offs: both ends of the mains on both sides, the crosses on one side each.
    to(page, 31)
    page.keyboard.press("t")
    page.keyboard.press("b")
    page.keyboard.press(keys["2.7"])
    tab_to(page, "Tie-offs")
    page.keyboard.press("End")
    page.keyboard.type(" r8 l33")
    assert written(page)["stringing"]["tie_offs"] == ["R31", "L31", "R8", "L33"]

    # Back at the list, a run of twins is chosen; then parts by bore, and the strip.
    page.keyboard.press("Escape")
    mark(page, 37, 38)
    tab_to(page, "Part in most holes")
    page.keyboard.type("barrel-21-short")
    tab_to(page, "Part at bore 2.7 mm")
    page.keyboard.type("barrel-27-short")
    tab_to(page, "Give the chosen holes a part of their own")
    page.keyboard.press("Enter")
    expect(page.get_by_label("Holes", exact=True)).to_be_focused()
    tab_to(page, "Part")
    page.keyboard.type("twin-21-even-70")
    tab_to(page, "Lay a strip")
    page.keyboard.press("Enter")
    for label, text in (("First hole", "L6"), ("Last hole", "R6"), ("Part", "plover-crown")):
        tab_to(page, label)
        page.keyboard.press("Control+A")
        page.keyboard.type(text)
    for label, text in (
        ("Rim depth", "9,4"),
        ("Whole racket, length", "674"),
        ("Whole racket, width", "206"),
        ("Tension limit", "28 lb"),
        ("Measured by", "heron-bench"),
        ("On", "2026-10-04"),
        ("With", "calliper"),
        ("Smallest step", "0.05"),
    ):
        tab_to(page, label)
        page.keyboard.type(text)
    # The rim is deeper where the twins sit.
    page.keyboard.press("Escape")
    page.keyboard.press("r")
    mark(page, 35, 38)
    page.keyboard.press("=")
    page.keyboard.type("11")
    page.keyboard.press("Enter")
    expect(rows(page)).to_be_focused()

    frame = written(page)
    assert len(frame["walk"].split()) == 38
    assert frame["walk"].count("+") == 5
    assert frame["bore_mm"] == {"default": 2.1, 2.7: ["8-11", 27, "30-31", 33]}
    assert frame["rim_depth_mm"] == {"default": 9.4, 11: ["35-38"]}
    assert frame["fitted"]["37-38"] == "twin-21-even-70"
    assert frame["strips"] == [{"name": "strip", "holes": ["L6", "R6"], "part": "plover-crown"}]
    code, out = check(yaml_text(page), "dunlin-76.yaml", tmp_path, capsys)
    shown = page.locator(".rb-draft-problem").all_inner_texts()
    assert (code, [line for line in out.splitlines() if "error" in line]) == (0, [])
    assert [text for text in shown if text.startswith(("error", "warning"))] == []
    assert "Nothing wrong in 1 map" in out


def test_what_the_page_finds_the_check_finds(
    page: Page, draft: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    begin(page, draft)
    to(page, 12)
    page.keyboard.press("d")
    page.get_by_label("Part in most holes").fill("barel-21-short")
    page.get_by_label("Tension limit").fill("28 pounds")
    page.get_by_label("Tension limit").press("Tab")
    code, out = check(yaml_text(page), "dunlin-76.yaml", tmp_path, capsys)
    assert code == 1
    shown = page.locator(".rb-draft-problems li").all()
    assert shown
    for each in shown:
        message = each.locator("button").inner_text().split(" ", 1)[1]
        assert re.sub(r"^[RL]\d+: ", "", message) in out
