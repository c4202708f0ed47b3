"""Sets, strips and frames: what holds what, for which frame, and how much of a regrommet it gives."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from rimbook.book.model import Book, Part
from rimbook.site.covers import cover, cover_words
from rimbook.site.pages import Page
from rimbook.site.set_frames import sets_for
from rimbook.site.sold import sets_of
from tests.site.cross_sample import FRAMES, cross_site, parts
from tests.site.reading import broken, rows_of, text_of, tree_of
from tests.site.sample import published


def tree(file: str) -> Any:
    return tree_of(cross_site()[file])


def items(file: str, section: str) -> list[str]:
    return [text_of(item) for item in tree(file).xpath(f"//section[@id='{section}']//li")]


def test_a_set_says_what_it_holds_beside_what_its_frame_takes() -> None:
    table = tree("parts/robin-set/index.html").xpath("//section[@id='contents']//table")[0]
    assert [text_of(cell) for cell in table.xpath(".//thead//th")][2:] == ["In the set", "Robin 8 takes"]
    assert rows_of(table) == [
        ["Wren crown", "strip", "1", "1"],
        ["Barrel 2.1", "single", "10", "10"],
        ["Twin 2.1", "even twin", "1", "1"],
    ]


def test_a_set_names_the_frames_it_is_made_for_and_says_which_have_no_map() -> None:
    assert items("parts/robin-set/index.html", "made-for") == [
        "Robin 8 by Saltmarsh Works: the whole of it",
        "heron-9, which has no map in this book",
    ]


def test_a_set_names_other_frames_it_would_serve_wholly_and_then_partly() -> None:
    assert items("parts/robin-set/index.html", "others") == [
        "Twite 8 by Lantern Row: the whole of it",
        "Brambling 8 by Saltmarsh Works: all but 1 × Brambling crown",
        "Dipper 8 by Saltmarsh Works: all but 2 × unknown",
        "Linnet 8 by Saltmarsh Works: all but 2 × Barrel 2.7",
        "Siskin 8 by Saltmarsh Works: all but 2 × Barrel 2.1",
        "Ouzel 8 by Saltmarsh Works: 2 of 12 pieces",
    ]
    assert "It was not made for these frames" in text_of(tree("parts/robin-set/index.html"))


def test_a_frame_names_its_own_set_first_and_what_others_give() -> None:
    assert items("frames/robin-8/index.html", "regrommet") == [
        "Robin set, made for this frame: the whole of it",
        "Wren set: all but 2 × Barrel 2.1 and 1 × Twin 2.1",
    ]
    assert items("frames/twite-8/index.html", "regrommet")[0] == "Robin set: the whole of it"


def test_a_part_leads_to_its_sets_and_they_to_their_frames() -> None:
    assert items("parts/twin-21/index.html", "sold") == ["1 × in Robin set, made for Robin 8"]
    hrefs = tree("parts/twin-21/index.html").xpath("//section[@id='sold']//a/@href")
    assert hrefs == ["../../parts/robin-set/index.html", "../../frames/robin-8/index.html"]


def test_strips_have_a_list_with_their_holes_and_how_they_are_sold() -> None:
    rows = rows_of(tree("strips/index.html").xpath("//table")[0])
    first = "; ".join(f"{name}: 1 on both sides" for name in ("Dipper 8", "Linnet 8", "Ouzel 8"))
    assert rows == [
        ["Brambling crown", "2", "no", "Brambling 8: 1 on both sides", "singly"],
        ["Wren crown", "2", "no", f"{first}; and 3 more frames", "only in a set: Wren set, Robin set"],
    ]
    assert tree("strips/index.html").xpath("//a[@href='../frames/dipper-8/index.html#R1']")
    assert tree("strips/index.html").xpath("//a[@href='../parts/robin-set/index.html']")
    assert tree("parts/crown-8/index.html").xpath("//a[@href='../../strips/index.html']")


def test_sets_have_a_list_with_what_they_hold_and_for_what() -> None:
    assert rows_of(tree("sets/index.html").xpath("//table")[0]) == [
        ["Robin set", "Robin 8", "1 × Wren crown, 10 × Barrel 2.1, 1 × Twin 2.1"],
        ["Wren set", "no frame of this book", "1 × Wren crown, 8 × Barrel 2.1"],
    ]


@pytest.mark.parametrize(
    ("contents", "needs", "unknown", "words"),
    [
        ({"a": 4, "b": 1}, {"a": 4, "b": 1}, 0, "the whole of it"),
        ({"a": 9, "b": 1}, {"a": 4}, 0, "the whole of it"),
        ({"a": 3}, {"a": 4}, 0, "all but 1 × a"),
        ({"a": 4}, {"a": 4}, 2, "all but 2 × unknown"),
        ({"a": 1}, {"a": 9}, 0, "1 of 9 pieces"),
        ({"a": 40}, {"a": 40, "b": 1, "c": 1, "d": 1, "e": 1}, 0, "40 of 44 pieces"),
        ({"a": 1}, {}, 0, "nothing is known of its parts"),
        ({}, {"a": 1}, 0, "0 of 1 piece"),
    ],
)
def test_what_a_set_gives_is_said_in_words(
    contents: dict[str, int], needs: dict[str, int], unknown: int, words: str
) -> None:
    assert cover_words(cover(contents, needs, unknown, {}), {}) == words


def test_a_frame_of_which_something_is_unknown_is_never_wholly_served() -> None:
    assert not cover({"a": 9}, {"a": 4}, 1, {}).whole
    assert not cover({"a": 9}, {}, 0, {}).whole


def test_many_sets_and_strips_are_broken_over_pages() -> None:
    catalogue = parts()
    for place in range(260):
        strip = replace(catalogue["crown-9"], id=f"strip-{place:03}", name=f"Strip {place:03}")
        catalogue[strip.id] = strip
        own = Part(f"set-{place:03}", f"Set {place:03}", "set", contains={strip.id: 1}, packs=(1,))
        catalogue[own.id] = own
    site = published(Book({FRAMES[0].slug: FRAMES[0]}, catalogue))
    trees = {
        file: tree_of(page) for file, page in site.items() if isinstance(page, Page) and page.kind != "part"
    }
    assert {"sets/page.2/index.html", "strips/page.2/index.html"} <= trees.keys()
    assert len(trees["sets/index.html"].xpath("//tbody/tr")) == 250
    assert len(trees["sets/page.2/index.html"].xpath("//tbody/tr")) == 12
    lists = ("sets/", "strips/", "parts/index.html")
    assert not [each for each in broken(site, trees) if each[0].startswith(lists)]
    assert not trees["parts/index.html"].xpath("//section[@id='strip' or @id='set']")
    assert trees["parts/index.html"].xpath("//nav//a[@href='../strips/index.html']")


def test_a_barrel_that_is_in_every_set_leads_to_no_flood_of_them() -> None:
    many = {
        f"set-{place}": Part(f"set-{place}", "A set", "set", contains={"barrel-21": 50}, packs=(1,))
        for place in range(100)
    }
    catalogue = parts() | many
    found = sets_for("robin-8", {"barrel-21": 10}, 0, catalogue, sets_of(catalogue), 6)
    assert [giving.part.id for giving in found] == ["robin-set"]
