"""Needs of a frame, and every part that would serve them."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rimbook.bench.answers import Answers
from rimbook.bench.needs import HoleNeed, PieceNeed, hole_needs, places, strings_of
from rimbook.bench.part_index import index_parts
from rimbook.bench.serves import Wanted, ranked
from rimbook.bench.thresholds import DEFAULT
from rimbook.book.model import Catalogue, Measured
from tests.bench.big_book import parts as many_parts
from tests.bench.catalogue import PARTS, measured_plover, part, with_holes, with_strip, with_twin
from tests.rim.frames import address

ANSWERS = Answers(index_parts(PARTS))
NEED = HoleNeed("badminton", 2.1, 0.02, 9.4, 1)
MANY = many_parts(300)


def test_needs_of_holes() -> None:
    frame = measured_plover()
    asked = hole_needs(frame)
    assert asked[address("R1")] == NEED
    assert asked[address("R9")] == NEED._replace(bore_mm=2.7, strings=2)  # shared
    assert asked[address("R8")] == NEED._replace(bore_mm=2.7, strings=2)  # a string and a knot
    assert len(asked) == 76
    assert address("R1") not in hole_needs(with_holes(frame, "R1", drilled=False))


def test_alike_holes_are_one_place() -> None:
    found = places(measured_plover(), PARTS)
    assert {(place.need.bore_mm, place.part) for place in found if isinstance(place.need, HoleNeed)} == {
        (2.1, "short"),
        (2.7, "wide"),
    }
    assert sum(len(place.holes) for place in found) == 76


def test_strips_and_twins_have_places_of_their_own() -> None:
    frame = with_twin(with_strip(measured_plover(), "R1 R2 R3 R4", "crown"), "R36", "R37", "pair-70")
    found = places(frame, PARTS)
    (strip,) = [place for place in found if isinstance(place.need, PieceNeed) and place.need.kind == "strip"]
    (twin,) = [place for place in found if isinstance(place.need, PieceNeed) and place.need.kind == "twin"]
    assert strip.need == PieceNeed("strip", (NEED,), 4, None, False)
    assert twin.need == PieceNeed("twin", (NEED, NEED), 2, 7.0)
    assert {place.part for place in found if place.covered} == {"crown", "pair-70"}
    assert sum(len(place.holes) for place in found if not place.covered) == 76


def test_single_parts() -> None:
    answer = ANSWERS.of(NEED)
    assert answer.serving == ("short", "short-too", "long")  # sold by itself first, cut last
    assert answer.near == ()
    detail = ANSWERS.detail(NEED, "long")
    assert detail
    assert [reason.code for reason in detail.reasons] == ["trim"]
    assert ANSWERS.detail(NEED, "pair-70") is None
    assert ANSWERS.detail(NEED, "nothing") is None


def test_unknown_bores_claim_nothing() -> None:
    answer = ANSWERS.of(NEED._replace(bore_mm=None))
    assert (answer.serving, answer.near, answer.missing) == ((), (), ("bore",))
    pair = PieceNeed("twin", (NEED, NEED._replace(bore_mm=None)), 2, None)
    assert ANSWERS.of(pair).missing == ("bore", "pitch")
    assert ANSWERS.detail(NEED._replace(bore_mm=None), "short") is None


def test_twins() -> None:
    deep = NEED._replace(depth_mm=11.0)
    answer = ANSWERS.of(PieceNeed("twin", (deep, deep), 2, 7.0))
    assert answer.serving == ("pair-70", "pair-73")
    assert answer.near == ("pair-76", "pair-uneven")  # its short post is short of 11
    off = ANSWERS.detail(PieceNeed("twin", (deep, deep), 2, 7.0), "pair-76")
    assert off
    assert off.reasons[0].code == "pitch off"
    assert off.reasons[0].mm == pytest.approx(0.3)


def test_strips() -> None:
    need = PieceNeed("strip", (NEED,), 4, None, False)
    answer = ANSWERS.of(need)
    assert answer.serving == ("crown", "crown-too")  # six posts never serve four holes
    assert answer.near == ("bumper",)
    detail = ANSWERS.detail(need, "bumper")
    assert detail
    assert [reason.code for reason in detail.reasons] == ["spacing unrecorded", "bumper"]
    assert ANSWERS.detail(need, "crown-6") is None
    assert ANSWERS.of(need._replace(bumper=True)).serving == ("bumper",)
    assert ANSWERS.of(need._replace(bumper=None)).serving == ("bumper", "crown", "crown-too")


def test_a_strip_must_suit_every_hole() -> None:
    wide = NEED._replace(bore_mm=2.7)
    assert ANSWERS.of(PieceNeed("strip", (NEED, wide), 4)).serving == ()


def test_parts_that_contradict_themselves_are_left_out() -> None:
    wrong = {"wrong": part("wrong", flange_mm=2.0), "two": part("two", length_mm=(10.0, 16.0))}
    assert Answers(index_parts(wrong)).of(NEED).serving == ()


@given(
    st.sampled_from((2.0, 2.1, 2.7, 3.4, 3.45)),
    st.sampled_from((None, 0.02, 0.1)),
    st.sampled_from((None, 9.4, 11.0, 13.0)),
    st.integers(0, 3),
)
@settings(max_examples=60, deadline=None)
def test_the_index_changes_no_answer(
    bore: float, resolution: float | None, depth: float | None, strings: int
) -> None:
    """The answer to a need is what the plain ranking of the whole catalogue gives, reason by reason."""
    need = HoleNeed("badminton", bore, resolution, depth, strings)
    plain = ranked(Wanted(bore, resolution, depth, strings_of(need, DEFAULT)), MANY.values())
    answers = Answers(index_parts(MANY))
    answer = answers.of(need)
    assert [*answer.serving, *answer.near] == [each.part for each in plain]
    assert [answers.detail(need, each.part) for each in plain] == list(plain)


def test_the_resolution_of_the_map_counts() -> None:
    coarse = replace(measured_plover(), measured=Measured("a-handle"))
    (need, *_) = hole_needs(coarse).values()
    detail = ANSWERS.detail(need, "short")
    assert detail
    assert detail.verdict == "may serve"
    assert detail.reasons[0].what == "bore resolution"


def test_a_catalogue_of_nothing() -> None:
    empty: Catalogue = {}
    assert Answers(index_parts(empty)).of(NEED).serving == ()
