"""What the pages say of the bench is what the bench worked out, with a link to how."""

from __future__ import annotations

import gzip
import re
from dataclasses import replace
from functools import cache

import pytest
from lxml import html

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import FrameNumbers, frame_numbers
from rimbook.bench.interchange import interchange
from rimbook.bench.load import pull
from rimbook.bench.needs import hole_needs
from rimbook.bench.part_index import index_parts
from rimbook.bench.thresholds import DEFAULT, changed
from rimbook.bench.units import newtons
from rimbook.book.model import Address, Book, Frame, TensionLimit
from rimbook.rim.place import place
from rimbook.site.bench_view import FRICTIONS
from rimbook.site.pages import Page
from rimbook.site.publish import site
from rimbook.site.settings import Settings
from tests.site.sample import demo_book, demo_site, published, small_book, small_frame, small_parts

SLUGS = list(demo_book().frames)
NUMBER = re.compile(r"\d")


@cache
def answers() -> Answers:
    return Answers(index_parts(demo_book().parts))


@cache
def numbers(slug: str) -> FrameNumbers:
    return frame_numbers(place(demo_book().frames[slug]), answers())


@cache
def page(path: str) -> html.HtmlElement:
    found = demo_site()[path]
    assert isinstance(found, Page)
    return html.fromstring(f"<main>{found.body}</main>")


def frame_page(slug: str) -> html.HtmlElement:
    return page(f"frames/{slug}/index.html")


def page_of(book: Book, path: str, settings: Settings | None = None) -> html.HtmlElement:
    found = next(each for each in site(book, settings) if isinstance(each, Page) and each.file == path)
    return html.fromstring(f"<main>{found.body}</main>")


def at_each(kept: str) -> list[float]:
    """What the browser reads: a number at each coefficient of friction."""
    return [float(each) for each in kept.split(",")]


def words(element: html.HtmlElement) -> str:
    return " ".join(element.text_content().split())


def with_limit(value: float) -> Frame:
    return replace(small_frame(), tension_limit=TensionLimit(value, "lb"))


@pytest.mark.parametrize("slug", SLUGS)
def test_each_hole_has_its_newtons(slug: str) -> None:
    rows = frame_page(slug).xpath("//tr[@data-hole]")
    assert len(rows) == len(numbers(slug).holes)
    for row in rows:
        side, number = row.get("data-hole")[0], int(row.get("data-hole")[1:])
        hole = numbers(slug).holes[Address("R" if side == "R" else "L", number)]
        cell = row.xpath("./td[@data-rb-times]")[0]
        assert at_each(cell.get("data-rb-times"))[0] == pytest.approx(hole.pull, abs=5.1e-5)
        assert cell.text == f"{hole.pull_n:,.0f}"


@pytest.mark.parametrize("slug", SLUGS)
def test_each_hole_has_its_pull_at_each_coefficient(slug: str) -> None:
    rim = place(demo_book().frames[slug])
    offered = at_each(frame_page(slug).xpath("//@data-rb-frictions")[0])
    assert offered == list(FRICTIONS)
    expected = [pull(rim, friction=friction) for friction in offered]
    for row in frame_page(slug).xpath("//tr[@data-hole]"):
        address = Address(row.get("data-hole")[0], int(row.get("data-hole")[1:]))
        for kept in (*row.xpath("./td/@data-rb-times"), *row.xpath("./td/@data-rb-multiple")):
            assert at_each(kept) == pytest.approx([by[address] for by in expected], abs=5.1e-5)


@pytest.mark.parametrize("slug", SLUGS)
def test_the_hardest_holes_and_pressures_are_told_at_each_coefficient(slug: str) -> None:
    bench = frame_page(slug).xpath("//section[@id='bench']")[0]
    ranked = bench.xpath(".//@data-rb-ranked")[0].split(",")
    for index, friction in enumerate(FRICTIONS):
        found = frame_numbers(place(demo_book().frames[slug]), answers(), friction=friction)
        assert ranked[index].split() == [str(address) for address in found.hardest]
        by_name = {str(address): hole for address, hole in found.holes.items()}
        for kind in bench.xpath(".//div[@class='rb-kind']"):
            link = kind.xpath(".//dd/a[starts-with(@href, '#')]")[0]
            hole = by_name[
                link.get("data-rb-worst", ",".join([link.text] * len(FRICTIONS))).split(",")[index]
            ]
            alike = {each.get("href")[1:] for each in kind.xpath("./p//a")} & by_name.keys()
            assert all(by_name[each].pull <= hole.pull + 1e-6 for each in alike)
            assert at_each(kind.xpath(".//@data-rb-times")[0])[index] == pytest.approx(hole.pull, abs=5.1e-5)
            for kept in kind.xpath(".//@data-rb-presses"):
                presses = at_each(kept)
                assert presses[index if len(presses) > 1 else 0] * found.tension_n == pytest.approx(
                    hole.pressure_mpa, abs=1e-3
                )


def test_without_a_script_the_page_says_that_friction_is_left_out() -> None:
    told = frame_page("plover-76").xpath("//*[@data-rb-sliding]")[0]
    assert words(told) == "The string is taken to slide freely, µ = 0: friction is left out."
    chosen = frame_page("plover-76").xpath("//*[@data-rb-rubbing]")[0]
    assert chosen.get("hidden") is not None
    assert "No published value was found" in words(chosen)
    for each in (told, chosen):
        assert each.xpath("./a[contains(@href, '/numbers/friction/')]")


@pytest.mark.parametrize("slug", SLUGS)
def test_the_hardest_holes_and_the_head_are_those_of_the_bench(slug: str) -> None:
    found = numbers(slug)
    glance = frame_page(slug).xpath("//section[@id='bench']/dl[1]/div")
    hardest, head = glance
    assert [link.text for link in hardest.xpath("./dd/a")] == [str(address) for address in found.hardest]
    shown = [float(each.text.replace(",", "")) for each in hardest.xpath(".//*[@data-rb-times]")]
    assert shown == [round(found.holes[address].pull_n) for address in found.hardest]
    along, across = (each.text for each in head.xpath(".//*[@data-rb-times]"))
    assert (along, across) == (f"{found.head.along_n:,.0f}", f"{found.head.across_n:,.0f}")
    frame = demo_book().frames[slug]
    assert [float(each) for each in head.xpath(".//@data-rb-times")] == [frame.mains, frame.crosses]


@pytest.mark.parametrize("slug", SLUGS)
def test_each_hole_stands_in_one_kind_with_the_words_of_the_bench(slug: str) -> None:
    frame, found = demo_book().frames[slug], numbers(slug)
    kinds = frame_page(slug).xpath("//div[@class='rb-kind']")
    alike = {
        (hole_needs(frame)[each.address], each.part, bool(each.strip is not None or each.twin is not None))
        for each in frame.drilled
    }
    assert len(alike) <= len(kinds) <= len({id(each.here) for each in found.holes.values()}) + 4
    for kind in kinds:
        side, number = (hardest := kind.xpath(".//dd/a[starts-with(@href,'#')]")[0].text)[0], hardest[1:]
        hole = found.holes[Address("R" if side == "R" else "L", int(number))]
        said = words(kind)
        assert (hole.here.fit.word or "no fit is claimed") in said.lower()
        assert f"× {hole.pull:.2f}" in said
        if hole.pressure_mpa is None:
            assert not kind.xpath(".//*[@data-rb-presses]")
        else:
            press = kind.xpath(".//*[@data-rb-presses]")[0]
            assert press.text == f"{hole.pressure_mpa:.1f}"
            assert at_each(press.get("data-rb-presses"))[0] * found.tension_n == pytest.approx(
                hole.pressure_mpa, rel=1e-4
            )
        if hole.here.reach.word == "trim":
            assert "cut" in said
            assert frame_page(slug).xpath("//section[@id='bench']//p[contains(., 'sharp blade')]")
        if hole.here.turns.positions not in (None, 1):
            assert f"{hole.here.turns.positions} fresh positions" in said


def test_a_substitute_is_ranked_and_the_fitted_part_is_not_named_as_one() -> None:
    frame = demo_book().frames["plover-76"]
    need = hole_needs(frame)[Address("R", 9)]
    served = [each for each in answers().of(need).serving if each != "barrel-27-short"]
    kind = frame_page("plover-76").xpath(
        "//div[@class='rb-kind'][.//h4//a[contains(., 'Short barrel 2.7')]]"
    )[0]
    links = kind.xpath(".//dd/a[contains(@href, '/parts/')]/@href")
    assert links[:3] == [f"../../parts/{each}/index.html" for each in served[:3]]
    assert not any("/barrel-27-short/" in each for each in links)


@pytest.mark.parametrize("slug", SLUGS)
def test_every_number_leads_to_how_it_is_worked_out(slug: str) -> None:
    bench = frame_page(slug).xpath("//section[@id='bench']")[0]
    numbered = [row for row in bench.xpath(".//dl/div") if NUMBER.search(words(row.xpath("./dd")[0]))]
    assert len(numbered) > 10
    for row in numbered:
        assert row.xpath(".//a[contains(@href, '/numbers/')]"), words(row)
    for line in bench.xpath(".//li[.//*[@data-rb-presses]]"):
        assert line.xpath(".//a[contains(@href, '/numbers/twins/')]")
    assert bench.xpath(".//p[.//*[@data-rb-at]]//a[contains(@href, '/numbers/units/')]")
    assert bench.xpath(".//a[contains(@href, '/numbers/friction/')]")


def test_an_unknown_bore_claims_no_fit_and_says_what_to_measure() -> None:
    tree = page_of(small_book(), "frames/wren-8/index.html")
    kind = tree.xpath("//div[@class='rb-kind'][contains(., 'Bore unknown')]")[0]
    said = words(kind)
    assert "No fit is claimed" in said
    assert "Measure the drilled hole" in said
    assert "Nothing is claimed before the bore is known" in said
    for word in ("snug", "finger fit", "drops out", "needs driving", "will not seat"):
        assert word not in said.lower()
    assert not kind.xpath(".//dt[contains(., 'Also serves')]/../dd//a")
    part = page_of(small_book(), "interchange/index.html")
    assert part.xpath("//section[@id='untold']//div[dt='Bore']//a[@href='../frames/wren-8/index.html']")


def test_the_printed_limit_stands_beside_the_tension_and_is_never_passed() -> None:
    for value, shown in ((20.0, "20 lb"), (28.0, "24 lb")):
        frame = with_limit(value)
        tree = page_of(Book({frame.slug: frame}, small_parts()), "frames/wren-8/index.html")
        bench = tree.xpath("//section[@id='bench']")[0]
        caution = bench.xpath("./div[@class='rb-caution']")[0]
        assert f"The maker prints {value:g} lb as the limit. Do not string above it." in words(caution)
        assert bench.xpath(".//*[@data-rb-at]")[0].text == shown
        field = bench.xpath(".//*[@data-rb-tension]")[0]
        assert field.get("data-rb-limit") == f"{value:g}"
        least = min(newtons(value, "lb"), newtons(DEFAULT.usual_tension_lb.badminton, "lb"))
        assert float(field.get("data-rb-newtons")) == pytest.approx(least, abs=1e-4)


def test_without_a_limit_the_reader_is_sent_to_look_for_it() -> None:
    tree = page_of(small_book(), "frames/wren-8/index.html")
    assert "Look for the maker’s print" in words(tree.xpath("//section[@id='bench']")[0])
    assert not tree.xpath("//*[@data-rb-limit]")


def test_the_site_may_set_thresholds_of_its_own() -> None:
    strict = changed({"finger_over_mm": 0.01, "usual_tension_lb": {"badminton": 20}})
    tree = page_of(small_book(), "frames/wren-8/index.html", Settings(thresholds=strict))
    kind = tree.xpath("//div[@class='rb-kind'][contains(., '2.1 mm bore')]")[0]
    assert "Finger fit" in words(kind)
    assert tree.xpath("//section[@id='bench']//*[@data-rb-at]")[0].text == "20 lb"
    usual = page_of(small_book(), "frames/wren-8/index.html")
    assert "Snug" in words(usual.xpath("//div[@class='rb-kind'][contains(., '2.1 mm bore')]")[0])


def test_the_load_is_a_layer_that_starts_switched_off() -> None:
    tree = frame_page("plover-76")
    for drawing in ("face", "unrolled"):
        figure = tree.xpath(f"//figure[@data-rb-drawing='{drawing}']")[0]
        box = figure.xpath(".//input[@data-rb-layer='load']")[0]
        assert box.get("checked") is None
        layer = figure.xpath(".//*[contains(@class, 'layer-load')]")[0]
        assert layer.get("display") == "none"
        steps = {path.get("class") for path in layer.xpath(".//*[local-name()='path']")}
        assert {"pull pull-2", "pull pull-5"} <= steps
        assert "×2.8" in [each.text for each in layer.xpath(".//*[local-name()='text']")]


@pytest.mark.parametrize("slug", SLUGS)
def test_a_frame_page_stays_small(slug: str) -> None:
    found = demo_site()[f"frames/{slug}/index.html"]
    assert isinstance(found, Page)
    assert len(gzip.compress(found.body.encode(), 6)) < 60_000


def test_the_interchange_page_names_drawers_and_parts_without_a_substitute() -> None:
    book = demo_book()
    found = interchange(book.frames.values(), answers())
    tree = page("interchange/index.html")
    shared = {drawer.frames for drawer in found.drawers if len(drawer.frames) > 1}
    assert shared
    shown = {
        tuple(sorted(link.split("/")[-2] for link in item.xpath("./a[contains(@href, '/frames/')]/@href")))
        for item in tree.xpath("//section[@id='drawers']//li")
    }
    assert shown == shared
    only = tree.xpath("//section[@id='only']//li/a[1]/@href")
    assert only == [f"../parts/{part}/index.html" for part in found.irreplaceable]
    untold = tree.xpath("//section[@id='untold']//a/@href")
    assert {link.split("/")[-2] for link in untold} == found.untold.keys()


def test_a_strip_sold_only_in_a_set_says_where_else_its_holes_find_parts() -> None:
    tree = page("parts/plover-crown/index.html")
    said = words(tree.xpath("//section[@id='instead']")[0])
    assert "No other strip in this book replaces it" in said
    assert "it is only in Plover full set" in said
    links = tree.xpath("//section[@id='instead']//li[contains(., 'single parts')]/a/@href")
    assert "../../parts/barrel-21-short/index.html" in links
    assert "../../parts/bittern-set/index.html" in links


@pytest.mark.parametrize("part", ["barrel-27-short", "barrel-21-short", "twin-21-even-70"])
def test_a_part_page_ranks_what_else_serves_and_where_it_would_serve(part: str) -> None:
    found = interchange(demo_book().frames.values(), answers())
    tree = page(f"parts/{part}/index.html")
    assert len(tree.xpath("//section[@id='instead']/ul[1]/li")) == min(8, len(found.fitted[part]))
    needs = [need for need in found.by_part()[part] if need not in found.fitted[part]]
    frames = {slug for need in needs for slug in found.frames[need]}
    said = words(tree.xpath("//section[@id='elsewhere']")[0])
    if needs:
        kinds = f"{len(needs)} other kind{'s' if len(needs) > 1 else ''} of hole"
        assert kinds in said
        assert f"of {len(frames)} frame" in said
    else:
        assert "In no other kind of hole" in said


def test_a_book_without_frames_still_has_its_pages() -> None:
    pages = published(Book({}, small_parts()))
    assert "No two frames" in pages["interchange/index.html"].body  # type: ignore[union-attr]
    assert "No map says that it sits anywhere" in pages["parts/barrel-21/index.html"].body  # type: ignore[union-attr]
