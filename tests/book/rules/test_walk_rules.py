"""The walk against the counts: which strings, where, and in what order."""

from __future__ import annotations

import pytest

from rimbook.bench.check import check
from tests.book.rules.small_book import MAP, TODAY, changed, found, loaded, map_with, said

WALK = "m1 m2 m3 c1 c2\n  c3 c4 m3+c5 m2 m1"


def walked(walk: str, *swaps: tuple[str, str]) -> str:
    return changed(MAP, (WALK, walk), *swaps)


def test_missing_and_double_passes_are_named_with_their_holes() -> None:
    book = loaded(walked("m1 m2 m3 c1 c2\n  c2 c4 m3+c5 m2 m1"))
    assert said("passes-add-up", book) == []
    missing, double = found("strings-on-each-half", book)
    assert double.message == "c2 passes twice on each half, at R5 and R6; a cross passes once."
    assert (double.place, double.hole) == ("frames/maps/lapwing-20.yaml:14:3", "R6")
    assert double.nearest == "c3, which is missing"
    assert missing.message == "c3 passes nowhere on each half; a cross passes once."
    assert missing.nearest == "between R5 (c2) and R7 (c4)"


def test_the_counts_say_which_passes_are_missing_and_which_come_too_often() -> None:
    book = loaded(walked("m1 m2 m3 c1 c2\n  c2 c3 c4 m3 m2 m1"))
    assert said("passes-add-up", book) == []
    book = loaded(walked("m1 m2 m3 c1 c2\n  c2 c4 c2 m3+c5 m2 m1"))
    (problem,) = found("passes-add-up", book)
    assert problem.found == "24 passes"
    assert problem.expected == "22 passes"
    assert problem.tip == "Missing: c3; too often: c2 on each half."


def test_a_string_beyond_the_counts_doubts_the_count() -> None:
    (problem,) = found("strings-on-each-half", map_with(("mains: 6\ncrosses: 5", "mains: 6\ncrosses: 4")))
    assert problem.message == "c5 passes on each half, but 4 crosses are c1 to c4 on a half."
    assert problem.tip == "If the walk is right, crosses is too small."


def test_a_wall_of_missing_strings_ends_in_one_line() -> None:
    problems = said("strings-on-each-half", map_with(("mains: 6\ncrosses: 5", "mains: 6\ncrosses: 20")))
    assert len(problems) == 6
    assert problems[0].startswith("On each half the same goes for c11, c12")


def test_each_half_is_told_where_the_left_has_its_own_walk() -> None:
    left = "left: {walk: m1 m2 m3 c1 c2 c3 c4 m3+c5 m1}\nstringing:"
    book = map_with(("stringing:", left), ("R8, L8, R4, L4", "R8, R4"), ("9-10:", "R9-R10:"))
    (problem,) = found("strings-on-each-half", book)
    assert problem.message == "m2 passes only once on the left half, at L2; a main passes twice."
    assert (problem.line, problem.column) == (15, 35)
    assert problem.nearest == "between L8 (m3) and L9 (m1)"
    (problem,) = found("passes-add-up", book)
    assert problem.tip == "Missing: m2 (L)."


def test_a_single_hole_without_string_is_offered_for_a_missing_pass() -> None:
    (problem,) = found("strings-on-each-half", loaded(walked("m1 m2 m3 c1 .\n  c3 c4 m3+c5 m2 m1")))
    assert (problem.hole, problem.nearest) == ("R5", "R5, which has no string")


def test_mains_must_go_outward_and_come_back() -> None:
    book = loaded(walked("m1 m3 m2 c1 c2\n  c3 c4 m3+c5 m1 m2"))
    assert said("walk-in-order", book) == [
        "m2 comes after m3 at the head: R2 has m3 and R3 has m2.",
        "m2 comes after m1 at the throat: R9 has m1 and R10 has m2.",
    ]


def test_two_mains_in_one_hole_have_no_order() -> None:
    book = loaded(walked("m1 m2+m3 c1 c2\n  c3 c4 c5 m2+m3 m1", ("[8]", "[4]"), ("9-10:", "8-9:")))
    assert said("walk-in-order", book) == []


def test_what_cannot_be_placed_is_not_asked_about_its_geometry() -> None:
    book = map_with(("c1 c2", "c2 c1"), ("[186, 244]", "[300, 400]"))
    assert said("walk-in-order", book)
    assert said("strung-within-law", book) == []


def test_places_are_compared_over_gaps_and_equal_ones_do_not_grow() -> None:
    places = "places_mm: [3.5, unknown, 3.5, unknown, unknown, unknown, unknown, unknown, unknown, unknown]\n"
    (problem,) = found("places-increase", map_with(("stringing:", f"{places}stringing:")))
    assert problem.message == "R3 is measured at 3.5 mm, but R1 before it at 3.5 mm."
    assert problem.hole == "R3"


def test_places_out_of_order_are_told_once_and_not_as_gaps_too() -> None:
    places = "places_mm: [3.5, 200, 17, unknown, unknown, unknown, unknown, unknown, unknown, unknown]\n"
    book = map_with(("stringing:", f"{places}stringing:"))
    assert len(said("places-increase", book)) == 1
    assert said("hole-gaps", book) == []
    assert said("strings-run-straight", book) == []


def test_a_tie_off_is_named_once_and_drilled() -> None:
    book = map_with(("R8, L8, R4, L4", "R8, R8, R11, L4"), ("m2 m1\n", "m2 m1 x\n"))
    assert said("tie-offs", book) == [
        "R8 is a tie-off twice.",
        "R11 is a tie-off, but no hole is drilled there.",
    ]


def test_one_piece_has_two_tie_offs_and_none_named_are_unknown() -> None:
    one_piece = ("{pieces: 2, tie_offs: [R8, L8, R4, L4]}", "{pieces: 1, tie_offs: [R8, L8]}")
    assert said("tie-off-count", map_with(one_piece)) == []
    assert said("tie-off-count", map_with(("pieces: 2", "pieces: 1"))) == [
        "There are 4 tie-offs for 1 piece of string."
    ]
    assert said("tie-off-count", map_with((", tie_offs: [R8, L8, R4, L4]", ""))) == []


@pytest.mark.parametrize(
    "size", ["[18.4, 24.2]", "[7.2, 9.5]", "[1e-300, 1e-300]", "[99.9, 244]", "[186, 9.5]"]
)
def test_a_head_in_other_units_is_told_of_millimetres_and_nothing_else(size: str) -> None:
    book = map_with(("[186, 244]", size), ("overall_mm: [674, 206]\n", ""))
    problems = check(book, TODAY)
    assert {problem.rule for problem in problems} == {"head-large-enough"}
    for problem in problems:
        assert problem.expected == "at least 100 mm"
        assert "cm" in str(problem.tip)
        assert "inches" in str(problem.tip)


def test_measured_points_are_held_to_the_same_size() -> None:
    ring = "[[0, 12], [9, 5], [9, -5], [0, -12], [-9, -5], [-9, 5]]"
    book = map_with(("outline: ellipse, inside_mm: [186, 244]", f"outline: points, points_mm: {ring}"))
    wide, high = found("head-large-enough", book)
    assert (wide.message, high.message) == (
        "The line of holes is 18 mm wide: less than any racket's.",
        "The line of holes is 24 mm high: less than any racket's.",
    )
