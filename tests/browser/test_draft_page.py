"""The drafting page: what each part of it does, and what it does not let go wrong."""

from __future__ import annotations

import json
import re
from io import StringIO
from pathlib import Path
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import Browser, Page, expect
from ruamel.yaml import YAML

from rimbook.hosts.policy import META
from rimbook.site.draft_page import SITE_FILE
from tests.browser.draft_hand import begin, go, here, mark, press, rows, said, sum_of, to, written, yaml_text
from tests.browser.test_access import COLOUR_RULES, violations
from tests.watch import watched_page

FORGE = {"new": "https://forge.example/a/book/new/main", "folder": "frames/maps"}


@pytest.fixture(scope="session")
def draft(plain_site: Path) -> str:
    """The page in its folder, where a browser allows least."""
    return (plain_site / "draft/index.html").as_uri()


@pytest.fixture
def with_forge(page: Page, plain_site: Path, draft: str) -> str:
    """The same for a book that a forge holds."""
    script = (plain_site / SITE_FILE).read_text("utf-8")
    assert '"forge":null' in script
    script = script.replace('"forge":null', f'"forge":{json.dumps(FORGE)}')
    script = script.replace('"edit":null', '"edit":"https://forge.example/a/book/edit/main/"')
    page.route(f"**/{SITE_FILE}", lambda route: route.fulfill(body=script, content_type="text/javascript"))
    return draft


def test_a_problem_leads_to_its_hole_or_its_field(page: Page, draft: str) -> None:
    begin(page, draft)
    expect(sum_of(page)).to_have_text("Nothing wrong")
    to(page, 12)
    page.keyboard.type("c9")
    expect(sum_of(page)).to_contain_text("error")
    expect(here(page)).to_contain_text("!")
    to(page, 1)
    page.locator(".rb-draft-problem", has_text="c9").first.click()
    expect(rows(page)).to_be_focused()
    page.keyboard.press("Control+Z")
    expect(sum_of(page)).to_have_text("Nothing wrong")
    page.get_by_label("Year").fill("soon")
    page.locator(".rb-draft-problem", has_text="year").click()
    expect(page.get_by_label("Year")).to_be_focused()
    expect(page.get_by_label("Year")).to_have_attribute("aria-invalid", "true")
    expect(page.get_by_label("Year")).to_have_accessible_description(re.compile("year cannot be"))


def test_the_drawing_follows_each_key(page: Page, draft: str) -> None:
    begin(page, draft)
    drawing = page.locator(".rb-draft-drawing")
    holes = drawing.locator("[data-address]")
    expect(holes).to_have_count(76)
    expect(drawing.locator(".rim-mark-unknown")).to_have_count(76)
    page.keyboard.press("b")
    page.keyboard.press("2")
    expect(drawing.locator(".rim-mark-unknown")).to_have_count(74)
    page.keyboard.press("w")
    page.keyboard.press("x")
    expect(drawing.locator(".rim-mark-undrilled")).to_have_count(2)
    page.keyboard.press("n")
    expect(holes).to_have_count(78)
    page.keyboard.press("t")
    expect(drawing.locator(".knot")).to_have_count(2)


def test_a_tap_on_the_drawing_takes_the_hole(page: Page, draft: str) -> None:
    begin(page, draft)
    mark = page.locator(".rb-draft-drawing [data-address='L20']")
    mark.click(force=True)
    expect(here(page).locator(".rb-draft-number")).to_have_text("20")
    expect(rows(page)).to_be_focused()
    page.get_by_label("The left side differs").check()
    mark.click(force=True)
    expect(here(page).locator(".rb-draft-number")).to_have_text("L20")


def test_a_left_side_of_its_own(page: Page, draft: str) -> None:
    begin(page, draft)
    walk = written(page)["walk"]
    page.get_by_label("The left side differs").check()
    rows(page).focus()
    to(page, 9)
    page.keyboard.press("s")
    found = written(page)
    assert found["walk"] == walk
    assert len(found["left"]["walk"].split()) == 39
    page.get_by_label("The left side differs").uncheck()
    assert "left" not in written(page)


def test_measured_places_are_typed_along_the_rim(page: Page, draft: str) -> None:
    begin(page, draft)
    page.keyboard.press("p")
    for place in ("4.1", "12,3", "u", "29"):
        page.keyboard.type(place)
        if place != "u":
            page.keyboard.press("Enter")
    assert written(page)["places_mm"][:5] == [4.1, 12.3, "unknown", 29, "unknown"]
    expect(here(page).locator(".rb-draft-number")).to_have_text("5")


def test_all_is_undone_and_done_again(page: Page, draft: str) -> None:
    begin(page, draft)
    texts = [yaml_text(page)]
    for keys in ("n", "d", "b 1 1 Shift+ArrowDown 2", "w t", "j"):
        for key in keys.split():
            page.keyboard.press(key)
            if yaml_text(page) != texts[-1]:
                texts.append(yaml_text(page))
    assert len(texts) > 5
    for text in reversed(texts[:-1]):
        page.keyboard.press("Control+Z")
        assert yaml_text(page) == text
    for text in texts[1:]:
        page.keyboard.press("Control+Shift+Z")
        assert yaml_text(page) == text


def test_a_draft_survives_the_page(page: Page, draft: str) -> None:
    begin(page, draft)
    press(page, "b 1 2 3")
    text = yaml_text(page)
    page.reload()
    assert yaml_text(page) == text
    expect(page.get_by_label("Name", exact=True)).to_have_value("Dunlin 76")
    page.get_by_role("button", name="Begin anew").click()
    page.get_by_role("button", name="Leave it").click()
    assert yaml_text(page) == text
    page.get_by_role("button", name="Begin anew").click()
    page.get_by_role("button", name="Clear it").click()
    expect(page.locator(".rb-draft-later")).to_be_hidden()
    expect(page.get_by_label("Name", exact=True)).to_have_value("")
    page.get_by_role("button", name="Undo").click()
    assert yaml_text(page) == text


@pytest.mark.parametrize(
    "kept", ["7", "[]", '{"draft":{"walk":7,"left":3,"fitted":"x","strips":[1]}}', '{"draft":']
)
def test_a_spoilt_draft_does_not_stop_the_page(page: Page, draft: str, kept: str) -> None:
    page.goto(draft)
    page.evaluate("kept => localStorage.setItem('rimbook.draft', kept)", kept)
    page.reload()
    expect(page.get_by_role("button", name="Propose a walk")).to_be_visible()


def test_a_map_of_the_book_is_corrected(page: Page, plain_site: Path, with_forge: str) -> None:
    page.goto((plain_site / "frames/plover-76/index.html").as_uri())
    page.get_by_role("link", name="Open in the drafting page").click()
    expect(said(page)).to_have_text("Plover 76 is open. Correct it hole by hole.")
    expect(sum_of(page)).to_have_text("Nothing wrong")
    expect(page.get_by_text("Comments of the file are not kept here.")).to_be_visible()
    before = written(page)
    rows(page).focus()
    page.keyboard.press("b")
    to(page, 12)
    page.get_by_role("button", name="2.7 mm").click()
    after = written(page)
    assert after["bore_mm"] == {"default": 2.1, 2.7: ["8-12", 27, "30-31", 33]}
    assert {**after, "bore_mm": before["bore_mm"]} == before
    go(page, f"{with_forge}#map=weir-72")
    page.get_by_role("button", name="Keep my draft").click()
    assert written(page) == after
    send = page.get_by_role("link", name="Send it in")
    expect(send).to_have_attribute(
        "href", "https://forge.example/a/book/edit/main/frames/maps/plover-76.yaml"
    )
    go(page, f"{with_forge}#map=weir-72")
    page.get_by_role("button", name="Open Weir 72").click()
    assert written(page)["name"] == "Weir 72"
    page.get_by_role("button", name="Undo").click()
    assert written(page) == after


def test_a_map_that_is_not_there_is_said(page: Page, draft: str) -> None:
    page.goto(f"{draft}#map=nobodys-frame")
    expect(said(page)).to_have_text("The book has no map “nobodys-frame”.")


def test_a_new_map_goes_to_the_forge_in_the_address(page: Page, with_forge: str) -> None:
    begin(page, with_forge)
    address = page.get_by_role("link", name="Send it in").get_attribute("href") or ""
    parts = urlsplit(address)
    asked = parse_qs(parts.query)
    assert f"{parts.scheme}://{parts.netloc}{parts.path}" == FORGE["new"]
    assert asked["filename"] == ["frames/maps/dunlin-76.yaml"]
    assert asked["value"] == [yaml_text(page)]
    page.get_by_label("Note").fill("ü" * 2000)
    expect(page.get_by_text("This map is too long for an address")).to_be_visible()
    address = page.get_by_role("link", name="Send it in").get_attribute("href") or ""
    assert "value" not in parse_qs(urlsplit(address).query)


def test_without_a_forge_it_says_how_to_send(page: Page, draft: str) -> None:
    begin(page, draft)
    expect(page.get_by_role("link", name="Send it in")).to_have_count(0)
    expect(page.get_by_text("This site names no forge to send a map to")).to_be_visible()
    with page.expect_download() as taken:
        page.get_by_role("button", name="Download").click()
    assert taken.value.suggested_filename == "dunlin-76.yaml"
    assert Path(taken.value.path()).read_text("utf-8") == yaml_text(page)


@pytest.mark.parametrize(
    ("label", "text", "says"),
    [
        ("Name", " ", "Say the frame's name first."),
        ("Mains", "23", "23 mains are not even"),
        ("Mains", "many", "“many” mains will not do: expected an even number from 2 to 60."),
        ("Crosses", "0", "0 crosses will not do"),
        ("Width of the line of holes, mm", "18", "18 is no width of a head: expected 100 to 500 mm."),
        ("Height of the line of holes, mm", "", "Nothing is no height of a head"),
        ("Holes counted", "7.5", "“7.5” is no count of holes."),
    ],
)
def test_what_cannot_be_proposed_is_said_at_its_field(
    page: Page, draft: str, label: str, text: str, says: str
) -> None:
    begin(page, draft)
    page.get_by_label(label, exact=True).fill(text)
    page.get_by_role("button", name="Propose the walk anew").click()
    expect(said(page)).to_contain_text(says)
    expect(page.get_by_label(label, exact=True)).to_be_focused()


def test_any_name_will_do(page: Page, draft: str) -> None:
    """Quotes, marks of YAML, other scripts, and what looks like an element: text stays text."""
    name = "“Plover” #2: it's <b>羽毛球</b> & C:\\x"
    begin(page, draft, Name=name, Maker="- [")
    assert (written(page)["name"], written(page)["maker"]) == (name, "- [")
    page.reload()
    expect(page.get_by_label("Name", exact=True)).to_have_value(name)
    assert page.locator(".rb-draft b", has_text="羽毛球").count() == 0


def test_broken_input_breaks_nothing(page: Page, draft: str) -> None:
    """Every text field filled with odd things, one after the other: the page goes on."""
    begin(page, draft)
    rows(page).focus()
    mark(page, 3, 5)
    page.get_by_role("button", name="Give the chosen holes").click()
    page.get_by_role("button", name="Lay a strip").click()
    for odd in ("", "R99-R1", "<i> #\u202e"):
        for field in page.locator(".rb-draft-field input").all():
            if field.is_visible():
                before = field.input_value()
                field.fill(odd)
                yaml = yaml_text(page)
                YAML(typ="safe", pure=True).load(StringIO(yaml))
                field.fill(before)
    expect(rows(page).get_by_role("option")).to_have_count(38)


@pytest.mark.parametrize("width", [320, 360, 1440])
def test_everybody_can_use_it(browser: Browser, draft: str, width: int) -> None:
    """Half done and with problems: axe finds nothing in light and dark, and nothing scrolls sideways."""
    with watched_page(browser, width) as (page, faults):
        begin(page, draft)
        mark(page, 2, 4)
        page.get_by_role("button", name="Give the chosen holes").click()
        page.get_by_role("button", name="Lay a strip").click()
        page.get_by_label("Year").fill("soon")
        rows(page).focus()
        page.keyboard.press("b")
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        for each in page.locator(".rb-draft :is(button, input, select):visible").all():
            box = each.bounding_box()
            assert box is not None
            assert box["height"] >= 24 or each.get_attribute("type") in ("radio", "checkbox")
        page.set_viewport_size({"width": width, "height": 9_000})
        assert violations(page) == []
        page.emulate_media(color_scheme="dark")
        assert violations(page, COLOUR_RULES) == []
    assert faults == []


def test_the_policy_holds(plain_site: Path, built_site: Path) -> None:
    assert META in (built_site / "draft/index.html").read_text("utf-8")
    assert " style=" not in (plain_site / "draft/index.html").read_text("utf-8")
