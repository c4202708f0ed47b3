"""The drafting page as a newcomer uses it: from nothing to a map that the check lets pass, by keyboard."""

from __future__ import annotations

import json
import re
import shutil
from io import StringIO
from pathlib import Path
from typing import Any
from urllib.parse import parse_qs, urlsplit

import pytest
from playwright.sync_api import Browser, Locator, Page, expect
from ruamel.yaml import YAML

from rimbook.cli import main
from rimbook.hosts.policy import META
from rimbook.site.draft_page import SITE_FILE
from tests.browser.test_access import COLOUR_RULES, violations
from tests.watch import watched_page

ROOT = Path(__file__).parents[2]
WALK = (
    "m1 m2 m3 m4 m5 m6 m7 m8 m9+c1 m10+c2 m11+c3 c4 c5 c6 c7 c8 c9 c10 c11 c12 c13 c14 c15 c16 c17 c18 "
    "m11+c19 c20 m10 m9+c21 m8 m7 m6 m5 m4 m3 m2 m1"
)
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


def go(page: Page, address: str) -> None:
    """Load the page anew, also where only what is behind the # differs."""
    page.goto("about:blank")
    page.goto(address)


def rows(page: Page) -> Locator:
    return page.get_by_role("listbox", name="Holes along the walk")


def here(page: Page) -> Locator:
    return page.locator(".rb-draft-hole-row.is-here")


def yaml_text(page: Page) -> str:
    return page.locator(".rb-draft-yaml pre").inner_text()


def written(page: Page) -> Any:
    return YAML(typ="safe", pure=True).load(StringIO(yaml_text(page)))


def sum_of(page: Page) -> Locator:
    return page.locator(".rb-draft-words a")


def said(page: Page) -> Locator:
    return page.locator(".rb-draft-said:not(:empty)")


def begin(page: Page, address: str, **others: str) -> None:
    """A proposed walk to work on."""
    page.goto(address)
    typed = {
        "Name": "Dunlin 76",
        "Maker": "Saltmarsh Works",
        "Mains": "22",
        "Crosses": "21",
        "Width of the line of holes, mm": "186",
        "Height of the line of holes, mm": "244",
        "Holes counted": "76",
    }
    for label, text in {**typed, **others}.items():
        page.get_by_label(label, exact=True).fill(text)
    page.get_by_role("button", name="Propose a walk").click()
    expect(rows(page)).to_be_focused()


def press(page: Page, keys: str) -> None:
    for key in keys.split():
        page.keyboard.press(key)


def to(page: Page, number: int) -> None:
    """To a hole of the list, by keys."""
    page.keyboard.press("Home")
    for _ in range(number - 1):
        page.keyboard.press("ArrowDown")


def mark(page: Page, first: int, last: int) -> None:
    to(page, first)
    for _ in range(last - first):
        page.keyboard.press("Shift+ArrowDown")


def tab_to(page: Page, label: str) -> None:
    """With the tabulator only, as far as it takes."""
    name = re.compile(rf"^{re.escape(label)}")
    wanted = [page.get_by_label(name), page.get_by_role("button", name=name)]
    for _ in range(90):
        page.keyboard.press("Tab")
        if any(
            each.evaluate("one => one === document.activeElement") for one in wanted for each in one.all()
        ):
            return
    raise AssertionError(f"No way to {label}.")


def check(text: str, name: str, folder: Path, capsys: pytest.CaptureFixture[str]) -> tuple[int, str]:
    """What `rimbook check` says of a map laid into the demo book."""
    shutil.copytree(ROOT / "frames", folder / "frames")
    file = folder / "frames/maps" / name
    file.write_text(text, "utf-8")
    code = main(["check", str(file), "--notes"])
    return code, capsys.readouterr().out


def test_from_nothing_to_a_valid_map_by_keyboard_alone(
    page: Page, draft: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """76 holes, 22 by 21, 10 of them shared, two bores, a strip, twins, tie-offs, and who measured."""
    page.goto(draft)
    for label, text in (
        ("Name", "Dunlin 76"),
        ("Maker", "Saltmarsh Works"),
        ("Sport", "badminton"),
        ("Mains", "22"),
        ("Crosses", "21"),
        ("Width of the line", "186"),
        ("Height of the line", "244"),
        ("Outline", "ellipse with squarer"),
        ("Exponent", "2.15"),
        ("Holes counted", "76"),
    ):
        tab_to(page, label)
        if page.evaluate("document.activeElement.tagName") == "SELECT":
            page.keyboard.type(text)
        else:
            page.keyboard.press("Control+A")
            page.keyboard.type(text)
    page.keyboard.press("Enter")
    expect(said(page)).to_contain_text("76 holes in all, 10 of them shared")
    expect(rows(page)).to_be_focused()

    # The walk that the racket has, where it is another than the proposed one.
    walk = WALK.split()
    page.keyboard.press("Home")
    for word in walk:
        page.keyboard.type(word)
        page.keyboard.press("Enter")
    assert written(page)["walk"].split() == walk

    # One key a hole: 2.1 everywhere, run by run, then 2.7 where strings share or end.
    page.keyboard.press("b")
    keys = {
        name.split()[1]: name.split()[0] for name in page.locator(".rb-draft-pens button").all_inner_texts()
    }
    page.keyboard.press("Home")
    page.keyboard.press("Shift+End")
    page.keyboard.press(keys["2.1"])
    mark(page, 8, 11)
    page.keyboard.press(keys["2.7"])
    for number in (27, 30, 33):
        to(page, number)
        page.keyboard.press(keys["2.7"])
    page.keyboard.press("ArrowUp")
    assert written(page)["bore_mm"] == {"default": 2.1, 2.7: ["8-11", 27, 30, 33]}

    # Tie-offs: both ends of the mains on both sides, the crosses on one side each.
    to(page, 31)
    page.keyboard.press("t")
    page.keyboard.press("b")
    page.keyboard.press(keys["2.7"])
    tab_to(page, "Tie-offs")
    page.keyboard.press("End")
    page.keyboard.type(" r8 l33")
    assert written(page)["stringing"]["tie_offs"] == ["R31", "L31", "R8", "L33"]

    # Back at the list, a run of twins is chosen; then parts by bore, and the strip.
    page.keyboard.press("Escape")
    mark(page, 37, 38)
    tab_to(page, "Part in most holes")
    page.keyboard.type("barrel-21-short")
    tab_to(page, "Part where the bore is 2.7 mm")
    page.keyboard.type("barrel-27-short")
    tab_to(page, "Give the chosen holes a part of their own")
    page.keyboard.press("Enter")
    expect(page.get_by_label("Holes", exact=True)).to_be_focused()
    tab_to(page, "Part")
    page.keyboard.type("twin-21-even-70")
    tab_to(page, "Lay a strip")
    page.keyboard.press("Enter")
    for label, text in (("First hole", "L6"), ("Last hole", "R6"), ("Part", "plover-crown")):
        tab_to(page, label)
        page.keyboard.press("Control+A")
        page.keyboard.type(text)
    for label, text in (
        ("Rim depth", "9,4"),
        ("Whole racket, length", "674"),
        ("Whole racket, width", "206"),
        ("Tension limit", "28 lb"),
        ("Measured by", "heron-bench"),
        ("On", "2026-10-04"),
        ("With", "calliper"),
        ("Smallest step", "0.05"),
    ):
        tab_to(page, label)
        page.keyboard.type(text)
    # The rim is deeper where the twins sit.
    page.keyboard.press("Escape")
    page.keyboard.press("r")
    mark(page, 35, 38)
    page.keyboard.press("=")
    page.keyboard.type("11")
    page.keyboard.press("Enter")
    expect(rows(page)).to_be_focused()

    frame = written(page)
    assert len(frame["walk"].split()) == 38
    assert frame["walk"].count("+") == 5
    assert frame["bore_mm"] == {"default": 2.1, 2.7: ["8-11", 27, "30-31", 33]}
    assert frame["rim_depth_mm"] == {"default": 9.4, 11: ["35-38"]}
    assert frame["fitted"]["37-38"] == "twin-21-even-70"
    assert frame["strips"] == [{"name": "strip", "holes": ["L6", "R6"], "part": "plover-crown"}]
    code, out = check(yaml_text(page), "dunlin-76.yaml", tmp_path, capsys)
    shown = page.locator(".rb-draft-problem").all_inner_texts()
    assert (code, [line for line in out.splitlines() if "error" in line]) == (0, [])
    assert [text for text in shown if text.startswith(("error", "warning"))] == []
    assert "Nothing wrong in 1 map" in out


def test_what_the_page_finds_the_check_finds(
    page: Page, draft: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    begin(page, draft)
    to(page, 12)
    page.keyboard.press("d")
    page.get_by_label("Part in most holes").fill("barel-21-short")
    page.get_by_label("Tension limit").fill("28 pounds")
    page.get_by_label("Tension limit").press("Tab")
    code, out = check(yaml_text(page), "dunlin-76.yaml", tmp_path, capsys)
    assert code == 1
    shown = page.locator(".rb-draft-problems li").all()
    assert shown
    for each in shown:
        message = each.locator("button").inner_text().split(" ", 1)[1]
        assert re.sub(r"^[RL]\d+: ", "", message) in out


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
        ("Width of the line of holes, mm", "18", "18 is no width of a head: expected 50 to 500 mm."),
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
