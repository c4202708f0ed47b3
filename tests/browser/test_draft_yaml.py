"""What the drafting page writes, any YAML 1.2 parser reads as meant, and the book reads as the same frame."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from io import StringIO
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page
from ruamel.yaml import YAML

from rimbook.book.model import Frame
from rimbook.book.reader import read
from rimbook.book.settle import settle_frame
from rimbook.book.shape import hold
from rimbook.book.written import WrittenFrame
from rimbook.book.written_values import slug_of
from rimbook.rim.path import NotDrawable, paths
from rimbook.rim.place import place
from rimbook.rim.places import places
from rimbook.site.draft_maps import written_value
from tests.browser.small_site import look_inside
from tests.site.sample import demo_book
from tests.site.test_hostile import HOSTILE
from tests.watch import watched_page

FRAMES = demo_book().frames
TEXTS = (
    *HOSTILE.values(),
    "Plover's “76” #2: the rest, [really] {so} & more * | > % @ `",
    *(
        "- a",
        "? b",
        ": c",
        "# d",
        "'e",
        '"f',
        "true",
        "No",
        "null",
        "~",
        "1e3",
        "0x1F",
        "12:30",
        "2026-10-04",
    ),
    *(
        "a: b",
        "a #b",
        "unknown",
        " leading",
        "trailing ",
        "two  blanks",
        "\ttab",
        "ends with \\",
        "---",
        "...",
    ),
    *("!tag", "&anchor", "*alias", "=", "<<", "R9-R13", "9-13", "L6", "a,b", "a]", "}", "x" * 300, "on"),
    *("Ünïcödé", "羽毛球拍", "Ракетка", "كرة", "🏸 racket", "\u2028\u0085\u00a0\u200b", "word " * 90 + "end"),
    "First line.\nSecond line, which is long enough to be folded over several lines of the file.\nThird.",
    "Blank line follows.\n\nThen this one, which is as long as a note may well be in a book of frames.",
)


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "draft_yaml": ["writeYaml"],
                "draft_out": ["slugOf", "newFileAddress", "fileOf"],
                "draft_path": ["pathsOf"],
                "draft_open": ["askedMap", "pieceOf"],
                "draft_sound": ["sound", "blank"],
            },
        )
        yield page
    assert faults == []


def as_yaml(page: Page, draft: dict[str, Any]) -> str:
    text: str = page.evaluate("draft => inside.writeYaml(draft)", json.loads(json.dumps(draft)))
    return text


def by_ruamel(text: str) -> Any:
    return YAML(typ="safe", pure=True).load(StringIO(text))


def settled(text: str, slug: str) -> Frame:
    document = read(text, f"frames/maps/{slug}.yaml")
    written, problems = hold(document, WrittenFrame)
    assert written is not None, problems
    frame, problems = settle_frame(slug, written, document, demo_book().parts)
    assert frame is not None, problems
    return frame


@pytest.mark.parametrize("slug", FRAMES)
def test_a_map_of_the_book_is_written_with_the_same_meaning(inside: Page, slug: str) -> None:
    text = as_yaml(inside, written_value(FRAMES[slug], demo_book().parts))
    assert settled(text, slug) == FRAMES[slug]
    again = by_ruamel(text)
    assert settled(json.dumps(again, default=str), slug) == replace(FRAMES[slug])
    assert [line for line in text.splitlines() if len(line) > 110] == []


def test_it_is_as_short_as_a_person_would_write_it(inside: Page) -> None:
    lines = as_yaml(inside, written_value(FRAMES["plover-76"], demo_book().parts)).splitlines()
    for line in (
        "head: {outline: superellipse, inside_mm: [186, 244], exponent: 2.15}",
        "rim_depth_mm: {default: 9.4, 11: [35-38]}",
        "bore_mm: {default: 2.1, 2.7: [8-11, 27, 30-31, 33]}",
        "fitted:",
        "  bore 2.7: barrel-27-short",
        "  37-38: twin-21-even-70",
        "  - {name: crown strip, holes: [L6, R6], part: plover-crown}",
        "tension_limit: 28 lb",
        "measured: {by: heron-bench, on: 2026-10-04, with: calliper, resolution_mm: 0.05}",
        "walk: >-",
    ):
        assert line in lines


@pytest.mark.parametrize("text", TEXTS)
def test_any_text_comes_back_as_it_was_typed(inside: Page, text: str) -> None:
    """In every place where text may stand: alone, in a list, in braces, as a key, folded."""
    draft = {
        "format": 1,
        "name": text,
        "maker": text,
        "sport": text,
        "aliases": [text, text + "!"],
        "walk": text,
        "fitted": [["default", text], [text, "one"]],
        "strips": [{"name": text, "holes": [text, 12], "part": text}],
        "tension_limit": text,
        "stringing": {"tie_offs": [text]},
        "measured": {"by": text, "on": text, "with": text},
        "note": text,
    }
    found = by_ruamel(as_yaml(inside, draft))
    day = date(2026, 10, 4) if text == "2026-10-04" else text
    assert (found["name"], found["maker"], found["aliases"]) == (text, text, [text, text + "!"])
    assert found["fitted"] == {"default": text, text: "one"}
    assert found["strips"] == [{"name": text, "holes": [text, 12], "part": text}]
    assert found["measured"] == {"by": text, "on": day, "with": text}
    assert found["stringing"]["tie_offs"] == [text]
    assert found["note"] == text
    assert str(found["tension_limit"]) == text


def test_half_a_letter_does_not_break_the_file(inside: Page) -> None:
    text = inside.evaluate(r"inside.writeYaml({ name: 'a\ud83c', note: '\udfff' })")
    assert by_ruamel(text) == {"name": "a\ufffd", "note": "\ufffd"}


def test_numbers_and_their_like_keep_their_sort(inside: Page) -> None:
    draft = {
        "mains": "22",
        "crosses": 21,
        "year": "abc",
        "head": {"outline": "ellipse", "inside_mm": [186.25, "wide"]},
        "bore_mm": {"default": "unknown", "3": [1], "2.1": ["R9-R13"], "10": ["x y"], "unknown": [4]},
    }
    assert by_ruamel(as_yaml(inside, draft)) == {
        "mains": "22",
        "crosses": 21,
        "year": "abc",
        "head": {"outline": "ellipse", "inside_mm": [186.25, "wide"]},
        "bore_mm": {"default": "unknown", 2.1: ["R9-R13"], 3: [1], 10: ["x y"], "unknown": [4]},
    }


def test_strings_run_as_in_the_build(inside: Page) -> None:
    """Legs of both pieces from end to end, at every start and with any tie-offs."""
    draw = Random(76)
    for frame in FRAMES.values():
        holes = [hole.address for hole in frame.drilled]
        for _ in range(6):
            order = replace(
                frame.stringing,
                pieces=draw.choice([1, 2]),
                mains_start=draw.choice(["head", "throat"]),
                crosses_start=draw.choice(["head", "throat"]),
                first_cross=draw.choice(["R", "L"]),
                tie_offs=tuple(draw.sample(holes, draw.randint(0, 5))),
            )
            strung = replace(frame, stringing=order)
            rim = place(strung)
            given = {
                "mains": frame.mains,
                "crosses": frame.crosses,
                "holes": [
                    {"address": str(h.address), "side": h.address.side, "passes": [str(p) for p in h.passes]}
                    for h in frame.holes
                ],
                "tieOffs": [str(hole) for hole in order.tie_offs],
                "pieces": order.pieces,
                "mainsStart": order.mains_start,
                "crossesStart": order.crosses_start,
                "firstCross": order.first_cross,
            }
            along = {str(hole): {"along": placed.along_mm} for hole, placed in rim.holes.items()}
            found = inside.evaluate(
                "([given, along, round]) => inside.pathsOf(given, new Map(Object.entries(along)), round)",
                [given, along, rim.curve.length_mm],
            )
            assert found == [
                [{"start": str(leg.start), "end": str(leg.end), "run": leg.run} for leg in way.legs]
                for way in rim.paths
            ]


def test_a_walk_that_leaves_no_way_has_none_here_either(inside: Page) -> None:
    frame = FRAMES["plover-76"]
    holes = tuple(replace(hole, passes=()) if str(hole.address) == "R5" else hole for hole in frame.holes)
    short = replace(frame, holes=holes)
    with pytest.raises(NotDrawable):
        paths(short, places(short), place(frame).curve)
    given = {
        "mains": 22,
        "crosses": 21,
        "tieOffs": [],
        "pieces": 2,
        "holes": [
            {"address": str(h.address), "side": h.address.side, "passes": [str(p) for p in h.passes]}
            for h in short.holes
        ],
    }
    assert inside.evaluate("given => inside.pathsOf(given, new Map(), 700)", given) is None


@pytest.mark.parametrize(
    "name", ["Plover 76", "Élan Ø/S+", "羽毛球", "../../etc", "  A--b  ", "x" * 80 + " y", "ﬁne"]
)
def test_files_are_named_alike(inside: Page, name: str) -> None:
    assert inside.evaluate("name => inside.slugOf(name)", name) == slug_of(name)


def test_a_file_always_has_a_name(inside: Page) -> None:
    assert inside.evaluate("inside.fileOf({ draft: { name: '羽毛球' }, slug: '' })") == "new-frame.yaml"
    assert inside.evaluate("inside.fileOf({ draft: { name: 'A' }, slug: '../Odd One' })") == "odd-one.yaml"


def test_the_forge_gets_the_map_in_the_address_unless_that_is_too_long(inside: Page) -> None:
    forge = {"new": "https://forge.example/a/book/new/main", "folder": "frames/maps"}
    address = inside.evaluate("forge => inside.newFileAddress(forge, 'a.yaml', 'name: A & B #1\\n')", forge)
    assert address == (
        "https://forge.example/a/book/new/main?filename=frames%2Fmaps%2Fa.yaml&value=name%3A%20A%20%26%20B%20%231%0A"
    )
    assert inside.evaluate("forge => inside.newFileAddress(forge, 'a.yaml', 'ü'.repeat(1300))", forge) is None


def test_a_map_is_looked_for_in_the_right_piece(inside: Page) -> None:
    first = ["alder-56", "gimlet-64", "weir-72"]
    asked = {
        "alder-56": "alder-56",
        "bobbin-64": "alder-56",
        "gimlet-64": "gimlet-64",
        "zebra": "weir-72",
        "aa": None,
    }
    for slug, piece in asked.items():
        assert inside.evaluate("([slug, first]) => inside.pieceOf(slug, first)", [slug, first]) == piece
    for address, wanted in {
        "#map=plover-76": "plover-76",
        "#map=../x": None,
        "#": None,
        "#map=": None,
    }.items():
        assert inside.evaluate("hash => inside.askedMap(hash)", address) == wanted


@pytest.mark.parametrize(
    "odd",
    [
        None,
        7,
        "text",
        [],
        {"walk": 7},
        {"left": "x"},
        {"strips": [7]},
        {"fitted": {"default": 1}},
        {"stringing": []},
    ],
)
def test_what_was_kept_by_others_is_read_with_care(inside: Page, odd: Any) -> None:
    found = inside.evaluate("odd => inside.sound(odd)", odd)
    assert found is None or found == {"format": 1}
