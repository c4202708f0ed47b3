"""The page of a club's shelf, its table and its curve."""

from __future__ import annotations

import csv
import io
from dataclasses import replace
from typing import Any

from lxml import etree, html

from rimbook.bench.answers import Answers
from rimbook.bench.part_index import index_parts
from rimbook.bench.shelf_plan import ShelfPlan
from rimbook.book.model import Shelf
from rimbook.draw.shelf_curve import Point, shelf_curve
from rimbook.site.pages import Page
from rimbook.site.publish import site
from rimbook.site.settings import Settings
from rimbook.site.shelf_csv import COLUMNS
from rimbook.site.shelf_view import club_plan
from rimbook.site.shelf_words import percent
from tests.site.sample import demo_book, demo_site, plain, published

PAGE = "clubs/weir-lane/shelf/index.html"
TABLE = "data/shelves/weir-lane.csv"


def tree() -> html.HtmlElement:
    return html.fromstring(f"<main>{demo_site()[PAGE].body}</main>")  # type: ignore[union-attr]


def words(path: str) -> str:
    return " ".join(" ".join(each.text_content() for each in tree().xpath(path)).split())


def shelf() -> ShelfPlan:
    book = demo_book()
    return club_plan(book.clubs["weir-lane"], book.frames, Answers(index_parts(book.parts)))


def test_what_to_order_stands_first_with_the_reason() -> None:
    assert tree().xpath("//section/@id")[0] == "order"
    wanted = [drawer for drawer in shelf().drawers if drawer.order]
    items = tree().xpath("//section[@id='order']//li")
    assert len(items) == len(wanted) > 0
    for drawer in wanted:
        assert drawer.order
        (item,) = tree().xpath(f"//section[@id='order']//li[.//a[contains(@href, '/{drawer.item}/')]]")
        said = " ".join(item.text_content().split())
        assert said.startswith(f"{drawer.order.units} × {demo_book().parts[drawer.item].name}")
        assert percent(drawer.order.before) in item.text_content()


def test_it_says_first_when_the_stock_was_counted() -> None:
    book = demo_book()
    club = book.clubs["weir-lane"]

    def said(**changes: Any) -> str:
        page = published(replace(book, clubs={"weir-lane": replace(club, **changes)}))[PAGE]
        assert isinstance(page, Page)
        (day,) = html.fromstring(f"<main>{page.body}</main>").xpath("//section[@id='order']/preceding::p[1]")
        return str(day.text_content())

    assert said() == "Stock as of 1 March 2027."
    assert said(on=None).startswith("Nobody has written down on which day the stock was counted")
    assert said(shelf=Shelf()) == "No stock is written down, so every drawer is taken to be empty."


def test_labels_are_promised_where_there_are_some() -> None:
    for prints in (True, False):
        page = {each.file: each for each in site(demo_book(), Settings(prints=prints))}[PAGE]
        assert isinstance(page, Page)
        assert ("Labels for the drawers" in page.body) is prints


def test_a_caution_stands_beside_the_order() -> None:
    assert "not the maker’s part" in words("//section[@id='order']//*[@class='rb-caution'][@role='note']")


def test_every_drawer_is_on_the_shelf_with_what_it_serves() -> None:
    rows = tree().xpath("//section[@id='shelf']//tbody/tr")
    assert len(rows) == len(shelf().drawers)
    (crown,) = (row for row in rows if "Plover full set" in row.text_content())
    assert "Plover 76" in crown.text_content()
    assert "opened for Plover crown strip" in crown.text_content()


def test_what_cannot_be_planned_is_named_with_what_to_do() -> None:
    said = words("//section[@id='unplanned']")
    assert "Gimlet 64" in said
    assert "Write restrings_per_year in the club’s file" in said
    assert "47 pieces (12–38 on both sides): nobody knows what part sits there" in said


def test_assumptions_are_said_to_be_some() -> None:
    assert words("//section[@id='terms']//div[.//b]").startswith(
        "Restrings that renew one part of kind uneven twin"
    )
    assert len(tree().xpath("//section[@id='terms']//b")) == 1


def test_the_table_has_every_drawer_and_every_gap() -> None:
    text = plain(demo_site()[TABLE]).decode()
    rows = list(csv.DictReader(io.StringIO(text, newline="")))
    assert tuple(rows[0]) == COLUMNS
    found = shelf()
    assert [row["part"] for row in rows if row["kind"] != "cannot be planned"] == [
        drawer.item for drawer in found.drawers
    ]
    lost = [(row["frames"], row["why"]) for row in rows if row["kind"] == "cannot be planned"]
    assert lost == [(each.frame, each.why) for each in found.unplanned]
    assert TABLE in str(tree().xpath("//a/@href"))


def test_the_table_says_what_counts_beside_the_units_and_where_a_gap_is() -> None:
    """As the page does: another barrel to use up first, a loose strip of a set, a head without parts."""
    rows = list(csv.DictReader(io.StringIO(plain(demo_site()[TABLE]).decode(), newline="")))
    by_part = {row["part"]: row for row in rows if row["part"]}
    long, weir = by_part["barrel-21-long"], by_part["weir-set"]
    assert (long["stock"], long["counts_too"]) == (
        "0",
        "first use up 3 Short barrel 2.1; first use up 6 Barrel 2.0",
    )
    assert (weir["stock"], weir["counts_too"]) == ("0", "loose 1 Weir side strip")
    assert "none; first use up 3 Short barrel 2.1; first use up 6 Barrel 2.0" in words(
        "//section[@id='shelf']"
    )
    pipit, gimlet = (row for row in rows if row["kind"] == "cannot be planned")
    assert (pipit["frames"], pipit["holes"], pipit["opened_for"]) == (
        "pipit-76",
        "12–38 on both sides",
        "",
    )
    assert (gimlet["frames"], gimlet["holes"]) == ("gimlet-64", "")


def test_a_new_column_of_the_table_goes_to_the_right_end() -> None:
    """As the page on data promises: a program that reads the older ones finds them as they were."""
    assert COLUMNS == (
        "part", "name", "kind", "frames", "stands_in_for", "opened_for", "a_year", "reorder_below",
        "fill_up_to", "chance", "short_a_year", "stock", "order", "packs", "urgent", "why",
        "counts_too", "holes",
    )  # fmt: skip


def test_a_club_without_a_shelf_has_no_page_of_one() -> None:
    book = demo_book()
    bare = replace(book.clubs["weir-lane"], shelf=None)
    site = published(replace(book, clubs={"weir-lane": bare}))
    assert not {PAGE, TABLE} & site.keys()
    assert "What to keep" not in site["clubs/weir-lane/index.html"].body  # type: ignore[union-attr]
    assert "What to keep" in demo_site()["clubs/weir-lane/index.html"].body  # type: ignore[union-attr]


def test_a_shelf_of_nothing_known_is_a_page_all_the_same() -> None:
    book = demo_book()
    club = replace(book.clubs["weir-lane"], shelf=Shelf())
    blank = replace(club, frames=tuple(replace(each, restrings_per_year=None) for each in club.frames))
    page = published(replace(book, clubs={"weir-lane": blank}))[PAGE]
    said = " ".join(html.fromstring(page.body).text_content().split())  # type: ignore[union-attr]
    assert "Nothing: every drawer lasts" in said
    assert said.count("assumption") >= 8


def test_the_curve_says_its_numbers_and_rises_with_them() -> None:
    drawn = etree.fromstring(shelf_curve([Point("80", 4, 2), Point("95", 12, 9)]))
    space = {"s": "http://www.w3.org/2000/svg"}
    assert drawn.xpath("string(s:desc)", namespaces=space) == (
        "80 %: 2 with the fewest drawers, 4 with one drawer a part; "
        "95 %: 9 with the fewest drawers, 12 with one drawer a part"
    )
    assert drawn.xpath("//s:text[.='pieces on the full shelf']", namespaces=space)
    first, second = (float(each) for each in drawn.xpath("//s:circle/@cy", namespaces=space)[:2])
    assert first > second
    assert drawn.xpath("//s:text[.='15']", namespaces=space)


def test_no_chance_is_rounded_up_to_certainty() -> None:
    assert percent(0.99996) == "over 99.9\u00a0%"
    assert percent(0.9786) == "97.9\u00a0%"
