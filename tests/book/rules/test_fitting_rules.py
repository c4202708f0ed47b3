"""What sits where: parts, strips, twins, sides and exceptions."""

from __future__ import annotations

import pytest

from tests.book.rules.small_book import MAP, changed, found, loaded, map_with, parts_with, said

CROWN = "{name: crown strip, holes: [L2, R2], part: lapwing-crown}"


def test_an_unknown_part_is_told_once_a_line_with_its_holes_and_the_nearest() -> None:
    (problem,) = found("part-exists", map_with(("bore 2.7: barrel-27", "bore 2.7: barrel-72")))
    assert problem.place == "frames/maps/lapwing-20.yaml:19:13"
    assert (problem.hole, problem.nearest) == ("8", "barrel-27")


def test_an_unknown_strip_is_found_and_nothing_like_it_means_unknown() -> None:
    (problem,) = found("part-exists", map_with(("part: lapwing-crown", "part: qqqq")))
    assert problem.message == "The catalogue has no part “qqqq”."
    assert (problem.line, problem.nearest) == (22, "unknown")


def test_unknown_is_no_part_to_look_for() -> None:
    assert said("part-exists", map_with(("default: barrel-21", "default: unknown"))) == []


@pytest.mark.parametrize(
    ("old", "new", "message"),
    [
        ("9-10: twin-21", "9-10: lapwing-set", "lapwing-set is a set and cannot sit in a hole."),
        (
            "part: lapwing-crown",
            "part: barrel-21",
            "barrel-21 is a single part and cannot be the strip “crown strip”.",
        ),
        (
            "part: lapwing-crown",
            "part: twin-21",
            "twin-21 is an even twin and cannot be the strip “crown strip”.",
        ),
    ],
)
def test_a_part_sits_where_its_kind_can(old: str, new: str, message: str) -> None:
    assert said("part-suits-place", map_with((old, new))) == [message]


def test_a_twin_over_three_holes_leaves_one_alone() -> None:
    (problem,) = found("twin-holes", map_with(("9-10: twin-21", "R4-R6: twin-21")))
    assert problem.message.endswith("has a neighbour to share it with: R6.")


def test_a_twin_may_bridge_the_middle_of_the_throat() -> None:
    book = map_with(("9-10: twin-21", "R10-L10: twin-21"))
    assert said("twin-holes", book) == []
    assert said("twin-pitch", book) == []


def test_a_twin_needs_two_drilled_holes() -> None:
    book = map_with(("m2 m1\n", "m2 x m1\n"))
    assert said("twin-holes", book) == [
        "twin-21 is an even twin; of these holes none has a neighbour to share it with: 9."
    ]


def test_a_worked_out_place_makes_a_pitch_doubtful_but_not_wrong() -> None:
    (problem,) = found("twin-pitch", parts_with(("pitch_mm: 7.0", "pitch_mm: 12.0")))
    assert problem.severity == "warning"
    assert problem.message == (
        "twin-21 has its posts 12 mm apart, but R9 and R10 are worked out to be 7 mm apart."
    )
    assert problem.hole == "9-10"


def test_strips_of_both_sides_are_each_found_at_their_own_entry() -> None:
    side = "{name: side strip, holes: [4, 5], part: unknown}"
    bumper = "{name: bumper, holes: [L6, L5], part: unknown}"
    (problem,) = found("strip-holes", map_with((CROWN, f"{CROWN}\n  - {side}\n  - {bumper}")))
    assert problem.message == "The strip “bumper” covers L5, which “side strip” covers too."
    assert problem.line == 24


def test_a_strip_written_the_wrong_way_round_is_suspected() -> None:
    book = map_with(("[L2, R2]", "[R2, L2]"))
    (problem,) = found("strip-posts", book)
    assert problem.tip == "A strip is read clockwise from the first hole to the last; are the two swapped?"
    (problem,) = found("strip-holes", map_with(("[L2, R2], part: lapwing-crown", "[R1, L1], part: unknown")))
    assert (problem.severity, problem.message) == (
        "warning",
        "The strip “crown strip” covers 20 of 20 holes.",
    )


def test_a_strip_over_an_undrilled_place_counts_holes_alone() -> None:
    book = map_with(("m1 m2 m3 c1", "m1 x m2 m3 c1"), ("[L2, R2]", "[L3, R3]"), ("9-10:", "10-11:"))
    assert said("strip-posts", book) == []


@pytest.mark.parametrize(
    ("old", "new", "message", "severity"),
    [
        (
            "2.7: [8]",
            "2.1: [8]",
            "bore_mm is 2.1 by default; the exception “2.1” changes nothing.",
            "warning",
        ),
        ("2.7: [8]", "2.7: [8], 3.1: []", "bore_mm “3.1” names no holes.", "error"),
        ("9-10: twin-21", "R1: twin-21", "“R1” never applies: a strip covers these holes.", "error"),
        ("9-10: twin-21", "9-10: barrel-21", "“9-10” changes nothing: barrel-21 is the default.", "warning"),
        (
            "9-10:",
            "9: barrel-27\n  9-10:",
            "“9” never applies: other lines say what sits in these holes.",
            "error",
        ),
    ],
)
def test_an_exception_without_effect_is_told(old: str, new: str, message: str, severity: str) -> None:
    problems = found("no-idle-lines", map_with((old, new)))
    assert (message, severity) in [(problem.message, problem.severity) for problem in problems]


def test_an_exception_that_sets_a_bore_back_to_the_default_part_has_an_effect() -> None:
    book = map_with(("9-10:", "8: barrel-21\n  9-10:"), ("2.7: [8]", "2.7: [7, 8]"))
    assert said("no-idle-lines", book) == []


def test_sides_that_differ_in_a_part_are_told_once_at_the_line_that_did_it() -> None:
    (problem,) = found("sides-agree", map_with(("9-10:", "R4-R5: unknown\n  9-10:")))
    assert (
        problem.message == "The left side mirrors the right, but R4 and L4 differ in part, and so do 1 more."
    )
    assert problem.found == "R4 unknown, L4 barrel-21"
    assert problem.line == 20


def test_a_left_side_with_its_own_walk_may_differ() -> None:
    left = "left: {walk: m1 m2 m3 c1 c2 c3 c4 m3+c5 m2 m1}\nstringing:"
    book = map_with(("2.7: [8]", "2.7: [8, R4]"), ("stringing:", left))
    assert said("sides-agree", book) == []


def test_a_barrel_is_compared_where_both_are_known() -> None:
    assert said("barrel-in-bore", map_with(("default: 2.1", "default: unknown"))) == []
    (problem,) = found("barrel-in-bore", map_with(("2.7: [8]", "2.7: [8], 1.5: [R5]")))
    assert problem.message == "barrel-21 has a barrel of 2.05 mm and cannot enter a bore of 1.5 mm."
    assert problem.hole == "R5"


def test_the_long_post_of_an_uneven_twin_belongs_to_the_deep_hole() -> None:
    uneven = ("kind: twin-even, barrel_mm: 2.05", "kind: twin-uneven, length_mm: [9, 16], barrel_mm: 2.05")
    deep = changed(MAP, ("rim_depth_mm: 9.4", "rim_depth_mm: {default: 9.4, 15.5: [10]}"))
    assert said("barrel-through-rim", loaded(deep, parts_with(uneven).parts_files[0].document.text)) == []
    deeper = changed(deep, ("15.5:", "19:"))
    assert said("barrel-through-rim", loaded(deeper, parts_with(uneven).parts_files[0].document.text)) == [
        "twin-21 reaches 16 mm under its flange; the rim is 19 mm deep."
    ]
