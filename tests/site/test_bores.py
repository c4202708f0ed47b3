"""The pages of bores: right counts, ways both ways, and nothing claimed that nobody measured."""

from __future__ import annotations

from dataclasses import replace

import pytest

from rimbook.bench.parts_list import regrommet
from rimbook.book.model import Address, Book
from rimbook.site.bore_parts import MOST_OTHERS, bore_parts
from rimbook.site.pages import Page
from rimbook.site.summary import summarise
from tests.site.cross_sample import FRAMES, cross_site, of, parts
from tests.site.cross_sample import frame as make
from tests.site.reading import broken, rows_of, text_of, tree_of
from tests.site.sample import demo_book, demo_site, published

TREES = {file: tree_of(page) for file, page in cross_site().items() if isinstance(page, Page)}


def table(file: str, caption: str) -> list[list[str]]:
    """The rows of the table under the element with this id."""
    return rows_of(TREES[file].xpath(f"//table[caption/@id='{caption}']")[0])


def test_every_link_of_the_book_leads_somewhere() -> None:
    assert not broken(cross_site(), TREES)


def test_all_bores_are_listed_by_size_with_their_sums() -> None:
    assert table("bores/index.html", "bores-caption") == [
        # bore, holes, shared, frames, parts there
        ["2.1", "72", "0", "7", "4"],
        ["2.7", "14", "12", "6", "2"],
        ["3.3", "10", "2", "1", "1"],
        ["unknown", "2", "0", "1", "0"],
    ]


def test_a_bore_says_which_frames_have_it_in_which_holes() -> None:
    rows = {row[0]: row[2:] for row in table("bores/2.7/index.html", "frames-caption")}
    assert rows["Linnet 8"] == ["4", "2 on both sides", "5 on both sides", "2 × Barrel 2.1, 2 × Barrel 2.7"]
    assert rows["Robin 8"] == ["2", "2 on both sides", "none", "2 × Barrel 2.1"]
    assert "Ouzel 8" not in rows
    hrefs = TREES["bores/2.7/index.html"].xpath("//tr[th='Linnet 8']//a/@href")
    assert "../../frames/linnet-8/index.html#R2" in hrefs
    assert "../../frames/linnet-8/index.html#R5" in hrefs


def test_parts_that_sit_there_come_before_those_of_the_same_size() -> None:
    assert table("bores/2.7/index.html", "bore-parts") == [
        ["Barrel 2.1", "single", "2.05", "0.65", "drops out", "sits there: 12 holes in 6 frames"],
        ["Barrel 2.7", "wide", "2.65", "0.05", "snug", "sits there: 2 holes in 1 frame"],
        ["Barrel 2.8", "wide", "2.75", "−0.05", "needs driving", "same size"],
    ]


@pytest.mark.parametrize("slug", ["plover-76", "sluice-66"])
def test_frame_and_bore_lead_to_each_other(slug: str) -> None:
    bores = {f"{hole.bore_mm:.1f}" for hole in demo_book().frames[slug].drilled}
    page = tree_of(demo_site()[f"frames/{slug}/index.html"])
    for bore in bores:
        assert page.xpath(f"//section[@id='glance']//a[@href='../../bores/{bore}/index.html']")
        back = tree_of(demo_site()[f"bores/{bore}/index.html"])
        assert back.xpath(f"//table//th/a[@href='../../frames/{slug}/index.html']")


def test_the_counts_of_the_demo_agree_with_its_maps() -> None:
    for bore in (2.1, 2.7, 3.4):
        holes = [
            hole for frame in demo_book().frames.values() for hole in frame.drilled if hole.bore_mm == bore
        ]
        assert len(holes) > 20
        tree = tree_of(demo_site()[f"bores/{bore}/index.html"])
        counts = [int(row[2]) for row in rows_of(tree.xpath("//table[caption/@id='frames-caption']")[0])]
        assert sum(counts) == len(holes)
        shared = sum(len(hole.passes) > 1 for hole in holes)
        assert f"{len(holes)} holes drilled to {bore} mm" in text_of(tree)
        assert f"{shared or 'none'} of them shared" in text_of(tree)


def test_a_part_leads_to_its_bores_with_the_holes_of_each() -> None:
    tree = TREES["parts/barrel-21/index.html"]
    words = text_of(tree.xpath("//section[@id='serves']/p[contains(., 'By bore')]")[0])
    assert "2.1 mm (46 holes), 2.7 mm (12 holes)" in words
    assert tree.xpath("//section[@id='serves']//a[@href='../../bores/2.7/index.html']")


def test_an_unknown_bore_asks_to_be_measured_and_claims_nothing() -> None:
    tree = TREES["bores/unknown/index.html"]
    words = text_of(tree)
    assert "2 holes that nobody has measured, in 1 frame" in words
    assert "with a pair of pins" in words
    assert "Wear eye protection" in words
    for fit in ("snug", "finger fit", "needs driving", "same size", "Clearance"):
        assert fit not in words
    assert table("bores/unknown/index.html", "frames-caption") == [
        ["Dipper 8", "badminton", "2", "none", "4 on both sides", "2 × unknown", "write it down"]
    ]
    assert tree.xpath("//a[.='write it down']/@href") == [
        "https://example.org/edit/frames/maps/dipper-8.yaml"
    ]


def test_a_book_that_knows_all_its_bores_has_no_page_of_unknown_ones() -> None:
    known = published(Book({"robin-8": FRAMES[0]}, parts()))
    assert "bores/unknown/index.html" not in known
    assert "bores/2.7/index.html" in known


def test_a_part_of_unknown_barrel_that_sits_there_has_no_clearance() -> None:
    catalogue = parts() | {"odd": replace(parts()["barrel-27"], id="odd", barrel_mm=None)}
    odd = make("odd-8", "Odd 8", at={5: of(2.7, "odd")})
    rows = bore_parts(2.7, "2.7", [summarise(odd, regrommet(odd, catalogue))], catalogue)
    found = {row.part.id: row for row in rows}
    assert (found["odd"].holes, found["odd"].clearance_mm, found["odd"].word) == (2, None, None)
    assert (found["barrel-28"].holes, found["barrel-28"].word) == (0, "needs driving")


def test_of_many_parts_of_the_same_size_those_nearest_are_named() -> None:
    near = parts()["barrel-27"]
    many = {
        f"near-{step}": replace(near, id=f"near-{step}", barrel_mm=2.55 + step / 1000) for step in range(300)
    }
    rows = bore_parts(2.7, "2.7", [], many)
    assert len(rows) == MOST_OTHERS
    assert max(abs(row.clearance_mm or 0) for row in rows) <= 0.031


def test_sizes_that_are_written_alike_are_one_bore() -> None:
    odd = make("odd-8", "Odd 8", at={5: of(2.701, "barrel-27"), 6: of(2.704, "barrel-27")})
    use = summarise(odd, regrommet(odd, parts())).uses["2.7"]
    assert (use.holes, use.shared_holes, use.shared, use.others) == (6, 2, "2", "5-6")
    assert use.parts == {"barrel-21": 2, "barrel-27": 4}
    assert sum(each.holes for each in summarise(odd, ()).uses.values()) == len(odd.drilled)
    assert odd.hole(Address("R", 5)).bore_mm == 2.701


def test_many_frames_of_a_bore_are_broken_over_pages() -> None:
    frames = [make(f"robin-{place:03}", f"Robin {place:03}") for place in range(260)]
    site = published(Book({frame.slug: frame for frame in frames}, parts()))
    first, more = tree_of(site["bores/2.7/index.html"]), tree_of(site["bores/2.7/page.2/index.html"])
    rows = [
        row
        for tree in (first, more)
        for row in rows_of(tree.xpath("//table[caption/@id='frames-caption']")[0])
    ]
    assert [row[0] for row in rows] == [frame.name for frame in frames]
    assert more.xpath("//p[@class='rb-lead']/a/@href") == ["../../../bores/2.7/index.html"]
    assert "520 holes drilled to 2.7 mm, in 260 frames" in text_of(first)
    page = site["bores/2.7/page.2/index.html"]
    assert isinstance(page, Page)
    assert page.kind == "bore-more"
