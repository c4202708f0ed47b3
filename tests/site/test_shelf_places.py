"""What the card of a frame says to a shelf, and that the site carries it."""

from __future__ import annotations

import json
from collections import Counter, defaultdict
from dataclasses import replace
from typing import Any

import pytest

from rimbook.bench.answers import Answers
from rimbook.bench.needs import places
from rimbook.bench.part_index import index_parts
from rimbook.bench.parts_list import regrommet
from rimbook.bench.shelf_choice import items_for
from rimbook.bench.shelf_pool import MOST_STEPS
from rimbook.book.model import Catalogue, Frame
from rimbook.site.board_card import board_file
from rimbook.site.handover import json_text
from rimbook.site.pages import Asset
from rimbook.site.shelf_places import shelf_places
from rimbook.site.shelf_rules import shelf_rules
from tests.site.sample import demo_book, demo_site


def shelf_of(frame: Frame, parts: Catalogue | None = None) -> Any:
    catalogue = demo_book().parts if parts is None else parts
    return shelf_places(frame, places(frame, catalogue), Answers(index_parts(catalogue)))


@pytest.mark.parametrize("slug", sorted(demo_book().frames))
def test_all_pieces_of_a_frame_are_in_it(slug: str) -> None:
    """Counted another way: by what a full regrommet takes."""
    frame, catalogue = demo_book().frames[slug], demo_book().parts
    found = shelf_of(frame)
    counted: Counter[str | None] = Counter()
    for place in found["places"]:
        counted[place["part"]] += place["pieces"]
        part = catalogue.get(place["part"] or "")
        assert place["kind"] == (part.kind if part else None)
        assert bool(place["items"]) == ("why" not in place) == ("holes" not in place)
    expected: Counter[str | None] = Counter()
    for line in regrommet(frame, catalogue):
        expected[line.part] += line.count
    assert counted == expected


def test_what_may_be_kept_is_named_with_all_that_a_plan_needs() -> None:
    found = shelf_of(demo_book().frames["plover-76"])
    (crown,) = [each for each in found["places"] if each["part"] == "plover-crown"]
    assert crown == {"part": "plover-crown", "kind": "strip", "pieces": 1, "items": ("plover-set",)}
    items = found["items"]
    whole = demo_book().parts["plover-set"]
    assert items["plover-set"] == {
        "name": whole.name, "kind": "set", "packs": whole.packs, "contains": whole.contains,
    }  # fmt: skip
    assert set(whole.contains) <= set(items)


def test_every_item_is_what_the_bench_would_keep() -> None:
    answers = Answers(index_parts(demo_book().parts))
    for frame in demo_book().frames.values():
        told: defaultdict[str, list[Any]] = defaultdict(list)
        for each in shelf_of(frame)["places"]:
            if "why" not in each:
                told[each["part"]].append(each["items"])
        expected: defaultdict[str, list[Any]] = defaultdict(list)
        for place in places(frame, demo_book().parts):
            if not place.covered and place.part is not None and place.part in told:
                expected[place.part].append(items_for(place.need, place.part, answers))
        assert told == expected


def test_what_cannot_be_planned_says_why_and_where() -> None:
    """Places of one part that are lost for one reason are told together, as a plan tells them."""
    frame = demo_book().frames["plover-76"]
    blind = replace(frame, holes=tuple(replace(hole, bore_mm=None) for hole in frame.holes))
    lost = shelf_of(blind)["places"]
    assert {each["why"] for each in lost} == {"bore unknown"}
    assert len({each["part"] for each in lost}) == len(lost)
    unsold = {name: replace(part, packs=()) for name, part in demo_book().parts.items()}
    assert {each["why"] for each in shelf_of(frame, unsold)["places"]} == {"not sold"}
    nameless = replace(frame, holes=tuple(replace(hole, part=None) for hole in frame.holes))
    unknown = [each for each in shelf_of(nameless)["places"] if each["part"] is None]
    assert [(each["kind"], each["items"], each["why"]) for each in unknown] == [(None, (), "part unknown")]


def test_the_site_carries_it_in_the_card() -> None:
    for slug, frame in demo_book().frames.items():
        card = demo_site()[board_file(slug)]
        assert isinstance(card, Asset)
        script = card.data.decode()
        told = json.loads(script[script.index(",") + 1 : script.rindex(");")])
        assert json_text(told["shelf"]) == json_text(shelf_of(frame))


def test_the_numbers_are_those_of_the_bench() -> None:
    rules = shelf_rules()
    assert rules["pool"]["mostSteps"] == MOST_STEPS
    assert "<" not in json_text(rules)
