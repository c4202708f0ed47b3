"""Holes marked wherever they appear, tables that sort and filter, layers that are remembered."""

from __future__ import annotations

import random
import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.small_site import HOLES, look_inside
from tests.watch import watched_page


@pytest.fixture
def frame(page: Page, small_site: str) -> Page:
    """The page of a frame with eight holes."""
    page.goto(f"{small_site}/frames/plover-76/index.html")
    return page


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"hole_walk": ["readAddress", "inOrder", "step"], "sorting": ["sorted", "next"]})
        yield page
    assert faults == []


def marked(page: Page) -> list[str]:
    """What is marked, in the order of the page."""
    found: list[str] = page.locator(".is-marked").evaluate_all("(marked) => marked.map((one) => one.id)")
    return found


def column(page: Page, number: int) -> list[str]:
    return page.locator(f"tbody tr:not([hidden]) > :nth-child({number})").all_text_contents()


def everywhere(address: str) -> list[str]:
    return [f"face-{address}", f"unrolled-{address}", address]


def test_an_address_marks_its_hole_everywhere(page: Page, anywhere: str) -> None:
    page.goto(f"{anywhere}/frames/plover-76/index.html#R3")
    assert marked(page) == everywhere("R3")
    assert page.locator(".rb-ring").count() == 2
    expect(page.locator("#R3")).to_be_in_viewport()
    expect(page.locator(".rb-readout").first).to_have_text("R3. String: m3. Bore: 10. In the table")


@pytest.mark.parametrize("hash_", ["#r3", "#R03"])
def test_an_address_may_be_written_loosely(page: Page, small_site: str, hash_: str) -> None:
    page.goto(f"{small_site}/frames/plover-76/index.html{hash_}")
    assert marked(page) == everywhere("R3")


def test_an_address_of_no_hole_is_said(page: Page, small_site: str) -> None:
    page.goto(f"{small_site}/frames/plover-76/index.html#R99")
    assert marked(page) == []
    expect(page.locator(".rb-readout").first).to_have_text("This map has no hole R99.")


def test_what_is_said_of_no_hole_is_seen_on_a_phone(browser: Browser, site_url: str) -> None:
    with watched_page(browser, 360) as (page, faults):
        page.goto(f"{site_url}/frames/plover-76/index.html#R99")
        expect(page.get_by_text("This map has no hole R99.").first).to_be_in_viewport()
    assert faults == []


@pytest.mark.parametrize(
    "hash_", ["#glance", "#%E0%A4%A", "#R0", "#R1;alert(1)", "#R1000", "#" + "R" * 5_000]
)
def test_any_other_anchor_marks_nothing(page: Page, small_site: str, hash_: str) -> None:
    page.goto(f"{small_site}/frames/plover-76/index.html{hash_}")
    assert marked(page) == []
    assert (
        page.locator(".rb-readout").all_text_contents()
        == ["Point at a hole, or tap it, to read it here."] * 2
    )


def test_the_wide_drawing_scrolls_to_the_hole(browser: Browser, small_site: str) -> None:
    with watched_page(browser, 360) as (page, faults):
        page.goto(f"{small_site}/frames/plover-76/index.html")
        page.evaluate(
            "for (const frame of document.querySelectorAll('.rb-scroll')) frame.style.overflowX = 'auto'"
        )
        page.evaluate("location.hash = '#L1'")
        expect(page.locator("#L1.is-marked")).to_have_count(1)
        assert page.locator(".rb-scroll").first.evaluate("(frame) => frame.scrollLeft") > 0
        assert page.evaluate("scrollX") == 0
    assert faults == []


@pytest.mark.parametrize("pointed", ["#face-R2", "#unrolled-R2", "tr#R2 td:nth-child(2)", "p a[href='#R2']"])
def test_pointing_marks_and_leaving_unmarks(frame: Page, pointed: str) -> None:
    frame.locator(pointed).hover()
    assert marked(frame) == everywhere("R2")
    frame.locator("h1").hover()
    assert marked(frame) == []


def test_pointing_hides_the_pinned_hole_only_for_the_moment(frame: Page) -> None:
    frame.locator("#face-R4").click()
    frame.locator("#face-R2").hover()
    assert marked(frame) == everywhere("R2")
    frame.locator("h1").hover()
    assert marked(frame) == everywhere("R4")


def test_a_click_pins_and_a_second_lets_go(frame: Page) -> None:
    frame.locator("#unrolled-L3").click()
    frame.locator("h1").hover()
    assert marked(frame) == everywhere("L3")
    expect(frame).to_have_url(re.compile("#L3$"))
    frame.locator("#unrolled-L3").click()
    frame.locator("h1").hover()
    assert marked(frame) == []
    expect(frame).to_have_url(re.compile("html$"))


def test_a_link_in_the_text_pins(frame: Page) -> None:
    frame.locator("p a[href='#R2']").click()
    frame.locator("h1").hover()
    assert marked(frame) == everywhere("R2")


def test_arrow_keys_walk_the_rim(frame: Page) -> None:
    frame.locator("#face-R1").focus()
    walked = []
    for key in ["ArrowRight"] * 8 + ["ArrowLeft", "ArrowUp", "ArrowDown", "End", "Home"]:
        frame.keyboard.press(key)
        walked.append(str(frame.evaluate("document.activeElement.dataset.address")))
    assert walked == [*HOLES[1:], "R1", "L1", "L2", "L1", "L1", "R1"]
    assert marked(frame) == everywhere("R1")


def test_one_hole_of_each_drawing_is_in_the_tab_order(frame: Page) -> None:
    frame.locator("#face-R1").focus()
    frame.keyboard.press("ArrowRight")
    held = frame.locator("svg [tabindex='0']").evaluate_all("(held) => held.map((hole) => hole.id)")
    assert held == ["face-R2", "unrolled-R1"]


@pytest.mark.parametrize("hash_", ["", "#R12"])
def test_tab_leads_from_a_hole_to_its_link_and_on_and_back(page: Page, site_url: str, hash_: str) -> None:
    page.goto(f"{site_url}/frames/plover-76/index.html{hash_}")
    there = ["region", "hole R1", "link #R1", "strings"]
    page.locator("[data-rb-drawing=face] input").last.focus()
    assert tabbed(page, "Tab", 4) == there
    expect(page.locator("[data-rb-drawing=face] .rb-readout")).to_contain_text(hash_[1:] or "Point at a hole")
    # Backwards the readout has a link as long as a hole is kept marked.
    back = ["link #R12", "hole R1", "region"] if hash_ else ["hole R1", "region"]
    assert tabbed(page, "Shift+Tab", len(back)) == back


def tabbed(page: Page, key: str, times: int) -> list[str]:
    """What has the focus after each press of a key."""
    met = []
    for _ in range(times):
        page.keyboard.press(key)
        met.append(
            str(
                page.evaluate(
                    """() => {
                    const { dataset, tagName, href } = document.activeElement;
                    if (dataset.address) return `hole ${dataset.address}`;
                    if (href) return `link ${new URL(href).hash}`;
                    return dataset.rbLayer ?? document.activeElement.role ?? tagName;
                    }"""
                )
            )
        )
    return met


def test_tab_leads_to_the_link_while_the_load_is_shown(page: Page, site_url: str) -> None:
    page.goto(f"{site_url}/frames/plover-76/index.html")
    page.locator("[data-rb-drawing=face]").get_by_label("load").check()
    assert tabbed(page, "Tab", 3) == ["region", "hole R1", "link #R1"]


def test_a_readout_with_the_focus_keeps_its_link(frame: Page) -> None:
    frame.locator("#face-R1").focus()
    assert tabbed(frame, "Tab", 1) == ["link #R1"]
    frame.locator("#unrolled-R3").hover()
    frame.locator("h1").hover()
    expect(frame.locator("[data-rb-drawing=face] .rb-readout a")).to_be_focused()
    tabbed(frame, "Tab", 1)
    expect(frame.locator("[data-rb-drawing=face] .rb-readout")).to_have_text(re.compile("^Point at a hole"))


def test_only_the_drawing_that_is_looked_at_says_its_hole_at_the_lower_edge(
    browser: Browser, site_url: str
) -> None:
    with watched_page(browser, 360) as (page, faults):
        page.set_viewport_size({"width": 360, "height": 640})
        page.goto(f"{site_url}/frames/plover-76/index.html#R12")
        for drawing, other in (("face", "unrolled"), ("unrolled", "face")):
            page.locator(f"#{drawing}-R9").evaluate("(hole) => hole.scrollIntoView({ block: 'center' })")
            page.locator(f"#{drawing}-R9").hover()
            own = page.locator(f"[data-rb-drawing={drawing}] .rb-readout")
            expect(own).to_have_css("position", "sticky")
            expect(own).to_be_in_viewport(ratio=1)
            expect(page.locator(f"[data-rb-drawing={other}] .rb-readout")).to_have_css("position", "static")
    assert faults == []


def test_enter_pins_and_escape_clears(frame: Page) -> None:
    frame.locator("#face-R1").focus()
    frame.keyboard.press("ArrowRight")
    frame.keyboard.press("Enter")
    expect(frame).to_have_url(re.compile("#R2$"))
    frame.keyboard.press("Escape")
    assert marked(frame) == []
    assert frame.locator(".rb-ring").count() == 0
    expect(frame).to_have_url(re.compile("html$"))


def test_a_column_sorts_up_down_and_back(frame: Page) -> None:
    button = frame.get_by_role("button", name="Bore")
    heading = frame.locator("th", has=button)
    button.click()
    expect(heading).to_have_attribute("aria-sort", "ascending")
    assert column(frame, 3) == ["2.1", "2.1", "2.1", "2.1", "2.7", "2.7", "10", "unknown"]
    button.click()
    expect(heading).to_have_attribute("aria-sort", "descending")
    assert column(frame, 3) == ["10", "2.7", "2.7", "2.1", "2.1", "2.1", "2.1", "unknown"]
    button.click()
    expect(heading).not_to_have_attribute("aria-sort", re.compile(""))
    assert column(frame, 1) == list(HOLES)


def test_one_bore_at_a_time(frame: Page) -> None:
    select = frame.get_by_label("Bore, mm:")
    assert select.locator("option").all_text_contents() == [
        "all",
        "2.1 (4)",
        "2.7 (2)",
        "10 (1)",
        "unknown (1)",
    ]
    select.select_option("2.7")
    assert column(frame, 1) == ["R4", "L4"]
    expect(frame.get_by_text("2 of 8 holes")).to_be_visible()
    assert frame.locator("svg.drawing").first.locator(".is-dimmed").count() == 6
    frame.get_by_role("button", name="Hole").click()
    assert column(frame, 1) == ["R4", "L4"]


def test_a_hole_that_is_filtered_away_comes_back_when_it_is_sought(frame: Page) -> None:
    frame.get_by_label("Bore, mm:").select_option("2.7")
    frame.locator("p a[href='#R2']").click()
    expect(frame.locator("tr#R2")).to_be_in_viewport()
    expect(frame.get_by_label("Bore, mm:")).to_have_value("")


def test_a_link_to_the_hole_that_the_address_names_brings_its_row_back(frame: Page) -> None:
    frame.locator("#face-R2").click()
    frame.get_by_label("Bore, mm:").select_option("2.7")
    expect(frame.locator("tr#R2")).to_be_hidden()
    frame.locator("[data-rb-drawing=face]").get_by_role("link", name="In the table").click()
    expect(frame.locator("tr#R2")).to_be_in_viewport()
    expect(frame.get_by_label("Bore, mm:")).to_have_value("")


def test_a_layer_stays_off(frame: Page) -> None:
    figure = frame.locator("[data-rb-drawing=face]")
    figure.get_by_label("strings").uncheck()
    expect(figure).to_have_class("no-strings")
    frame.reload()
    expect(figure).to_have_class("no-strings")
    expect(figure.get_by_label("strings")).not_to_be_checked()
    expect(frame.locator("[data-rb-drawing=unrolled]").get_by_label("strings")).to_be_checked()
    figure.get_by_label("strings").check()
    frame.reload()
    expect(figure.get_by_label("strings")).to_be_checked()


@pytest.mark.parametrize("kept", ["{", "null", "7", '{"a": 1}', "[1, null, {}]", '"face/strings"'])
def test_a_spoilt_memory_does_no_harm(frame: Page, kept: str) -> None:
    frame.evaluate(
        "(kept) => ['layers-off', 'frames'].forEach((name) => localStorage.setItem(`rimbook.${name}`, kept))",
        kept,
    )
    frame.reload()
    expect(frame.locator("[data-rb-drawing=face]").get_by_label("strings")).to_be_checked()
    expect(frame.get_by_role("button", name="Keep Plover 76")).to_be_visible()


def test_addresses_are_put_in_order_of_the_walk(inside: Page) -> None:
    order = [f"R{number}" for number in range(1, 40)] + [f"L{number}" for number in range(38, 0, -1)]
    shuffled = [*order, "R1", "x", "", "R0", "L1000"]
    random.Random(4).shuffle(shuffled)
    assert inside.evaluate("(texts) => inside.inOrder(texts)", shuffled) == order


def test_steps_lead_round_and_home(inside: Page) -> None:
    order = list(HOLES)
    steps = "([order, key]) => order.map((hole) => inside.step(order, hole, key))"
    assert inside.evaluate(steps, [order, "ArrowDown"]) == [*order[1:], order[0]]
    assert inside.evaluate(steps, [order, "ArrowUp"]) == [order[-1], *order[:-1]]
    assert inside.evaluate(steps, [order, "End"]) == ["L1"] * 8
    assert inside.evaluate(steps, [order, "a"]) == [None] * 8
    lost = "(order) => [inside.step(order, 'R9', 'ArrowUp'), inside.step([], 'R1', 'Home')]"
    assert inside.evaluate(lost, order) == [None, None]


def test_sorting_is_stable_and_keeps_the_unknown_last(inside: Page) -> None:
    rows = [["2.7", 0], ["unknown", 1], ["10", 2], ["2.15", 3], ["2.7", 4], ["", 5], ["1,200", 6]]
    up = inside.evaluate(
        "(rows) => inside.sorted(rows, (row) => row[0], 'ascending').map((row) => row[1])", rows
    )
    down = inside.evaluate(
        "(rows) => inside.sorted(rows, (row) => row[0], 'descending').map((row) => row[1])", rows
    )
    assert up == [3, 0, 4, 2, 6, 1, 5]
    assert down == [6, 2, 0, 4, 3, 1, 5]
