"""Lists of parts stay usable when there are thousands: no page has more rows than any other list."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

from rimbook.book.model import Book, Part
from rimbook.site.pages import Asset, Page
from rimbook.site.paging import ROWS
from tests.site.cross_sample import FRAMES, parts
from tests.site.reading import broken, text_of, tree_of
from tests.site.sample import published

MAKER = "Saltmarsh Works"


@cache
def site() -> dict[str, Page | Asset]:
    """One frame and 2,000 parts more: 1,200 single, 500 wide, 300 twins; 800 of them by one maker."""
    catalogue = parts()
    for place in range(2_000):
        kind = "barrel-21" if place < 1_200 else "barrel-27" if place < 1_700 else "twin-21"
        part: Part = replace(
            catalogue[kind],
            id=f"{kind}-{place:04}",
            name=f"More {place:04}",
            maker=MAKER if place < 800 else None,
        )
        catalogue[part.id] = part
    return published(Book({FRAMES[0].slug: FRAMES[0]}, catalogue))


@cache
def trees() -> dict[str, Any]:
    return {
        file: tree_of(page) for file, page in site().items() if isinstance(page, Page) and page.kind != "part"
    }


def test_the_list_of_parts_is_broken_over_pages_and_names_every_part_once() -> None:
    pages = {file: tree for file, tree in trees().items() if file.startswith("parts/")}
    assert len(pages) == 9, "2,009 parts"
    rows = [len(tree.xpath("//tbody/tr")) for tree in pages.values()]
    assert rows == [ROWS] * 8 + [9]
    named = [href for tree in pages.values() for href in tree.xpath("//tbody//th/a/@href")]
    assert len(named) == len(set(named)) == 2_009
    sizes = [len(page.body) for file, page in site().items() if file in pages and isinstance(page, Page)]
    assert max(sizes) < 120_000


def test_each_kind_can_be_reached_from_each_page() -> None:
    first, third = trees()["parts/index.html"], trees()["parts/page.3/index.html"]
    links = first.xpath("//nav[@aria-label='Kinds of part']//a")
    assert [(text_of(link), link.get("href")) for link in links] == [
        ("Single parts (1,202)", "#single"),
        ("Wide parts (502)", "../parts/page.5/index.html#wide"),
        ("Even twins (301)", "../parts/page.7/index.html#twin-even"),
        ("Strips (2)", "../parts/page.9/index.html#strip"),
        ("Sets (2)", "../parts/page.9/index.html#set"),
    ]
    assert third.xpath("//nav[@aria-label='Kinds of part']//a/@href")[:2] == [
        "../../parts/index.html#single",
        "../../parts/page.5/index.html#wide",
    ]
    assert text_of(third.xpath("//caption")[0]) == "250 of 1,202 parts, sizes in mm"
    assert not [each for each in broken(site(), trees()) if each[0].startswith("parts/")]


def test_the_parts_of_a_maker_are_broken_over_pages() -> None:
    path = "makers/saltmarsh-works/"
    pages = {file: tree for file, tree in trees().items() if file.startswith(path)}
    assert list(pages) == [f"{path}index.html", *(f"{path}page.{number}/index.html" for number in (2, 3, 4))]
    listed = [len(tree.xpath("//section[@id='parts']//li")) for tree in pages.values()]
    assert listed[:3] == [ROWS] * 3
    assert sum(listed) == 800 + sum(part.maker == MAKER for part in parts().values())
    assert [len(tree.xpath("//table[@data-rb-table='frames']")) for tree in pages.values()] == [1, 0, 0, 0]
    assert not [each for each in broken(site(), trees()) if each[0].startswith(path)]
