"""From a server: after the first visit the network may go, and an update fetches only what changed."""

from __future__ import annotations

import json
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from rimbook.browser.bundle import script_of
from rimbook.hosts import offline
from rimbook.site import offline_list
from tests.browser.offline_server import Served, change, served
from tests.watch import watched_page

ALL = "Kept for offline use: all "
NETWORK_IS_GONE = ("Failed to load resource", "net::ERR", "Failed to update a ServiceWorker")

COUNT = (
    "caches.keys().then((all) => caches.open(all[0])).then((one) => one.keys()).then((keys) => keys.length)"
)


@pytest.fixture
def site(plain_site: Path, tmp_path: Path) -> Path:
    """The demo as plain files, to be changed."""
    return Path(shutil.copytree(plain_site, tmp_path / "site"))


@pytest.fixture
def server(site: Path) -> Iterator[Served]:
    with served(site) as state:
        yield state


@pytest.fixture
def reader(browser: Browser) -> Iterator[Page]:
    """A page that may have a service worker. Nothing may fail but what has no network."""
    with watched_page(browser, 360, workers="allow") as (page, faults):
        yield page
    assert [fault for fault in faults if not any(words in fault for words in NETWORK_IS_GONE)] == []


def keep_all(page: Page, server: Served) -> None:
    page.goto(f"{server.url}/offline/index.html")
    expect(page.locator("[data-rb-offline]")).to_contain_text(ALL, timeout=30_000)


def test_a_book_in_a_folder_shows_no_bar_and_no_buttons(page: Page, built_site: Path) -> None:
    page.goto((built_site / "offline/index.html").as_uri())
    place = page.locator("[data-rb-offline=all]")
    expect(place).to_contain_text("Opened from a folder")
    expect(place.locator("progress")).to_be_hidden()
    assert place.locator("button:visible").count() == 0


def test_after_the_first_visit_everything_works_without_the_network(
    reader: Page, server: Served, site: Path
) -> None:
    reader.goto(f"{server.url}/index.html")
    expect(reader.locator("[data-rb-offline]")).to_contain_text(ALL, timeout=30_000)
    server.is_down = True
    reader.get_by_role("link", name="Find a frame").first.click()
    reader.get_by_label("Frame, maker, bore, part or word").fill("plover 76")
    reader.get_by_role("link", name="Plover 76").first.click()
    expect(reader.locator("tr#R9 td").nth(1)).to_have_text("2.7")
    reader.locator("#regrommet th a").first.click()
    expect(reader.locator("h1")).to_be_visible()
    reader.goto(f"{server.url}/frames/plover-76/index.html#R12")
    expect(reader.locator("tr#R12")).to_be_in_viewport()
    reader.goto(f"{server.url}/frames/")
    expect(reader.locator("h1")).to_have_text("All frames")
    reader.goto(f"{server.url}/frames/plover-76")
    expect(reader).to_have_url(f"{server.url}/frames/plover-76/")
    frame = reader.evaluate("fetch('../../data/frames/plover-76.json').then((answer) => answer.json())")
    assert frame == json.loads((site / "data/frames/plover-76.json").read_text("utf-8"))


def test_each_file_is_fetched_once_and_the_list_has_them_all(
    reader: Page, server: Served, site: Path
) -> None:
    keep_all(reader, server)
    names = {file.relative_to(site).as_posix() for file in site.rglob("*") if file.is_file()}
    listed = {name for name in names if not name.startswith("offline/list") and name != "worker.js"}
    assert set(server.files()) - {"favicon.ico"} == listed
    expect(reader.locator("[data-rb-offline]")).to_contain_text(f"{len(listed)} files")
    shown = ("offline/index.html", "assets/rimbook.css", "assets/plain.css", "assets/scripts/page.js")
    assert [path for path in listed if server.files().count(path) > 1 + (path in shown)] == []


def test_an_update_fetches_only_what_changed_and_an_open_page_stays_as_it_is(
    reader: Page, server: Served, site: Path
) -> None:
    keep_all(reader, server)
    reader.evaluate("localStorage.setItem('rimbook.sheet', 'a mark')")
    server.asked.clear()
    change(site, "frames/plover-76/index.html", "Hole by hole", "Hole after hole")
    reader.get_by_role("button", name="Look for a new edition").click()
    expect(reader.get_by_text("A newer edition is kept")).to_be_visible()
    assert server.files() == ["frames/plover-76/index.html"]
    assert reader.evaluate("fetch('../frames/plover-76/index.html').then((one) => one.text())").count(
        "Hole by hole"
    )
    server.is_down = True
    reader.goto(f"{server.url}/frames/plover-76/index.html")
    expect(reader.get_by_role("heading", name="Hole after hole")).to_be_visible()
    assert reader.evaluate("localStorage.getItem('rimbook.sheet')") == "a mark"


def test_what_no_open_page_needs_any_more_goes(reader: Page, server: Served, site: Path) -> None:
    keep_all(reader, server)
    before = kept_count(reader)
    change(site, "frames/plover-76/index.html", "Hole by hole", "Hole after hole")
    reader.get_by_role("button", name="Look for a new edition").click()
    expect(reader.get_by_text("A newer edition is kept")).to_be_visible()
    assert kept_count(reader) > before
    reader.goto(f"{server.url}/index.html")
    reader.wait_for_function(f"() => {COUNT}.then((count) => count === {before})")


def test_a_half_kept_book_goes_on_where_it_stopped(reader: Page, server: Served) -> None:
    server.last = 120
    reader.goto(f"{server.url}/offline/index.html")
    expect(reader.get_by_text("The network is gone: the rest follows")).to_be_visible(timeout=30_000)
    had = set(server.files())
    assert len(had) > 80
    server.last, server.is_down = None, False
    server.asked.clear()
    reader.evaluate("dispatchEvent(new Event('online'))")
    expect(reader.locator("[data-rb-offline]")).to_contain_text(ALL, timeout=30_000)
    assert had & set(server.files()) == set()


def test_a_page_that_is_not_kept_says_so_and_leads_back(
    reader: Page, server: Served, site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    large_book(site, monkeypatch)
    reader.goto(f"{server.url}/offline/index.html")
    expect(reader.locator("[data-rb-offline]")).to_contain_text("and the pages you open")
    count = kept_count(reader)
    reader.goto(f"{server.url}/frames/index.html")
    reader.goto(f"{server.url}/frames/plover-76/index.html")
    reader.wait_for_function(f"() => {COUNT}.then((count) => count >= {count} + 2)")
    server.is_down = True
    reader.goto(f"{server.url}/frames/index.html")
    expect(reader.locator("h1")).to_have_text("All frames")
    reader.goto(f"{server.url}/frames/plover-76/index.html")
    expect(reader.locator("tr#R9 td").nth(1)).to_have_text("2.7")
    reader.get_by_role("link", name="Saltmarsh Works").first.click()
    expect(reader.get_by_role("heading")).to_have_text("This page is not kept on this device")
    reader.get_by_role("link", name="Back to where you were").click()
    expect(reader.locator("h1")).to_contain_text("Plover 76")
    reader.go_back()
    server.is_down = False
    reader.get_by_role("link", name="Try again").click()
    expect(reader.locator("h1")).to_have_text("Saltmarsh Works")


def test_a_large_book_is_kept_when_its_reader_asks(
    reader: Page, server: Served, site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    large_book(site, monkeypatch)
    reader.goto(f"{server.url}/offline/index.html")
    place = reader.locator("[data-rb-offline]")
    expect(place).to_contain_text("and the pages you open")
    assert len(set(server.files())) < 40
    reader.get_by_role("button", name="Keep the whole book (").click()
    expect(place).to_contain_text(ALL, timeout=30_000)


def test_what_is_kept_can_be_forgotten_and_asked_for_again(reader: Page, server: Served) -> None:
    keep_all(reader, server)
    reader.evaluate("localStorage.setItem('rimbook.sheet', 'a mark')")
    reader.get_by_role("button", name="Forget what is kept").click()
    place = reader.locator("[data-rb-offline]")
    expect(place).to_contain_text("Nothing is kept for offline use, as you asked.")
    reader.wait_for_function("() => caches.keys().then((all) => all.length === 0)")
    reader.reload()
    expect(place).to_contain_text("as you asked")
    assert reader.evaluate("navigator.serviceWorker.getRegistration().then((one) => one === undefined)")
    assert reader.evaluate("localStorage.getItem('rimbook.sheet')") == "a mark"
    reader.get_by_role("button", name="Keep this book for offline use").click()
    expect(place).to_contain_text(ALL, timeout=30_000)


def test_below_a_path_it_keeps_to_its_own(reader: Page, site: Path) -> None:
    with served(site, "/clubs/book/") as server:
        keep_all(reader, server)
        assert reader.evaluate("navigator.serviceWorker.ready.then((one) => one.scope)") == f"{server.url}/"
        server.is_down = True
        reader.goto(f"{server.url}/frames/plover-76/index.html")
        expect(reader.locator("tr#R9 td").nth(1)).to_have_text("2.7")


def test_a_full_device_is_said_and_breaks_nothing(reader: Page, server: Served, site: Path) -> None:
    session = reader.context.new_cdp_session(reader)
    session.send("Storage.overrideQuotaForOrigin", {"origin": server.url, "quotaSize": 2_500_000})
    reader.goto(f"{server.url}/offline/index.html")
    expect(reader.get_by_text("This device gives no more room")).to_be_visible(timeout=30_000)
    reader.goto(f"{server.url}/frames/weir-72/index.html")
    expect(reader.locator("h1")).to_contain_text("Weir 72")
    server.is_down = True
    reader.goto(f"{server.url}/index.html")
    expect(reader.locator("h1")).to_be_visible()


def test_a_browser_that_keeps_nothing_says_so(reader: Page, server: Served) -> None:
    reader.add_init_script(
        "navigator.serviceWorker.register = () => Promise.reject(new DOMException('no', 'SecurityError'))"
    )
    reader.goto(f"{server.url}/offline/index.html")
    expect(reader.get_by_text("This browser refuses to keep pages")).to_be_visible()
    expect(reader.locator("[data-rb-offline] button")).to_have_count(3)
    assert reader.locator("[data-rb-offline] button:visible").count() == 0


def test_a_newer_page_is_not_joined_with_older_scripts(
    reader: Page, server: Served, site: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A page that is not kept comes from the network, and if it is newer, so does all that it loads."""
    large_book(site, monkeypatch)
    reader.goto(f"{server.url}/offline/index.html")
    expect(reader.locator("[data-rb-offline]")).to_contain_text("and the pages you open")
    script = site / "assets/scripts/frame.js"
    script.write_text(script.read_text("utf-8") + "document.body.dataset.edition = 'new';\n", "utf-8")
    change(site, "frames/plover-76/index.html", "Hole by hole", "Hole after hole")
    reader.goto(f"{server.url}/frames/plover-76/index.html")
    expect(reader.get_by_role("heading", name="Hole after hole")).to_be_visible()
    expect(reader.locator("body")).to_have_attribute("data-edition", "new")


def test_a_server_that_changes_files_on_their_way_is_taken_as_it_is(
    reader: Page, server: Served, site: Path
) -> None:
    file = site / "frames/weir-72/index.html"
    file.write_text(file.read_text("utf-8").replace("</body>", "<!-- added on the way --></body>"), "utf-8")
    keep_all(reader, server)
    server.is_down = True
    reader.goto(f"{server.url}/frames/weir-72/index.html")
    expect(reader.locator("h1")).to_contain_text("Weir 72")


def test_a_piece_of_a_kept_file_is_given(reader: Page, server: Served, site: Path) -> None:
    keep_all(reader, server)
    server.is_down = True
    whole = (site / "data/frames.csv").read_bytes()
    for asked, start, end in (("bytes=5-14", 5, 15), ("bytes=-7", len(whole) - 7, len(whole))):
        found = reader.evaluate(
            """(range) => fetch("../data/frames.csv", { headers: { Range: range } })
            .then(async (one) => [one.status, one.headers.get("Content-Range"), await one.text()])""",
            asked,
        )
        assert found == [206, f"bytes {start}-{end - 1}/{len(whole)}", whole[start:end].decode()]


def test_a_site_that_is_being_written_removes_an_earlier_worker(
    reader: Page, server: Served, site: Path
) -> None:
    keep_all(reader, server)
    offline.write_farewell(site)
    page = site / "index.html"
    page.write_text(page.read_text("utf-8").replace("All pages", "Being written"), "utf-8")
    reader.goto(f"{server.url}/index.html")
    expect(reader).to_have_title("Being written – Rimbook")
    assert script_of("offline_farewell") != script_of("offline_worker")


def kept_count(page: Page) -> int:
    count: int = page.evaluate(COUNT)
    return count


def large_book(site: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Let the demo be one of those books that are kept only when somebody asks."""
    monkeypatch.setattr(offline_list, "ASK_OVER_FILES", 10)
    offline.write_list(site, offline.all_files(site, {}))
