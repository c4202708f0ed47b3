"""What the bench sheet is told says the same as the page's own tables, for every frame of the book."""

from __future__ import annotations

import json
from functools import cache
from typing import Any

import pytest

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import FrameNumbers, frame_numbers
from rimbook.bench.needs import Place, places
from rimbook.bench.part_index import index_parts
from rimbook.book.model import Address, Frame
from rimbook.rim.place import place
from rimbook.site.entry import entry
from rimbook.site.frame_view import pin_words
from rimbook.site.handover import data_block
from rimbook.site.sheet_data import MOST_SERVING, sheet_data
from rimbook.site.sold import sets_of
from tests.site.sample import demo_book, small_book, small_frame, small_parts

SLUGS = sorted(demo_book().frames)
KINDS = {"single", "wide", "twin-even", "twin-uneven", "strip", "unknown"}


@cache
def answers() -> Answers:
    return Answers(index_parts(demo_book().parts))


@cache
def worked(slug: str) -> tuple[Frame, tuple[Place, ...], FrameNumbers, dict[str, Any]]:
    frame = demo_book().frames[slug]
    asked = places(frame, demo_book().parts)
    numbers = frame_numbers(place(frame), answers())
    return (
        frame,
        asked,
        numbers,
        sheet_data(frame, asked, numbers, answers(), sets_of(demo_book().parts)),
    )


@pytest.mark.parametrize("slug", SLUGS)
def test_every_drilled_hole_is_in_one_piece(slug: str) -> None:
    frame, _, numbers, data = worked(slug)
    assert (data["format"], data["slug"], data["name"], data["sport"]) == (1, slug, frame.name, frame.sport)
    assert [each["address"] for each in data["holes"]] == [str(hole.address) for hole in frame.drilled]
    for hole, told in zip(frame.drilled, data["holes"], strict=True):
        assert told["passes"] == [str(each) for each in hole.passes]
        assert told["pull"] == pytest.approx(numbers.holes[hole.address].pull, abs=0.005)
    covered = [at for piece in data["pieces"] for at in piece["holes"]]
    assert sorted(covered) == list(range(len(data["holes"])))
    for at, piece in enumerate(data["pieces"]):
        assert piece["kind"] in KINDS
        assert {data["holes"][hole]["piece"] for hole in piece["holes"]} == {at}


@pytest.mark.parametrize("slug", SLUGS)
def test_pieces_are_those_of_the_map(slug: str) -> None:
    frame, _, numbers, data = worked(slug)
    catalogue = demo_book().parts
    address = [hole.address for hole in frame.drilled]
    found = {tuple(address[at] for at in piece["holes"]): piece for piece in data["pieces"]}
    for strip in frame.strips:
        piece = found[tuple(each for each in strip.holes if each in address)]
        assert (piece["kind"], piece["part"], piece["positions"]) == ("strip", strip.part, 1)
    for twin in frame.twins:
        piece = found[twin.holes]
        assert (piece["kind"], piece["part"]) == (catalogue[twin.part].kind, twin.part)
    for hole in frame.drilled:
        if hole.strip is None and hole.twin is None:
            piece = found[hole.address,]
            turned = numbers.holes[hole.address].here.turns
            assert piece["part"] == hole.part
            assert (piece["positions"], piece["step"]) == (turned.positions, turned.step)
            assert piece["name"] == (catalogue[hole.part].name if hole.part else "unknown part")


@pytest.mark.parametrize("slug", SLUGS)
def test_what_serves_agrees_with_the_bench(slug: str) -> None:
    frame, asked, _, data = worked(slug)
    catalogue = demo_book().parts
    address = [hole.address for hole in frame.drilled]
    need_of: dict[Address, Place] = {hole: each for each in asked if not each.covered for hole in each.holes}
    for piece in data["pieces"]:
        wanted = need_of[address[piece["holes"][0]]]
        told = data["serves"][piece["serves"]]
        ids = [each["part"] for each in told]
        others = [each for each in answers().of(wanted.need).serving if each != piece["part"]]
        own = [piece["part"]] if piece["part"] else []
        assert ids == [*own, *others[: MOST_SERVING - 1]]
        for each in told:
            served = answers().detail(wanted.need, each["part"])
            assert each["pin"] == pin_words(catalogue[each["part"]])
            if served is None:
                assert each["verdict"] == "may serve"
                continue
            assert (each["verdict"] == "serves") == (served.verdict == "serves")
            cut = [reason.mm for reason in served.reasons if reason.code == "trim"]
            assert ("trim" in each) == bool(cut)
            assert all(f"{mm:.2f}".rstrip("0").rstrip(".") in each["trim"] for mm in cut if mm is not None)
            assert all(seat.fit.word in each["says"] for seat in served.seats if seat.fit.word)


@pytest.mark.parametrize("slug", SLUGS)
def test_all_that_is_named_has_a_name(slug: str) -> None:
    data = worked(slug)[3]
    catalogue = demo_book().parts
    for set_id, held in data["sets"].items():
        assert held == dict(catalogue[set_id].contains)
    named = {each["part"] for place_of in data["serves"] for each in place_of}
    named |= {name for set_id, held in data["sets"].items() for name in (set_id, *held)}
    assert data["names"] == {name: catalogue[name].name for name in sorted(named)}
    for made in sets_of(catalogue).fitting.get(slug, ()):
        assert made.id in data["sets"]


def test_a_strip_only_in_a_set_leads_to_the_set() -> None:
    frame, catalogue = small_frame(), small_parts()
    own = Answers(index_parts(catalogue))
    numbers = frame_numbers(place(frame), own)
    data = sheet_data(frame, places(frame, catalogue), numbers, own, sets_of(catalogue))
    assert data["sets"] == {"wren-set": {"crown-8": 1, "barrel-21": 8}}
    strip = next(piece for piece in data["pieces"] if piece["kind"] == "strip")
    assert [data["holes"][at]["address"] for at in strip["holes"]] == ["L1", "R1"]
    unknown = data["pieces"][data["holes"][3]["piece"]]
    assert (unknown["kind"], unknown["part"], unknown["positions"]) == ("unknown", None, None)
    assert data["serves"][unknown["serves"]] == []


def test_the_block_ends_no_script() -> None:
    text = data_block({"name": "</script><script>alert(1)</script><!--", "line": "\u2028"})
    assert "<" not in text
    assert json.loads(text) == {"name": "</script><script>alert(1)</script><!--", "line": "\u2028"}


def test_the_page_hands_over_the_same() -> None:
    book = small_book()
    frame = book.frames["wren-8"]
    own, sets = Answers(index_parts(book.parts)), sets_of(book.parts)
    rim = place(frame)
    body = entry(rim, sets, own).content.body.decode()
    start = body.index('<script type="application/json">') + len('<script type="application/json">')
    told = json.loads(body[start : body.index("</script>", start)])
    assert told == sheet_data(frame, places(frame, book.parts), frame_numbers(rim, own), own, sets)
