"""Marking on the page of a frame: by finger and by key, kept, sent, and never lost without a word."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.small_site import look_inside
from tests.browser.test_access import COLOUR_RULES, violations
from tests.watch import watched_page

FRAME = "frames/plover-76/index.html"
PHONE = {"width": 360, "height": 780}
MARKED = """() => Object.fromEntries([...document.querySelectorAll("#drawings [id^='face-'][data-address]")]
  .map((hole) => [hole.dataset.address, hole.getAttribute("aria-label").split("; ")[1] ?? ""])
  .filter(([, said]) => said).map(([address, said]) => [address, said.split(":")[0]]))"""


def opened(page: Page, root: str, frame: str = FRAME) -> Page:
    page.goto(f"{root}/{frame}")
    page.get_by_role("button", name="Open the bench sheet").click()
    expect(page.locator(".rb-bar")).to_be_visible()
    return page


def tool(page: Page, name: str) -> None:
    page.locator(".rb-bar").get_by_role("button", name=name, exact=True).click()


def more(page: Page, name: str) -> None:
    tool(page, "More")
    tool(page, name)
    tool(page, "More")


def keys(page: Page, hole: str, *pressed: str) -> None:
    page.locator(f"#face-{hole}").focus()
    for key in pressed:
        page.keyboard.press(key)


def marked(page: Page) -> dict[str, str]:
    """What the face drawing says of each marked hole; holes that go with a broken one are `not looked at`."""
    found: dict[str, str] = page.evaluate(MARKED)
    return {hole: seen for hole, seen in found.items() if seen != "not looked at"}


def middle(page: Page, hole: str, drawing: str = "face") -> tuple[float, float]:
    x, y = page.evaluate(
        """(id) => {
          const hole = document.getElementById(id);
          hole.ownerSVGElement.scrollIntoView({ block: "start" });
          scrollBy(0, -90);
          const spot = new DOMPoint(hole.x.baseVal.value, hole.y.baseVal.value);
          const at = spot.matrixTransform(hole.getScreenCTM());
          return [at.x, at.y];
        }""",
        f"{drawing}-{hole}",
    )
    return x, y


@pytest.fixture
def phone(browser: Browser, site_url: str) -> Iterator[Page]:
    """A page with a finger instead of a mouse."""
    context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True)  # type: ignore[arg-type]
    page = context.new_page()
    faults: list[str] = []
    page.on("pageerror", lambda error: faults.append(str(error)))
    yield opened(page, site_url)
    context.close()
    assert faults == []


@pytest.fixture
def desk(page: Page, site_url: str) -> Page:
    return opened(page, site_url)


# Open and closed.


def test_it_is_closed_until_it_is_wanted(page: Page, site_url: str) -> None:
    page.goto(f"{site_url}/{FRAME}")
    expect(page.locator("[data-rb-sheet-body]")).to_be_hidden()
    expect(page.locator(".rb-bar")).to_have_count(0)
    page.get_by_role("button", name="Open the bench sheet").click()
    expect(page.locator("#sheet #drawings")).to_be_visible()
    page.get_by_role("button", name="Close the bench sheet").click()
    expect(page.locator("#sheet #drawings")).to_have_count(0)
    expect(page.locator("#drawings")).to_be_visible()


def test_without_scripts_a_sentence_says_what_it_needs(browser: Browser, built_site: Path) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto((built_site / FRAME).as_uri())
    expect(page.locator("#sheet")).to_contain_text("needs JavaScript")
    context.close()


# By key.


def test_keys_mark_the_hole_that_has_the_focus(desk: Page) -> None:
    walk = [
        "s",
        "ArrowRight",
        "g",
        "ArrowRight",
        "2",
        "ArrowRight",
        "m",
        "ArrowRight",
        "l",
        "ArrowRight",
        "o",
    ]
    keys(desk, "R12", *walk)
    assert marked(desk) == {
        "R12": "split",
        "R13": "grooved, never turned",
        "R14": "grooved, turned twice",
        "R15": "missing",
        "R16": "string sits low",
        "R17": "sound",
    }
    texts = desk.locator(".rb-drawing--unrolled .rb-sign text").all_text_contents()
    assert texts == ["S", "G", "G2", "M", "L"]
    expect(desk.locator("tr#R14 th")).to_have_attribute("data-rb-seen", "G2")
    expect(desk.locator("tr#R12 td").last).to_have_text("split: replace")
    expect(desk.locator(".rb-bar-said")).to_have_text("R17, c9: sound.")


def test_keys_take_back_repeat_and_stretch(desk: Page) -> None:
    keys(desk, "R12", "s", "ArrowRight", "a", "ArrowRight", "a", "Backspace", "ArrowRight", "3")
    assert marked(desk) == {"R12": "split", "R13": "split", "R15": "grooved, turned 3 times"}
    keys(desk, "R15", "Shift+ArrowRight", "Shift+ArrowRight")
    assert set(marked(desk)) == {"R12", "R13", "R15", "R16", "R17"}
    keys(desk, "R20", "f", "ArrowRight", "ArrowRight", "ArrowRight", "o")
    assert [hole for hole, seen in marked(desk).items() if seen == "sound"] == ["R20", "R21", "R22", "R23"]
    for _ in range(3):
        desk.keyboard.press("Control+z")
    assert set(marked(desk)) == {"R12", "R13", "R15"}
    desk.keyboard.press("Control+Shift+z")
    assert set(marked(desk)) == {"R12", "R13", "R15", "R16"}
    keys(desk, "R1", "u")
    assert set(marked(desk)) == {"R12", "R13", "R15"}


def test_single_keys_do_nothing_elsewhere(desk: Page) -> None:
    """WCAG 2.2, 2.1.4."""
    keys(desk, "R12", "s")
    expect(desk.locator("#face-R12")).to_be_focused()
    desk.get_by_role("button", name="split", exact=True).focus()
    for key in "ogml5a":
        desk.keyboard.press(key)
    assert marked(desk) == {"R12": "split"}


def test_the_whole_way_by_keyboard_alone(page: Page, site_url: str) -> None:
    page.goto(f"{site_url}/{FRAME}")
    page.get_by_role("button", name="Open the bench sheet").focus()
    page.keyboard.press("Enter")
    expect(page.get_by_role("button", name="Close the bench sheet")).to_be_focused()
    stops = 0
    while page.evaluate("document.activeElement.dataset.address ?? ''") != "R1":
        page.keyboard.press("Tab")
        stops += 1
        assert stops < 40
    page.keyboard.press("m")
    assert marked(page) == {"R1": "missing"}
    focused = page.locator("#face-R1")
    expect(focused).to_have_attribute("aria-label", re.compile("; missing: replace$"))


# By finger.


def test_a_tap_gives_the_mark_and_a_second_takes_it(phone: Page) -> None:
    tool(phone, "split")
    phone.touchscreen.tap(*middle(phone, "R12"))
    assert marked(phone) == {"R12": "split"}
    phone.touchscreen.tap(*middle(phone, "R20", "unrolled"))
    assert marked(phone) == {"R12": "split", "R20": "split"}
    phone.touchscreen.tap(*middle(phone, "R12"))
    assert marked(phone) == {"R20": "split"}
    tool(phone, "grooved")
    tool(phone, "turned by 2 quarters")
    phone.touchscreen.tap(*middle(phone, "R20"))
    assert marked(phone) == {"R20": "grooved, turned twice"}
    tool(phone, "no mark")
    phone.touchscreen.tap(*middle(phone, "R20"))
    assert marked(phone) == {}


def test_a_line_of_the_unrolled_rim_is_wide_enough_for_a_thumb(phone: Page) -> None:
    tool(phone, "split")
    x, y = middle(phone, "L20", "unrolled")
    phone.touchscreen.tap(x - 70, y + 1)
    assert marked(phone) == {"L20": "split"}


def test_a_tap_without_a_mark_in_hand_reads_the_hole_out(phone: Page) -> None:
    phone.touchscreen.tap(*middle(phone, "R12"))
    assert marked(phone) == {}
    expect(phone.locator(".rb-readout").first).to_contain_text("R12.")


def test_two_taps_mark_a_row(phone: Page) -> None:
    tool(phone, "sound")
    tool(phone, "Row")
    phone.touchscreen.tap(*middle(phone, "L2"))
    assert marked(phone) == {}
    phone.touchscreen.tap(*middle(phone, "R3"))
    assert set(marked(phone)) == {"L2", "L1", "R1", "R2", "R3"}


def test_stepping_needs_only_the_thumb(phone: Page) -> None:
    tool(phone, "next hole")
    expect(phone.locator(".rb-bar-said")).to_contain_text("R1, m1")
    tool(phone, "sound")
    tool(phone, "split")
    expect(phone.locator(".rb-bar-said")).to_contain_text("Next R3")
    tool(phone, "same as the last")
    tool(phone, "hole before")
    tool(phone, "missing")
    assert marked(phone) == {"R1": "sound", "R2": "split", "R3": "missing"}


def test_a_finger_scrolls_unless_it_sweeps(phone: Page) -> None:
    drawing = phone.locator(".rb-drawing--face svg")
    tool(phone, "split")
    expect(drawing).to_have_css("touch-action", "manipulation")
    tool(phone, "Row")
    expect(drawing).to_have_css("touch-action", "none")
    tool(phone, "split")
    expect(drawing).not_to_have_css("touch-action", "none")


def test_a_swept_finger_marks_what_it_passes(phone: Page) -> None:
    tool(phone, "grooved")
    tool(phone, "Row")
    before = phone.evaluate("scrollY")
    start, end = middle(phone, "R15"), middle(phone, "R18")
    before = phone.evaluate("scrollY")
    touch = phone.context.new_cdp_session(phone)
    for kind, points in (
        ("touchStart", [start]),
        ("touchMove", [((start[0] + end[0]) / 2, (start[1] + end[1]) / 2)]),
        ("touchMove", [end]),
        ("touchEnd", []),
    ):
        touch.send(
            "Input.dispatchTouchEvent",
            {"type": kind, "touchPoints": [{"x": x, "y": y} for x, y in points]},
        )
    assert set(marked(phone)) == {"R15", "R16", "R17", "R18"}
    assert phone.evaluate("scrollY") == before


def test_the_tools_are_large_enough_and_stay_in_reach(phone: Page) -> None:
    tool(phone, "grooved")
    tool(phone, "More")
    sizes = phone.locator(".rb-tool, .rb-choice label, .rb-sheet button.rb-button").evaluate_all(
        """(all) => all.map((one) => one.getBoundingClientRect()).filter(({ width }) => width)
        .map(({ width, height }) => [width, height])"""
    )
    assert len(sizes) > 25
    assert min(min(size) for size in sizes) >= 44
    tool(phone, "More")
    middle(phone, "R1")
    expect(phone.locator(".rb-bar")).to_be_in_viewport(ratio=1)
    assert phone.evaluate("document.documentElement.scrollWidth") == 360


def test_a_mouse_sweeps_at_once_and_does_not_pin(desk: Page) -> None:
    tool(desk, "split")
    start, end = middle(desk, "R14"), middle(desk, "R17")
    desk.mouse.move(*start)
    desk.mouse.down()
    desk.mouse.move(*end, steps=6)
    expect(desk.locator(".rb-drawing--face .rb-row")).to_have_attribute("d", re.compile("^M.*L"))
    desk.mouse.up()
    assert set(marked(desk)) == {"R14", "R15", "R16", "R17"}
    tool(desk, "Undo")
    assert marked(desk) == {}
    expect(desk).not_to_have_url(re.compile("#R1"))


# The whole frame at once.


def test_mirror_rest_and_clear_can_be_undone(desk: Page) -> None:
    keys(desk, "R12", "s", "ArrowRight", "2")
    more(desk, "Right side to left")
    assert set(marked(desk)) == {"R12", "R13", "L12", "L13"}
    assert marked(desk)["L13"] == "grooved, turned twice"
    more(desk, "All others are sound")
    assert len(marked(desk)) == 76
    more(desk, "Clear the sheet")
    assert marked(desk) == {}
    tool(desk, "Undo")
    assert len(marked(desk)) == 76
    for _ in range(2):
        tool(desk, "Undo")
    assert set(marked(desk)) == {"R12", "R13"}
    tool(desk, "Redo")
    assert len(marked(desk)) == 4


def test_a_crack_ends_the_job(desk: Page) -> None:
    keys(desk, "R12", "s")
    desk.get_by_role("group", name="A crack").get_by_label("Found").check()
    verdicts = desk.locator("[data-rb-sheet-part=verdicts]")
    expect(verdicts).to_contain_text("The job ends here: the frame is cracked.")
    expect(desk.locator(".rb-bar")).to_be_hidden()
    keys(desk, "R13", "s")
    assert marked(desk) == {"R12": "split"}
    desk.get_by_role("group", name="A crack").get_by_label("None").check()
    expect(verdicts).to_contain_text("must be done: 1")


def test_cautions_of_the_frame_check(desk: Page) -> None:
    desk.get_by_role("group", name="A sharp edge").get_by_label("Found").check()
    expect(desk.locator(".rb-check")).to_contain_text("Smooth the edge before you fit anything")
    desk.get_by_role("button", name="None of the three").click()
    expect(desk.locator(".rb-check input:checked")).to_have_count(3)
    expect(desk.locator(".rb-check")).not_to_contain_text("Smooth the edge")


def test_verdicts_are_grouped_with_their_reasons(desk: Page) -> None:
    keys(desk, "R3", "s")
    keys(desk, "R14", "g")
    keys(desk, "R15", "3")
    keys(desk, "R9", "g")
    verdicts = desk.locator("[data-rb-sheet-part=verdicts]")
    expect(verdicts).to_contain_text("must be done: 1; should be done: 1; can wait: 1; leave and watch: 1")
    expect(verdicts).to_contain_text("72 holes not looked at")
    expect(verdicts).to_contain_text("L6 to R6")
    expect(verdicts).to_contain_text("one broken place takes the whole strip")
    expect(verdicts).to_contain_text("no fresh position left")
    expect(verdicts).to_contain_text("a groove alone takes no part out of a shared hole")
    taken = desk.locator(".rb-drawing--face .rb-sign--taken")
    expect(taken).to_have_count(11)
    verdicts.get_by_role("link", name="R14").click()
    expect(desk.locator("tr#R14")).to_be_in_viewport()
    expect(desk).to_have_url(re.compile("#sheet="))


# Kept and sent.


def settled(page: Page, holes: int) -> str:
    """The address once it holds the marks."""
    expect(page.locator(".rb-drawing--face .rb-sign:not(.rb-sign--taken)")).to_have_count(holes)
    expect(page).to_have_url(re.compile("#sheet="))
    page.wait_for_timeout(150)
    return page.url


def test_it_survives_a_reload_and_opens_by_itself(desk: Page, site_url: str) -> None:
    keys(desk, "R12", "s", "ArrowRight", "2")
    settled(desk, 2)
    desk.reload()
    assert marked(desk) == {"R12": "split", "R13": "grooved, turned twice"}
    expect(desk.locator(".rb-sheet-note")).to_have_count(0)
    desk.goto("about:blank")
    desk.goto(f"{site_url}/{FRAME}")
    assert marked(desk) == {"R12": "split", "R13": "grooved, turned twice"}


def test_an_address_can_be_sent(desk: Page, browser: Browser) -> None:
    keys(desk, "R12", "s", "ArrowRight", "2")
    address = settled(desk, 2)
    with watched_page(browser) as (other, faults):
        other.goto(address)
        assert marked(other) == {"R12": "split", "R13": "grooved, turned twice"}
        expect(other.locator(".rb-sheet-note")).to_have_count(0)
        other.goto(address.split("#")[0])
        assert len(marked(other)) == 2
    assert faults == []


@pytest.mark.parametrize(
    ("answer", "left"),
    [
        ("Keep those of the address", {"R12": "split", "R14": "sound"}),
        ("Take those of this device", {"L3": "missing"}),
        ("Put both together", {"R12": "split", "R14": "sound", "L3": "missing"}),
    ],
)
def test_a_sheet_that_was_sent_asks_before_it_takes_the_place_of_another(
    desk: Page, browser: Browser, answer: str, left: dict[str, str]
) -> None:
    keys(desk, "R12", "s")
    address = settled(desk, 1)
    with watched_page(browser) as (other, faults):
        opened(other, address.split("/frames")[0])
        keys(other, "L3", "m")
        settled(other, 1)
        other.goto("about:blank")
        other.goto(address)
        assert marked(other) == {"R12": "split"}
        keys(other, "R14", "o")
        settled(other, 2)
        kept = other.evaluate("localStorage.getItem('rimbook.sheet.plover-76')")
        assert "l3" in kept
        other.get_by_role("button", name=answer).click()
        expect(other.locator(".rb-sheet-note")).to_have_count(0)
        assert marked(other) == left
        other.reload()
        assert marked(other) == left
    assert faults == []


def test_an_address_pasted_over_an_open_sheet_asks_too(desk: Page, browser: Browser, site_url: str) -> None:
    keys(desk, "R12", "s")
    sent = settled(desk, 1).split("#")[1]
    with watched_page(browser) as (other, faults):
        opened(other, site_url)
        keys(other, "L3", "m")
        settled(other, 1)
        other.evaluate("(sent) => { location.hash = sent; }", sent)
        other.get_by_role("button", name="Take those of the address").click()
        assert marked(other) == {"R12": "split"}
        tool(other, "Undo")
        assert marked(other) == {"L3": "missing"}
    assert faults == []


@pytest.mark.parametrize("sent", ["#sheet=9.zzz", "#sheet=%E0%A4%A", "#sheet=<img src=x onerror=alert(1)>"])
def test_an_address_that_cannot_be_read_is_told_and_takes_nothing(
    desk: Page, site_url: str, sent: str
) -> None:
    keys(desk, "R12", "s")
    settled(desk, 1)
    desk.goto("about:blank")
    desk.goto(f"{site_url}/{FRAME}{sent}")
    note = desk.locator(".rb-sheet-note")
    expect(note).to_contain_text("cannot be read")
    assert marked(desk) == {"R12": "split"}
    assert "stk" in desk.evaluate("localStorage.getItem('rimbook.sheet.plover-76')")
    note.get_by_role("button", name="Close").click()
    expect(note).to_have_count(0)


def test_an_address_that_was_cut_short_is_told(desk: Page, browser: Browser) -> None:
    keys(desk, "R12", "s", "ArrowRight", "2")
    address = settled(desk, 2)
    with watched_page(browser) as (other, faults):
        other.goto(address[:-8])
        expect(other.locator(".rb-sheet-note")).to_contain_text("cut short")
    assert faults == []


def test_two_windows_show_the_same(desk: Page, site_url: str) -> None:
    other = desk.context.new_page()
    opened(other, site_url)
    keys(desk, "R12", "s")
    expect(other.locator(".rb-drawing--face .rb-sign")).to_have_count(1)
    keys(other, "R13", "m")
    expect(desk.locator(".rb-drawing--face .rb-sign")).to_have_count(2)
    keys(other, "R13", "u")
    assert marked(other) == {"R12": "split"}
    expect(desk.locator(".rb-drawing--face .rb-sign")).to_have_count(1)


def test_windows_that_differ_ask(desk: Page) -> None:
    """Another window has written while this one slept: nothing told it."""
    keys(desk, "R12", "s")
    theirs = settled(desk, 1).split("=")[1]
    keys(desk, "R12", "Backspace")
    expect(desk).to_have_url(re.compile("^[^#]*$"))
    desk.wait_for_timeout(150)
    desk.evaluate(
        "(theirs) => localStorage.setItem('rimbook.sheet.plover-76', JSON.stringify(theirs))", theirs
    )
    keys(desk, "R12", "m")
    note = desk.locator(".rb-sheet-note")
    expect(note).to_contain_text("R12: missing or split?")
    note.get_by_role("button", name="Take “split”").click()
    assert marked(desk) == {"R12": "split"}


def test_a_browser_that_keeps_nothing_is_told_once(browser: Browser, site_url: str) -> None:
    with watched_page(browser) as (page, faults):
        page.add_init_script(
            "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); }"
        )
        opened(page, site_url)
        keys(page, "R12", "s", "ArrowRight", "s")
        expect(page.locator(".rb-sheet-note")).to_have_count(1)
        expect(page.locator(".rb-sheet-note")).to_contain_text("keeps nothing on this device")
        page.get_by_role("button", name="Close", exact=True).click()
        keys(page, "R14", "s")
        settled(page, 3)
        expect(page.locator(".rb-sheet-note")).to_have_count(0)
        page.reload()
        assert len(marked(page)) == 3
    assert faults == []


def older_map(built_site: Path) -> dict[str, Any]:
    """The same frame as it was before somebody found a hole that an earlier version had missed: R5."""
    text = (built_site / FRAME).read_text("utf-8")
    data: dict[str, Any] = json.loads(text.split('<script type="application/json">')[1].split("</script>")[0])
    at = next(at for at, hole in enumerate(data["holes"]) if hole["address"] == "R5")
    del data["holes"][at]
    for hole in data["holes"]:
        side, number = hole["address"][0], int(hole["address"][1:])
        if side == "R" and number > 5:
            hole["address"] = f"R{number - 1}"
    return data


def test_marks_of_another_map_are_asked_about(browser: Browser, built_site: Path, site_url: str) -> None:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"sheet_code": ["encode"], "sheet_state": ["EMPTY", "put"]})
        code = page.evaluate(
            """(frame) => {
              let sheet = inside.put(inside.EMPTY, ["R11"], { seen: "split", turns: 0 });
              sheet = inside.put(sheet, ["L20"], { seen: "low", turns: 0 });
              sheet = inside.put(sheet, ["R20", "R21"], { seen: "sound", turns: 0 });
              return inside.encode(frame, sheet);
            }""",
            older_map(built_site),
        )
        page.goto(f"{site_url}/{FRAME}#sheet={code}")
        doubts = page.locator(".rb-doubts")
        expect(doubts.locator("li")).to_have_count(2)
        expect(doubts).to_contain_text("Was R11: split. It is")
        expect(doubts).to_contain_text("Was R20 to R21: sound. It is")
        assert marked(page) == {"L20": "string sits low"}
        page.reload()
        expect(doubts.locator("li")).to_have_count(2)
        one = doubts.locator("li", has_text="Was R11")
        expect(one.get_by_role("combobox")).to_have_value("R12")
        one.get_by_role("button", name="Put it there").click()
        expect(doubts.locator("li")).to_have_count(1)
        doubts.get_by_role("button", name="Let it go").click()
        expect(doubts.locator("li")).to_have_count(0)
        assert marked(page) == {"L20": "string sits low", "R12": "split"}
        tool(page, "Undo")
        expect(doubts.locator("li")).to_have_count(1)
    assert faults == []


# The address is shared with the holes.


def test_the_address_survives_pins_links_and_the_way_back(desk: Page) -> None:
    keys(desk, "R12", "s")
    address = settled(desk, 1)
    desk.mouse.click(*middle(desk, "R20"))
    assert desk.url == address
    desk.keyboard.press("Escape")
    assert desk.url == address
    desk.locator("tr#R15 th a").click()
    desk.mouse.move(1, 1)
    expect(desk.locator("tr#R15")).to_have_class("is-marked")
    expect(desk).to_have_url(address)
    desk.get_by_role("link", name="Sources").first.click()
    expect(desk).to_have_url(address)
    keys(desk, "R13", "m")
    later = settled(desk, 2)
    assert later != address
    desk.go_back()
    expect(desk).to_have_url(later)
    assert len(marked(desk)) == 2


def test_a_pinned_hole_gives_way_to_the_marks(page: Page, site_url: str) -> None:
    page.goto(f"{site_url}/{FRAME}#R12")
    expect(page.locator("tr#R12")).to_have_class("is-marked")
    page.get_by_role("button", name="Open the bench sheet").click()
    expect(page.locator(".rb-bar")).to_be_visible()
    expect(page).to_have_url(re.compile("#R12$"))
    keys(page, "R12", "s")
    settled(page, 1)
    keys(page, "R12", "u")
    expect(page).to_have_url(re.compile("html$"))


# For everybody, and fast.


@pytest.mark.parametrize("frame", ["plover-76", "sluice-66"])
def test_axe_finds_nothing_on_an_open_sheet(browser: Browser, site_url: str, frame: str) -> None:
    with watched_page(browser, 360) as (page, faults):
        page.emulate_media(reduced_motion="reduce")
        opened(page, site_url, f"frames/{frame}/index.html")
        keys(page, "R12", "s", "ArrowRight", "2", "ArrowRight", "m", "ArrowRight", "l", "ArrowRight", "o")
        page.get_by_role("group", name="A sharp edge").get_by_label("Found").check()
        tool(page, "grooved")
        tool(page, "More")
        page.wait_for_timeout(400)
        found = {}
        for scheme, rules in (("light", ()), ("dark", COLOUR_RULES)):
            if scheme == "dark":
                page.locator("label[title='Switch to dark']").click()
            for width in (360, 1440):
                page.set_viewport_size({"width": width, "height": 9_000})
                found[scheme, width] = violations(page, rules)
                assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert {where: lines for where, lines in found.items() if lines} == {}
    assert faults == []


def test_a_mark_is_painted_within_a_frame(desk: Page) -> None:
    """From the click to the sign in its place, style and layout done: a sixtieth of a second at most."""
    tool(desk, "split")
    taken: list[float] = desk.evaluate(
        """async () => {
          const holes = [...document.querySelectorAll("[id^='face-R']")].slice(6, 36);
          const times = [];
          for (const hole of holes) {
            await new Promise((done) => setTimeout(done, 60));
            const { x, y, width, height } = hole.getBoundingClientRect();
            const where = { clientX: x + width / 2, clientY: y + height / 2 };
            const click = new MouseEvent("click", { ...where, bubbles: true, cancelable: true });
            const start = performance.now();
            hole.dispatchEvent(click);
            document.querySelector(".rb-drawing--face .rb-sign:last-of-type").getBoundingClientRect();
            times.push(performance.now() - start);
          }
          return times.sort((a, b) => a - b);
        }"""
    )
    assert len(marked(desk)) == 30
    assert taken[len(taken) // 2] < 16
