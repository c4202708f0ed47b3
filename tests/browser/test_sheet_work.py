"""The work of a sheet on its page: the clock, what to buy and why, the quote; in a folder and on a server."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.test_access import violations
from tests.browser.work_site import enter, see, write_work
from tests.serving import served

PRICES = """
sold,post-a,1,0.60,EUR,
sold,post-a,25,9.00,EUR,Tidewater
sold,post-b,1,0.20,EUR,
sold,wide-a,5,4.00,EUR,
sold,kit-a,1,14.50,EUR,Tidewater
shelf,pair-a,1,,EUR,
"""


@pytest.fixture(scope="session")
def work_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("work")
    write_work(folder)
    return folder


@pytest.fixture(scope="session", params=["file", "http"])
def anywhere(request: pytest.FixtureRequest, work_folder: Path) -> Iterator[str]:
    """The folder as it is, and on a server; no slash at the end."""
    if request.param == "file":
        yield work_folder.as_uri()
        return
    with served(work_folder) as address:
        yield address


@pytest.fixture(scope="session")
def site(work_folder: Path) -> str:
    return work_folder.as_uri()


def opened(page: Page, site: str, prices: str = PRICES, **terms: object) -> Page:
    """The sheet, once a price list was entered; `prices` may be empty."""
    if prices:
        page.goto(f"{site}/prices/index.html")
        enter(page, prices, **{"hour": "30.00", **terms})
    page.goto(f"{site}/sheet/index.html")
    return page


def part(page: Page, name: str) -> Locator:
    return page.get_by_role("region", name=name, exact=True)


def lines(page: Page) -> list[list[str]]:
    rows = part(page, "What to buy").locator("tbody tr").all()
    return [row.locator("th, td").all_inner_texts() for row in rows]


def test_a_purchase_is_explained(page: Page, anywhere: str) -> None:
    """Three split places, one of them in a strip that comes only in a kit: the kit serves them all."""
    opened(page, anywhere)
    see(page, "split", "L1", "R4", "R5")
    buy = part(page, "What to buy")
    expect(buy.get_by_role("status")).to_have_text("Cheapest purchase: €14.50 in 1 purchase.")
    assert lines(page) == [
        [
            "Kit A (Tidewater)",
            "1",
            "€14.50",
            "nothing else on your list repairs the strip R1+R2+L2+L1; it also serves R4 and R5",
        ]
    ]
    expect(buy).to_contain_text("Left for the drawer: 2 × Post A and 2 × Wide A.")
    expect(buy).to_contain_text("There is no other way to buy it from your list.")
    assert len(page.workers) == (1 if anywhere.startswith("http") else 0)


def test_the_next_best_and_its_extra_cost_are_told(page: Page, site: str) -> None:
    opened(page, site, PRICES + "sold,kit-a,2,28.50,EUR,Tidewater\n")
    see(page, "split", "L1")
    see(page, "missing", "R4", "R5", "L5", "L4")
    see(page, "split", "R3", "L3")
    buy = part(page, "What to buy")
    expect(buy.get_by_role("status")).to_have_text("Cheapest purchase: €14.50 in 1 purchase.")
    expect(buy).to_contain_text("Next best: 1 × Kit A, pack of 2 (Tidewater), €28.50: €14.00 more.")
    see(page, "sound", "L1", "L4", "R3", "L3")
    expect(buy.get_by_role("status")).to_have_text("Cheapest purchase: €1.80 in 3 purchases.")
    expect(buy).to_contain_text("Next best: 1 × Post A, pack of 25 (Tidewater), €9.00: €7.20 more.")
    see(page, "split", "L1")
    expect(buy.locator("tbody")).to_contain_text("nothing else on your list repairs the strip")


def test_the_shelf_is_used_first(page: Page, site: str) -> None:
    opened(page, site)
    see(page, "split", "R6")
    buy = part(page, "What to buy")
    expect(buy.get_by_role("status")).to_have_text("Nothing has to be bought: the shelf is enough.")
    expect(buy).to_contain_text("From the shelf: 1 × Pair A.")
    expect(part(page, "Quote")).to_contain_text("Still left out: a price for Pair A.")


def test_what_is_accepted_can_be_chosen_and_is_remembered(page: Page, site: str) -> None:
    opened(page, site)
    see(page, "split", "R4")
    buy = part(page, "What to buy")
    expect(buy.get_by_role("status")).to_have_text("Cheapest purchase: €0.60 in 1 purchase.")
    buy.get_by_role("radio", name="Also parts that may serve").check()
    expect(buy.get_by_role("status")).to_have_text("Cheapest purchase: €0.20 in 1 purchase.")
    expect(buy.locator("li")).to_have_text("R4: Post B instead of Post A; it may serve, may be loose")
    page.reload()
    expect(buy.get_by_role("radio", name="Also parts that may serve")).to_be_checked()
    see(page, "split", "L4")
    buy.get_by_role("radio", name="Only the part that is fitted now").check()
    expect(buy.get_by_role("note")).to_contain_text(
        "Nothing repairs L4: no part of this book that you accept serves there."
    )


def test_spare_parts_of_a_set_refresh_worn_places_for_labour_alone(page: Page, site: str) -> None:
    opened(page, site)
    see(page, "split", "L1")
    see(page, "grooved", "R3", "R4", turns=1)
    page.get_by_role("radio", name=re.compile("Against the clock")).check()
    page.get_by_label("Minutes left").fill("60")
    page.get_by_label("Minutes left").press("Tab")
    total = part(page, "Quote").get_by_role("status")
    refresh = page.get_by_role("checkbox", name=re.compile("Refresh"))
    expect(refresh.locator("..")).to_have_text(
        "Refresh 2 worn places with spare parts of the set, for labour alone: R4 and R3"
    )
    expect(part(page, "What to buy")).to_contain_text("Left for the drawer: 4 × Post A and 2 × Wide A.")
    expect(total).to_have_text(
        "Total: €15.74"
    )  # 90 + 54 s for the strip, 5 s for a turn: 1.24 at 30.00 an hour
    refresh.check()
    expect(part(page, "What to buy")).to_contain_text("Left for the drawer: 3 × Post A and 1 × Wide A.")
    expect(total).to_have_text("Total: €15.88")  # 12 + 10 s in place of the 5: 1.38
    assert page.evaluate("inside.jobs.job().work.map(({ piece, act }) => [piece, act])") == [
        [0, "replace"],
        [1, "replace"],
        [2, "replace"],
    ]


def test_the_spare_parts_of_a_pack_are_no_gift(page: Page, site: str) -> None:
    """They are paid by the piece, so they lie in the drawer."""
    opened(page, site, "sold,post-a,25,9.00,EUR,\n")
    see(page, "split", "R4")
    see(page, "grooved", "R5")
    page.get_by_role("radio", name=re.compile("Against the clock")).check()
    expect(part(page, "What to buy")).to_contain_text("Left for the drawer: 24 × Post A.")
    expect(page.get_by_role("checkbox")).to_be_hidden()
    expect(part(page, "Quote").locator("tbody")).to_contain_text("1 × Post A")
    expect(part(page, "Quote").locator("tbody")).to_contain_text("€0.36")


def test_too_little_time_is_said_and_nothing_broken_is_dropped(page: Page, site: str) -> None:
    opened(page, site)
    see(page, "split", "L1", "R4")
    see(page, "missing", "R6")
    see(page, "grooved", "L5")
    page.get_by_role("radio", name=re.compile("Against the clock")).check()
    minutes = page.get_by_label("Minutes left")
    expect(minutes).to_have_value("10")
    minutes.fill("2")
    minutes.press("Tab")
    order = part(page, "Order of work")
    expect(order.get_by_role("note")).to_contain_text("The time is too short by 1 minute.")
    expect(order.get_by_role("note")).to_contain_text("all the same: R1+R2+L2+L1, R6+L6 and R4. Ask")
    expect(order.locator("ol").first.locator("li strong")).to_have_text(
        ["R1, R2, L2 and L1", "R6 and L6", "R4"]
    )
    expect(order.locator("ol").nth(1).locator("li")).to_have_text(
        ["L5 turn by a quarter: Post A, 5 s, can wait"],
    )
    expect(part(page, "What to buy").locator("tbody tr")).to_have_count(1)
    minutes.fill("4")
    minutes.press("Tab")
    expect(order.get_by_role("note")).to_have_count(0)
    expect(order.get_by_role("status")).to_have_text("4 places to do, about 3½ minutes.")


def test_what_nothing_repairs_is_named_with_the_reason(page: Page, site: str) -> None:
    opened(page, site, "sold,post-a,1,0.60,EUR,\nshelf,wide-a,1,0.90,EUR,\n")
    see(page, "split", "L1", "R4", "R3", "L3")
    note = part(page, "What to buy").get_by_role("note")
    expect(note.locator("p")).to_have_text(
        [
            "Nothing repairs R1+R2+L2+L1: no part that serves there is in your price list or on your shelf.",
            "Nothing repairs L3: too few are left on your shelf, and none is in your price list.",
            "Do not string over a split or missing grommet.",
        ]
    )
    expect(part(page, "What to buy").get_by_role("status")).to_have_text(
        "2 places cannot be repaired. Cheapest purchase: €0.60 in 1 purchase."
    )
    assert page.evaluate("inside.jobs.job().work.map(({ piece }) => piece)") == [1, 2]


def test_without_prices_the_parts_are_named_all_the_same(page: Page, anywhere: str) -> None:
    opened(page, anywhere, prices="")
    see(page, "split", "L1", "R4", "R5")
    buy = part(page, "What to buy")
    expect(buy.locator("li")).to_have_text(["1 × Crown A, for R1+R2+L2+L1", "2 × Post A, for R4 and R5"])
    assert page.evaluate("[inside.jobs.job().isStocked, inside.jobs.job().plan]") == [False, None]
    buy.get_by_role("link", name="Enter prices and stock").click()
    expect(page.locator("h1")).to_have_text("Prices and stock")


def test_a_cracked_frame_needs_nothing(page: Page, site: str) -> None:
    opened(page, site)
    see(page, "split", "R4")
    page.evaluate("inside.store.change(inside.look(inside.store.sheet(), 'crack', 'found'))")
    expect(part(page, "Order of work").get_by_role("status")).to_have_text(
        "The frame is cracked: there is nothing to fit and nothing to string."
    )
    expect(part(page, "What to buy").get_by_role("status")).to_have_text(
        "Nothing is bought for a cracked frame."
    )
    expect(part(page, "Quote").get_by_role("status")).to_have_text("Nothing to charge.")


def test_a_quote_with_all_its_terms(page: Page, site: str) -> None:
    """110 s at 30.00 an hour are 0.92; 5.00 at least. 0.60 and a fifth are 0.72; 5.72 is rounded to 5.70."""
    opened(page, site, "sold,post-a,1,0.60,EUR,\n", least="5.00", markup=20, step="0.05")
    see(page, "split", "R4", "R5")
    see(page, "sound", "R5")
    rows = part(page, "Quote").locator("tbody tr")
    expect(rows).to_have_count(5)
    assert [row.locator("th, td").all_inner_texts() for row in rows.all()] == [
        ["looking over and setting up", "1½ minutes", "€0.75"],
        ["1 single part replaced", "half a minute", "€0.08"],
        ["up to the least charge", "", "€4.17"],
        ["1 × Post A", "", "€0.72"],
        ["rounding", "", "-€0.02"],
    ]
    expect(part(page, "Quote").get_by_role("status")).to_have_text("Total: €5.70")


def test_a_price_of_its_own_is_not_marked_up(page: Page, site: str) -> None:
    opened(page, site, "sold,post-a,1,0.60,EUR,\nshelf,post-a,0,0.95,EUR,\n", markup=20)
    see(page, "split", "R4", "R5")
    expect(part(page, "Quote").locator("tbody")).to_contain_text("€1.90")


def test_prices_that_change_in_another_tab_change_the_sheet(page: Page, site: str) -> None:
    opened(page, site)
    see(page, "split", "R4")
    said = part(page, "What to buy").get_by_role("status")
    expect(said).to_have_text("Cheapest purchase: €0.60 in 1 purchase.")
    other = page.context.new_page()
    other.goto(f"{site}/prices/index.html")
    price = other.get_by_label("Price of the pack, post-a").first
    price.fill("0.40")
    price.press("Tab")
    expect(said).to_have_text("Cheapest purchase: €0.40 in 1 purchase.")


def test_invented_prices_are_said_to_be_invented(page: Page, site: str) -> None:
    page.goto(f"{site}/prices/index.html")
    page.get_by_role("button", name="Load an invented example list").click()
    opened(page, site, prices="")
    see(page, "split", "L1", "R4")
    expect(part(page, "What to buy")).to_contain_text("These prices are the invented example list")
    expect(part(page, "Quote").get_by_role("status")).to_contain_text("Total")


def test_marks_in_a_burst_are_planned_once(page: Page, site: str) -> None:
    """A plan for each of them would be thrown away; the last one counts."""
    opened(page, site)
    page.evaluate(
        """() => {
          const { store, mark, jobs } = inside;
          globalThis.plans = [];
          jobs.listen(({ plan }) => plan && plans.push(plan.cheapest.price));
          for (const hole of ["R4", "R5", "L5"]) {
            store.change(mark(store.sheet(), [hole], { seen: "split", turns: 0 }));
          }
        }"""
    )
    expect(part(page, "What to buy").get_by_role("status")).to_have_text(
        "Cheapest purchase: €1.80 in 3 purchases."
    )
    assert set(page.evaluate("plans")) == {180}
    see(page, "sound", "R1")
    assert page.evaluate("inside.jobs.job().plan.cheapest.price") == 180, "what needs no new plan keeps it"


def test_nothing_changes_under_the_fingers(page: Page, site: str) -> None:
    """What was folded stays folded, minutes that are typed stay as typed, and the focus stays where it is."""
    opened(page, site)
    see(page, "split", "R4")
    page.get_by_role("radio", name=re.compile("Against the clock")).check()
    summary = page.get_by_text("What to do first")
    summary.click()
    minutes = page.get_by_label("Minutes left")
    minutes.fill("4")
    see(page, "split", "R5")
    expect(part(page, "What to buy").get_by_role("status")).to_contain_text("€1.20")
    expect(minutes).to_have_value("4")
    expect(minutes).to_be_focused()
    minutes.press("Enter")
    assert page.evaluate("inside.store.sheet().minutes") == 4
    expect(summary).to_have_text("What to do first: 2 places")
    expect(page.get_by_role("list").first).to_be_hidden()
    minutes.fill("999")
    minutes.press("Enter")
    expect(minutes).to_have_value("240")


def test_the_keyboard_is_enough(page: Page, site: str) -> None:
    opened(page, site)
    see(page, "split", "L1")
    see(page, "grooved", "R4")
    way = page.get_by_role("group", name="Way of working").get_by_role("radio")
    way.first.focus()
    page.keyboard.press("ArrowDown")
    expect(page.get_by_label("Minutes left")).to_be_visible()
    page.keyboard.press("Tab")
    expect(page.get_by_label("Minutes left")).to_be_focused()
    page.keyboard.type("7")
    page.keyboard.press("Tab")
    assert page.evaluate("inside.store.sheet().minutes") == 7
    refresh = page.get_by_role("checkbox", name=re.compile("Refresh"))
    expect(refresh).to_be_visible()
    for _ in range(20):
        if refresh.evaluate("(each) => each === document.activeElement"):
            break
        page.keyboard.press("Tab")
    page.keyboard.press("Space")
    expect(refresh).to_be_checked()
    expect(refresh).to_be_focused()


@pytest.mark.parametrize("page", [360, 1440], indirect=True)
def test_it_fits_and_a_thumb_hits_it(page: Page, site: str) -> None:
    opened(page, site, PRICES + "sold,kit-a,2,28.50,EUR,Tidewater\n")
    see(page, "split", "L1", "R4", "R3")
    see(page, "grooved", "L5")
    page.get_by_role("radio", name=re.compile("Against the clock")).check()
    expect(page.get_by_role("checkbox", name=re.compile("Refresh"))).to_be_visible()
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for each in page.locator(".rb-work-tap:visible, .rb-work input[type=number], summary:visible").all():
        box = each.bounding_box()
        assert box is not None
        assert box["height"] >= 44
    assert violations(page) == []
