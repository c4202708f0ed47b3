"""A tension of the reader's own: every force follows, and the maker's limit is never passed in silence."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import FrameNumbers, frame_numbers
from rimbook.bench.load import pull
from rimbook.bench.part_index import index_parts
from rimbook.bench.tension import over_limit
from rimbook.bench.units import convert, newtons
from rimbook.book.model import TensionLimit
from rimbook.rim.place import place
from rimbook.site.bench_view import FRICTIONS
from tests.browser.small_site import look_inside
from tests.site.sample import demo_book
from tests.watch import watched_page

FRAME = demo_book().frames["plover-76"]

# NIST Special Publication 811, appendix B.8: 1 lbf = 4.448 222 N, 1 kgf = 9.806 65 N (exactly).
NIST_NEWTONS = {"lb": 4.448222, "kg": 9.80665, "N": 1.0}


def numbers(tension_n: float, friction: float = 0.0) -> FrameNumbers:
    answers = Answers(index_parts(demo_book().parts))
    return frame_numbers(place(FRAME), answers, tension_n=tension_n, friction=friction)


@pytest.fixture
def frame(page: Page, plain_site: Path) -> Page:
    page.goto(f"{plain_site.as_uri()}/frames/plover-76/index.html")
    return page


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"tension": ["UNITS", "readTension", "tensionWords", "written"]})
        yield page
    assert faults == []


def newtons_column(page: Page) -> dict[str, int]:
    rows: dict[str, str] = page.locator("tr[data-hole]").evaluate_all(
        "(rows) => Object.fromEntries(rows.map((row) => "
        "[row.dataset.hole, row.querySelector('[data-rb-times]').textContent]))"
    )
    return {hole: int(text.replace(",", "")) for hole, text in rows.items()}


@pytest.mark.parametrize("unit", NIST_NEWTONS)
def test_the_units_are_the_published_ones(inside: Page, unit: str) -> None:
    shipped = inside.evaluate("(unit) => inside.UNITS[unit]", unit)
    assert shipped == pytest.approx(NIST_NEWTONS[unit], abs=5e-7)
    assert shipped == pytest.approx(convert(1.0, unit, "N"), rel=1e-15)  # type: ignore[arg-type]


@pytest.mark.parametrize("text", ["24", " 24.5 ", "24,5", ".5", "107"])
def test_a_number_is_read(inside: Page, text: str) -> None:
    found = inside.evaluate("(text) => inside.readTension(text, 'lb').newtons", text)
    assert found == pytest.approx(newtons(float(text.replace(",", ".")), "lb"))


@pytest.mark.parametrize("text", ["", "0", "-24", "24 lb", "1e3", "NaN", "225", "2.4.1", "9" * 400, "٢٤"])
def test_anything_else_is_refused_with_what_is_expected(inside: Page, text: str) -> None:
    found = inside.evaluate("(text) => inside.readTension(text, 'lb')", text)
    assert found["newtons"] is None
    assert "over 0 and up to 224.8 lb" in found["says"]


@pytest.mark.parametrize(("tension", "limit"), [(30.0, 28.0), (28.0, 28.0), (27.9, 28.0), (60.0, 24.5)])
def test_the_caution_is_that_of_the_build(inside: Page, tension: float, limit: float) -> None:
    built = over_limit(newtons(tension, "lb"), TensionLimit(limit, "lb"))
    shown = inside.evaluate(
        "([newtons, limit]) => inside.tensionWords(newtons, { value: limit, unit: 'lb' })",
        [newtons(tension, "lb"), limit],
    )
    assert shown == (built.says if built else "")


def test_every_force_follows_the_tension(frame: Page) -> None:
    frame.get_by_role("textbox", name="Tension").fill("27")
    expected = numbers(newtons(27, "lb"))
    shown = newtons_column(frame)
    assert len(shown) == len(expected.holes)
    for address, hole in expected.holes.items():
        assert shown[str(address)] == pytest.approx(hole.pull_n, abs=0.51)
    head = frame.locator("#bench dl").first.locator("div").nth(1).locator("[data-rb-times]")
    assert head.all_text_contents() == [f"{expected.head.along_n:,.0f}", f"{expected.head.across_n:,.0f}"]
    hardest = frame.locator("#bench .rb-kind", has_text="Short barrel 2.7").first
    worst = expected.holes[expected.hardest[0]]
    press = float(hardest.locator("[data-rb-presses]").text_content() or "")
    assert press == pytest.approx(worst.pressure_mpa, abs=0.051)
    for said in frame.locator("[data-rb-at]").all():
        expect(said).to_have_text("27 lb")
    expect(frame.locator("[data-rb-assumed]")).to_be_hidden()
    expect(frame.locator(".rb-tension-said")).to_be_hidden()


@pytest.mark.parametrize("friction", FRICTIONS[1:])
def test_every_number_follows_the_friction_that_is_chosen(frame: Page, friction: float) -> None:
    tension_n, rim = newtons(27, "lb"), place(FRAME)
    plain, expected = numbers(tension_n), numbers(tension_n, friction)
    frame.get_by_role("textbox", name="Tension").fill("27")
    before = frame.locator("main").inner_text()
    choice = frame.get_by_label("Friction µ")
    expect(choice).to_have_value("0")
    choice.select_option(f"{friction:g}")
    shown = newtons_column(frame)
    for address, multiple in pull(rim, friction=friction).items():
        assert shown[str(address)] == pytest.approx(multiple * tension_n, abs=0.51)
        said = frame.locator(f"tr[data-hole='{address}'] [data-rb-multiple]").text_content()
        assert float(said or "") == pytest.approx(multiple, abs=0.00506)
    hardest, head = frame.locator("#bench dl").first.locator("div").all()[:2]
    assert hardest.locator("dd a").all_text_contents() == [str(address) for address in expected.hardest]
    assert [int(each) for each in hardest.locator("[data-rb-times]").all_text_contents()] == [
        pytest.approx(expected.holes[address].pull_n, abs=0.51) for address in expected.hardest
    ]
    worst = expected.holes[expected.hardest[0]]
    expect(hardest).to_contain_text(f"(× {worst.pull:.2f})")
    assert head.locator("[data-rb-times]").first.text_content() == f"{plain.head.along_n:,.0f}"
    by_name = {str(address): hole for address, hole in expected.holes.items()}
    pressed = 0
    for kind in frame.locator("#bench .rb-kind").all():
        link = kind.locator("dd a[href^='#']").first
        hole = by_name[link.text_content() or ""]
        expect(link).to_have_attribute("href", f"#{hole.address}")
        assert int(kind.locator("[data-rb-times]").text_content() or "") == pytest.approx(
            hole.pull_n, abs=0.51
        )
        for press in kind.locator("[data-rb-presses]").all_text_contents():
            assert float(press) == pytest.approx(hole.pressure_mpa, abs=0.051)
            pressed += 1
    assert pressed > 2
    told = frame.locator("[data-rb-rubbing]")
    expect(told).to_contain_text(f"with friction, µ = {friction:g} of string on grommet")
    expect(told).to_be_visible()
    expect(told.locator("a")).to_have_attribute("href", "../../numbers/friction/index.html")
    expect(frame.locator("[data-rb-sliding]")).to_be_hidden()
    expect(frame.locator("#holes [data-rb-at]")).to_have_text(f"27 lb and µ = {friction:g}")
    choice.select_option("0")
    assert frame.locator("main").inner_text() == before


def test_the_friction_is_not_remembered(frame: Page) -> None:
    frame.get_by_label("Friction µ").select_option(index=1)
    frame.reload()
    expect(frame.get_by_label("Friction µ")).to_have_value("0")
    expect(frame.locator("[data-rb-sliding]")).to_be_visible()
    expect(frame.locator("[data-rb-rubbing]")).to_be_hidden()


def test_above_the_limit_it_says_so_until_it_is_below(frame: Page) -> None:
    field, said = frame.get_by_role("textbox", name="Tension"), frame.locator(".rb-tension-said")
    field.fill("30")
    expect(said).to_have_text(
        "This tension is 7.1 % above the 28 lb printed on the frame. "
        "The maker's limit comes first: the frame may break."
    )
    assert newtons_column(frame)["R8"] == pytest.approx(
        numbers(newtons(30, "lb")).holes[FRAME.holes[7].address].pull_n, abs=0.51
    )
    frame.get_by_label("Unit").select_option("kg")
    expect(field).to_have_value("13.6")
    expect(said).to_contain_text("above the 28 lb")
    field.fill("12")
    expect(said).to_be_hidden()


def test_what_is_no_tension_changes_nothing(frame: Page) -> None:
    before = newtons_column(frame)
    field = frame.get_by_role("textbox", name="Tension")
    field.fill("-3")
    expect(frame.locator(".rb-tension-said")).to_contain_text("Write a number over 0")
    expect(field).to_have_attribute("aria-invalid", "true")
    assert newtons_column(frame) == before
    frame.get_by_role("button", name="Usual tension").wait_for(state="hidden")
    field.fill("20")
    frame.get_by_role("button", name="Usual tension").click()
    expect(field).to_have_value("24")
    expect(frame.locator(".rb-tension-said")).to_be_hidden()
    assert newtons_column(frame) == before


def test_the_unit_is_remembered_and_the_tension_is_not(frame: Page) -> None:
    frame.get_by_label("Unit").select_option("N")
    frame.get_by_role("textbox", name="Tension").fill("120")
    frame.reload()
    expect(frame.get_by_label("Unit")).to_have_value("N")
    expect(frame.get_by_role("textbox", name="Tension")).to_have_value("106.8")
    expect(frame.locator("[data-rb-assumed]")).to_be_visible()


def test_the_load_is_shown_when_it_is_asked_for_and_remembered(frame: Page) -> None:
    layer = frame.locator("[data-rb-drawing='face'] .layer-load")
    expect(layer).to_be_hidden()
    expect(frame.locator("[data-rb-drawing='face'] .rb-load-key")).to_be_hidden()
    frame.locator("[data-rb-drawing='face'] [data-rb-layer='load']").check()
    expect(layer).to_be_visible()
    expect(frame.locator("[data-rb-drawing='face'] .rb-load-key")).to_contain_text("times the tension")
    frame.reload()
    expect(layer).to_be_visible()
    expect(frame.locator("[data-rb-drawing='unrolled'] .layer-load")).to_be_hidden()
    frame.locator("[data-rb-drawing='face'] [data-rb-layer='load']").uncheck()
    frame.reload()
    expect(layer).to_be_hidden()


@pytest.mark.parametrize("page", [360], indirect=True)
def test_on_a_phone_nothing_runs_over_the_edge(frame: Page) -> None:
    assert frame.evaluate("document.documentElement.scrollWidth") <= 360
    field = frame.get_by_role("textbox", name="Tension").bounding_box()
    assert field is not None
    assert field["height"] >= 24
