"""The finder in a page, from a folder and from a server, under a strict policy, asking nobody."""

from __future__ import annotations

import re

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.small_site import FRAMES
from tests.watch import watched_page

BOX = "Frame, maker, bore, part or word"


@pytest.fixture
def finder(page: Page, small_site: str) -> Page:
    """The finder, ready."""
    return opened(page, small_site)


def opened(page: Page, small_site: str, hash_: str = "") -> Page:
    page.goto(f"{small_site}/finder/index.html{hash_}")
    expect(page.locator("[data-rb-finder] datalist option")).not_to_have_count(0)
    return page


def titles(page: Page) -> list[str]:
    return page.locator("[data-rb-finder] li > a").all_text_contents()


def said(page: Page) -> str:
    return page.locator("#rb-finder-said").text_content() or ""


def type_in(page: Page, text: str) -> None:
    page.get_by_label(BOX).fill(text)


def hash_of(page: Page) -> str:
    return str(page.evaluate("location.hash"))


def test_without_a_question_all_frames_are_listed(finder: Page) -> None:
    assert said(finder) == "5 frames in this book."
    assert titles(finder) == ["Plover 76 (2024)", "Plover 78", "Sluice 66", "Treadle 60", "Élan Ø/S+"]


def test_typing_finds_and_the_link_leads_there(page: Page, anywhere: str) -> None:
    finder = opened(page, anywhere)
    finder.get_by_label(BOX).press_sequentially("plover 76")
    assert titles(finder)[0] == "Plover 76 (2024)"
    finder.get_by_label(BOX).press("Enter")
    finder.wait_for_url(f"{anywhere}/frames/plover-76/index.html")
    finder.go_back()
    expect(finder.get_by_label(BOX)).to_have_value("plover 76")
    assert titles(finder)[0] == "Plover 76 (2024)"


def test_a_frame_with_its_decals_worn_off_is_found(finder: Page) -> None:
    finder.get_by_role("button", name="Filter the frames").click()
    finder.get_by_label("Holes, a number or a range").fill("70-76")
    assert titles(finder) == ["Plover 76 (2024)", "Élan Ø/S+"]
    finder.get_by_label("Shared at, on either side").fill("9 13")
    finder.get_by_label("Sport").select_option("badminton")
    assert titles(finder) == ["Plover 76 (2024)"]
    assert said(finder) == "1 frame found."
    expect(finder).to_have_url(re.compile(r"#sport=badminton&holes=70-76&shared=9\+13$"))


@pytest.mark.parametrize(
    ("label", "value", "found"),
    [
        ("Sport", "squash", ["Treadle 60"]),
        ("Maker", "Łódka & Søn", ["Élan Ø/S+"]),
        ("Bore, mm", "3.6", ["Sluice 66"]),
        ("Strings, mains × crosses", "22x21", ["Plover 76 (2024)", "Plover 78"]),
    ],
)
def test_each_choice_filters(finder: Page, label: str, value: str, found: list[str]) -> None:
    finder.get_by_role("button", name="Filter the frames").click()
    finder.get_by_label(label, exact=True).select_option(value)
    assert titles(finder) == found


@pytest.mark.parametrize("part", ["twin-29-even", "Even twin 2.9", "even tw"])
def test_a_part_filters_by_id_and_by_name(finder: Page, part: str) -> None:
    finder.get_by_role("button", name="Filter the frames").click()
    finder.get_by_label("Part", exact=True).fill(part)
    assert titles(finder) == ["Treadle 60"]


def test_an_address_brings_a_search_back(page: Page, anywhere: str) -> None:
    opened(page, anywhere, "#q=plover&part=plover-crown&maker=Saltmarsh+Works&colour=red")
    assert titles(page) == ["Plover 76 (2024)"]
    opener = page.get_by_role("button", name="Filter the frames (2 set)")
    expect(opener).to_have_attribute("aria-expanded", "true")


def test_what_the_finder_says_of_shared_holes_can_be_asked(page: Page, anywhere: str) -> None:
    page.goto(f"{anywhere}/finder/index.html#part=old-barrel-27&shared=9–10, 13")
    expect(page.locator("[data-rb-finder] li > a")).to_have_text(["Plover 76 (2024)"])
    expect(page.locator("[data-rb-finder] li")).to_contain_text("shared at 9–10, 13")


def test_nothing_found_names_no_word_that_finds_nothing_either(finder: Page) -> None:
    type_in(finder, "plovr 77")
    assert said(finder) == "Nothing found."


def test_an_address_of_an_older_book_says_what_it_leaves_out(page: Page, small_site: str) -> None:
    opened(page, small_site, "#maker=Gone+Works&sport=squash")
    assert titles(page) == ["Treadle 60"]
    assert "maker Gone Works" in said(page)


def test_a_new_address_is_followed_and_an_anchor_is_not(finder: Page) -> None:
    finder.evaluate("location.hash = '#q=sluice'")
    expect(finder.get_by_label(BOX)).to_have_value("sluice")
    finder.evaluate("location.hash = '#content'")
    finder.wait_for_timeout(400)
    assert (titles(finder), hash_of(finder)) == (["Sluice 66"], "#content")


def test_the_list_is_walked_by_keys(finder: Page) -> None:
    box = finder.get_by_label(BOX)
    finder.locator("body").press("/")
    expect(box).to_be_focused()
    box.fill("plover")
    focused = finder.locator("a:focus")
    box.press("ArrowDown")
    expect(focused).to_have_text("Plover 76 (2024)")
    focused.press("ArrowDown")
    expect(focused).to_have_text("Plover 78")
    focused.press("End")
    expect(focused).to_have_text("Plover crown")
    focused.press("Home")
    focused.press("ArrowUp")
    expect(box).to_be_focused()
    box.press("ArrowDown")
    focused.press("Escape")
    expect(box).to_be_focused()
    box.press("Escape")
    expect(box).to_have_value("")


def test_a_slash_in_the_box_is_a_slash(finder: Page) -> None:
    finder.get_by_label(BOX).press_sequentially("elan/o")
    expect(finder.get_by_label(BOX)).to_have_value("elan/o")
    assert titles(finder) == ["Élan Ø/S+"]


def test_nothing_found_says_what_would_help(finder: Page) -> None:
    finder.get_by_role("button", name="Filter the frames").click()
    finder.get_by_label("Sport").select_option("squash")
    type_in(finder, "plover")
    assert said(finder) == "Nothing found."
    finder.get_by_role("button", name="without sport squash: 3 found").click()
    assert "Plover 78" in titles(finder)
    type_in(finder, "qqqq")
    finder.get_by_role("button", name="76 holes, shared at 9 and 13").click()
    assert titles(finder) == ["Plover 76 (2024)"]


def test_a_slip_is_said(finder: Page) -> None:
    type_in(finder, "treddle")
    assert titles(finder) == ["Treadle 60"]
    assert "this is what comes near: treadle." in said(finder)


def test_all_can_be_cleared(page: Page, small_site: str) -> None:
    opened(page, small_site, "#q=plover&sport=badminton")
    page.get_by_role("button", name="Clear all").click()
    expect(page.locator("#rb-finder-said")).to_have_text("5 frames in this book.")
    expect(page).to_have_url(re.compile(r"html$"))


@pytest.mark.parametrize(
    "text",
    [
        "<img src=x onerror=alert(1)>",
        "\u202eabc مضرب",
        "🏸",
        "(.*)+$",
        "a" * 10_000,
        "shared " + "1 " * 4_000,
    ],
)
def test_any_text_is_only_text(finder: Page, text: str) -> None:
    type_in(finder, text)
    assert finder.locator("[data-rb-finder] img").count() == 0
    assert said(finder).startswith("Nothing found.")
    assert ("only its beginning" in said(finder)) == (len(text) > 200)
    finder.wait_for_timeout(350)
    assert len(hash_of(finder)) < 2_000


def test_half_a_character_does_no_harm(finder: Page) -> None:
    finder.evaluate(
        """() => {
          const box = document.querySelector("#rb-finder-box");
          box.value = "plover \\ud83c";
          box.dispatchEvent(new Event("input", { bubbles: true }));
        }"""
    )
    expect(finder).to_have_url(re.compile("#q=plover"))
    assert titles(finder)[0] == "Plover 76 (2024)"


def test_a_frame_is_kept_from_the_list(finder: Page, small_site: str) -> None:
    finder.get_by_role("button", name="Keep Plover 78").click()
    expect(finder.get_by_role("button", name="Kept: Plover 78")).to_have_text("★ Kept")
    finder.goto(f"{small_site}/frames/plover-78/index.html")
    expect(finder.get_by_role("button", name="Kept: Plover 78")).to_be_visible()


def test_from_another_page_a_slash_leads_to_the_finder(page: Page, small_site: str) -> None:
    page.goto(f"{small_site}/frames/plover-76/index.html")
    page.locator("body").press("/")
    page.wait_for_url(re.compile("/finder/index.html"))


def test_every_control_has_a_name(finder: Page) -> None:
    finder.get_by_role("button", name="Filter the frames").click()
    nameless = finder.evaluate(
        "[...document.querySelectorAll('input, select')].filter((control) => !control.labels.length).length"
    )
    assert nameless == 0
    assert finder.get_by_role("status").count() >= 1
    assert finder.get_by_role("search").count() == 1


@pytest.mark.parametrize("page", [360], indirect=True)
def test_it_fits_a_phone(finder: Page) -> None:
    finder.get_by_role("button", name="Filter the frames").click()
    assert finder.evaluate("document.documentElement.scrollWidth") <= 360


def test_only_local_files_are_asked_for(browser: Browser, anywhere: str) -> None:
    with watched_page(browser) as (page, faults):
        asked: list[str] = []
        page.on("request", lambda request: asked.append(request.url))
        opened(page, anywhere)
        type_in(page, "plover")
    assert faults == []
    assert sorted(url.removeprefix(anywhere) for url in asked if not url.startswith("data:")) == [
        "/assets/browser.css", "/assets/finder.js", "/data/finder-parts.js", "/data/finder.js",
        "/finder/index.html",
    ]  # fmt: skip


def test_without_the_list_it_says_so(browser: Browser, small_site: str) -> None:
    with watched_page(browser) as (page, _):
        page.route("**/data/finder.js", lambda route: route.abort())
        page.goto(f"{small_site}/finder/index.html")
        expect(page.locator("#rb-finder-said")).to_contain_text("could not be loaded")


def test_the_policy_is_in_force(browser: Browser, anywhere: str) -> None:
    with watched_page(browser) as (page, faults):
        opened(page, anywhere)
        page.evaluate(
            """() => {
              const script = document.createElement("script");
              script.textContent = "globalThis.broken = true";
              document.head.append(script);
            }"""
        )
        assert page.evaluate("globalThis.broken") is None
    assert any("Content Security Policy" in fault for fault in faults)


def test_every_frame_has_a_row(finder: Page) -> None:
    links = finder.locator("[data-rb-finder] li > a").evaluate_all(
        "(links) => links.map((link) => link.getAttribute('href'))"
    )
    assert sorted(links) == sorted(f"../frames/{frame.slug}/index.html" for frame in FRAMES)
