"""What a full regrommet takes, and the pin for each part."""

from __future__ import annotations

from dataclasses import replace

import pytest

from rimbook.bench.parts_list import Needed, regrommet
from rimbook.bench.pins import pin
from rimbook.book.model import Address, Part
from tests.site.sample import demo_book, small_frame, small_parts


def test_a_strip_and_a_twin_count_once_and_singles_each() -> None:
    needed = {line.part: line.count for line in regrommet(small_frame(), small_parts())}
    assert needed == {"barrel-21": 8, "twin-21": 1, "crown-8": 1, None: 2}


def test_unknown_parts_are_counted_as_unknown_and_end_the_list() -> None:
    last = regrommet(small_frame(), small_parts())[-1]
    assert last == Needed(None, 2, (Address("R", 4), Address("L", 4)))


def test_an_unknown_strip_is_one_piece_and_named() -> None:
    frame = small_frame()
    unknown = replace(frame.strips[0], part=None)
    needed = regrommet(replace(frame, strips=(unknown,)), small_parts())
    assert Needed(None, 1, unknown.holes, "crown") in needed


def test_every_drilled_hole_of_the_book_is_filled_exactly_once() -> None:
    book = demo_book()
    for frame in book.frames.values():
        filled = [hole for line in regrommet(frame, book.parts) for hole in line.holes]
        assert sorted(filled) == sorted(hole.address for hole in frame.drilled)


@pytest.mark.parametrize(
    ("barrel", "bore", "size"),
    [(2.05, 1.3, 1.7), (2.7, 1.9, 2.3), (1.34, 1.32, 1.33)],
)
def test_a_pin_is_thicker_than_the_opening_and_thinner_than_the_barrel(
    barrel: float, bore: float, size: float
) -> None:
    # Common practice, no published source.
    found = pin(Part("p", "P", "single", barrel_mm=barrel, bore_mm=bore))
    assert found is not None
    assert found.over_mm == bore < found.size_mm < found.under_mm == barrel
    assert found.size_mm == pytest.approx(size)


@pytest.mark.parametrize(("barrel", "bore"), [(None, 1.3), (2.05, None), (1.3, 1.3), (1.0, 1.3)])
def test_no_pin_is_named_where_the_sizes_do_not_tell(barrel: float | None, bore: float | None) -> None:
    assert pin(Part("p", "P", "single", barrel_mm=barrel, bore_mm=bore)) is None
