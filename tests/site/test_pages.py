"""Every page of the demo book: there, whole, linked, and fit to be read by everybody."""

from __future__ import annotations

import re
from collections import Counter
from itertools import pairwise

import pytest
from lxml import html

from rimbook.bench.check import catalogue
from rimbook.bench.parts_list import regrommet
from rimbook.site.pages import KINDS, Asset, Page
from tests.site.reading import broken, links
from tests.site.sample import demo_book, demo_site, published, small_book

PAGES = {path: each for path, each in demo_site().items() if isinstance(each, Page)}
TREES = {path: html.fromstring(f"<main>{page.body}</main>") for path, page in PAGES.items()}
ONE_OF_EACH = list({page.kind: path for path, page in PAGES.items()}.values())


def text_of(path: str) -> str:
    return " ".join(TREES[path].text_content().split())


def test_each_map_and_each_part_has_its_page_and_data() -> None:
    book = demo_book()
    for slug in book.frames:
        assert f"frames/{slug}/index.html" in PAGES
        assert isinstance(demo_site()[f"data/frames/{slug}.json"], Asset)
    assert {f"parts/{part}/index.html" for part in book.parts} <= PAGES.keys()


def test_every_kind_that_a_small_book_needs_is_made_as_deep_as_it_says() -> None:
    """A tape comes with the files to print, which this site has none of."""
    needed = {name for name in KINDS if not name.endswith("-more")} - {"tape"}
    assert {page.kind for page in PAGES.values()} == needed
    for page in PAGES.values():
        pattern = re.escape(KINDS[page.kind].pattern).replace(r"\*", "[^/]+")
        assert re.fullmatch(pattern, page.path)


def test_every_link_leads_to_a_page_and_to_a_place_on_it() -> None:
    assert not broken(demo_site(), TREES)
    assert len(list(links(TREES))) > 1000


def test_every_hole_has_a_row_to_link_to() -> None:
    for slug, frame in demo_book().frames.items():
        rows = TREES[f"frames/{slug}/index.html"].xpath("//tr[@data-hole]/@id")
        assert rows == [str(hole.address) for hole in frame.drilled]


@pytest.mark.parametrize("path", PAGES)
def test_nothing_on_a_page_needs_an_inline_script_or_style(path: str) -> None:
    tree = TREES[path]
    assert not tree.xpath("//script[not(@type='application/json')] | //style | //@style")
    assert not [name for name in tree.xpath("//@*") if name.attrname.startswith("on")]
    assert not re.search(
        r"javascript:|https?://(?!example\.org/edit/|www\.w3\.org/2000/svg)", PAGES[path].body
    )


@pytest.mark.parametrize("path", PAGES)
def test_a_page_is_built_so_that_it_can_be_heard(path: str) -> None:
    tree = TREES[path]
    assert not [name for name, count in Counter(tree.xpath("//@id")).items() if count > 1]
    assert len(tree.xpath("//h1")) == 1
    assert not tree.xpath("//table[not(caption)] | //th[not(@scope)]")
    for region in tree.xpath("//*[@role='region']"):
        assert region.get("tabindex") == "0"
        assert region.get("aria-label") or region.get("aria-labelledby")
    for label in " ".join(tree.xpath("//@aria-labelledby")).split():
        assert "".join(tree.xpath(f"//*[@id='{label}']//text()")).strip(), label
    levels = [int(heading.tag[1]) for heading in tree.xpath("//h1 | //h2 | //h3")]
    assert levels[0] == 1
    assert all(after - before <= 1 for before, after in pairwise(levels))


@pytest.mark.parametrize("path", PAGES)
def test_a_page_can_be_told_from_others_before_it_is_opened(path: str) -> None:
    page = PAGES[path]
    assert page.title
    assert 20 < len(page.description) < 300
    assert [other.title for other in PAGES.values()].count(page.title) == 1


def test_a_frame_page_answers_at_a_glance() -> None:
    words = text_of("frames/plover-76/index.html")
    assert "76 drilled holes" in words
    assert "2.7 mm: 16 holes" in words
    assert "R37 and R38, L38 and L37" in words
    assert "Plover crown strip, only in a set: Plover full set" in words
    assert "the maker prints 28 lb as the limit. Do not string above it." in words
    assert "Measured by" in words
    assert "Confirmed against another racket by" in words
    assert "frames/maps/plover-76.yaml" in words


def test_the_parts_list_names_count_packs_and_pin() -> None:
    tree = TREES["frames/plover-76/index.html"]
    rows = [
        [cell.text_content() for cell in row]
        for row in tree.xpath("//table[@data-rb-table='parts']/tbody/tr")
    ]
    needed = regrommet(demo_book().frames["plover-76"], demo_book().parts)
    assert [int(row[0]) for row in rows] == [line.count for line in needed]
    short = next(row for row in rows if row[1] == "Short barrel 2.1")
    part = demo_book().parts["barrel-21-short"]
    assert short[3].startswith("singly and in packs of 25")
    assert f"over {part.bore_mm:g}, under {part.barrel_mm:g}" in short[4]


def test_cautions_stand_where_the_risk_is() -> None:
    for slug in demo_book().frames:
        tree = TREES[f"frames/{slug}/index.html"]
        words = "".join(tree.xpath("//section[@id='regrommet']//text()")).lower()
        for caution in ("cracked frame is not strung", "eye protection", "sharp blade", "heat"):
            assert caution in words
        tension = "".join(tree.xpath("//dt[.='Tension']/following-sibling::dd//text()"))
        assert "above" in tension or "below" in tension


def test_unknown_is_said_with_how_to_find_out() -> None:
    page = published(small_book())["frames/wren-8/index.html"]
    assert isinstance(page, Page)
    words = " ".join(html.fromstring(page.body).text_content().split())
    assert "unknown – measure with pin gauges" in words
    assert "known for 12 of 14 holes (86 %); unknown at 4 on both sides" in words
    row = html.fromstring(page.body).xpath("//tr[@id='R4']")[0].text_content()
    assert row.count("unknown") == 2


def test_variants_and_frames_alike_name_each_other() -> None:
    for one, other in (("bittern-78", "bittern-78-2025"), ("bittern-78-2025", "bittern-78")):
        assert TREES[f"frames/{one}/index.html"].xpath(
            f"//p[contains(.,'Sister')]//a[@href='../../frames/{other}/index.html']"
        )


def test_a_part_page_leads_to_frames_and_holes_and_back() -> None:
    tree = TREES["parts/barrel-27-short/index.html"]
    holes = tree.xpath("//table[@data-rb-table='frames']//a/@href")
    assert "../../frames/plover-76/index.html#R8" in holes
    assert tree.xpath("//*[local-name()='svg']")
    assert TREES["frames/plover-76/index.html"].xpath("//a[@href='../../parts/barrel-27-short/index.html']")


def test_a_set_page_says_what_it_holds_and_for_what() -> None:
    tree = TREES["parts/plover-set/index.html"]
    part = demo_book().parts["plover-set"]
    held = tree.xpath("//section[@id='contents']//tbody//a/@href")
    assert held == [f"../../parts/{each}/index.html" for each in part.contains]
    assert tree.xpath("//a[@href='../../frames/plover-76/index.html']")


def test_every_rule_is_listed_with_an_example() -> None:
    tree = TREES["rules/index.html"]
    assert tree.xpath("//dl/div/@id") == [
        rule.name for scope in ("map", "parts", "club", "book") for rule in catalogue() if rule.scope == scope
    ]
    assert all(example.text_content() for example in tree.xpath("//samp"))
