"""A sheet on the device and in the address, two tabs of it, and a browser that keeps nothing."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page

from rimbook.browser.bundle import bundle, module_sources
from tests.browser.sheet_frames import small_frame
from tests.serving import served

PROBE = """
import { codeInHash, hashOfSheet, keepSheet, onSheetElsewhere, openSheet } from "./sheet_kept.js";
import { merge } from "./sheet_merge.js";
import { pickList } from "./sheet_picks.js";
import { EMPTY, mark } from "./sheet_state.js";
import { judge } from "./sheet_verdict.js";
globalThis.inside = {
  codeInHash, hashOfSheet, keepSheet, onSheetElsewhere, openSheet, merge, pickList, EMPTY, mark, judge,
};
"""


@pytest.fixture(scope="module")
def address(tmp_path_factory: pytest.TempPathFactory) -> Iterator[str]:
    folder: Path = tmp_path_factory.mktemp("kept")
    (folder / "probe.js").write_text(bundle("probe", {**module_sources(), "probe": PROBE}), "utf-8")
    head = '<!doctype html><meta charset="utf-8"><link rel="icon" href="data:,">'
    page = f'{head}<script src="probe.js"></script>'
    (folder / "index.html").write_text(page, "utf-8")
    with served(folder) as top:
        yield f"{top}/index.html"


def start(page: Page, address: str) -> None:
    page.goto(address)
    page.evaluate("(frame) => { globalThis.frame = frame; }", small_frame())


def keep(page: Page, *holes: str) -> Any:
    return page.evaluate(
        "(holes) => inside.keepSheet(frame, inside.mark(inside.EMPTY, holes, { seen: 'split', turns: 0 }))",
        list(holes),
    )


def opened(page: Page, holes: list[str] | None = None) -> Any:
    """What a page opens with, where the address brings these holes as split."""
    return page.evaluate(
        """(holes) => {
          const sent = holes && inside.mark(inside.EMPTY, holes, { seen: "split", turns: 0 });
          const hash = sent ? inside.hashOfSheet(frame, sent) : "#R4";
          const { read, from, other } = inside.openSheet(frame, hash);
          return [Object.keys(read.sheet.marks), from, other && Object.keys(other.marks)];
        }""",
        holes,
    )


def test_a_sheet_is_there_after_a_reload(page: Page, address: str) -> None:
    start(page, address)
    assert opened(page) == [[], "new", None]
    assert keep(page, "R4", "R5")
    start(page, address)
    assert opened(page) == [["R4", "R5"], "device", None]
    keep(page)
    assert opened(page) == [[], "new", None]


def test_the_address_comes_first_and_the_device_is_not_forgotten(page: Page, address: str) -> None:
    start(page, address)
    keep(page, "R4")
    assert opened(page, ["L5"]) == [["L5"], "address", ["R4"]]
    assert opened(page, ["R4"]) == [["R4"], "address", None]


def test_an_address_without_a_sheet_brings_none(page: Page, address: str) -> None:
    start(page, address)
    codes = page.evaluate(
        "['', '#', '#R12', '#q=plover', '#sheet=', '#sheet=1.a.b', 'sheet=x'].map(inside.codeInHash)"
    )
    assert codes == ["", "", "", "", "", "1.a.b", "x"]
    assert page.evaluate("inside.hashOfSheet(frame, inside.EMPTY)") == ""


def test_a_browser_that_keeps_nothing_says_so(page: Page, address: str) -> None:
    start(page, address)
    page.evaluate(
        """() => {
          Storage.prototype.setItem = () => { throw new DOMException("refused", "QuotaExceededError"); };
        }"""
    )
    assert keep(page, "R4") is False
    assert opened(page)[:2] == [["R4"], "device"]


def test_what_is_no_sheet_on_the_device_is_passed_over(page: Page, address: str) -> None:
    start(page, address)
    for rubbish in ("{", "7", '{"marks": 1}', '"2.x"'):
        page.evaluate("(text) => localStorage.setItem('rimbook.sheet.small-12', text)", rubbish)
        assert opened(page)[0] == []


def test_two_tabs_put_their_marks_together(page: Page, address: str) -> None:
    start(page, address)
    other = page.context.new_page()
    start(other, address)
    page.evaluate(
        """() => {
          globalThis.mine = inside.mark(inside.EMPTY, ["R4"], { seen: "low", turns: 0 });
          inside.onSheetElsewhere(frame, (theirs) => {
            globalThis.merged = inside.merge(inside.EMPTY, mine, theirs);
          });
        }"""
    )
    keep(other, "R4", "L5")
    page.wait_for_function("globalThis.merged")
    merged = page.evaluate("merged")
    assert {address: mark["seen"] for address, mark in merged["sheet"]["marks"].items()} == {
        "R4": "low",
        "L5": "split",
    }
    assert [clash["address"] for clash in merged["clashes"]] == ["R4"]


def test_the_pick_list_follows_the_walk(page: Page, address: str) -> None:
    start(page, address)
    frame = small_frame()
    frame["serves"][0][0] |= {"pin": "1.6 mm", "trim": "0.4 mm"}
    rows = page.evaluate(
        """(frame) => {
          let sheet = inside.mark(inside.EMPTY, ["L1", "L4", "R4", "L5"], { seen: "split", turns: 0 });
          sheet = { ...sheet, way: "against the clock" };
          sheet = inside.mark(sheet, ["R5", "R3"], { seen: "grooved", turns: 1 });
          const { verdicts } = inside.judge(frame, sheet);
          const parts = [[0, "crown-a"], [1, "wide-a"], [2, "post-a"], [5, "post-b"], [6, null]];
          return inside.pickList(frame, verdicts, parts.map(([piece, part]) => ({ piece, part })));
        }""",
        frame,
    )
    assert [
        (row["holes"][0], row["act"], row["name"], row["isSubstitute"], row["lacks"]) for row in rows
    ] == [
        ("R1", "Replace", "Crown A", False, False),
        ("R3", "Replace", "Wide A", False, False),
        ("R4", "Replace", "Post A", False, False),
        ("R5", "Turn by a quarter", "", False, False),
        ("L5", "Replace", "Post B", True, False),
        ("L4", "Replace", "", False, True),
    ]
    assert (rows[2]["pin"], rows[2]["trim"]) == ("1.6 mm", "0.4 mm")
    assert rows[4]["says"] == "may be loose"
