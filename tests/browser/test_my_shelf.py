"""The page of a shelf of one's own in the built demo site. Its oracle: the page of the demo club's shelf."""

from __future__ import annotations

import csv
import io
import re
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from lxml import etree
from playwright.sync_api import Browser, Page, expect

from rimbook.cli import main
from rimbook.site.shelf_csv import COLUMNS
from tests.browser.paper import PAPERS, printed, sheets
from tests.browser.shelf_demo import (
    CLUB_PAGE,
    PAGE,
    PRICES,
    demo_club,
    demo_shelf,
    demo_shop,
    kept,
    opened,
    rows,
    settled,
    texts,
    unfolded,
)
from tests.browser.test_access import violations
from tests.site.sample import ROOT, demo_book
from tests.watch import watched_page

REFUSED = "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };"


@pytest.fixture
def top(built_site: Path) -> str:
    """The built site in its folder, where a browser allows least."""
    return built_site.as_uri()


@pytest.fixture(params=["file", "http"])
def anywhere(request: pytest.FixtureRequest, built_site: Path, site_url: str) -> str:
    return built_site.as_uri() if request.param == "file" else site_url


def filled(page: Page, top: str, **shelf: Any) -> Page:
    return opened(page, top, {**demo_shelf(), **shelf}, demo_shop())


def type_in(page: Page, label: str, text: str) -> None:
    field = page.get_by_label(label, exact=True)
    field.fill(text)
    field.press("Tab")


def oracle(page: Page, top: str) -> Page:
    page.goto(f"{top}/{CLUB_PAGE}")
    return page


SAID = (
    "#order h3",
    "#order li",
    "#shelf p:first-of-type",
    "#pieces .rb-facts dt",
    "#pieces .rb-facts dd",
    "#unplanned .rb-facts dt",
    "#compare caption",
    "#compare p",
)
TABLES = ("#shelf", "#compare")


def test_the_demo_club_typed_in_gives_the_plan_of_its_page(page: Page, anywhere: str) -> None:
    """Orders, levels and words, each as on the club's page, worked out by the other program."""
    oracle(page, anywhere)
    said = {selector: texts(page, selector) for selector in SAID}
    tables = {section: rows(page, section) for section in TABLES}
    lost = texts(page, "#unplanned .rb-facts dd")
    idle = [each for each in texts(page, "#shelf p") if each.startswith("In stock")]
    terms = texts(page, "#terms dd")
    filled(page, anywhere)
    assert {selector: texts(page, selector) for selector in SAID} == said
    assert {section: rows(page, section) for section in TABLES} == tables
    assert len(said["#order li"]) == 9
    assert len(tables["#shelf"]) == 19
    assert [each for each in texts(page, "#shelf p") if each.startswith("In stock")] == idle
    gimlet = "All of it: nobody has written down how often it is restrung. Type its restrings a year above."
    assert texts(page, "#unplanned .rb-facts dd") == [each if "(" in each else gimlet for each in lost]
    values = [each.split(",")[0] for each in terms]
    assert [each.split(",")[0] for each in texts(page, "#terms dd")][: len(values)] == values


def test_the_curve_is_drawn_as_on_the_page_of_the_club(page: Page, top: str) -> None:
    def shapes() -> list[Any]:
        text = page.locator("svg.drawing-shelf-curve").evaluate("(svg) => svg.outerHTML")
        drawn = etree.fromstring(text)
        return [
            (etree.QName(each).localname, dict(each.attrib), (each.text or "").strip())
            for each in drawn.iter()
        ]

    oracle(page, top)
    expected = shapes()
    filled(page, top)
    assert shapes() == expected
    assert len(expected) > 40


def test_it_loads_with_nothing_and_says_what_to_do(page: Page, anywhere: str) -> None:
    opened(page, anywhere)
    expect(page.locator("#order")).to_contain_text("Add the frames you string first: nothing is planned yet.")
    expect(page.locator(".rb-my-shelf-told")).to_have_text("No frame yet, so nothing is planned.")
    expect(page.locator("#shelf")).to_be_hidden()
    expect(page.get_by_label("Add a frame by its name")).to_be_visible()
    assert kept(page) is None


def test_a_frame_whose_restrings_are_not_known_is_named_and_nothing_is_guessed(page: Page, top: str) -> None:
    opened(page, top)
    page.get_by_label("Add a frame by its name").fill("plover")
    page.get_by_role("button", name="Add Plover 76 (2024)").click()
    expect(page.locator("#order")).to_contain_text("type how often at least one frame is restrung")
    expect(page.locator("#unplanned dl")).to_contain_text("Type its restrings a year above.")
    type_in(page, "Restrings a year, Plover 76 (2024)", "0")
    expect(page.locator("#unplanned")).to_contain_text("Nothing: all that your frames take is planned.")
    expect(page.locator("#order")).to_contain_text(
        "Nothing: every drawer lasts until the next order arrives."
    )
    expect(page.locator("#order")).to_contain_text("Nothing is known of what lies on your shelf")
    type_in(page, "Restrings a year, Plover 76 (2024)", "54")
    expect(page.locator("#order li").first).to_contain_text("Chance to last 6 weeks")
    type_in(page, "Restrings a year, Plover 76 (2024)", "")
    expect(page.locator("#order")).to_contain_text("type how often at least one frame is restrung")


def test_assumptions_are_shown_as_such_until_something_is_typed(page: Page, top: str) -> None:
    filled(page, top, terms={})
    unfolded(page)
    hints = page.locator(".rb-my-shelf-hint")
    expect(hints.filter(has_text="An assumption")).to_have_count(8)
    expect(hints.first).to_contain_text("An assumption: 2 weeks. Type your own.")
    type_in(page, "From order to delivery, weeks", "3,5 weeks")
    expect(page.get_by_label("From order to delivery, weeks")).to_have_value("3.5")
    expect(hints.first).to_contain_text("Your own.")
    expect(page.locator("#terms dd").first).to_have_text("3.5 weeks")
    assert kept(page)["terms"]["lead"] == 3.5
    page.get_by_role("button", name="Back to the assumption, 2 weeks: From order to delivery").click()
    expect(page.get_by_label("From order to delivery, weeks")).to_be_focused()
    expect(page.locator("#terms dd").first).to_contain_text("2 weeks, an assumption")
    assert kept(page)["terms"]["lead"] is None
    page.get_by_role("button", name="Undo").click()
    expect(page.locator("#terms dd").first).to_have_text("3.5 weeks")


@pytest.mark.parametrize(
    ("label", "wrong", "says"),
    [
        ("Service level, %", "100", "expected per cent above 0 and below 100"),
        ("Service level, %", "0", "expected per cent above 0 and below 100"),
        ("Service level, %", "0.95", "“0.95” can be read in two ways: write 95 for 95\u00a0%"),
        ("Restrings that renew one part of kind single, %", "0.25", "write 25 for 25\u00a0%"),
        ("Restrings that renew one part of kind single, %", "101", "from 0 to 100"),
        ("Between two reviews of the shelf, weeks", "521", "expected a number of weeks from 0 to 520"),
        ("From order to delivery, weeks", "<b>", "“<b>” will not do"),
        ("Restrings a year, Plover 76 (2024)", "-1", "from 0 to 1,000,000"),
        ("How many, Plover 76 (2024)", "1.5", "expected a whole number from 0 to 100,000"),
    ],
)
def test_what_makes_no_sense_is_refused_and_the_last_value_stays(
    page: Page, top: str, label: str, wrong: str, says: str
) -> None:
    filled(page, top)
    unfolded(page)
    before, plan = kept(page), rows(page, "#shelf")
    type_in(page, label, wrong)
    field = page.get_by_label(label, exact=True)
    expect(field).to_have_attribute("aria-invalid", "true")
    expect(field).to_have_value(wrong)
    expect(field).to_have_accessible_description(re.compile(re.escape(says)))
    assert kept(page) == before
    assert rows(page, "#shelf") == plan
    type_in(page, label, "7")
    expect(field).not_to_have_attribute("aria-invalid", "true")
    assert kept(page) != before


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        ({"lead": 0, "review": 0}, "Delivery and review are both 0 weeks"),
        ({"lead": 520, "review": 520}, "a shelf can serve 100,000 between two orders at most"),
    ],
)
def test_terms_that_no_shelf_can_be_planned_by_are_told(
    page: Page, top: str, changes: dict[str, float], says: str
) -> None:
    """A club's file is refused for the same: book/rules/club_shelf_time.py."""
    shelf = demo_shelf()
    shelf["frames"][0]["restrings"] = 20_000
    filled(page, top, frames=shelf["frames"], terms={**shelf["terms"], **changes})
    expect(page.locator(".rb-my-shelf > .rb-prices-wrong")).to_contain_text(says)
    expect(page.locator("#order")).to_be_hidden()
    expect(page.locator(".rb-my-shelf-told")).to_have_text("Nothing is planned.")
    unfolded(page)
    type_in(page, "From order to delivery, weeks", "3")
    type_in(page, "Between two reviews of the shelf, weeks", "4")
    expect(page.locator("#order li").first).to_be_visible()
    expect(page.locator(".rb-my-shelf > .rb-prices-wrong")).to_be_hidden()


def test_a_search_that_was_cut_off_is_told(page: Page, built_site: Path, tmp_path: Path) -> None:
    for name in ("assets", "data", "my-shelf", "parts"):
        shutil.copytree(built_site / name, tmp_path / name)
    file = tmp_path / PAGE
    text, count = re.subn(r'"mostSteps":\d+', '"mostSteps":0', file.read_text("utf-8"))
    assert count == 1
    file.write_text(text, "utf-8")
    filled(page, tmp_path.as_uri())
    expect(page.locator("#shelf")).to_contain_text("The search for the fewest drawers was cut off")


def test_a_frame_is_taken_out_and_put_back_where_it_was(page: Page, top: str) -> None:
    filled(page, top)
    unfolded(page)
    page.get_by_role("button", name="Take out Bittern 78 (2022)").click()
    expect(page.get_by_role("button", name="Take out Bittern 78 second drilling (2025)")).to_be_focused()
    expect(page.locator(".rb-prices-said")).to_have_text("Taken out: Bittern 78.")
    assert len(kept(page)["frames"]) == 10
    page.get_by_role("button", name="Undo").click()
    expect(page.locator(".rb-my-shelf-frames tbody tr")).to_have_count(11)
    assert kept(page) == demo_shelf()
    expect(page.locator(".rb-my-shelf-frames tbody tr").nth(1)).to_contain_text("Bittern 78 (2022)")


def test_a_share_below_one_per_cent_is_typed_with_its_sign(page: Page, top: str) -> None:
    filled(page, top)
    unfolded(page)
    share = "Restrings that renew one part of kind single, %"
    type_in(page, share, "0.5 %")
    assert kept(page)["terms"]["shares"]["single"] == 0.005
    expect(page.get_by_label(share, exact=True)).to_have_value("0.5 %")


@pytest.mark.parametrize(
    ("label", "text"),
    [
        ("Restrings a year, Plover 76 (2024)", "76"),
        ("How many, Plover 76 (2024)", "5"),
        ("Service level, %", "80"),
        ("Restrings that renew one part of kind strip, %", "3"),
        ("Name of the club or shop", "Quay"),
    ],
)
def test_undo_goes_when_something_else_is_typed(page: Page, top: str, label: str, text: str) -> None:
    """Beside “Added: Bodkin 60” it would undo the last thing typed, and the frame would stay."""
    filled(page, top)
    unfolded(page)
    said, undo = page.locator(".rb-prices-said"), page.get_by_role("button", name="Undo")
    page.get_by_label("Add a frame by its name").fill("bodkin")
    page.get_by_role("button", name="Add Bodkin 60").click()
    expect(said).to_have_text(re.compile("Added: Bodkin 60"))
    expect(undo).to_be_visible()
    type_in(page, label, text)
    expect(undo).to_be_hidden()
    expect(said).to_be_empty()
    page.get_by_role("button", name="Take out Bittern 78 (2022)").click()
    undo.click()
    expect(said).to_have_text("Undone.")
    assert len(kept(page)["frames"]) == 12
    expect(page.get_by_label(label, exact=True)).to_have_value(text)


def test_undo_stays_while_nothing_else_was_changed(page: Page, top: str) -> None:
    """What was typed wrongly changes nothing, so the frame is still what would be undone."""
    filled(page, top)
    unfolded(page)
    page.get_by_role("button", name="Take out Bittern 78 (2022)").click()
    type_in(page, "Service level, %", "0.95")
    page.get_by_role("button", name="Undo").click()
    assert kept(page) == demo_shelf()


def test_an_address_offers_frames_and_adds_none_by_itself(page: Page, top: str) -> None:
    opened(page, top, hash_="#frames=plover-76,bobbin-64,no-such-1,..%2Fx")
    offer = page.locator(".rb-board-sent")
    expect(offer).to_contain_text("names 2 frames that you have not: Plover 76 (2024) and Bobbin 64")
    expect(offer).to_contain_text("This book has no no-such-1.")
    assert kept(page) is None
    page.get_by_role("button", name="Add them").click()
    expect(offer).to_have_count(0)
    expect(page.locator(".rb-my-shelf-frames tbody tr")).to_have_count(2)
    assert [each["slug"] for each in kept(page)["frames"]] == ["plover-76", "bobbin-64"]
    assert page.url.endswith(PAGE)
    page.evaluate("location.hash = '#frames=plover-76'")
    expect(offer).to_contain_text("is in your list already")
    page.get_by_role("button", name="Leave it").click()
    expect(offer).to_have_count(0)
    assert len(kept(page)["frames"]) == 2


def test_the_board_leads_here_and_kept_frames_are_added(page: Page, top: str) -> None:
    page.goto(f"{top}/board/index.html#frames=plover-76,weir-72")
    page.get_by_role("button", name="Keep it").click()
    page.get_by_role("link", name="Plan a shelf for these frames").click()
    settled(page)
    expect(page.locator(".rb-board-sent")).to_contain_text("names 2 frames that you have not")
    page.get_by_role("button", name="Leave it").click()
    page.get_by_role("button", name="Add my 2 kept frames").click()
    expect(page.locator(".rb-my-shelf-frames tbody tr")).to_have_count(2)
    expect(page.get_by_role("button", name="kept frame")).to_have_count(0)


def test_a_frame_that_is_gone_is_named_and_stays_until_it_is_taken_out(page: Page, top: str) -> None:
    gone = {"slug": "plover-70", "name": "<i>Plover 70</i>", "count": 1, "restrings": 9}
    shelf = demo_shelf()
    filled(page, top, frames=[gone, *shelf["frames"]])
    unfolded(page)
    row = page.locator(".rb-my-shelf-frames tbody tr").first
    expect(row).to_contain_text("<i>Plover 70</i>")
    expect(row).to_contain_text("This book has no such frame any more")
    expect(page.locator("#unplanned dl > div").first).to_contain_text("<i>Plover 70</i>")
    assert kept(page)["frames"][0] == gone
    assert len(rows(page, "#shelf")) == 19, "the others are planned as if it were not there"
    type_in(page, "Restrings a year, Plover 76 (2024)", "55")
    assert kept(page)["frames"][0] == gone
    expect(page.locator("#keep pre")).to_contain_text("# Left out, for the book has them not: plover-70.")
    page.get_by_role("button", name="Take out <i>Plover 70</i>").click()
    expect(page.locator("#unplanned")).not_to_contain_text("Plover 70")


def test_a_card_of_an_older_edition_is_told(page: Page, built_site: Path, tmp_path: Path) -> None:
    for name in ("assets", "data", "my-shelf", "parts"):
        shutil.copytree(built_site / name, tmp_path / name)
    card = tmp_path / "data/board/weir-72.js"
    text = card.read_text("utf-8")
    card.write_text(text.replace('"shelf":', '"old":'), "utf-8")
    assert text != card.read_text("utf-8")
    filled(page, tmp_path.as_uri())
    unfolded(page)
    row = page.locator(".rb-my-shelf-frames tbody tr").filter(has_text="Weir 72")
    expect(row).to_contain_text("of another edition: open its page once while online")
    expect(page.locator("#unplanned")).to_contain_text("of another edition")
    assert not [each for each in rows(page, "#shelf") if "Weir 72" in each[2]]


def test_without_a_list_of_frames_the_plan_still_stands(
    browser: Browser, built_site: Path, tmp_path: Path
) -> None:
    for name in ("assets", "data", "my-shelf", "parts"):
        shutil.copytree(built_site / name, tmp_path / name)
    (tmp_path / "data/finder.js").unlink()
    (tmp_path / "data/board/weir-72.js").unlink()
    with watched_page(browser) as (page, faults):
        filled(page, tmp_path.as_uri())
        unfolded(page)
        expect(page.locator("#order li")).not_to_have_count(0)
        expect(page.locator("#unplanned")).to_contain_text("It could not be loaded")
        page.get_by_label("Add a frame by its name").fill("plover")
        expect(page.get_by_text("The list of frames is not loaded")).to_be_visible()
    assert all("data/finder.js" in fault or "weir-72.js" in fault for fault in faults)


def test_prices_choose_the_packs_and_tell_what_it_costs(page: Page, top: str) -> None:
    """The alder bumper costs 4.80 at one seller and 5.20 at another; nine lines are to be ordered."""
    opened(page, top, demo_shelf(), demo_shop(PRICES))
    alder = page.locator("#order li").filter(has_text="Alder bumper")
    expect(alder).to_contain_text("(1 pack of 1 from Tidewater, €4.80)")
    expect(page.locator("#order")).to_contain_text(
        "The order costs €19.30 in all, without 7 lines for which no price is known."
    )
    expect(page.locator("#compare thead").first).to_contain_text("Money tied up")
    pooled = rows(page, "#compare")[2]
    # Two full sets of the Plover and one bumper, as the club's page keeps them.
    assert pooled[-2:] == ["€33.80", "12"]
    expect(page.locator("#compare")).to_contain_text("What has no price is not in the money.")


def test_stock_that_another_tab_changes_is_followed_at_once(page: Page, anywhere: str) -> None:
    opened(page, anywhere, demo_shelf(), demo_shop())
    expect(page.locator("#typed")).to_contain_text("12 parts on your shelf and no prices")
    other = page.context.new_page()
    other.goto(f"{anywhere}/prices/index.html")
    pieces = other.get_by_label("Pieces, barrel-21-short")
    pieces.fill("4321")
    pieces.press("Tab")
    row = page.locator("#shelf tbody tr").filter(has_text="4321")
    expect(row).to_have_count(1)
    other.get_by_role("button", name="Forget everything").click()
    other.get_by_role("button", name="Load an invented example list").click()
    expect(page.locator("#order")).to_contain_text("Prices and stock are the invented example list.")
    expect(page.locator("#typed")).to_contain_text("(the invented example list)")


def test_two_tabs_lose_nothing(page: Page, anywhere: str) -> None:
    filled(page, anywhere)
    unfolded(page)
    other = page.context.new_page()
    other.goto(f"{anywhere}/{PAGE}")
    settled(other)
    unfolded(other)
    wrong = page.get_by_label("How many, Plover 76 (2024)")
    wrong.fill("some")
    wrong.press("Tab")
    type_in(other, "Restrings a year, Plover 76 (2024)", "60")
    expect(page.get_by_label("Restrings a year, Plover 76 (2024)")).to_have_value("60")
    expect(wrong).to_have_value("some")
    type_in(page, "Service level, %", "90")
    expect(other.get_by_label("Service level, %")).to_have_value("90")
    other.get_by_role("button", name="Take out Pipit 76").click()
    expect(page.locator(".rb-my-shelf-frames")).not_to_contain_text("Pipit")
    assert kept(page)["terms"]["service"] == 0.9
    assert kept(page)["frames"][0]["restrings"] == 60
    assert len(kept(page)["frames"]) == 10


def test_what_is_typed_is_there_next_time_and_order_comes_first(page: Page, anywhere: str) -> None:
    filled(page, anywhere)
    unfolded(page)
    type_in(page, "Service level, %", "80")
    before = rows(page, "#shelf")
    page.goto(f"{anywhere}/parts/index.html")
    page.goto(f"{anywhere}/{PAGE}")
    settled(page)
    assert rows(page, "#shelf") == before
    expect(page.get_by_label("Add a frame by its name")).to_be_hidden()
    expect(page.locator("#order h2")).to_be_in_viewport()
    expect(page.locator("#order li").first).to_be_in_viewport()


def test_a_browser_that_keeps_nothing_says_so_and_still_plans(browser: Browser, top: str) -> None:
    with watched_page(browser) as (page, faults):
        page.add_init_script(REFUSED)
        page.goto(f"{top}/{PAGE}#frames=plover-76")
        page.get_by_role("button", name="Add it").click()
        expect(page.get_by_text("This browser refuses to keep anything")).to_be_visible()
        type_in(page, "Restrings a year, Plover 76 (2024)", "54")
        expect(page.locator("#order li").first).to_be_visible()
    assert faults == []


def test_counts_are_shown_beside_the_plan_and_taken_over_by_choice(page: Page, top: str) -> None:
    """Old and new numbers as `rimbook shelf --used` tells them: tests/test_shelf_command.py."""
    filled(page, top)
    before = rows(page, "#shelf")
    page.get_by_label("Or paste rows from a spreadsheet").fill(
        "part,count,weeks\nplover-crown,20,52\nnix,3,\nbad row\n"
    )
    page.get_by_role("button", name="Count these rows").click()
    faults = page.locator("#season li")
    expect(faults).to_have_count(1)
    expect(faults).to_contain_text("Row 4: ")
    expect(page.locator("#season")).to_contain_text("The plan does not go by them yet.")
    expect(page.locator("#season")).to_contain_text("No drawer of this shelf has nix")
    (row,) = rows(page, "#season")
    assert row[1:3] == ["20 in 52 weeks", "4.32 → 12.2"]
    assert rows(page, "#shelf") == before
    page.get_by_role("button", name="Plan with the counted rates").click()
    expect(page.locator("#season")).to_contain_text("The plan goes by the counted rates.")
    after = rows(page, "#shelf")
    assert after != before
    page.reload()
    settled(page)
    assert rows(page, "#shelf") == after
    expect(page.locator("#keep")).to_contain_text("The counts are not in it")
    page.get_by_role("button", name="Plan by the shares again").click()
    assert rows(page, "#shelf") == before
    page.get_by_role("button", name="Forget the counts").click()
    assert kept(page)["used"] == []


def test_rows_left_out_of_the_counts_are_told_until_there_are_others_or_none(
    page: Page, top: str, tmp_path: Path
) -> None:
    filled(page, top)
    faults = page.locator("#season li")

    def count_badly() -> None:
        page.get_by_label("Or paste rows from a spreadsheet").fill("part,count\nplover-crown,2\nbad row\n")
        page.get_by_role("button", name="Count these rows").click()
        expect(faults).to_have_count(1)

    count_badly()
    file = saved(page, "Save frames, terms and counts as a file", tmp_path)
    expect(faults).to_have_count(1)
    page.get_by_label("Open a saved file again (CSV)").set_input_files(file)
    expect(page.locator(".rb-prices-said")).to_contain_text("rows taken over.")
    expect(faults).to_have_count(0)
    count_badly()
    page.get_by_role("button", name="Forget frames, terms and counts").click()
    expect(faults).to_have_count(0)


@pytest.mark.parametrize("text", ["", "part;count\n", "\x00", "count\n3\n", '"'])
def test_counts_of_something_else_change_nothing(page: Page, top: str, text: str) -> None:
    filled(page, top)
    page.get_by_label("Or paste rows from a spreadsheet").fill(text)
    page.get_by_role("button", name="Count these rows").click()
    expect(page.locator(".rb-prices-said")).to_have_text(
        re.compile("Paste rows first|Nothing was counted|not counted")
    )
    assert kept(page) == demo_shelf()


def saved(page: Page, button: str, tmp_path: Path) -> Path:
    with page.expect_download() as download:
        page.get_by_role("button", name=button).click()
    file = tmp_path / download.value.suggested_filename
    download.value.save_as(file)
    return file


def test_the_file_brings_what_was_typed_here_to_another_device(
    page: Page, anywhere: str, tmp_path: Path
) -> None:
    filled(page, anywhere, used=[{"part": "plover-crown", "count": 20, "years": 1}], counted=True)
    before = kept(page)
    stock = page.evaluate("localStorage.getItem('rimbook.shop')")
    file = saved(page, "Save frames, terms and counts as a file", tmp_path)
    assert file.name == "weir-lane-rackets.csv"
    page.get_by_role("button", name="Forget frames, terms and counts").click()
    expect(page.locator("#order")).to_contain_text("Add the frames you string first")
    expect(page.locator("#keep")).to_contain_text(
        "Stock and prices are saved and forgotten on Prices and stock."
    )
    expect(page.locator("#keep").get_by_role("link", name="Prices and stock")).to_be_visible()
    assert page.evaluate("localStorage.getItem('rimbook.shop')") == stock
    page.get_by_label("Open a saved file again (CSV)").set_input_files(file)
    expect(page.locator(".rb-prices-said")).to_contain_text("rows taken over.")
    assert kept(page) == before
    damaged = tmp_path / "damaged.csv"
    damaged.write_bytes(b"kind,name,value\nterm,lead_weeks,soon\n\xff\xfe,<b>,\nrestrings,plover-76,55\n")
    page.get_by_label("Open a saved file again (CSV)").set_input_files(damaged)
    expect(page.locator("#keep li")).to_have_count(2)
    expect(page.locator("#keep li").first).to_contain_text("Row 2: “soon” will not do")
    assert kept(page)["frames"][0]["restrings"] == 55
    page.get_by_role("button", name="Undo").click()
    assert kept(page) == before


def test_the_plan_as_a_table_is_that_of_the_club(
    page: Page, top: str, built_site: Path, tmp_path: Path
) -> None:
    filled(page, top)
    file = saved(page, "Save the plan as a table (CSV)", tmp_path)
    club = (built_site / "data/shelves/weir-lane.csv").read_text("utf-8")

    def read(text: str) -> list[dict[str, str | float]]:
        reader = csv.DictReader(io.StringIO(text, newline=""))
        assert tuple(reader.fieldnames or ()) == COLUMNS
        numbers = ("a_year", "chance", "short_a_year")
        return [
            {key: float(cell) if key in numbers and cell else cell for key, cell in row.items()}
            for row in reader
        ]

    own = read(file.read_bytes().decode())
    assert own == read(club)
    assert {"first use up 3 Short barrel 2.1; first use up 6 Barrel 2.0", "loose 1 Weir side strip"} <= {
        row["counts_too"] for row in own
    }
    assert "12–38 on both sides" in {row["holes"] for row in own}


def test_the_club_file_gives_the_same_plan(
    page: Page, top: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """What the page writes is checked and planned by the commands of the book."""
    filled(page, top, club="My own shelf")
    unfolded(page)
    own = rows(page, "#shelf")
    orders = [re.sub(r" \(.*", "", each) for each in texts(page, "#order li")]
    file = saved(page, "Download the club’s file", tmp_path)
    assert file.name == "my-own-shelf.yaml"
    assert page.locator("#keep pre").text_content() == file.read_text("utf-8")
    book = tmp_path / "frames"
    shutil.copytree(ROOT / "frames", book)
    shutil.copy(file, book / "clubs" / file.name)
    assert main(["check", str(book)]) == 0
    capsys.readouterr()
    assert main(["shelf", "my-own-shelf", "--book", str(book)]) == 0
    told = capsys.readouterr().out
    names = {part.name: part.id for part in demo_book().parts.values()}
    for name, _, _, yearly, reorder, up_to, *_ in own:
        assert name in names
        line = next(each for each in told.splitlines() if each.startswith(f"{name}  "))
        assert line.split()[len(name.split()) :][:3] == [yearly, reorder, up_to]
    for order in orders:
        assert f"  {order.replace('×', 'x')} (" in told


def test_an_empty_shelf_has_no_club_file(page: Page, top: str) -> None:
    opened(page, top)
    expect(page.locator("#keep")).to_contain_text("Add a frame first: a club has from 1 to 200.")
    expect(page.get_by_role("button", name="Download the club’s file")).to_be_hidden()


def test_a_change_is_told_once_and_not_at_each_key(page: Page, top: str) -> None:
    filled(page, top)
    unfolded(page)
    expect(page.locator(".rb-my-shelf-told")).to_contain_text("19 drawers; 9 lines to order today")
    page.evaluate(
        """() => {
          window.told = [];
          new MutationObserver(() => told.push(document.querySelector(".rb-my-shelf-told").textContent))
            .observe(document.querySelector(".rb-my-shelf-told"), { childList: true });
        }"""
    )
    for service in ("80", "85", "90", "99"):
        type_in(page, "Service level, %", service)
    expect(page.locator(".rb-my-shelf-told")).not_to_contain_text("9 lines to order today")
    assert page.evaluate("told.length") == 1


def test_many_frames_are_planned_in_a_moment(page: Page, top: str) -> None:
    """Every frame of the book; the page's own work takes a fraction of a second."""
    frames = [
        {"slug": slug, "name": frame.name, "count": 1, "restrings": 20 + at}
        for at, (slug, frame) in enumerate(demo_book().frames.items())
    ]
    filled(page, top, frames=frames)
    unfolded(page)
    took = page.evaluate(
        """async () => {
          const field = document.getElementById("rb-my-shelf-service");
          const before = performance.now();
          field.value = "97";
          field.dispatchEvent(new Event("change"));
          await new Promise((done) => setTimeout(done));
          return performance.now() - before;
        }"""
    )
    expect(page.locator("#terms")).to_contain_text("97 %")
    assert took < 1500


@contextmanager
def in_a_hand(browser: Browser) -> Iterator[Page]:
    faults: list[str] = []
    context = browser.new_context(
        viewport={"width": 360, "height": 780}, has_touch=True, is_mobile=True, service_workers="block"
    )
    context.on("console", lambda message: faults.append(message.text) if message.type == "error" else None)
    context.on("weberror", lambda error: faults.append(str(error.error)))
    try:
        yield context.new_page()
    finally:
        context.close()
    assert faults == []


def test_the_whole_way_by_touch(browser: Browser, top: str, tmp_path: Path) -> None:
    """From an empty page to an order, on a phone."""
    with in_a_hand(browser) as page:
        page.goto(f"{top}/{PAGE}")
        settled(page)
        page.get_by_label("Add a frame by its name").tap()
        page.keyboard.type("plov")
        page.get_by_role("button", name="Add Plover 76 (2024)").tap()
        page.get_by_label("Restrings a year, Plover 76 (2024)").tap()
        page.keyboard.type("54")
        page.locator("summary", has_text="Terms").tap()
        page.get_by_label("Service level, %").tap()
        page.keyboard.type("90")
        page.get_by_role("heading", name="My shelf").tap()
        expect(page.locator("#order li").first).to_contain_text("Chance to last 6 weeks")
        page.get_by_role("link", name="Prices and stock").last.tap()
        page.get_by_label("Part, new row").fill("plover-set")
        page.get_by_label("Pieces, new row").fill("50")
        page.get_by_role("button", name="Add the new row to: What lies on your shelf").tap()
        page.goto(f"{top}/{PAGE}")
        settled(page)
        expect(page.locator("#shelf tbody tr").filter(has_text="Plover full set")).to_contain_text("50")
        file = saved(page, "Save the plan as a table (CSV)", tmp_path)
        assert file.name == "my-shelf-plan.csv"


def test_the_whole_way_by_keyboard(page: Page, top: str) -> None:
    """Tab, arrows, Enter and letters only."""
    opened(page, top)
    box = page.get_by_label("Add a frame by its name")
    for _ in range(80):
        page.keyboard.press("Tab")
        if box.evaluate("(each) => each === document.activeElement"):
            break
    expect(box).to_be_focused()
    page.keyboard.type("bittern")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("ArrowDown")
    expect(page.get_by_role("button", name="Add Bittern 78 second drilling")).to_be_focused()
    page.keyboard.press("Enter")
    expect(box).to_be_focused()
    page.keyboard.type("weir 72")
    page.keyboard.press("Enter")
    expect(page.locator(".rb-my-shelf-frames tbody tr")).to_have_count(2)
    expect(box).to_have_value("")
    for text in ("14", "2"):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.tagName") == "A":
            page.keyboard.press("Tab")
        page.keyboard.type(text)
    page.keyboard.press("Tab")
    assert kept(page)["frames"][0] | {"name": ""} == {
        "slug": "bittern-78-2025",
        "name": "",
        "count": 2,
        "restrings": 14,
    }
    expect(page.locator("#order li").first).to_be_visible()
    page.keyboard.press("Enter")  # takes the first frame out
    expect(page.locator(".rb-my-shelf-frames tbody tr")).to_have_count(1)
    undo = page.get_by_role("button", name="Undo")
    for _ in range(120):
        page.keyboard.press("Tab")
        if undo.evaluate("(each) => each === document.activeElement"):
            break
    page.keyboard.press("Space")
    expect(page.locator(".rb-my-shelf-frames tbody tr")).to_have_count(2)


def worst(page: Page, top: str) -> None:
    """The page with all that it can show: prices, counts, faults, everything unfolded."""
    used = [{"part": "plover-crown", "count": 20, "years": 1}]
    gone = {"slug": "plover-70", "name": "Plover 70", "count": None, "restrings": None}
    shelf = {**demo_shelf(), "used": used, "counted": True}
    shelf["frames"] = [gone, *shelf["frames"]]
    opened(page, top, shelf, demo_shop(PRICES))
    unfolded(page)
    type_in(page, "Service level, %", "100")
    type_in(page, "Restrings a year, Weir 72 (2022)", "many")
    page.get_by_label("Add a frame by its name").fill("bo")
    page.get_by_label("Or paste rows from a spreadsheet").fill("part,count\nplover-crown,x\n")
    page.get_by_role("button", name="Count these rows").click()


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("page", [320, 360, 1440], indirect=True)
def test_it_fits_and_everybody_can_use_it(page: Page, top: str, scheme: Any) -> None:
    page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
    worst(page, top)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.set_viewport_size({"width": page.viewport_size["width"], "height": 20_000})  # type: ignore[index]
    assert violations(page) == []
    for each in page.locator(".rb-my-shelf :is(input, button.rb-button, summary, textarea):visible").all():
        box = each.bounding_box()
        assert box is not None
        assert box["height"] >= 24


def test_on_paper_it_says_on_which_day_it_was_planned(page: Page, top: str) -> None:
    page.clock.set_fixed_time("2027-03-01T12:00:00")
    opened(page, top)
    expect(page.locator("#day")).to_be_hidden()  # nothing is planned
    filled(page, top)
    expect(page.locator("#day")).to_have_text("Planned on 1 March 2027.")
    page.clock.set_fixed_time("2027-03-02T12:00:00")  # the page stayed open overnight
    assert "Planned on 2 March 2027. Order today" in sheets(printed(page, "A4"))[0]


@pytest.mark.parametrize("paper", PAPERS)
def test_on_paper_the_order_comes_first_and_nothing_of_the_form(page: Page, top: str, paper: str) -> None:
    worst(page, top)
    found = sheets(printed(page, paper))
    assert len(found) <= 6
    assert min(map(len, found)) > 80
    assert "Order today" in found[0]
    assert "Alder bumper" in found[0]
    whole = " ".join(found)
    for absent in (
        "Add a frame",
        "Take out",
        "Undo",
        "Count these rows",
        "Keep and move",
        "format: 1",
        "Back to",
    ):
        assert absent not in whole
    assert "54 restrings a year" in whole
    assert "as counted" in whole
    assert all(name in whole for name in (demo_book().frames[each.frame].name for each in demo_club().frames))


def test_without_javascript_it_says_so_and_leads_on(browser: Browser, top: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(f"{top}/{PAGE}")
    expect(page.locator("[data-rb-my-shelf]")).to_contain_text("needs JavaScript")
    expect(page.locator("[data-rb-my-shelf]").get_by_role("link", name="clubs")).to_be_visible()
    context.close()
