"""The page of measured holes: typed, linked to, printed, heard, from a folder and from a server."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Locator, Page, expect

from rimbook.bench.serves import Wanted, ranked
from rimbook.site.fits_data import CAUTIONS
from rimbook.site.fits_link import fits_link
from tests.browser.fits_site import write_fits
from tests.serving import served
from tests.site.sample import demo_book

GOOD = "#bore=2.1&depth=9.4&strings=1&string=0.68&step=0.05"
BORE, DEPTH, STRING = "Bore of the hole, mm", "Rim depth at the hole, mm", "String diameter, mm"
STRINGS, STEP = "How many strings", "Bore read in steps of, mm"
LABELS = (BORE, DEPTH, STRINGS, STRING, STEP)


@pytest.fixture(scope="session")
def fits_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("fits")
    write_fits(folder, demo_book().parts)
    return folder


@pytest.fixture(scope="session")
def fits_url(fits_folder: Path) -> str:
    return (fits_folder / "fits/index.html").as_uri()


@pytest.fixture(scope="session", params=["file", "http"])
def anywhere(request: pytest.FixtureRequest, fits_folder: Path) -> Iterator[str]:
    """The page in its folder, and then on a server."""
    if request.param == "file":
        yield (fits_folder / "fits/index.html").as_uri()
        return
    with served(fits_folder) as top:
        yield f"{top}/fits/index.html"


def opened(page: Page, url: str) -> Page:
    page.goto("about:blank")
    page.goto(url)
    expect(page.get_by_label(BORE)).to_be_visible()
    return page


def names(page: Page, title: str) -> Locator:
    return page.get_by_role("region", name=title).locator("h3 a")


def typed(page: Page) -> list[str]:
    return [page.get_by_label(label).input_value() for label in LABELS]


def hash_of(page: Page) -> str:
    return str(page.evaluate("location.hash"))


def expected(wanted: Wanted) -> dict[str, list[str]]:
    """The names of the parts that the build would give, by verdict."""
    parts = demo_book().parts
    found: dict[str, list[str]] = {}
    for each in ranked(wanted, parts.values()):
        found.setdefault(each.verdict, []).append(parts[each.part].name)
    return found


def test_typing_ranks_the_parts_as_the_build_does(page: Page, anywhere: str) -> None:
    opened(page, anywhere)
    for label, text in ((BORE, "2,70"), (DEPTH, "9.4 mm"), (STRINGS, "2"), (STRING, "0,68"), (STEP, "0.05")):
        page.get_by_label(label).fill(text)
    answer = expected(Wanted(2.7, 0.05, 9.4, (0.68, 0.68)))
    assert len(answer["serves"]) > 1
    expect(page.get_by_role("status")).to_contain_text(f"First: {answer['serves'][0]}, snug.")
    expect(names(page, "These serve")).to_have_text(answer["serves"])
    expect(names(page, "Near misses")).to_have_text(answer["near miss"])
    expect(page).to_have_url(re.compile("#bore=2%2C70&depth=9.4.mm&strings=2&string=0%2C68&step=0.05$"))


def test_a_part_tells_its_word_room_length_trim_pin_and_page(page: Page, anywhere: str) -> None:
    opened(page, anywhere + GOOD)
    part = page.locator("li", has=page.get_by_role("link", name="Long barrel 2.1", exact=True))
    expect(part.locator(".rb-tag")).to_have_text("snug")
    expect(part).to_contain_text("0.05 mm of air round a barrel of 2.05 mm; within the uncertainty")
    expect(part).to_contain_text("runs free: opening 1.3 mm, 0.68 needed, 0.62 to spare")
    expect(part).to_contain_text("proud: 12.0 mm under the flange stands out by 2.6 mm; cut 2.1 mm off")
    expect(part).to_contain_text("about 1.7 mm (over 1.3, under 2.05)")
    expect(part).to_contain_text("PA12: it swells, so fit it dry")
    part.get_by_role("link").click()
    expect(page.locator("h1")).to_have_text("barrel-21-long")
    page.go_back()
    expect(page.get_by_label(BORE)).to_have_value("2.1")


def test_near_misses_say_why(page: Page, fits_url: str) -> None:
    opened(page, fits_url + "#bore=2.7&depth=9.4&strings=2&string=0.68&step=0.05")
    near = page.get_by_role("region", name="Near misses").locator("li")
    expect(near).to_have_count(len(expected(Wanted(2.7, 0.05, 9.4, (0.68, 0.68)))["near miss"]))
    for each in near.all():
        expect(each.locator("dt").first).to_have_text("Why not")
    expect(near.first).to_contain_text("the barrel is too thick by 0.05 mm")


@pytest.mark.parametrize("sign", ["#", "?"])
def test_a_link_fills_the_form_in(page: Page, anywhere: str, sign: str) -> None:
    opened(page, f"{anywhere}{sign}bore=2.1&depth=9.4&strings=1&string=0.68")
    assert typed(page) == ["2.1", "9.4", "1", "0.68", ""]
    expect(page.locator("h3").first).to_be_visible()
    if sign == "?" and anywhere.startswith("http"):
        assert page.url == f"{anywhere}#bore=2.1&depth=9.4&strings=1&string=0.68"


def test_what_stands_behind_the_hash_counts_alone(page: Page, fits_url: str) -> None:
    opened(page, f"{fits_url}?bore=3.1&depth=12&q=1#bore=2.1")
    assert typed(page) == ["2.1", "", "1", "", ""]


def test_a_link_made_by_the_build_is_understood(page: Page, fits_url: str) -> None:
    address = fits_link("", 2.7, 9.4, (0.62, 0.7), 3, 0.05).removeprefix("fits/index.html")
    opened(page, fits_url + address)
    assert typed(page) == ["2.7", "9.4", "3", "0.62 0.7", "0.05"]
    expect(page.locator(".rb-fits-hole")).to_have_text(
        "The hole: bore 2.7 mm, measured in steps of 0.05; rim 9.4 mm deep; 3 strings of 0.62 and 0.7 mm."
    )


def test_the_address_keeps_what_was_typed_and_clear_empties_it(page: Page, anywhere: str) -> None:
    opened(page, anywhere)
    assert hash_of(page) == ""
    page.get_by_label(BORE).fill("2.1")
    page.get_by_label(STRING).fill("0.62 + 0.70")
    expect(page).to_have_url(re.compile(r"string=0\.62"))
    page.reload()
    assert typed(page) == ["2.1", "", "1", "0.62 + 0.70", ""]
    page.get_by_role("button", name="Clear all").click()
    assert typed(page) == ["", "", "1", "", ""]
    assert hash_of(page) == ""
    expect(page.get_by_role("status")).to_have_text("Type the bore first: without it no fit is claimed.")
    expect(page.get_by_label(BORE)).to_be_focused()


def test_an_address_that_changes_is_followed_and_an_anchor_is_not(page: Page, fits_url: str) -> None:
    opened(page, fits_url + GOOD)
    page.evaluate("location.hash = '#page'")
    page.evaluate("location.hash = '#page2'")
    assert typed(page) == ["2.1", "9.4", "1", "0.68", "0.05"]
    page.evaluate("location.hash = '#bore=2.7'")
    expect(page.get_by_label(BORE)).to_have_value("2.7")
    expect(page.get_by_label(DEPTH)).to_have_value("")


def test_each_wrong_field_says_so_and_nothing_is_lost(page: Page, fits_url: str) -> None:
    wrong = ["21", "deep", "1.5", "0.68 + x", "0"]
    opened(page, fits_url)
    for label, text in zip(LABELS, wrong, strict=True):
        page.get_by_label(label).fill(text)
    expect(page.get_by_role("status")).to_have_text(
        "Nothing is worked out yet. "
        "Look again at: bore, rim depth, number of strings, string diameter and resolution."
    )
    assert typed(page) == wrong
    for label, text in zip(LABELS, ("Did you mean 2.1?", "“deep”", "“1.5”", "“x”", "“0”"), strict=True):
        field = page.get_by_label(label)
        expect(field).to_have_attribute("aria-invalid", "true")
        expect(field).to_have_accessible_description(re.compile(re.escape(text)))
    expect(page.locator("h3")).to_have_count(0)
    page.get_by_label(BORE).fill("2.1")
    expect(page.get_by_label(BORE)).not_to_have_attribute("aria-invalid", "true")
    expect(page.get_by_role("status")).not_to_contain_text("bore")


def test_what_is_not_measured_is_asked_for_once(page: Page, fits_url: str) -> None:
    opened(page, fits_url + "#bore=2.1")
    steps = page.locator(".rb-fits-answer .rb-note li")
    expect(steps).to_have_text(
        [
            "Write down how finely it was measured: the step of the pins or of the calliper.",
            "Measure the rim along the hole, from the seat of the flange to the inside edge.",
            "Measure the string with a calliper, or take the figure from its packet.",
        ]
    )
    expect(page.get_by_role("status")).to_contain_text("No part surely serves")
    expect(page.get_by_text("not known: bore resolution")).to_have_count(0)
    first = page.get_by_role("region", name="These may serve").locator("li").first
    expect(first).to_contain_text("the rim is unknown")
    expect(first).to_contain_text("the string is unknown")


def test_cautions_stand_where_the_risk_is(page: Page, fits_url: str) -> None:
    opened(page, fits_url)
    box = page.get_by_role("note", name="Cautions")
    expect(box).to_have_count(0)
    page.get_by_label(BORE).fill("2.1")
    page.get_by_label(DEPTH).fill("9.4")
    expect(box.locator("p")).to_have_text(
        [CAUTIONS[name] for name in ("cracked", "eyes", "trim", "driving", "dry")]
    )
    page.get_by_label(DEPTH).fill("")
    expect(box.locator("p")).to_have_text([CAUTIONS[name] for name in ("cracked", "eyes", "driving", "dry")])
    page.get_by_label(BORE).fill("7")
    expect(box.locator("p")).to_have_text([CAUTIONS[name] for name in ("cracked", "eyes", "drill")])
    expect(page.get_by_role("status")).to_have_text("No part of this book serves this hole.")
    expect(page.locator(".rb-fits-answer")).to_contain_text(
        "Wide tennis barrel 4.2, 4.15 mm: the barrel is too thin by 2.6 mm"
    )


def test_the_keyboard_is_enough(page: Page, fits_url: str) -> None:
    opened(page, fits_url)
    page.get_by_label(BORE).focus()
    for text in ("2.1", "9.4", "", "0.68"):
        page.keyboard.type(text)
        page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    first = page.locator("h3 a").first
    expect(first).to_be_focused()
    assert hash_of(page) == "#bore=2.1&depth=9.4&strings=1&string=0.68"
    page.get_by_label(DEPTH).fill("x")
    page.get_by_label(STRING).press("Enter")
    expect(page.get_by_label(DEPTH)).to_be_focused()


def test_without_javascript_it_says_so_and_leads_on(browser: Browser, fits_url: str) -> None:
    context = browser.new_context(java_script_enabled=False)
    page = context.new_page()
    page.goto(fits_url)
    expect(page.locator("[data-rb-fits]")).to_contain_text("The ranking needs JavaScript")
    page.locator("[data-rb-fits]").get_by_role("link", name="all parts").click()
    expect(page).to_have_title("parts")
    context.close()


@pytest.mark.parametrize("page", [360], indirect=True)
@pytest.mark.parametrize("hash_", ["", GOOD, "#bore=21&depth=x&string=" + "9" * 40, "#bore=7"])
def test_it_fits_a_phone(page: Page, fits_url: str, hash_: str) -> None:
    opened(page, fits_url + hash_)
    assert page.evaluate("document.documentElement.scrollWidth") <= 360
    heights = page.locator("input, .rb-fits-form button").evaluate_all(
        "(all) => all.map((each) => each.getBoundingClientRect().height)"
    )
    assert min(heights) >= 24


def test_on_paper_the_hole_and_the_parts_are_left(page: Page, fits_url: str) -> None:
    opened(page, fits_url + GOOD)
    page.emulate_media(media="print")
    expect(page.locator("form")).to_be_hidden()
    expect(page.locator(".rb-fits-about")).to_be_hidden()
    expect(page.locator(".rb-fits-hole")).to_be_visible()
    expect(page.get_by_role("note", name="Cautions")).to_be_visible()
    assert (
        page.locator("h3 a").first.evaluate("(link) => getComputedStyle(link).textDecorationLine") == "none"
    )
