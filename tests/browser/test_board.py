"""My frames: kept on the device, sent by address, side by side, with one parts list."""

from __future__ import annotations

import random
import re
from collections import Counter
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.small_site import look_inside
from tests.watch import watched_page


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "board_sum": ["sum", "readCard"],
                "kept": ["slugsIn", "slugsInHash", "hashOf", "kept", "toggle", "keepAll"],
            },
        )
        yield page
    assert faults == []


def opened(page: Page, site: str, slugs: str = "", kept: list[str] | None = None) -> Page:
    """The board, with frames already kept where they are given."""
    if kept is not None:
        page.goto(f"{site}/finder/index.html")
        page.evaluate("(kept) => localStorage.setItem('rimbook.frames', JSON.stringify(kept))", kept)
    page.goto(f"{site}/board/index.html{'#frames=' + slugs if slugs else ''}")
    expect(page.locator(".rb-board-said")).not_to_have_text("")
    return page


def frames(page: Page) -> list[str]:
    return page.locator(".rb-board-frame h2").all_text_contents()


def table(page: Page) -> list[list[str]]:
    return [row.locator("td, th").all_text_contents() for row in page.locator("tbody tr").all()]


def kept(page: Page) -> object:
    return page.evaluate("JSON.parse(localStorage.getItem('rimbook.frames'))")


def test_an_empty_board_says_how_to_fill_it(page: Page, small_site: str) -> None:
    opened(page, small_site)
    expect(page.locator(".rb-board-said")).to_have_text("No frame is kept yet.")
    expect(page.get_by_role("link", name="finder")).to_be_visible()


def test_kept_frames_stand_side_by_side_with_one_parts_list(page: Page, anywhere: str) -> None:
    page.goto(f"{anywhere}/frames/plover-76/index.html")
    page.get_by_role("button", name="Keep Plover 76").click()
    expect(page.locator("[data-rb-kept-count]")).to_have_text("1")
    page.goto(f"{anywhere}/frames/plover-78/index.html")
    page.get_by_role("button", name="Keep Plover 78").click()
    opened(page, anywhere)
    assert frames(page) == ["Plover 76", "Plover 78"]
    assert table(page) == [
        ["134", "Short barrel 2.1", "single", "singly", "Plover 76: 66; Plover 78: 68"],
        ["16", "Short barrel 2.7", "wide", "singly", "Plover 76: 8; Plover 78: 8"],
        ["2", "unknown part", "unknown", "unknown", "Plover 76: 2"],
        ["2", "unknown part", "unknown", "unknown", "Plover 78: 2"],
    ]
    expect(page).to_have_url(re.compile("#frames=plover-76,plover-78$"))


def test_the_drawings_are_seen(page: Page, anywhere: str) -> None:
    opened(page, anywhere, "plover-76,treadle-60")
    images = page.locator("img")
    expect(images).to_have_count(2)
    expect(images.first).to_have_attribute("alt", "Drawing of Plover 76, face on")
    expect(images.first).to_have_js_property("complete", True)
    assert images.evaluate_all("(images) => images.map((image) => image.naturalWidth)") == [680, 680]


def test_a_set_that_was_sent_is_shown_but_not_kept(page: Page, small_site: str) -> None:
    opened(page, small_site, "treadle-60,plover-78", kept=["plover-76"])
    assert frames(page) == ["Treadle 60", "Plover 78"]
    assert kept(page) == ["plover-76"]
    page.get_by_role("button", name="Add it to my frames").click()
    expect(page.locator(".rb-board-frame")).to_have_count(3)
    assert kept(page) == ["plover-76", "treadle-60", "plover-78"]
    expect(page.locator(".rb-board-sent")).to_have_count(0)
    expect(page).to_have_url(re.compile("#frames=plover-76,treadle-60,plover-78$"))


def test_a_set_that_was_sent_can_take_the_place_of_mine_or_not(page: Page, small_site: str) -> None:
    opened(page, small_site, "treadle-60", kept=["plover-76"])
    page.get_by_role("button", name="Show my frames instead").click()
    expect(page.locator(".rb-board-frame h2")).to_have_text(["Plover 76"])
    page.evaluate("location.hash = '#frames=treadle-60'")
    page.get_by_role("button", name="Replace my 1 frame with it").click()
    expect(page.locator(".rb-board-sent")).to_have_count(0)
    assert kept(page) == ["treadle-60"]


def test_a_frame_that_is_gone_is_named(browser: Browser, anywhere: str) -> None:
    with watched_page(browser) as (page, faults):
        opened(page, anywhere, kept=["plover-76", "plover-75", "elan-os"])
        absent = page.locator(".rb-board-absent li")
        expect(absent).to_have_count(2)
        expect(absent.nth(0)).to_contain_text("plover-75: this book has no such frame")
        expect(absent.nth(1)).to_contain_text("elan-os: could not be loaded")
        expect(absent.nth(0).get_by_role("link")).to_have_attribute(
            "href", "../finder/index.html#q=plover+75"
        )
        assert frames(page) == ["Plover 76"]
        page.get_by_role("button", name="Let go of plover-75").click()
        expect(absent).to_have_count(1)
        assert kept(page) == ["plover-76", "elan-os"]
    assert all("data/board/" in fault for fault in faults)


def test_a_kept_frame_that_was_renamed_is_kept_under_its_new_name(browser: Browser, anywhere: str) -> None:
    with watched_page(browser) as (page, faults):
        opened(page, anywhere, kept=["plover-old", "plover-78", "plover-76", "treadle-old"])
        assert frames(page) == ["Plover 76", "Plover 78", "Treadle 60"]
        expect(page.locator(".rb-board-said")).to_have_text(
            "3 frames on this board. plover-old is Plover 76 now. treadle-old is Treadle 60 now."
        )
        assert kept(page) == ["plover-76", "plover-78", "treadle-60"]
        expect(page.locator(".rb-board-absent, .rb-board-sent")).to_have_count(0)
        expect(page).to_have_url(re.compile("#frames=plover-76,plover-78,treadle-60$"))
    assert all("data/board/" in fault for fault in faults)


def test_a_renamed_frame_in_an_address_is_followed_and_only_what_exists_is_kept(
    browser: Browser, small_site: str
) -> None:
    with watched_page(browser) as (page, faults):
        opened(page, small_site, "treadle-old,plover-75", kept=["plover-76"])
        assert frames(page) == ["Treadle 60"]
        expect(page.locator(".rb-board-said")).to_have_text(
            "1 frame on this board. treadle-old is Treadle 60 now."
        )
        expect(page.locator(".rb-board-absent li")).to_contain_text(
            ["plover-75: this book has no such frame"]
        )
        assert kept(page) == ["plover-76"]
        shelf = page.get_by_role("link", name="Plan a shelf")
        expect(shelf).to_have_attribute("href", "../my-shelf/index.html#frames=treadle-60")
        page.get_by_role("button", name="Replace my 1 frame with it").click()
        expect(page.locator(".rb-board-sent")).to_have_count(0)
        assert kept(page) == ["treadle-60"]
    assert all("data/board/" in fault for fault in faults)


def test_an_old_address_of_what_is_kept_already_is_my_board(browser: Browser, small_site: str) -> None:
    with watched_page(browser) as (page, faults):
        opened(page, small_site, "plover-old", kept=["plover-76"])
        assert frames(page) == ["Plover 76"]
        expect(page.locator(".rb-board-sent")).to_have_count(0)
    assert all("data/board/" in fault for fault in faults)


def test_where_no_frame_exists_nothing_is_offered_for_it(browser: Browser, small_site: str) -> None:
    with watched_page(browser) as (page, faults):
        opened(page, small_site, "plover-75", kept=["plover-76"])
        expect(page.locator(".rb-board-said")).to_have_text("0 frames on this board.")
        assert page.locator("[data-rb-board] button").all_text_contents() == ["Show my frames instead"]
        expect(page.get_by_role("link", name="Plan a shelf")).to_have_count(0)
        page.get_by_role("button", name="Show my frames instead").click()
        expect(page.locator(".rb-board-frame h2")).to_have_text(["Plover 76"])
        expect(page.get_by_role("button", name="Print this board")).to_be_visible()
    assert all("data/board/" in fault for fault in faults)


def test_a_frame_is_let_go(page: Page, small_site: str) -> None:
    opened(page, small_site, kept=["plover-76", "plover-78"])
    page.get_by_role("button", name="Let go of Plover 76").click()
    expect(page.locator(".rb-board-frame h2")).to_have_text(["Plover 78"])
    expect(page).to_have_url(re.compile("#frames=plover-78$"))


def test_two_tabs_agree(browser: Browser, anywhere: str) -> None:
    with watched_page(browser) as (board, faults):
        opened(board, anywhere)
        other = board.context.new_page()
        other.goto(f"{anywhere}/frames/plover-76/index.html")
        other.get_by_role("button", name="Keep Plover 76").click()
        expect(board.locator(".rb-board-frame h2")).to_have_text(["Plover 76"])
        board.get_by_role("button", name="Let go of Plover 76").click()
        expect(other.get_by_role("button", name="Keep Plover 76")).to_be_visible()
    assert faults == []


def test_a_browser_that_keeps_nothing_still_has_a_board(browser: Browser, small_site: str) -> None:
    with watched_page(browser) as (page, faults):
        page.add_init_script(
            "Object.defineProperty(window, 'localStorage', { get() { throw new Error('refused'); } })"
        )
        page.goto(f"{small_site}/frames/plover-76/index.html")
        page.get_by_role("button", name="Keep Plover 76").click()
        expect(page.get_by_role("button", name="Kept: Plover 76")).to_be_visible()
        expect(page.get_by_text("This browser keeps nothing.")).to_be_visible()
        opened(page, small_site, "plover-76,plover-78")
        assert frames(page) == ["Plover 76", "Plover 78"]
        page.get_by_role("button", name="Keep it").click()
        expect(page.locator(".rb-board-sent")).to_have_count(0)
        page.get_by_role("button", name="Let go of Plover 76").click()
        expect(page.locator(".rb-board-frame h2")).to_have_text(["Plover 78"])
    assert faults == []


@pytest.mark.parametrize(
    "hash_",
    [
        "#frames=",
        "#frames=../../etc/passwd",
        "#frames=<img>,PLOVER--76",
        "#frames=%E0%A4%A",
        "#set=plover-76",
        "#frames=" + "-," * 5_000,
    ],
)
def test_an_address_without_a_single_slug_is_an_empty_board(page: Page, small_site: str, hash_: str) -> None:
    page.goto(f"{small_site}/board/index.html{hash_}")
    expect(page.locator(".rb-board-said")).to_have_text("No frame is kept yet.")


@pytest.mark.parametrize("page", [360], indirect=True)
def test_it_fits_a_phone(page: Page, small_site: str) -> None:
    opened(page, small_site, kept=["plover-76", "plover-78", "treadle-60"])
    expect(page.locator(".rb-board-frame")).to_have_count(3)
    frames_fit = "[...document.querySelectorAll('.rb-board-frame')].every((one) => one.scrollWidth < 360)"
    assert page.evaluate(frames_fit)
    assert page.evaluate("document.querySelector('.rb-scroll').getBoundingClientRect().right") <= 360


def test_a_list_of_slugs_survives_the_address(inside: Page) -> None:
    chance = random.Random(6)
    lists = [
        [f"{chance.choice('abc')}-{chance.randint(0, 99)}" for _ in range(chance.randint(0, 60))]
        for _ in range(100)
    ]
    unique = [list(dict.fromkeys(slugs)) for slugs in lists]
    assert (
        inside.evaluate("(lists) => lists.map((slugs) => inside.slugsInHash(inside.hashOf(slugs)))", unique)
        == unique
    )


def test_only_slugs_are_taken(inside: Page) -> None:
    value: list[object] = [
        "plover-76",
        "plover-76",
        "Plover",
        "-a",
        "a-",
        "a--b",
        "",
        None,
        7,
        {},
        ["x"],
        "../x",
        "a" * 101,
        "a" * 100,
    ]
    assert inside.evaluate("(value) => inside.slugsIn(value)", value) == ["plover-76", "a" * 100]
    assert inside.evaluate("() => [null, 7, 'plover', {}].map(inside.slugsIn)") == [[]] * 4
    assert len(inside.evaluate("() => inside.slugsIn([...Array(500).keys()].map((n) => `frame-${n}`))")) == 60


def test_a_full_board_takes_no_more(inside: Page) -> None:
    assert inside.evaluate(
        """() => {
          inside.keepAll([...Array(60).keys()].map((n) => `frame-${n}`));
          const one = inside.toggle("one-more");
          const out = inside.toggle("frame-0");
          return [one.full, one.kept, out.kept, inside.kept().length];
        }"""
    ) == [True, False, False, 59]


def test_the_sum_is_the_sum(inside: Page) -> None:
    chance = random.Random(9)
    for _ in range(60):
        needs = [
            {part: chance.randint(1, 70) for part in chance.sample("abcd", chance.randint(0, 4))}
            for _ in range(chance.randint(0, 5))
        ]
        cards = [
            {
                "slug": f"frame-{at}",
                "parts": [{"id": part, "name": part, "count": n} for part, n in need.items()],
            }
            for at, need in enumerate(needs)
        ]
        lines = inside.evaluate("(cards) => inside.sum(cards)", cards)
        expected: Counter[str] = sum((Counter(need) for need in needs), Counter())
        assert {line["part"]["id"]: line["total"] for line in lines} == expected
        assert all(sum(share["count"] for share in line["frames"]) == line["total"] for line in lines)
        assert [line["total"] for line in lines] == sorted(expected.values(), reverse=True)


def test_a_card_of_another_edition_is_not_read(inside: Page) -> None:
    cards = [None, {}, {"format": 2, "facts": [], "parts": []}, {"format": 1}, "x"]
    assert inside.evaluate("(cards) => cards.map(inside.readCard)", cards) == [None] * 5
