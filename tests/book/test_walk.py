"""The walk, its words, and the addresses on it."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.book.address import address, clockwise, selector, span
from rimbook.book.model import Address, Pass, Side
from rimbook.book.walk import Place, read_walk, write_place

passes = st.builds(Pass, st.sampled_from("mc"), st.integers(1, 60))
places = st.builds(Place, st.lists(passes, max_size=2, unique=True).map(tuple)) | st.just(
    Place((), drilled=False)
)


@given(st.lists(places, min_size=1, max_size=100))
def test_a_walk_written_out_is_read_back(walk: list[Place]) -> None:
    found, faults = read_walk(" ".join(map(write_place, walk)))
    assert found == tuple(walk)
    assert not faults


@pytest.mark.parametrize(
    ("word", "message"),
    [
        ("k1", "“k1” is no place of a walk."),
        ("m0", "“m0” is no place of a walk."),
        ("m1+", "“m1+” is no place of a walk."),
        ("M1", "“M1” is no place of a walk."),
        ("m1+c1+c2", "“m1+c1+c2” puts 3 strings through one hole; two are the most."),
        ("m1+m1", "“m1+m1” puts the same string through one hole twice."),
        ("m1\u00b2", "“m1²” is no place of a walk."),
    ],
)
def test_a_typo_is_named(word: str, message: str) -> None:
    _, faults = read_walk(f"m1 {word} m2")
    assert [(fault.index, fault.message) for fault in faults] == [(1, message)]


def test_a_walk_without_end_is_bounded() -> None:
    walk, faults = read_walk("m1 " * 5000)
    assert len(walk) == 200
    assert faults[-1].message == "The walk has 5000 places; at most 200 are read."


def test_addresses_run_clockwise_from_the_middle_of_the_head() -> None:
    assert " ".join(map(str, clockwise({"R": 3, "L": 2}))) == "R1 R2 R3 L2 L1"


def test_a_span_may_cross_the_middle_of_the_head_or_of_the_throat() -> None:
    counts: dict[Side, int] = {"R": 3, "L": 3}
    assert " ".join(map(str, span(Address("L", 2), Address("R", 2), counts))) == "L2 L1 R1 R2"
    assert " ".join(map(str, span(Address("R", 2), Address("L", 3), counts))) == "R2 R3 L3"


@pytest.mark.parametrize("word", ["R9", "9", "R9-R13", "9-13", 9])
def test_selectors(word: str | int) -> None:
    assert selector(word) is not None


@pytest.mark.parametrize(
    "word", ["", "R", "0", "R0", "R9-L9", "R9-13", "9-R13", "09", "r9", "9-", True, 9.5, "R99999"]
)
def test_what_is_no_selector(word: object) -> None:
    assert selector(word) is None


def test_an_address_names_one_hole_with_its_side() -> None:
    assert address("L12") == Address("L", 12)
    assert [address(word) for word in ("12", "R1-R1", "R1-R2", "")] == [None] * 4
