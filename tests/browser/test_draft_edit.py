"""Changes to the walk of a draft: what is known of a hole stays with that hole, whatever comes before it."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.book.model import Address, Frame, Hole, Side
from rimbook.site.draft_maps import written_value
from tests.browser.small_site import look_inside
from tests.site.sample import demo_book
from tests.site.test_draft_page import settled
from tests.watch import watched_page

FRAMES = demo_book().frames
EDITS = (
    *(
        "insertPlace",
        "removePlace",
        "joinNext",
        "splitPlace",
        "swapNext",
        "setWord",
        "setLengths",
        "setPlace",
    ),
    *("toggleTieOffs", "setLeft"),
)


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page, {"draft_edit": EDITS, "draft_keys": ["actOf"], "draft_selectors": ["selectors", "holesOf"]}
        )
        yield page
    assert faults == []


def draft_of(slug: str) -> dict[str, Any]:
    value: dict[str, Any] = json.loads(json.dumps(written_value(FRAMES[slug], demo_book().parts)))
    return value


def done(page: Page, name: str, draft: dict[str, Any], *given: Any) -> Any:
    return page.evaluate("([name, given]) => inside[name](...given)", [name, [draft, *given]])


def meant(draft: dict[str, Any]) -> Frame:
    return settled(draft, demo_book().parts)


def known(frame: Frame, hole: Hole) -> tuple[object, ...]:
    """All that is said of a hole but its number."""
    strip = frame.strips[hole.strip].name if hole.strip is not None else None
    return hole.passes, hole.bore_mm, hole.rim_depth_mm, hole.part, strip, hole.tie_off, hole.place_mm


@pytest.mark.parametrize("slug", FRAMES)
def test_a_new_place_moves_the_facts_with_their_holes(inside: Page, slug: str) -> None:
    draft, frame = draft_of(slug), FRAMES[slug]
    last = max(hole.address.number for hole in frame.holes if hole.address.side == "R")
    ways: list[tuple[str, tuple[Side, ...]]] = (
        [("both", ("R", "L"))] if frame.mirrored else [("R", ("R",)), ("L", ("L",))]
    )
    for which, sides in ways:
        for at in (1, 2, 6, 7, 9, 13, 20, last):
            after = done(inside, "insertPlace", draft, which, at, ".")
            moved = meant(after)
            for hole in frame.holes:
                side, number = hole.address
                there = Address(side, number + (side in sides and number >= at))
                assert known(moved, moved.hole(there)) == known(frame, hole), (at, hole.address)
            for side in sides:
                new = moved.hole(Address(side, at))
                assert (new.passes, new.bore_mm, new.place_mm) == ((), None, None)
            back = meant(done(inside, "removePlace", after, which, at))
            assert replace(back, slug=slug, source=frame.source) == frame


def test_two_sides_with_one_line_part_where_one_of_them_moves(inside: Page) -> None:
    draft = done(inside, "setLeft", draft_of("leat-64"), True)
    after = done(inside, "insertPlace", draft, "L", 3, "x")
    assert after["walk"] == draft["walk"]
    assert after["left"]["walk"].split()[2] == "x"
    side = [strip["holes"] for strip in after["strips"] if strip["name"] == "side strip"]
    assert side == [["R12", "R23"], ["L24", "L13"]]
    assert meant(after).strips[1].holes == FRAMES["leat-64"].strips[1].holes


def test_a_run_that_loses_all_its_holes_goes(inside: Page) -> None:
    draft = draft_of("plover-76") | {"strips": [{"name": "one", "holes": ["R9", "R9"], "part": "unknown"}]}
    draft["stringing"]["tie_offs"] = ["R9", "L9", "R31"]
    after = done(inside, "removePlace", draft, "both", 9)
    assert after["strips"] == []
    assert after["stringing"]["tie_offs"] == ["R30"]


@pytest.mark.parametrize(
    ("walk", "name", "at", "expected"),
    [
        ("m1 m2 c1 m2 m1", "joinNext", 2, "m1 m2+c1 m2 m1"),
        ("m1 m2 c1 m2 m1", "joinNext", 3, "m1 m2 m2+c1 m1"),
        ("m1 . c1 m1", "joinNext", 2, "m1 c1 m1"),
        ("m1 x c1 m1", "joinNext", 2, "m1 c1 m1"),
        ("m1 m2+c1 c2 m1", "joinNext", 2, "“m2+c1+c2” puts 3 strings through one hole; two are the most."),
        ("m1 m1", "joinNext", 2, "There is no next hole to join with."),
        ("m1 m2+c1 m2 m1", "splitPlace", 2, "m1 m2 c1 m2 m1"),
        ("m1 m2 m2+c1 m1", "splitPlace", 3, "m1 m2 c1 m2 m1"),
        ("m1 m2 m1", "splitPlace", 2, "Only a hole with two strings can be split."),
        ("m1 c1 m2 m1", "swapNext", 2, "m1 m2 c1 m1"),
        ("m1 c1", "swapNext", 2, "There is no next hole to swap with."),
        ("m1", "removePlace", 1, "m1"),
    ],
)
def test_neighbours(inside: Page, walk: str, name: str, at: int, expected: str) -> None:
    found = done(inside, name, {"walk": walk}, "both", at)
    assert (found if isinstance(found, str) else found["walk"]) == expected


def test_lengths_are_written_in_short(inside: Page) -> None:
    draft: dict[str, Any] = {"walk": "m1 m2 m3 x m5", "bore_mm": "unknown"}
    for holes, bore in ((["R1", "L1", "R2", "L2", "R3", "L3"], 2.1), (["R3"], 2.7), (["R5", "L5"], 3)):
        draft = done(inside, "setLengths", draft, "bore_mm", holes, bore)
    assert draft["bore_mm"] == {"default": 2.1, "2.7": ["R3"], "3": [5]}
    draft = done(inside, "setLengths", draft, "bore_mm", ["R5", "L5", "R3"], 2.1)
    assert draft["bore_mm"] == 2.1


def test_a_place_that_is_drilled_after_all_has_no_bore_yet(inside: Page) -> None:
    draft = done(inside, "setWord", {"walk": "m1 x m2", "bore_mm": 2.1}, "both", 2, "c1")
    assert draft["bore_mm"] == {"default": 2.1, "unknown": [2]}


def test_measured_places_go_when_none_is_left(inside: Page) -> None:
    draft = done(inside, "setPlace", {"walk": "m1 m2"}, "both", 2, 12.5)
    assert draft["places_mm"] == ["unknown", 12.5]
    assert "places_mm" not in done(inside, "setPlace", draft, "both", 2, "unknown")


def test_tie_offs_come_and_go_by_one_key(inside: Page) -> None:
    draft: dict[str, Any] = {"walk": "m1 m2", "stringing": {"pieces": 2, "tie_offs": ["R2"]}}
    draft = done(inside, "toggleTieOffs", draft, ["R1", "L1"])
    assert draft["stringing"]["tie_offs"] == ["R2", "R1", "L1"]
    draft = done(inside, "toggleTieOffs", draft, ["R1", "L1"])
    assert draft["stringing"] == {"pieces": 2, "tie_offs": ["R2"]}


def test_selectors_are_the_shortest(inside: Page) -> None:
    holes = ["R8", "R9", "L9", "L8", "R31", "L4", "L5", "R12", "L12"]
    assert inside.evaluate("holes => inside.selectors(holes)", holes) == ["8-9", 12, "R31", "L4-L5"]
    assert sorted(inside.evaluate("inside.holesOf(['8-9', 12, 'R31', 'L4-L5', 'x', '9-2', 0])")) == sorted(
        holes
    )


@pytest.mark.parametrize(
    ("keys", "mode", "expected"),
    [
        ("m9", "strings", "m9"),
        ("m9c1", "strings", "m9+c1"),
        ("m9+c1", "strings", "m9+c1"),
        ("C12", "strings", "c12"),
        ("m9+c1+c2", "strings", "c2"),
        ("9", "strings", ""),
        ("12.5", "places", "12.5"),
        ("12,5", "places", "12.5"),
        ("1.2.3", "places", "1.23"),
    ],
)
def test_keys_grow_into_a_word(inside: Page, keys: str, mode: str, expected: str) -> None:
    typed = ""
    for key in keys:
        act = inside.evaluate("given => inside.actOf(...given)", [key, False, mode, typed])
        typed = act["text"] if act and act["do"] == "type" else typed
    assert typed == expected


def test_no_key_means_two_things(inside: Page) -> None:
    """In every mode each letter does one thing, and those that write never change the walk."""
    for mode in ("strings", "bores", "depths", "places"):
        for key in "wbrpndjset":
            act = inside.evaluate("given => inside.actOf(...given)", [key, False, mode, ""])
            assert act["do"] == ("mode" if key in "wbrp" else "change")
