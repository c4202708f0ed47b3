"""Defaults and exceptions, settled hole by hole."""

from __future__ import annotations

import pytest

from rimbook.book.model import Address, Frame, TensionLimit
from tests.book.maps import MAP, problems_of, settled


def at(frame: Frame, hole: str):  # type: ignore[no-untyped-def]
    return frame.hole(Address(hole[0], int(hole[1:])))  # type: ignore[arg-type]


def test_a_bare_number_means_both_sides() -> None:
    frame = settled().frame
    assert at(frame, "R8").bore_mm == at(frame, "L8").bore_mm == 2.7
    assert at(frame, "R8").part == at(frame, "L8").part == "wide-27"


def test_unknown_stays_unknown() -> None:
    frame = settled().frame
    assert at(frame, "R4").bore_mm is None
    assert at(frame, "L4").bore_mm == 2.1


def test_holes_run_clockwise_and_an_undrilled_place_keeps_its_number() -> None:
    frame = settled().frame
    names = [str(hole.address) for hole in frame.holes]
    assert names[:2] + names[-2:] == ["R1", "R2", "L2", "L1"]
    assert not at(frame, "R7").drilled
    assert at(frame, "R7").bore_mm is None
    assert len(frame.drilled) == 18


def test_an_address_wins_over_a_bore_and_a_bore_over_the_default() -> None:
    frame = settled(MAP.replace("fitted:\n", "fitted:\n  R8: short-21\n  9: unknown\n")).frame
    assert at(frame, "R8").part == "short-21"
    assert at(frame, "L8").part == "wide-27"
    assert at(frame, "R9").part is None


def test_a_twin_fills_two_neighbouring_holes() -> None:
    frame = settled(MAP.replace("fitted:\n", "fitted:\n  9-10: pair-7\n")).frame
    assert [" ".join(map(str, twin.holes)) for twin in frame.twins] == ["R9 R10", "L10 L9"]
    assert at(frame, "R10").twin == 0


def test_a_twin_may_sit_over_the_middle_of_the_throat() -> None:
    frame = settled(MAP.replace("fitted:\n", "fitted:\n  R10-L10: pair-7\n")).frame
    assert [" ".join(map(str, twin.holes)) for twin in frame.twins] == ["R10 L10"]


def test_a_strip_covers_its_holes_clockwise_and_takes_them_over() -> None:
    frame = settled(MAP + "strips: [{name: crown strip, holes: [L2, R2], part: crown}]\n").frame
    assert [str(hole) for hole in frame.strips[0].holes] == ["L2", "L1", "R1", "R2"]
    assert at(frame, "L1").part == "crown"
    assert at(frame, "R3").part == "short-21"


def test_bare_numbers_make_one_strip_on_each_side() -> None:
    frame = settled(MAP + "strips: [{name: side strip, holes: [2, 5], part: unknown}]\n").frame
    assert [str(strip.holes[0]) for strip in frame.strips] == ["R2", "L5"]
    assert at(frame, "R2").part is None


def test_a_left_walk_of_its_own() -> None:
    frame = settled(MAP + "left: {walk: m1 m2 m3 c1 c2 c3 m3 m2 m1}\n").frame
    assert sum(hole.address.side == "L" for hole in frame.holes) == 9
    assert not frame.mirrored


def test_measured_places_may_have_gaps() -> None:
    places = "places_mm: [4, 12, 20, unknown, 40, 50, unknown, 60, 70, 80]\n"
    frame = settled(MAP + places).frame
    assert at(frame, "L2").place_mm == 12
    assert at(frame, "R4").place_mm is None


def test_the_printed_tension_keeps_the_makers_unit() -> None:
    assert settled(MAP + "tension_limit: 12.5 kg\n").frame.tension_limit == TensionLimit(12.5, "kg")


FAULTS = {
    "strips: [{name: a, holes: [R90, L1], part: crown}]": "17:27 There is no hole R90.",
    "strips: [{name: a, holes: [9, R10], part: crown}]": "17:27 A strip runs from one hole to another.",
    "places_mm: [1, 2]": "17:12 There are 2 measured places for 10 places of the walk.",
    "left: {walk: m1 k2}": "17:17 “k2” is no place of a walk.",
    "tension_limit: 28lb": "17:16 tension_limit cannot be “28lb”.",
    "overall_mm: [.nan, 200]": "17:14 overall_mm.1 cannot be .nan.",
    "colour: red": "17:1 There is no key “colour” here.",
    "year: no": "17:7 year cannot be “no”.",
    "note: ''": "17:7 note cannot be “”.",
    "measured: {by: Some One}": "17:16 measured.by cannot be “Some One”.",
    "measured: {by: a, on: 2026-13-01}": "17:23 measured.on cannot be “2026-13-01”.",
    "places_mm: [1e999, 2]": "17:13 places_mm.1 cannot be 1e999.",
}


@pytest.mark.parametrize(("line", "message"), FAULTS.items())
def test_each_fault_is_named_with_its_place(line: str, message: str) -> None:
    found = problems_of(MAP + line + "\n")
    assert [f"{problem.line}:{problem.column} {problem.message}" for problem in found][:1] == [message]


def test_all_faults_of_a_map_are_told_at_once() -> None:
    text = (
        MAP.replace("sport: badminton", "sport: batminton")
        .replace("mains: 6", "mains: six")
        .replace("maker: Saltmarsh Works\n", "")
    )
    found = {problem.message: problem.nearest for problem in problems_of(text)}
    assert found == {
        "sport cannot be “batminton”.": "badminton",
        "mains cannot be “six”.": None,
        "The key “maker” is missing.": None,
    }


def test_a_hole_that_is_not_there_says_which_are() -> None:
    problem = problems_of(MAP.replace("2.7: [8]", "2.7: [R12]"))[0]
    assert (problem.message, problem.expected) == ("There is no hole R12.", "R1 to R10")


@pytest.mark.parametrize("slug", ["Plover", "plover_76", "-plover", "a" * 61, "..", "plover 76", "plövér"])
def test_a_file_name_that_can_be_no_address_is_refused(slug: str) -> None:
    assert "cannot be an address of a page" in problems_of(MAP, slug)[0].message
