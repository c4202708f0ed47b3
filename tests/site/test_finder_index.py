"""The finder's index as the build writes it. What a browser makes of it is tested with the browser."""

from __future__ import annotations

import gzip
import json
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.book.model import Moved
from rimbook.site.board_card import BoardPart, board_card, board_file
from rimbook.site.finder_index import (
    FRAMES_FILE,
    PARTS_FILE,
    FinderFrame,
    FinderPart,
    FinderPlace,
    finder_index,
    glossary_word,
)
from rimbook.site.handover import handover, json_text
from tests.speed.finder import generated, sizes

PLOVER = FinderFrame(
    "plover-76", "Plover 76", "Saltmarsh Works", "badminton", 22, 21, 76, ("10", "2.1"), (13, 9), ("b", "a"),
    ("Plover seventy-six",), 2024,
)  # fmt: skip
PARTS = (FinderPart("b", "Part b", "single"), FinderPart("a", "A", "wide", "Saltmarsh Works"))


def read(script: bytes) -> Any:
    """The value that a data script hands over."""
    text = script.decode()
    assert text.startswith("rimbook.put(")
    assert text.endswith(");\n")
    return json.loads(f"[{text[len('rimbook.put(') : -3]}]")[1]


def index(*frames: FinderFrame) -> tuple[Any, Any]:
    files = finder_index(frames, PARTS, ())
    return read(files[FRAMES_FILE]), read(files[PARTS_FILE])


def test_columns_of_one_frame() -> None:
    frames, parts = index(PLOVER)
    assert (frames["names"], frames["slugs"], frames["aliases"]) == (
        "Plover 76\n",
        "\n",
        "Plover seventy-six\n",
    )
    assert (frames["bores"], frames["boreSets"], frames["boreSet"]) == (["2.1", "10"], [[0, 1]], [0])
    assert (frames["sharedSets"], frames["patterns"], frames["years"]) == ([[9, 4]], ["22x21"], [2024])
    assert (parts["ids"], parts["names"], parts["partSets"]) == ("a\nb\n", "\nPart b\n", [[0, 1]])
    assert frames["stamp"] == parts["stamp"]


def test_old_names_lead_to_those_of_today() -> None:
    files = finder_index([PLOVER], PARTS, (), Moved({"plover-old": "plover-76"}, {"old": "a"}))
    assert read(files[FRAMES_FILE])["moved"] == {"plover-old": "plover-76"}
    assert read(files[PARTS_FILE])["moved"] == {"old": "a"}


@pytest.mark.parametrize(
    ("name", "slug", "written"),
    [
        ("Plover 76", "plover-76", ""),
        ("T-Line 2.0!", "t-line-2-0", ""),
        ("Élan", "elan", "elan"),
        ("Plover 76", "plover-76-old", "plover-76-old"),
    ],
)
def test_a_slug_is_written_only_where_the_name_does_not_give_it(name: str, slug: str, written: str) -> None:
    frames, _ = index(replace(PLOVER, name=name, slug=slug))
    assert frames["slugs"] == f"{written}\n"


def test_like_sets_are_written_once() -> None:
    sets = [(9,), (13,), (9,), (9,), (), (13,)]
    many = [replace(PLOVER, slug=f"f-{at}", name=f"F {at}", shared=shared) for at, shared in enumerate(sets)]
    frames, _ = index(*many)
    assert frames["sharedSets"] == [[9], [13], []]
    assert frames["sharedSet"] == [0, 0, 2, 2, 0, 2]


def test_the_order_of_what_is_given_does_not_matter() -> None:
    others = [replace(PLOVER, slug=f"f-{at}", name=f"F {at % 7}", maker=f"M {at % 3}") for at in range(30)]
    assert finder_index(others, PARTS, ()) == finder_index(others[::-1], PARTS[::-1], ())


def test_both_files_change_their_stamp_together() -> None:
    before, after = index(PLOVER), index(replace(PLOVER, parts=("a",)))
    assert before[0]["stamp"] != after[0]["stamp"] == after[1]["stamp"]


def test_a_part_that_the_catalogue_does_not_know_is_left_out() -> None:
    _, parts = index(replace(PLOVER, parts=("a", "gone")))
    assert parts["partSets"] == [[0]]


def test_an_empty_book_has_an_index() -> None:
    frames, parts = index()
    assert (frames["names"], frames["boreSets"], parts["partSets"]) == ("", [], [])


def test_another_name_of_a_part_is_found_without_the_word_itself() -> None:
    twin = glossary_word("Twin", "glossary/index.html#twin", ["U-shaped grommet", " ", "two-post grommets"])
    assert twin.also == ("U-shaped grommet", "two-post grommets", "U-shaped", "two-post", "Twins")


@given(st.text(max_size=40), st.text(max_size=40))
def test_a_line_stays_one_line(name: str, alias: str) -> None:
    name, alias = (text.encode("utf-8", "replace").decode() for text in (name, alias))
    frames, _ = index(replace(PLOVER, name=name, aliases=(alias, alias)))
    assert [frames[column].count("\n") for column in ("names", "slugs", "aliases")] == [1, 1, 1]
    assert frames["aliases"].count("\t") == 1


@given(st.recursive(st.text() | st.integers(-9, 9) | st.none(), lambda inner: st.lists(inner, max_size=3)))
def test_what_is_handed_over_arrives_and_stays_harmless(value: object) -> None:
    value = json.loads(json.dumps(value).encode("utf-8", "replace"))
    script = handover("x", value)
    assert read(script) == value
    assert b"<" not in script


def test_line_ends_of_old_javascript_are_escaped() -> None:
    assert handover("x", "</script>\u2028") == b'rimbook.put("x","\\u003c/script>\\u2028");\n'


def test_a_card_of_the_board() -> None:
    parts = [
        BoardPart("a", "A", "single", 62, "singly"),
        BoardPart(None, "unknown part", "unknown", 2, "unknown"),
    ]
    shelf = json_text({"places": [], "items": {"a": {"name": "</script>"}}})
    script = board_card("plover-76", "Plover 76 (2024)", "a.svg", [("Bores", "2.1")], parts, shelf)
    assert b"<" not in script
    card = read(script)
    assert card["shelf"]["items"]["a"]["name"] == "</script>"
    assert board_file("plover-76") == "data/board/plover-76.js"
    assert (card["path"], card["facts"]) == ("frames/plover-76/index.html", [["Bores", "2.1"]])
    assert [part["path"] for part in card["parts"]] == ["parts/a/index.html", ""]


def test_places_keep_their_order() -> None:
    places = [FinderPlace("page", title, "p/index.html", ("x",), "n") for title in ("b", "a")]
    frames = read(finder_index([PLOVER], PARTS, places)[FRAMES_FILE])
    assert frames["places"] == [
        ["page", "b", "p/index.html", ["x"], "n"],
        ["page", "a", "p/index.html", ["x"], "n"],
    ]


def test_ten_thousand_frames_are_looked_up_with_250_kb() -> None:
    book = generated(10_000)
    assert len(book.frames) == 10_000
    assert sum(packed for _, packed in sizes(book).values()) < 250_000


def test_the_same_frames_give_the_same_bytes() -> None:
    book = generated(300)
    files = [finder_index(book.frames, book.parts, book.places) for _ in range(2)]
    assert files[0] == files[1]
    assert all(gzip.decompress(gzip.compress(data)) == data for data in files[0].values())
