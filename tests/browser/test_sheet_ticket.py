"""The ticket for the player and the pick list for the technician, on the page and on paper."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.marked_sheet import LOOKED_OVER, SHOP, THREE_SPLIT, frame_of, hash_of
from tests.browser.paper import PAPERS, ink, printed, scanned, sheets
from tests.browser.sheet_frames import small_frame
from tests.browser.small_site import look_inside
from tests.browser.test_access import COLOUR_RULES, violations
from tests.watch import watched_page

PLOVER = "frames/plover-76/index.html"
TICKET = "[data-rb-sheet-part='ticket']"
PUBLIC = "https://rimbook.example/frames/plover-76/index.html"

ON_BENCH = {"piece": 2, "part": "post-b"}
ON_SHELF = {"part": "plover-crown", "count": 1, "price": None}

Open = Callable[..., str]


@pytest.fixture
def opened(page: Page, browser: Browser, plain_site: Path) -> Open:
    """Opens a frame's page with a sheet in the address, which it gives. Its printer does nothing."""

    def open_sheet(
        marks: Any = THREE_SPLIT, *, slug: str = "plover-76", shop: Any = SHOP, public: str = "", **how: Any
    ) -> str:
        page.add_init_script(
            """window.print = () => { window.timesPrinted = (window.timesPrinted ?? 0) + 1; };"""
        )
        if shop:
            page.add_init_script(f"localStorage.setItem('rimbook.shop', {json.dumps(json.dumps(shop))})")
        if public:
            page.add_init_script(
                f"""addEventListener("DOMContentLoaded", () => {{
                  const link = Object.assign(document.createElement("link"), {{ rel: "canonical" }});
                  link.href = "{public}";
                  document.head.append(link);
                }}, true)"""
            )
        hash_part = hash_of(browser, frame_of(plain_site, slug), marks, **how)
        address = (plain_site / f"frames/{slug}/index.html").as_uri() + hash_part
        page.goto(address)
        expect(page.locator(".rb-ticket h4")).to_be_visible()
        expect(page.locator(".rb-ticket")).not_to_contain_text("worked out")
        return address

    return open_sheet


def test_the_ticket_is_one_sheet_with_everything_on_it(page: Page, opened: Open) -> None:
    opened({**THREE_SPLIT, "R12": 0, "L12": 2, "R10": 1}, way="against the clock", public=PUBLIC)
    page.get_by_role("textbox", name="Player").fill("Ansa Brook")
    page.get_by_role("textbox", name="String and tension").fill("0.68, 25 lb")
    page.get_by_role("textbox", name="Remark").fill("Handle is loose")
    page.get_by_role("button", name="Print ticket").click()
    on_paper = {paper: sheets(printed(page, paper)) for paper in PAPERS}
    assert {paper: len(found) for paper, found in on_paper.items()} == dict.fromkeys(PAPERS, 1)
    assert on_paper["A4"] == on_paper["Letter"]
    (text,) = on_paper["A4"]
    for words in (
        "Plover 76 (2024)",
        "Saltmarsh Works, badminton",
        "Player Ansa Brook",
        "String and tension 0.68, 25 lb",
        "Split – R5, R20 and L9",
        "Grooved, never turned – R12",
        "Grooved, turned twice – L12",
        "Sound – 70 holes",
        "Looked for and not found – a crack",
        "Turned by a quarter: R12 and L12 – grooved",
        "Replaced, Short barrel 2.1: R20 – split",
        "Replaced, Short barrel 2.7: L9 – split",
        "Replaced, Plover crown strip: R1 to R6 and L6 to L1 – split; a strip goes as a whole",
        "Worn and left: R10 – a groove alone takes no part out of a shared hole",
        "Turned: R12 – 2 fresh positions left",
        "Turned: L12 – on the last fresh position, to be replaced next",
        "1 × Plover full set €15.95",
        "The maker prints 28 lb as the limit of tension. Do not string above it.",
        "Grommets wear",
        "Remark Handle is loose",
    ):
        assert words in text
    assert [
        words for words in ("Hole by hole", "Verdicts", "Print ticket", "pick list") if words in text
    ] == []
    totals = page.locator(".rb-ticket table td").all_inner_texts()
    cents = [round(float(amount.removeprefix("€")) * 100) for amount in totals]
    assert sum(cents[:-1]) == cents[-1] > 0


def test_the_code_on_paper_opens_the_same_sheet(page: Page, browser: Browser, opened: Open) -> None:
    """The public address is that of the page; the rest leads to the same marks, here as there."""
    address = opened({**THREE_SPLIT, "L12": 2}, public=PUBLIC)
    page.get_by_role("button", name="Print ticket").click()
    (read,) = {text for paper in PAPERS for text in scanned(printed(page, paper))}
    there, _, code = read.partition("#")
    here, _, own = address.partition("#")
    assert (there, code) == (PUBLIC, own)
    with watched_page(browser) as (other, faults):
        other.goto(f"{here}#{code}")
        told = other.locator(".rb-ticket-told")
        expect(told).to_contain_text("Split")
        assert "Split – R5, R20 and L9" in told.inner_text()
        assert "Grooved, turned twice – L12" in told.inner_text()
    assert faults == []


def test_a_page_on_a_server_is_its_own_address(
    page: Page, browser: Browser, site_url: str, built_site: Path
) -> None:
    address = f"{site_url}/{PLOVER}{hash_of(browser, frame_of(built_site, 'plover-76'))}"
    page.add_init_script("window.print = () => {}")
    page.goto(address)
    page.get_by_role("button", name="Print ticket").click()
    data = printed(page, "A4")
    assert scanned(data) == [address]
    assert len(sheets(data)) == 1


def test_from_a_folder_the_code_is_left_out_and_its_text_can_be_typed(page: Page, opened: Open) -> None:
    address = opened()
    page.get_by_role("button", name="Print ticket").click()
    data = printed(page, "A4")
    (text,) = sheets(data)
    assert scanned(data) == []
    assert "No code to scan: this book was opened from a folder" in text
    assert "Page in the book: frames/plover-76/index.html" in text
    code = address.partition("#sheet=")[2]
    assert code in text.replace(" ", "")
    assert "file:" not in text


def test_a_cracked_frame_gets_a_ticket_that_says_why_it_ends(page: Page, opened: Open) -> None:
    checks = {**LOOKED_OVER, "crack": "found"}
    opened({"R5": "split", "R20": 1}, checks=checks, rest_is_sound=False)
    expect(page.get_by_role("button", name="Print pick list")).to_be_hidden()
    page.get_by_role("button", name="Print ticket").click()
    (text,) = sheets(printed(page, "A4"))
    for words in (
        "Ticket: not to be strung",
        "On the frame – a crack",
        "Split – R5",
        "Nothing – the frame is cracked",
        "A cracked frame is not strung",
    ):
        assert words in text
    assert [
        words for words in ("Price", "Replaced", "€", "limit of tension", "Filled") if words in text
    ] == []
    assert page.locator(".rb-ticket .rb-sign").count() == 2
    assert page.locator(".rb-ticket .rb-sign.is-leave").count() == 2


def test_nobody_looked_for_cracks(page: Page, opened: Open) -> None:
    opened(checks={})
    expect(page.locator(".rb-ticket-cautions")).to_contain_text("Nobody has looked for cracks yet")
    expect(page.locator(".rb-ticket-told")).to_contain_text("Not looked for – a crack")


NO_SUM = {
    "nothing entered": (None, "No price is printed: there is none for Plover crown strip"),
    "no rate": ({**SHOP, "terms": {}}, "No price was entered for this work."),
    "no price for the part": (
        {**SHOP, "list": {"currency": "EUR", "sold": [], "shelf": [ON_SHELF]}},
        "No price is printed: there is none for Plover crown strip",
    ),
}


@pytest.mark.parametrize("name", NO_SUM)
def test_without_prices_there_is_no_sum_and_it_is_said(page: Page, opened: Open, name: str) -> None:
    shop, says = NO_SUM[name]
    opened({"R5": "split"}, shop=shop)
    told = page.locator(".rb-ticket-told")
    expect(told).to_contain_text(says)
    expect(told.locator("table")).to_have_count(0)
    assert "€" not in told.inner_text()


def test_invented_prices_are_called_so(page: Page, opened: Open) -> None:
    opened(shop={**SHOP, "isExample": True})
    expect(page.locator(".rb-ticket-cautions")).to_contain_text("invented list of examples: this is no offer")


def test_what_could_not_be_mended_is_a_caution(page: Page, opened: Open) -> None:
    shop = {**SHOP, "list": {**SHOP["list"], "sold": SHOP["list"]["sold"][1:]}}
    opened(shop=shop)
    expect(page.locator(".rb-ticket-cautions")).to_contain_text(
        "Not mended, for there was no part: R1 to R6 and L6 to L1."
    )
    expect(page.locator(".rb-ticket-told")).not_to_contain_text("Plover crown strip")
    expect(page.locator(".rb-picks")).to_contain_text("no part to be had")


@pytest.mark.parametrize("slug", ["plover-76", "bittern-78", "sanderling-80", "sluice-66"])
def test_the_worst_that_can_be_marked_is_still_one_sheet(
    page: Page, browser: Browser, plain_site: Path, opened: Open, slug: str
) -> None:
    """No two neighbours alike, in the longest names, with every field filled, and a code to scan."""
    seen = ["split", 0, "missing", 1, "low", 2, "sound", 3, 9]
    holes = [hole["address"] for hole in frame_of(plain_site, slug)["holes"]]
    marks = {address: seen[at * 4 % len(seen)] for at, address in enumerate(holes)}
    opened(
        marks,
        slug=slug,
        public=PUBLIC,
        way="against the clock",
        checks=dict.fromkeys(("edge", "crushed"), "found"),
    )
    page.get_by_role("textbox", name="Player").fill("Wojciech-Åsmund Øvrebø-Đurđević 桜井 さくら Αναξαγόρας")
    page.get_by_role("textbox", name="Remark").fill("ö" * 240)
    page.get_by_role("button", name="Print ticket").click()
    for paper in PAPERS:
        data = printed(page, paper)
        (text,) = sheets(data)
        assert len(scanned(data)) == 1
        assert "Øvrebø" in text
        assert "Grommets wear" in text


@pytest.mark.parametrize(
    "name", ["Łódka & Søn „Żaba“", "さくら 桜井", "Αναξαγόρας", "אבי בן־דוד", "<b>Ansa</b>"]
)
def test_names_in_every_script_are_text(page: Page, opened: Open, name: str) -> None:
    opened()
    page.get_by_role("textbox", name="Player").fill(name)
    expect(page.locator(".rb-ticket-typed dd").first).to_have_text(name)


def test_what_is_typed_is_kept_nowhere(page: Page, opened: Open) -> None:
    opened()
    page.get_by_role("textbox", name="Player").fill("Ansa Brook")
    expect(page.locator(".rb-ticket")).to_contain_text("Ansa Brook")
    kept = page.evaluate(
        """JSON.stringify([{ ...localStorage }, { ...sessionStorage }, document.cookie, location.href,
        history.state])"""
    )
    assert "Ansa" not in kept
    page.reload()
    expect(page.locator(".rb-ticket h4")).to_be_visible()
    expect(page.get_by_role("textbox", name="Player")).to_have_value("")
    expect(page.locator(".rb-ticket")).not_to_contain_text("Ansa")


def test_the_pick_list_is_in_the_order_of_the_walk(page: Page, opened: Open) -> None:
    opened(
        {
            "R12": "split",
            "R13": "split",
            "R14": "split",
            "L9": "split",
            "R37": "missing",
            "L20": 0,
            "R5": "low",
        }
    )
    page.get_by_role("button", name="Print pick list").click()
    (text,) = sheets(printed(page, "A4"))
    order = [
        "R12 to R14 Replace: 3 × Short barrel 2.1",
        "R37 and R38 Replace: Even twin 2.1",
        "L20 Replace: Short barrel 2.1",
        "L9 Replace: Short barrel 2.7",
        "R1 to R6 and L6 to L1 Replace: Plover crown strip",
    ]
    assert [text.index(words) for words in order] == sorted(text.index(words) for words in order)
    assert "about 1.7 mm (over 1.3, under 2.05)" in text
    assert "Cover your eyes" in text
    assert [words for words in ("Ticket", "Hole by hole", "Price") if words in text] == []


def test_what_is_cut_is_on_the_pick_list(page: Page) -> None:
    look_inside(page, {"sheet_picks_view": ["fillPicks"], "sheet_picks": ["pickList"]})
    frame = small_frame()
    frame["serves"][0][1] |= {"pin": "1.7 mm", "trim": "Trim 2.5 mm"}
    said = page.evaluate(
        """([frame, verdicts, parts]) => {
          const paper = document.body.appendChild(document.createElement("article"));
          inside.fillPicks(paper, frame, inside.pickList(frame, verdicts, parts), "today");
          return paper.innerText.replace(/\\s+/g, " ");
        }""",
        [frame, [{"piece": 2, "act": "replace"}, {"piece": 3, "act": "turn", "quarters": 1}], [ON_BENCH]],
    )
    assert "R4 Replace: Post B, a substitute, may be loose 1.7 mm Trim 2.5 mm" in said
    assert "R5 Turn by a quarter" in said
    assert "away from your hand, never into the rim" in said


def test_the_browsers_own_menu_prints_the_page_with_the_ticket_on_a_sheet_of_its_own(
    page: Page, opened: Open
) -> None:
    opened()
    page.get_by_role("button", name="Print ticket").click()
    assert len(sheets(printed(page, "A4"))) == 1
    page.keyboard.press("Control")
    whole = sheets(printed(page, "A4"))
    (ticket,) = [text for text in whole if "Replaced, Short barrel" in text]
    assert "Grommets wear" in ticket
    assert "Hole by hole" not in ticket
    assert any("Hole by hole" in text for text in whole)
    assert [
        words for words in ("Print ticket", "Copy address", "Open a sheet by") if words in " ".join(whole)
    ] == []


def test_the_printer_is_asked_once_and_only_a_hand_ends_it(page: Page, opened: Open) -> None:
    """A phone goes on with the page while it prints: a finger that is lifted must not end the choice."""
    opened()
    page.get_by_role("button", name="Print ticket").click()
    assert page.evaluate("window.timesPrinted") == 1
    page.evaluate("dispatchEvent(new PointerEvent('pointermove', { pointerType: 'touch' }))")
    assert page.locator("html").get_attribute("data-rb-print") == "ticket"
    page.evaluate("dispatchEvent(new PointerEvent('pointermove', { pointerType: 'mouse' }))")
    assert page.locator("html").get_attribute("data-rb-print") is None


def test_a_blank_sheet_prints_nothing_of_a_ticket(page: Page, plain_site: Path) -> None:
    page.goto((plain_site / PLOVER).as_uri())
    before = sheets(printed(page, "A4"))
    page.get_by_role("button", name="Open the bench sheet").click()
    expect(page.locator(TICKET)).to_contain_text("Mark what you see first")
    expect(page.get_by_role("button", name="Print ticket")).to_be_hidden()
    after = sheets(printed(page, "A4"))
    assert not any("Ticket" in text for text in before + after)


def test_little_ink(page: Page, opened: Open) -> None:
    page.emulate_media(color_scheme="dark")
    opened({**THREE_SPLIT, "L20": "missing"}, public=PUBLIC)
    page.get_by_role("button", name="Print ticket").click()
    assert ink(printed(page, "A4")) < 0.06


def test_copying_the_address(page: Page, opened: Open) -> None:
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    address = opened(public=PUBLIC)
    page.get_by_role("button", name="Copy address to send").click()
    expect(page.locator(TICKET)).to_contain_text("The address is copied.")
    assert page.evaluate("navigator.clipboard.readText()") == f"{PUBLIC}#{address.partition('#')[2]}"


def test_copying_from_a_folder_gives_the_code(page: Page, opened: Open) -> None:
    page.context.grant_permissions(["clipboard-read", "clipboard-write"])
    address = opened()
    page.get_by_role("button", name="Copy address to send").click()
    expect(page.locator(TICKET)).to_contain_text("the code of the sheet is copied")
    assert page.evaluate("navigator.clipboard.readText()") == address.partition("#sheet=")[2]


def test_where_nothing_may_be_copied_it_can_be_copied_by_hand(page: Page, opened: Open) -> None:
    page.add_init_script(
        """Object.defineProperty(navigator, "clipboard", { value: undefined });
        document.execCommand = () => false;"""
    )
    address = opened()
    button = page.get_by_role("button", name="Copy address to send")
    button.click()
    expect(page.get_by_text("Copy this by hand")).to_contain_text(address.partition("#sheet=")[2])
    expect(button).to_be_focused()


def test_a_code_that_is_typed_back_opens_the_sheet(page: Page, browser: Browser, plain_site: Path) -> None:
    """Typed from paper, where it is broken into lines, into the blank sheet of another device."""
    code = hash_of(browser, frame_of(plain_site, "plover-76")).removeprefix("#sheet=")
    page.goto((plain_site / PLOVER).as_uri())
    page.get_by_role("button", name="Open the bench sheet").click()
    field = page.get_by_label("Open a sheet by its address or its code")
    field.fill(f"{code[:20]} {code[20:].upper()}")
    field.press("Enter")
    expect(page.locator(".rb-ticket-told")).to_contain_text("R5, R20 and L9")


@pytest.mark.parametrize(
    ("pasted", "says"),
    [
        ("", "No sheet was found in this."),
        ("hello", "No sheet was found in this."),
        ("https://rimbook.example/frames/plover-76/index.html", "No sheet was found in this."),
        ("7.aaaaa.f111.u.zaa", "this page reads edition 1"),
        ("1.aaaaa", "cut short"),
        (
            "https://rimbook.example/frames/weir-72/#sheet=1.aaaaa.f111.u.zaa",
            "That sheet is for another frame",
        ),
    ],
)
def test_what_is_no_sheet_is_told_apart(page: Page, opened: Open, pasted: str, says: str) -> None:
    address = opened()
    page.get_by_label("Open a sheet by its address or its code").fill(pasted)
    page.get_by_role("button", name="Open", exact=True).click()
    expect(page.locator(".rb-ticket-paste [role=status]")).to_contain_text(says)
    assert page.url == address


def test_a_sheet_for_another_frame_leads_there(
    page: Page, browser: Browser, plain_site: Path, opened: Open
) -> None:
    opened()
    theirs = hash_of(browser, frame_of(plain_site, "weir-72"), {"R3": "split"})
    pasted = f"https://rimbook.example/frames/weir-72/index.html{theirs}"
    page.get_by_label("Open a sheet by its address or its code").fill(pasted)
    page.get_by_role("button", name="Open", exact=True).click()
    page.get_by_role("link", name="open it on the page of weir-72").click()
    expect(page.locator(".rb-ticket h4")).to_have_text("Weir 72 (2022)")
    expect(page.locator(".rb-ticket-told")).to_contain_text("Split – R3")


def test_by_keyboard_alone(page: Page, opened: Open) -> None:
    opened()
    page.get_by_role("textbox", name="Player").focus()
    page.keyboard.type("Ansa Brook")
    for _ in range(3):
        page.keyboard.press("Tab")
    expect(page.get_by_role("button", name="Print ticket")).to_be_focused()
    page.keyboard.press("Enter")
    assert page.evaluate("window.timesPrinted") == 1
    assert "Player Ansa Brook" in sheets(printed(page, "A4"))[0]


@pytest.mark.parametrize("page", [360, 1440], indirect=True)
def test_everybody_can_use_it(page: Page, opened: Open) -> None:
    page.emulate_media(color_scheme="light", reduced_motion="reduce")
    opened({**THREE_SPLIT, "R12": 0}, public=PUBLIC)
    page.set_viewport_size({"width": page.evaluate("innerWidth"), "height": 12_000})
    assert violations(page) == []
    page.emulate_media(color_scheme="dark")
    assert violations(page, COLOUR_RULES) == []
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    small = page.evaluate(
        f"""() => [...document.querySelectorAll("{TICKET} :is(button, input)")]
        .map((one) => one.getBoundingClientRect())
        .filter(({{ width, height }}) => Math.min(width, height) < 44).length"""
    )
    assert small == 0


def test_the_drawing_of_the_ticket_is_a_picture_and_names_nothing_twice(page: Page, opened: Open) -> None:
    opened()
    assert page.locator(".rb-ticket .drawing [tabindex], .rb-ticket [data-address]").count() == 0
    assert page.locator(".rb-ticket .rb-sign--split").count() == 3
    twice = page.evaluate(
        """() => { const all = [...document.querySelectorAll("[id]")].map((one) => one.id);
        return all.filter((id, at) => all.indexOf(id) !== at); }"""
    )
    assert twice == []


def told(page: Page, marks: Any, minutes: int) -> Any:
    """A ticket of the small frame, in words; a number is grooved with so many quarter turns."""
    look_inside(
        page,
        {
            "sheet_ticket": ["ticketOf"],
            "sheet_job": ["doing", "jobOf", "USUAL_CHOICE"],
            "sheet_state": ["EMPTY", "mark", "work"],
            "shop": ["NO_SHOP"],
        },
    )
    return page.evaluate(
        """([frame, marks, minutes]) => {
          let sheet = inside.work(inside.EMPTY, "against the clock", minutes);
          for (const [address, what] of Object.entries(marks)) {
            const isGrooved = typeof what === "number";
            const own = isGrooved ? { seen: "grooved", turns: what } : { seen: what, turns: 0 };
            sheet = inside.mark(sheet, [address], own);
          }
          const doing = inside.doing(frame, sheet, inside.NO_SHOP, inside.USUAL_CHOICE);
          const job = inside.jobOf(frame, sheet, inside.NO_SHOP, inside.USUAL_CHOICE, doing, null);
          const facts = { maker: "", limit: "", isExample: false };
          return inside.ticketOf(frame, sheet, job, facts);
        }""",
        [small_frame(), marks, minutes],
    )


def lines(all_told: Any) -> list[str]:
    return [f"{one['what']} – {one['why']}" for one in all_told]


def test_what_is_not_known_is_said_and_not_guessed(page: Page) -> None:
    ticket = told(page, {"L4": 0, "R4": 0}, 60)
    assert lines(ticket["done"]) == ["Turned by a quarter: R4 and L4 – grooved"]
    assert lines(ticket["watch"]) == [
        "Turned: R4 – 2 fresh positions left",
        "Turned: L4 – how many fresh positions are left is unknown",
    ]
    assert "Look for the limit of tension" in ticket["cautions"][1]


def test_what_there_is_no_time_for_is_put_off(page: Page) -> None:
    ticket = told(page, {"R4": 0, "R5": 3, "L3": "split"}, 0)
    assert lines(ticket["done"]) == ["Replaced, Wide A: L3 – split"]
    assert lines(ticket["waits"]) == [
        "Turn by a quarter: R4 – there was no time for it",
        "Replace: R5 – there was no time for it",
    ]
    assert ticket["watch"] == []


def test_marks_that_found_no_hole_are_counted(page: Page, browser: Browser, plain_site: Path) -> None:
    other = frame_of(plain_site, "plover-76")
    other["holes"][4]["passes"] = ["m99"]
    page.goto((plain_site / PLOVER).as_uri() + hash_of(browser, other, rest_is_sound=False))
    told_here = page.locator(".rb-ticket-told")
    expect(told_here).to_contain_text("Not placed – 1 mark made on another version of the map")
    expect(told_here).to_contain_text("Split – R20 and L9")
