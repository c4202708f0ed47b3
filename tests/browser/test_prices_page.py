"""The page of prices: typed, pasted, saved and taken in again, from a folder and from a server."""

from __future__ import annotations

import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Locator, Page, expect
from pypdf import PdfReader

from tests.browser.test_access import violations
from tests.browser.work_site import enter, small_catalogue, write_work
from tests.serving import served
from tests.watch import watched_page

PART, COUNT, PRICE, SELLER = "Part or set", "Pieces in the pack", "Price of the pack", "Seller"
LIST = """
sold,post-a,25,9.00,EUR,Tidewater
sold,kit-a,1,14.50,EUR,
shelf,wide-a,3,0.90,EUR,
"""


@pytest.fixture(scope="session")
def work_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("prices")
    write_work(folder)
    return folder


@pytest.fixture(scope="session", params=["file", "http"])
def anywhere(request: pytest.FixtureRequest, work_folder: Path) -> Iterator[str]:
    """The page in its folder, and then on a server."""
    if request.param == "file":
        yield f"{work_folder.as_uri()}/prices/index.html"
        return
    with served(work_folder) as address:
        yield f"{address}/prices/index.html"


@pytest.fixture(scope="session")
def prices(work_folder: Path) -> str:
    return f"{work_folder.as_uri()}/prices/index.html"


def kept(page: Page) -> Any:
    """What lies on the device."""
    return page.evaluate("JSON.parse(localStorage.getItem('rimbook.shop'))")


def table(page: Page, name: str) -> Locator:
    return page.get_by_role("table", name=name)


def typed(page: Page, name: str) -> list[list[str]]:
    """What stands in the rows of a table, the blank one left out."""
    rows = table(page, name).locator("tbody tr").all()[:-1]
    return [[each.input_value() for each in row.locator("input").all()] for row in rows]


def add(page: Page, part: str, count: str, price: str, seller: str = "") -> None:
    for label, text in ((PART, part), (COUNT, count), (PRICE, price), (SELLER, seller)):
        page.get_by_label(f"{label}, new row").fill(text)
    page.get_by_role("button", name="Add the new row to: What you can buy").click()


def said(page: Page) -> Locator:
    return page.get_by_role("status")


def test_a_row_is_typed_and_is_there_next_time(page: Page, anywhere: str) -> None:
    page.goto(anywhere)
    add(page, "Kit A", "1", "14,50", "Tidewater")
    expect(said(page)).to_have_text("Added: Kit A.")
    expect(page.get_by_label(f"{PART}, new row")).to_be_focused()
    shelf = table(page, "What lies on your shelf")
    shelf.get_by_label("Part, new row").fill("post-a")
    shelf.get_by_label("Pieces, new row").fill("7")
    shelf.get_by_label("Pieces, new row").press("Enter")
    page.reload()
    assert typed(page, "What you can buy") == [["kit-a", "1", "14.50", "Tidewater"]]
    assert typed(page, "What lies on your shelf") == [["post-a", "7", ""]]
    expect(table(page, "What you can buy")).to_contain_text("Kit A")
    assert kept(page)["list"]["sold"] == [{"part": "kit-a", "count": 1, "price": 1450, "seller": "Tidewater"}]


def test_a_changed_cell_is_kept_and_a_wrong_one_says_why(page: Page, prices: str) -> None:
    page.goto(prices)
    enter(page, LIST)
    price = page.get_by_label(f"{PRICE}, post-a")
    price.fill("8")
    price.press("Tab")
    expect(price).to_have_value("8.00")
    assert kept(page)["list"]["sold"][0]["price"] == 800
    for wrong, says in (
        ("-8", "“-8” is below zero"),
        ("99999999999", "more than any price here"),
        ("8.005", "can be read in two ways"),
        ("cheap", "is no amount: expected one such as 1234.56"),
    ):
        price.fill(wrong)
        price.press("Tab")
        expect(price).to_have_attribute("aria-invalid", "true")
        expect(price.locator("xpath=ancestor::tr").get_by_role("alert")).to_contain_text(says)
        expect(price).to_have_value(wrong)
    assert kept(page)["list"]["sold"][0]["price"] == 800
    price.fill("7")
    price.press("Tab")
    expect(price).not_to_have_attribute("aria-invalid", "true")
    assert kept(page)["list"]["sold"][0]["price"] == 700


def test_the_same_row_twice_is_refused(page: Page, prices: str) -> None:
    page.goto(prices)
    enter(page, LIST)
    add(page, "kit-a", "1", "12")
    expect(table(page, "What you can buy").get_by_role("alert")).to_have_text(
        "There is a row about the same already: change that one."
    )
    assert len(kept(page)["list"]["sold"]) == 2


def test_a_part_that_the_book_has_not_is_said(page: Page, prices: str) -> None:
    page.goto(prices)
    add(page, "post-z", "1", "0.30")
    expect(table(page, "What you can buy")).to_contain_text("not in this book")
    names = page.locator("datalist option").evaluate_all("(all) => all.map((each) => each.value)")
    assert names == list(small_catalogue())


def test_a_row_is_taken_out_and_put_back(page: Page, prices: str) -> None:
    page.goto(prices)
    enter(page, LIST)
    page.get_by_role("button", name="Remove post-a").click()
    expect(said(page)).to_have_text("Removed: Post A.")
    expect(page.get_by_role("button", name="Remove kit-a")).to_be_focused()
    assert len(kept(page)["list"]["sold"]) == 1
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("button", name="Remove post-a")).to_be_visible()
    assert len(kept(page)["list"]["sold"]) == 2


@pytest.mark.parametrize(
    ("label", "text"), [(f"{PRICE}, kit-a", "15.00"), ("Pieces, wide-a", "4"), ("Markup on parts, %", "12")]
)
def test_undo_goes_when_something_else_is_typed(page: Page, prices: str, label: str, text: str) -> None:
    """Beside “Removed: Post A” it would undo the last thing typed, and the row would stay away."""
    page.goto(prices)
    enter(page, LIST)
    page.get_by_role("button", name="Remove post-a").click()
    undo = page.get_by_role("button", name="Undo")
    expect(undo).to_be_visible()
    page.get_by_label(label, exact=True).fill(text)
    page.get_by_label(label, exact=True).press("Tab")
    expect(undo).to_be_hidden()
    expect(page.locator(".rb-prices-said")).to_be_empty()
    expect(page.get_by_label(label, exact=True)).to_have_value(text)


def test_pasted_rows_are_taken_over_and_bad_ones_named(page: Page, anywhere: str) -> None:
    page.goto(anywhere)
    enter(page, LIST + "sold,post-b,-1,2,EUR,\nsold,post-b,1,1e9,EUR,\nsold,wide-a,5,3.00,USD,\n")
    expect(said(page)).to_contain_text("3 rows taken over. 3 rows left out, see below.")
    faults = page.locator(".rb-prices-file li")
    expect(faults).to_have_text(
        [
            "Row 5: The count “-1” is below zero.",
            "Row 6: “1e9” is no amount: expected one such as 1234.56.",
            "Row 7: The price is in USD; expected EUR: a list has one currency.",
        ]
    )
    assert typed(page, "What you can buy") == [
        ["post-a", "25", "9.00", "Tidewater"],
        ["kit-a", "1", "14.50", ""],
    ]
    expect(page.get_by_label("Or paste rows from a spreadsheet")).to_have_value(re.compile("1e9"))


def test_a_row_about_the_same_pack_takes_its_place(page: Page, prices: str) -> None:
    page.goto(prices)
    enter(page, LIST)
    enter(page, "sold,post-a,25,8.50,EUR,Tidewater\nshelf,wide-a,9,,EUR,\n")
    assert typed(page, "What you can buy") == [
        ["post-a", "25", "8.50", "Tidewater"],
        ["kit-a", "1", "14.50", ""],
    ]
    assert typed(page, "What lies on your shelf") == [["wide-a", "9", ""]]


def test_a_heading_that_lacks_a_column_is_said(page: Page, prices: str) -> None:
    page.goto(prices)
    page.get_by_label("Or paste rows from a spreadsheet").fill("part;price\npost-a;2")
    page.get_by_role("button", name="Take the rows over").click()
    expect(said(page)).to_contain_text("Nothing was taken over.")
    expect(page.locator(".rb-prices-file li")).to_contain_text(
        "Row 1: The heading lacks count: expected kind, part, count, price, currency, seller"
    )


def test_the_file_holds_everything_and_is_taken_in_again(page: Page, anywhere: str, tmp_path: Path) -> None:
    page.goto(anywhere)
    enter(page, LIST, hour="42.00", least="6.00", markup="12.5", step="0.05")
    seconds = page.get_by_label("A two-post part, s")
    seconds.fill("31")
    seconds.press("Tab")
    before = kept(page)
    with page.expect_download() as download:
        page.get_by_role("button", name="Save as a file").click()
    assert download.value.suggested_filename == "prices-and-stock.csv"
    file = tmp_path / "prices.csv"
    download.value.save_as(file)
    page.get_by_role("button", name="Forget everything").click()
    expect(said(page)).to_contain_text("are forgotten on this device")
    assert kept(page)["list"] == {"currency": "EUR", "sold": [], "shelf": []}
    page.get_by_label("Take a file in (CSV)").set_input_files(file)
    expect(said(page)).to_contain_text("rows taken over")
    expect(page.locator(".rb-prices-file li")).to_have_count(0)
    assert kept(page) == before
    assert (before["terms"], before["labour"]["twin"]) == (
        {"hourly": 4200, "least": 600, "markup": 12.5, "half": "away", "step": 5},
        31,
    )


def test_a_currency_keeps_the_figures_or_is_refused(page: Page, prices: str) -> None:
    """ISO 4217: the euro has two digits behind the point, the yen none, the Kuwaiti dinar three."""
    page.goto(prices)
    enter(page, LIST)
    currency = page.get_by_label("Currency (ISO 4217)")
    currency.select_option("JPY")
    expect(page.get_by_text("The currency stays EUR.")).to_contain_text("JPY has none")
    expect(currency).to_have_value("EUR")
    currency.select_option("KWD")
    assert typed(page, "What you can buy")[1][2] == "14.500"
    assert kept(page)["list"]["sold"][1]["price"] == 14500


def test_rates_that_make_no_sense_are_refused(page: Page, prices: str) -> None:
    page.goto(prices)
    for label, wrong, says in (
        ("Rate of an hour's work", "-3", "below zero"),
        ("Markup on parts, %", "900", "from 0 to 500"),
        ("A single part, s", "1.5", "expected a whole number of seconds from 0 to 3600"),
        ("Round the total to", "500", "is rounded to 100.00 at most"),
    ):
        field = page.get_by_label(label)
        field.fill(wrong)
        field.press("Tab")
        expect(field).to_have_attribute("aria-invalid", "true")
        expect(field).to_have_accessible_description(re.compile(re.escape(says)))
    assert kept(page) is None


def test_two_tabs_lose_nothing_and_show_the_newest(page: Page, anywhere: str) -> None:
    page.goto(anywhere)
    enter(page, LIST)
    other = page.context.new_page()
    other.goto(anywhere)
    wrong = page.get_by_label(f"{PRICE}, post-a")
    wrong.fill("nine")
    wrong.press("Tab")
    add(other, "post-b", "10", "3.00")
    page.get_by_label("Part, new row").fill("pair-a")
    expect(page.get_by_label(f"{PRICE}, post-b")).to_have_value("3.00")
    expect(wrong).to_have_value("nine")
    expect(page.get_by_label("Part, new row")).to_have_value("pair-a")
    hourly = page.get_by_label("Rate of an hour's work")
    hourly.fill("33")
    hourly.press("Tab")
    expect(other.get_by_label("Rate of an hour's work")).to_have_value("33.00")
    wrong.fill("9.90")
    wrong.press("Tab")
    expect(other.get_by_label(f"{PRICE}, post-a")).to_have_value("9.90")
    assert [row["part"] for row in kept(page)["list"]["sold"]] == ["post-a", "kit-a", "post-b"]


def test_a_refused_storage_is_said(browser: Browser, prices: str) -> None:
    with watched_page(browser) as (page, faults):
        page.add_init_script(
            "Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };"
        )
        page.goto(prices)
        add(page, "post-a", "1", "0.60")
        expect(page.get_by_text("This browser refuses to keep anything")).to_be_visible()
        assert typed(page, "What you can buy") == [["post-a", "1", "0.60", ""]]
    assert faults == []


def test_what_was_kept_by_others_is_read_with_care(page: Page, prices: str) -> None:
    page.goto(prices)
    page.evaluate(
        """localStorage.setItem("rimbook.shop", JSON.stringify({
          format: 1,
          list: {
            currency: "EUR",
            sold: [
              { part: "post-a", count: 1, price: -5, seller: "" },
              { part: "post-b", count: 5, price: 90, seller: "" },
              7,
            ],
            shelf: "none",
          },
          terms: { hourly: "much", least: 1e99, markup: 20, half: "up", step: 0 },
          labour: { single: -1 },
        }))"""
    )
    page.reload()
    assert typed(page, "What you can buy") == [["post-b", "5", "0.90", ""]]
    expect(page.get_by_label("Rate of an hour's work")).to_have_value("0.00")
    expect(page.get_by_label("Markup on parts, %")).to_have_value("20")
    expect(page.get_by_label("A single part, s")).to_have_value("10")


def test_the_invented_list_is_marked_and_never_covers_a_real_one(page: Page, prices: str) -> None:
    page.goto(prices)
    example = page.get_by_role("button", name="Load an invented example list")
    example.click()
    expect(page.get_by_text("This is the invented example list.")).to_be_visible()
    expect(example).to_be_hidden()
    assert {row[0] for row in typed(page, "What you can buy")} == {
        part.id for part in small_catalogue().values() if part.packs
    }
    page.get_by_role("button", name="Forget everything").click()
    expect(page.get_by_text("This is the invented example list.")).to_be_hidden()
    add(page, "post-a", "1", "0.60")
    expect(example).to_be_hidden()


def test_the_keyboard_is_enough(page: Page, prices: str) -> None:
    page.goto(prices)
    page.get_by_label(f"{PART}, new row").focus()
    for text in ("post-a", "25", "9"):
        page.keyboard.type(text)
        page.keyboard.press("Tab")
    page.keyboard.type("Tidewater")
    page.keyboard.press("Enter")
    assert typed(page, "What you can buy") == [["post-a", "25", "9.00", "Tidewater"]]
    page.keyboard.type("kit-a")
    expect(page.get_by_label(f"{PART}, new row")).to_have_value("kit-a")


def test_a_closed_page_leaves_no_price_in_the_address(page: Page, anywhere: str) -> None:
    page.goto(anywhere)
    enter(page, LIST)
    assert page.url == anywhere


@pytest.mark.parametrize("page", [360, 1440], indirect=True)
def test_it_fits_and_a_thumb_hits_it(page: Page, prices: str) -> None:
    page.goto(prices)
    enter(page, LIST + "sold,post-b,-1,2,EUR,\n")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    for each in page.locator(".rb-prices :is(input, select, button):visible").all():
        box = each.bounding_box()
        assert box is not None
        assert box["height"] >= 44
    assert violations(page) == []


def test_the_printed_page_is_a_list_and_no_form(page: Page, prices: str) -> None:
    page.goto(prices)
    enter(page, LIST)
    text = "\n".join(sheet.extract_text() for sheet in PdfReader(BytesIO(page.pdf(format="A4"))).pages)
    assert "14.50" in text
    assert "Tidewater" in text
    for absent in ("Remove", "Add", "Undo", "Save as a file", "paste rows"):
        assert absent not in text


def test_without_javascript_it_says_so_and_leads_on(browser: Browser, prices: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(prices)
    expect(page.locator("[data-rb-prices]")).to_contain_text("This page needs JavaScript")
    expect(page.get_by_role("link", name="all parts")).to_be_visible()
    context.close()
