"""The whole way from opening a page to the printed ticket, as somebody goes it who never saw it before.

Three split grommets, one of them in a strip that is sold only in a set; no network.
"""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest
from playwright.sync_api import Browser, ConsoleMessage, Page, expect

from tests.browser.offline_server import served
from tests.browser.paper import PAPERS, printed, scanned, sheets

SPLIT = ("R5", "R20", "L9")
PLOVER = "frames/plover-76/index.html"
NETWORK_IS_GONE = ("Failed to load resource", "net::ERR", "Failed to update a ServiceWorker")
QUIET_PRINTER = "window.print = () => {};"

TICKET = (
    "Plover 76 (2024)",
    "Split – R5, R20 and L9",
    "Sound – 73 holes",
    "Looked for and not found – a crack",
    "Replaced, Short barrel 2.1: R20 – split",
    "Replaced, Short barrel 2.7: L9 – split",
    "Replaced, Plover crown strip: R1 to R6 and L6 to L1 – split; a strip goes as a whole",
    "Plover full set",
    "Total",
    "Do not string above it.",
)


@contextmanager
def reader(browser: Browser, *, touch: bool) -> Iterator[Page]:
    """A page in a hand or on a desk, which may keep the site. Only the missing network may fail."""
    faults: list[str] = []
    width, height = (360, 780) if touch else (1280, 800)
    context = browser.new_context(
        viewport={"width": width, "height": height}, has_touch=touch, is_mobile=touch, service_workers="allow"
    )

    def on_console(message: ConsoleMessage) -> None:
        if message.type == "error":
            faults.append(message.text)

    context.on("console", on_console)
    context.on("weberror", lambda error: faults.append(str(error.error)))
    context.add_init_script(QUIET_PRINTER)
    try:
        yield context.new_page()
    finally:
        context.close()
    assert [fault for fault in faults if not any(words in fault for words in NETWORK_IS_GONE)] == []


@pytest.fixture(params=["folder", "server"])
def root(request: pytest.FixtureRequest, plain_site: Path) -> Iterator[str]:
    """The site from a folder, and from a server that is gone after the first visit."""
    if request.param == "folder":
        yield plain_site.as_uri()
        return
    with served(plain_site) as server:
        yield server.url


def without_network(page: Page, root: str) -> None:
    """A first visit; then the network goes."""
    if root.startswith("http"):
        page.goto(f"{root}/offline/index.html")
        expect(page.locator("[data-rb-offline]")).to_contain_text("Kept for offline use: all", timeout=60_000)
    page.context.set_offline(True)


def is_on_one_sheet(page: Page, root: str) -> None:
    """Read on the page first, so that a fault tells whether the ticket or its print lacks something."""
    ticket = page.get_by_role("article", name="Ticket for the player")
    for words in TICKET:
        expect(ticket).to_contain_text(words)
    for paper in PAPERS:
        data = printed(page, paper)
        (text,) = sheets(data)
        assert [words for words in TICKET if words not in text] == [], text
        assert scanned(data) == ([page.url] if root.startswith("http") else [])


def test_by_touch_at_the_size_of_a_phone(browser: Browser, root: str) -> None:
    with reader(browser, touch=True) as page:
        without_network(page, root)
        page.goto(f"{root}/prices/index.html")
        page.get_by_role("button", name="Load an invented example list").tap()
        page.goto(f"{root}/finder/index.html")
        page.get_by_label("Frame, maker, bore, part or word").fill("plover 76")
        page.get_by_role("link", name="Plover 76").first.tap()
        page.get_by_role("button", name="Open the bench sheet").tap()
        page.get_by_role("button", name="None of the three").tap()
        tools = page.get_by_role("group", name="Marking tools")
        tools.get_by_role("button", name="split").tap()
        for hole in SPLIT:
            _tap_hole(page, hole)
        tools.get_by_role("button", name="More").tap()
        tools.get_by_role("button", name="All others are sound").tap()
        verdicts = page.locator("[data-rb-sheet-part='verdicts']")
        for words in ("R20", "Split at R20", "Split at R5", "one broken place takes the whole strip"):
            expect(verdicts).to_contain_text(words)
        buying = page.get_by_role("region", name="What to buy", exact=True)
        expect(buying).to_contain_text("Plover full set")
        total = page.get_by_role("region", name="Quote", exact=True).get_by_role("status")
        expect(total).to_contain_text("Total: ")
        sum_said = total.inner_text().removeprefix("Total: ")
        page.get_by_role("textbox", name="Player").fill("Ansa Brook")
        page.get_by_role("button", name="Print ticket").tap()
        is_on_one_sheet(page, root)
        (text,) = sheets(printed(page, "A4"))
        assert f"Total {sum_said}" in text
        assert "Ansa Brook" in text
        assert "invented list of examples" in text
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_by_keyboard_alone(browser: Browser, root: str) -> None:
    """Nothing is focused but by Tab, and nothing pressed but by keys."""
    with reader(browser, touch=False) as page:
        without_network(page, root)
        page.goto(f"{root}/prices/index.html")
        _press(page, "Load an invented example list")
        page.goto(f"{root}/{PLOVER}")
        _press(page, "Open the bench sheet")
        expect(page.get_by_role("button", name="Close the bench sheet")).to_be_focused()
        _press(page, "None of the three")
        _tab_to(page, "document.activeElement.closest('[data-rb-drawing=face]') && hole")
        for hole in SPLIT:
            _walk_to(page, hole)
            page.keyboard.press("s")
        _press(page, "More")
        _press(page, "All others are sound")
        expect(page.get_by_role("region", name="What to buy", exact=True)).to_contain_text("Plover full set")
        _press(page, "Print ticket")
        is_on_one_sheet(page, root)


def _tap_hole(page: Page, hole: str) -> None:
    """Brings a hole of the face drawing to the middle of the glass, clear of the tools, and taps it."""
    page.locator(f"#face-{hole}").evaluate("(hole) => hole.scrollIntoView({ block: 'center' })")
    page.locator(f"#face-{hole}").tap()


def _tab_to(page: Page, is_there: str, most: int = 300) -> None:
    script = f"""() => {{
      const hole = document.activeElement.getAttribute("data-address");
      const words = document.activeElement.textContent.trim();
      return Boolean({is_there});
    }}"""
    for _ in range(most):
        page.keyboard.press("Tab")
        if page.evaluate(script):
            return
    pytest.fail(f"{most} steps lead nowhere: {is_there}")


def _press(page: Page, words: str) -> None:
    _tab_to(page, f"document.activeElement.matches('button') && words === '{words}'")
    page.keyboard.press("Enter")


def _walk_to(page: Page, hole: str) -> None:
    """Along the rim with the arrow keys."""
    for _ in range(100):
        if page.evaluate("document.activeElement.getAttribute('data-address')") == hole:
            return
        page.keyboard.press("ArrowRight")
    pytest.fail(f"the keys do not lead to {hole}")
