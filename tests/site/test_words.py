"""Numbers, counts and runs of holes in words."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.book.address import selector
from rimbook.book.model import Address
from rimbook.site.count import counts
from rimbook.site.links import slugs
from rimbook.site.paging import ROWS, sheets
from rimbook.site.spans import plain, selectors, spans
from rimbook.site.words import counted, day, listed, mm, number, ordinal
from tests.site.sample import demo_book, small_frame


@pytest.mark.parametrize(
    ("count", "word"),
    [
        (1, "1st"),
        (2, "2nd"),
        (3, "3rd"),
        (4, "4th"),
        (11, "11th"),
        (12, "12th"),
        (13, "13th"),
        (21, "21st"),
        (111, "111th"),
    ],
)
def test_ordinals_are_english(count: int, word: str) -> None:
    assert ordinal(count) == word


def test_numbers_lose_needless_zeros_and_nothing_else() -> None:
    assert [number(value) for value in (2.10, 9.0, 100.0, 0.05, 10)] == ["2.1", "9", "100", "0.05", "10"]
    assert [mm(value) for value in (2, 2.15, None)] == ["2.0 mm", "2.15 mm", "unknown"]


def test_lists_counts_and_days() -> None:
    assert listed(["a", "b", "c"]) == "a, b and c"
    assert counted(1, "hole") == "1 hole"
    assert counted(1200, "hole") == "1,200 holes"
    assert day(date(2026, 10, 4)) == "4 October 2026"


def test_holes_are_counted_from_the_centre() -> None:
    found = counts(small_frame())
    right = [found[Address("R", place)] for place in range(1, 8)]
    assert right == [
        "1st from the centre at the head",
        "2nd from the centre at the head",
        "1st on the side from the head",
        "2nd on the side from the head",
        "3rd on the side from the head",
        "2nd from the centre at the throat",
        "1st from the centre at the throat",
    ]


def test_both_ends_of_every_main_are_counted_at_the_head_and_at_the_throat() -> None:
    for frame in demo_book().frames.values():
        found = counts(frame)
        for side in ("R", "L"):
            words = [
                found[h.address]
                for h in frame.drilled
                if h.address.side == side and any(p.kind == "m" for p in h.passes)
            ]
            assert sum("head" in word.split("at the")[-1] for word in words) * 2 == len(words)


ADDRESSES = st.sets(st.builds(Address, st.sampled_from(("R", "L")), st.integers(1, 60)))


@given(ADDRESSES)
def test_selectors_name_exactly_the_holes(holes: set[Address]) -> None:
    read = [selector(word) for word in selectors(holes).split()]
    named = [
        Address(side, place)
        for found in read
        if found is not None
        for side in found.sides
        for place in range(found.first, found.last + 1)
    ]
    assert None not in read
    assert sorted(named) == sorted(holes)


def test_spans_say_both_sides_once() -> None:
    holes = [Address(side, place) for side in ("R", "L") for place in (1, 2, 3, 9)] + [Address("R", 12)]
    assert selectors(holes) == "1-3 9 R12"
    assert plain(spans(selectors(holes))) == "1–3 and 9 on both sides, R12"
    assert [span.first for span in spans("1-3 9 R12 L4-L6")] == ["R1", "R9", "R12", "L4"]


@given(st.sets(st.text(min_size=1, max_size=80), max_size=20))
def test_every_name_gets_a_slug_of_its_own(names: set[str]) -> None:
    found = slugs(names)
    assert found.keys() == names
    assert len(set(found.values())) == len(names)
    for slug in found.values():
        assert slug.isascii()
        assert slug.replace("-", "a").isalnum()
        assert len(slug) <= 60


def test_a_slug_does_not_depend_on_other_names() -> None:
    assert slugs(["Oak & Äpfel"])["Oak & Äpfel"] == "oak-apfel"
    assert slugs(["Oak", "Ash"])["Oak"] == slugs(["Oak"])["Oak"] == "oak"


def test_long_lists_are_broken_up_and_linked() -> None:
    pages = list(sheets("frames/", range(2 * ROWS + 1)))
    assert [page.path for page in pages] == ["frames/", "frames/page.2/", "frames/page.3/"]
    assert [row for page in pages for row in page.rows] == list(range(2 * ROWS + 1))
    assert pages[1].links[0] == (1, "../../frames/index.html")
    assert [list(page.rows) for page in sheets("parts/x/", range(0))] == [[]]
