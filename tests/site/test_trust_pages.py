"""What is wanted, who is thanked, how far a map is trusted, and where old addresses lead."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import date

import pytest
from lxml import html

from rimbook.bench.parts_list import regrommet
from rimbook.book.model import Book, Confirmed, Frame, Measured, Moved
from rimbook.site.credits_page import credit_pages, credits_of
from rimbook.site.cross import cross_index
from rimbook.site.pages import Asset, Page
from rimbook.site.paging import ROWS
from rimbook.site.settings import Settings
from rimbook.site.summary import summarise
from rimbook.site.wanted_page import MOST, Wanted, wanted, wanted_page
from tests.site.sample import EDIT_BASE, demo_site, published, small_book, small_frame, small_parts


def body(site: dict[str, Page | Asset], path: str) -> str:
    page = site[path]
    assert isinstance(page, Page)
    return page.body


def words(markup: str, path: str = "//main") -> str:
    tree = html.fromstring(f"<main>{markup}</main>")
    return " ".join(" ".join(each.text_content() for each in tree.xpath(path)).split())


def wanted_of(*frames: Frame) -> Wanted:
    summaries = [summarise(frame, regrommet(frame, small_parts())) for frame in frames]
    return wanted(cross_index(summaries, small_parts()), small_parts(), Settings(EDIT_BASE))


def without(frame: Frame, slug: str, *numbers: int) -> Frame:
    """The frame with the bores of these holes unknown, on both sides."""
    holes = tuple(
        replace(hole, bore_mm=None) if hole.address.number in numbers else hole for hole in frame.holes
    )
    return replace(frame, slug=slug, name=slug, holes=holes)


def test_the_map_that_lacks_most_comes_first() -> None:
    frame = small_frame()
    found = wanted_of(without(frame, "few", 2), without(frame, "many", 2, 3, 6), without(frame, "some", 2, 3))
    assert [row.frame.slug for row in found.maps] == ["many", "some", "few"]
    assert found.maps[2].what == "the bore of 4 holes, the part of 2 holes and the rim depth of 2 holes"
    assert found.maps[0].edit == "https://example.org/edit/frames/maps/wren-8.yaml"


def test_parts_that_nobody_measured_come_by_how_many_frames_take_them() -> None:
    frame = small_frame()
    alone = replace(
        frame,
        slug="alone",
        holes=tuple(replace(h, twin=None, part="barrel-21") for h in frame.holes if h.strip is None),
        strips=(),
        twins=(),
    )
    found = wanted_of(frame, alone)
    assert [(row.part.id, row.frames) for row in found.parts] == [
        ("barrel-21", 2),
        ("crown-8", 1),
        ("twin-21", 1),
    ]
    assert {row.what for row in found.parts} == {"every size: nobody has signed for them"}
    assert "wren-set" not in [row.part.id for row in found.parts]


def test_maps_that_only_one_person_saw_are_asked_for() -> None:
    frame = small_frame()
    found = wanted_of(
        frame,
        replace(frame, slug="alone", confirmed=()),
        replace(frame, slug="none", measured=None, confirmed=()),
    )
    assert [(row.frame.slug, row.what) for row in found.unconfirmed] == [
        ("none", "signed by nobody"),
        ("alone", "measured by a-handle alone"),
    ]


def test_the_lists_are_cut_and_say_so() -> None:
    frame = small_frame()
    many = [replace(frame, slug=f"wren-{number}", confirmed=()) for number in range(MOST + 5)]
    found = wanted_of(*many)
    assert (len(found.maps), found.map_count) == (MOST, MOST + 5)
    summaries = [summarise(each, regrommet(each, small_parts())) for each in many]
    page = wanted_page(cross_index(summaries, small_parts()), small_parts(), Settings())
    assert page.body.count(f"The first {MOST} of {MOST + 5} maps") == 2
    assert "<code>frames/maps/wren-8.yaml</code>" in page.body


def test_a_book_that_lacks_nothing_says_so() -> None:
    page = wanted_page(cross_index([], {}), {}, Settings())
    assert words(page.body).count("There is none:") == 3


def test_the_demo_asks_for_what_it_lacks() -> None:
    said = words(body(demo_site(), "wanted/index.html"))
    assert "Pipit 76" in said
    assert "cover your eyes" in said


def test_everybody_is_thanked_for_what_they_did() -> None:
    frame = small_frame()
    parts = {key: replace(part, measured=Measured("c-handle")) for key, part in small_parts().items()}
    other = replace(
        frame, slug="other", measured=Measured("other-handle"), confirmed=(Confirmed("b"), Confirmed("b"))
    )
    summaries = [summarise(each, regrommet(each, parts)) for each in (frame, other)]
    found = credits_of(cross_index(summaries, parts), parts)
    assert [(each.handle, len(each.measured), len(each.confirmed), len(each.parts)) for each in found] == [
        ("c-handle", 0, 0, 4),
        ("other-handle", 1, 1, 0),
        ("a-handle", 1, 0, 0),
        ("b", 0, 1, 0),
    ]


def test_many_people_are_listed_on_several_pages() -> None:
    frame = small_frame()
    people = [replace(frame, slug=f"w-{n}", measured=Measured(f"h-{n}")) for n in range(ROWS + 1)]
    summaries = [summarise(each, regrommet(each, small_parts())) for each in people]
    pages = list(credit_pages(cross_index(summaries, small_parts()), small_parts()))
    assert [(page.path, page.kind) for page in pages] == [
        ("credits/", "credits"),
        ("credits/page.2/", "credits-more"),
    ]


def test_a_frame_says_how_far_it_is_trusted_and_why() -> None:
    page = body(demo_site(), "frames/plover-76/index.html")
    said = words(page, "//section[@id='confidence']")
    assert "Confidence 4 of 5: good." in said
    assert "0 of 760 of 1" in said
    rows = html.fromstring(page).xpath("//table[@data-rb-table='trust']/tbody/tr/td[2]/text()")
    assert sum(int(row.split()[0]) for row in rows) == 4
    listed = words(
        body(demo_site(), "frames/index.html"), "//tr[th/a[starts-with(text(),'Plover 76')]]/td[last()]"
    )
    assert listed == "4"


def test_a_younger_book_makes_a_map_old() -> None:
    book = small_book()
    young = replace(small_frame("young-8"), name="Young 8", measured=Measured("a", date(2036, 1, 1)))
    both = published(Book({**book.frames, "young-8": young}, book.parts))
    alone = published(book)
    scores = []
    for site in (alone, both):
        data = site["data/frames/wren-8.json"]
        assert isinstance(data, Asset)
        scores.append(json.loads(data.data)["confidence"])
    assert scores == [3, 2]


@pytest.mark.parametrize(
    ("fact", "known", "source"),
    [
        ("Bore", "known for 12 of 14 holes (86 %); unknown at 4 on both sides", "measured by a-handle"),
        ("Sizes of the parts", "known for all 3 parts", "nobody signed for it"),
        (
            "Outline",
            "an ellipse through the width and height of the head",
            "width and height measured by a-handle",
        ),
        ("Place", "all worked out from the string pattern, none measured", "worked out"),
    ],
)
def test_each_fact_says_where_it_comes_from(fact: str, known: str, source: str) -> None:
    row = words(
        body(published(small_book()), "frames/wren-8/index.html"),
        f"//table[@data-rb-table='facts']//tr[th='{fact}']",
    )
    assert row.startswith(f"{fact}{known}")
    assert source in row


def test_at_an_old_address_there_is_the_way_on() -> None:
    book = replace(small_book(), moved=Moved({"wren-old": "wren-8"}, {"barrel-old": "barrel-21"}))
    site = published(book)
    for path, leads_to, name in (
        ("frames/wren-old/index.html", "frames/wren-8/", "Wren 8"),
        ("parts/barrel-old/index.html", "parts/barrel-21/", "Barrel 2.1"),
    ):
        page = site[path]
        assert isinstance(page, Page)
        assert page.leads_to == leads_to
        assert f'<a href="../../{leads_to}index.html" data-rb-leads-to>{name}</a>' in page.body
    assert "data/frames/wren-old.json" not in site
    moved = site["data/moved.json"]
    assert isinstance(moved, Asset)
    assert json.loads(moved.data) == {
        "format": 1,
        "frames": {"wren-old": "wren-8"},
        "parts": {"barrel-old": "barrel-21"},
    }
