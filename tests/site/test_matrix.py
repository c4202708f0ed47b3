"""The matrices: right counts, narrow tables, short pages, and ways to and from everything in them."""

from __future__ import annotations

from dataclasses import replace
from random import Random
from typing import Any

import pytest

from rimbook.bench.parts_list import regrommet
from rimbook.book.model import Book
from rimbook.site.cross import cross_index
from rimbook.site.matrix import COLUMNS, MOST_TABLES, matrix
from rimbook.site.matrix_pages import matrix_pages
from rimbook.site.matrix_places import ROWS
from rimbook.site.pages import Page
from rimbook.site.summary import Summary, summarise
from tests.site.cross_sample import FRAMES, book, cross_site, parts
from tests.site.reading import rows_of, text_of, tree_of
from tests.site.sample import demo_book, demo_site, plain, published

ROBIN = summarise(FRAMES[0], regrommet(FRAMES[0], parts()))


def tree(file: str) -> Any:
    return tree_of(cross_site()[file])


def headings(table: Any) -> list[str]:
    return [text_of(cell) for cell in table.xpath("./thead/tr/th")]


def test_frames_by_bore_count_holes() -> None:
    (table,) = tree("matrix/bores/badminton/index.html").xpath("//table")
    assert headings(table) == ["Frame", "2.1", "2.7", "unknown"]
    assert rows_of(table) == [
        ["Lantern Row", ""],
        ["Twite 8", "12", "2", ""],
        ["Saltmarsh Works", ""],
        ["Brambling 8", "12", "2", ""],
        ["Dipper 8", "10", "2", "2"],
        ["Linnet 8", "10", "4", ""],
        ["Robin 8", "12", "2", ""],
        ["Siskin 8", "12", "2", ""],
    ]


def test_frames_by_part_count_pieces_and_have_what_most_take_first() -> None:
    (table,) = tree("matrix/parts/badminton/index.html").xpath("//table")
    assert headings(table) == [
        "Frame", "Barrel 2.1", "Wren crown", "Twin 2.1", "Barrel 2.7", "Brambling crown", "unknown part",
    ]  # fmt: skip
    found = {row[0]: row[1:] for row in rows_of(table)}
    assert found["Robin 8"] == ["10", "1", "1", "", "", ""]
    assert found["Siskin 8"] == ["12", "1", "", "", "", ""]
    assert found["Dipper 8"] == ["8", "1", "1", "", "", "2"]
    assert "Ouzel 8" not in found


def test_the_numbers_of_the_demo_are_those_of_its_maps() -> None:
    frames = [frame for frame in demo_book().frames.values() if frame.sport == "tennis"]
    by_bore = tree_of(demo_site()["matrix/bores/tennis/index.html"])
    by_part = tree_of(demo_site()["matrix/parts/tennis/index.html"])
    assert _sum(by_bore) == sum(len(frame.drilled) for frame in frames)
    assert _sum(by_part) == sum(
        line.count for frame in frames for line in regrommet(frame, demo_book().parts)
    )


def _sum(page: Any) -> int:
    return sum(int(text) for text in page.xpath("//td[not(@colspan)]/text()"))


def test_frames_bores_parts_and_makers_lead_there_and_back() -> None:
    by_part = tree("matrix/parts/badminton/index.html")
    for href in (
        "../../../frames/robin-8/index.html",
        "../../../parts/crown-8/index.html",
        "../../../makers/lantern-row/index.html",
        "../../../matrix/bores/badminton/index.html",
    ):
        assert by_part.xpath(f"//a[@href='{href}']"), href
    assert tree("matrix/bores/badminton/index.html").xpath("//a[@href='../../../bores/2.7/index.html']")
    to_row = "../../matrix/parts/badminton/index.html#row-"
    assert tree("parts/crown-8/index.html").xpath(f"//a[starts-with(@href, '{to_row}')]")
    assert tree("makers/lantern-row/index.html").xpath(f"//a[@href='{to_row}twite-8']")
    assert tree("sports/badminton/index.html").xpath(f"//a[starts-with(@href, '{to_row}')]")
    assert tree("bores/2.7/index.html").xpath("//a[contains(@href, '/matrix/bores/badminton/')]")
    assert tree("matrix/index.html").xpath(
        "//a[@href='../matrix/parts/badminton/index.html#maker-lantern-row']"
    )


def test_a_table_is_named_can_be_scrolled_by_keyboard_and_has_headings_both_ways() -> None:
    page = tree("matrix/parts/badminton/index.html")
    (region,) = page.xpath("//*[@role='region']")
    assert region.get("tabindex") == "0"
    assert page.xpath(f"//caption[@id='{region.get('aria-labelledby')}']")
    assert {cell.get("scope") for cell in page.xpath("//thead//th")} == {"col"}
    assert {cell.get("scope") for cell in page.xpath("//tbody//th")} == {"row", "rowgroup"}


def _copies(count: int) -> list[Summary]:
    return [
        replace(ROBIN, slug=f"robin-{place:04}", name=f"Robin {place:04}", maker=f"Maker {place % 3}")
        for place in range(count)
    ]


def _pages(frames: list[Summary]) -> dict[str, Page]:
    return {page.file: page for page in matrix_pages(cross_index(frames, parts()), parts())}


def test_many_frames_are_broken_over_pages_maker_by_maker() -> None:
    frames = _copies(2 * ROWS + 30)
    pages = _pages(frames)
    files = [f"matrix/bores/badminton/{folder}index.html" for folder in ("", "page.2/", "page.3/")]
    assert {file for file in pages if "/bores/" in file} == set(files)
    rows = [row for file in files for row in tree_of(pages[file]).xpath("//tr/@id") if "row-" in row]
    ordered = sorted(frames, key=lambda frame: (frame.maker, frame.name))
    assert rows == [f"row-{frame.slug}" for frame in ordered]
    assert pages[files[1]].kind == "matrix-sport-more"
    index = tree_of(pages["matrix/index.html"])
    for maker in range(3):
        (href,) = index.xpath(f"//tr[th='Maker {maker}']/td[3]/a/@href")
        target, anchor = href.removeprefix("../").split("#")
        assert tree_of(pages[target]).xpath(f"//tr[@id='{anchor}']/th[.='Maker {maker}']")


def test_a_frame_leads_to_its_own_row_on_whichever_page() -> None:
    cross = cross_index(_copies(ROWS + 1), parts())
    last = cross.matrix.rows["badminton"][-1]
    assert cross.matrix.of_frame("parts", last, "") == (
        f"matrix/parts/badminton/page.2/index.html#row-{last.slug}"
    )


def _with(counts: dict[str, int], number: int) -> Summary:
    return replace(ROBIN, slug=f"f-{number}", name=f"F {number}", parts=counts)


def test_many_columns_become_several_tables_with_the_widest_used_first() -> None:
    frames = [_with({f"part-{n:02}": 1 for n in range(30) if n % (k + 1) == 0}, k) for k in range(4)]
    found = matrix(frames, lambda frame: frame.parts, list)
    assert [len(block.columns) for block in found.blocks] == [12, 12, 6]
    columns = [name for block in found.blocks for name in block.columns]
    used = [sum(name in frame.parts for frame in frames) for name in columns]
    assert used == sorted(used, reverse=True)
    assert found.blocks[0].frames == 4
    assert all(any(row.counts) for block in found.blocks[1:] for _, rows in block.makers for row in rows)
    assert not found.rest


def test_what_one_frame_alone_takes_gets_no_column_where_columns_are_many() -> None:
    most = COLUMNS * MOST_TABLES
    few = [_with({"common": 3, **{f"own-{k}-{n}": 1 for n in range(4)}}, k) for k in range(4)]
    assert matrix(few, lambda frame: frame.parts, list, least=2).rest == []
    many = [_with({"common": 3, f"own-{k}": 2}, k) for k in range(most)]
    found = matrix(many, lambda frame: frame.parts, list, least=2)
    assert [list(block.columns) for block in found.blocks] == [["common"]]
    assert found.rest == [(frame, {f"own-{k}": 2}) for k, frame in enumerate(many)]


def test_parts_without_a_column_are_still_on_the_page() -> None:
    catalogue = parts()
    frames = []
    for place in range(40):
        own = replace(catalogue["crown-8"], id=f"crown-{place + 100}", name=f"Crown {place}")
        catalogue[own.id] = own
        frames.append(_with({"barrel-21": 10, own.id: 1}, place))
    pages = matrix_pages(cross_index(frames, catalogue), catalogue)
    page = next(tree_of(each) for each in pages if each.path == "matrix/parts/badminton/")
    assert headings(page.xpath("//table")[0]) == ["Frame", "Barrel 2.1"]
    rows = rows_of(page.xpath("//section[@id='rest']//table")[0])
    assert sorted(rows) == sorted([f"F {place}", f"1 × Crown {place}"] for place in range(40))


def test_a_part_is_left_out_of_no_table_by_the_length_of_its_name() -> None:
    catalogue = parts()
    catalogue["twin-21"] = replace(catalogue["twin-21"], name="W" * 200)
    whole = published(Book(book().frames, catalogue))
    assert "W" * 200 in headings(tree_of(whole["matrix/parts/badminton/index.html"]).xpath("//table")[0])


def test_a_book_without_frames_still_has_its_index() -> None:
    (page,) = _pages([]).values()
    assert "There is no frame here yet." in text_of(tree_of(page))


@pytest.mark.parametrize("seed", [1, 2])
def test_the_order_in_which_frames_come_makes_no_difference(seed: int) -> None:
    frames = _copies(ROWS + 20)
    mixed = list(frames)
    Random(seed).shuffle(mixed)
    one, other = _pages(frames), _pages(mixed)
    assert {file: plain(page) for file, page in one.items()} == {
        file: plain(page) for file, page in other.items()
    }
