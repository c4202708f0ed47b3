"""What is said of a value of the wrong shape: in words, and with a way out."""

from __future__ import annotations

import pytest

from rimbook.book.problems import Problem
from rimbook.book.reader import read
from rimbook.book.shape import hold
from rimbook.book.written_moved import WrittenMoved
from tests.book.maps import MAP, problems_of
from tests.book.rules.small_club import refused

SLUGS = "small letters, digits and single hyphens, as anna-b or plover-76"
TENSIONS = "a number and its unit with a space between, as 28 lb, 12.5 kg or 125 N"


def told(line: str) -> Problem:
    """What is said of the small map with one more line."""
    (problem,) = problems_of(f"{MAP}{line}\n")
    return problem


def test_a_handle_is_asked_for_in_words() -> None:
    problem = told("measured: {by: Anna_B}")
    assert (problem.message, problem.expected) == ("measured.by cannot be “Anna_B”.", SLUGS)


@pytest.mark.parametrize("tension", ["28lb", "28", "28 pounds", "'28  lb'", "-28 lb"])
def test_a_tension_is_asked_for_with_an_example(tension: str) -> None:
    assert told(f"tension_limit: {tension}").expected == TENSIONS
    (problem,) = refused(("- lapwing-20", f"- {{frame: lapwing-20, tension: {tension}}}"))
    assert problem.expected == TENSIONS


def test_an_old_name_is_asked_for_in_words() -> None:
    _, problems = hold(read("format: 1\nframes: {Old Name: plover-76}", "moved.yaml"), WrittenMoved)
    assert [(each.message, each.expected) for each in problems] == [("“Old Name” cannot be a key.", SLUGS)]


@pytest.mark.parametrize("written", ["010", "1_0.0e1", "2.50", "0x1F", "true", "True", "1e3"])
def test_what_is_no_text_is_shown_as_written_with_a_way_out(written: str) -> None:
    text = MAP.replace("name: Plover 20", f"name: {written}")
    for problem in problems_of(text):
        assert problem.message == f"name cannot be {written}."
        assert problem.tip == f'Put it in quotes: "{written}".'
    assert not problems_of(MAP.replace("name: Plover 20", f'name: "{written}"'))


def test_a_list_of_numbers_is_shown_as_written_too() -> None:
    assert told("aliases: [Old, 007]").message == "aliases.2 cannot be 007."


@pytest.mark.parametrize(("swapped", "tip"), [("9-10: 11", "11: [9-10]"), ("R9: 2.5", "2.5: [R9]")])
def test_size_and_holes_that_are_swapped_are_put_right(swapped: str, tip: str) -> None:
    problems = problems_of(MAP.replace("rim_depth_mm: 9.4", f"rim_depth_mm: {{default: 9.4, {swapped}}}"))
    assert f"The size comes first: {tip}." in [problem.tip for problem in problems]


@pytest.mark.parametrize("name", ["\u2800", "\u2800 \u2800", "⁂", "-", "( )"])
def test_a_name_that_nobody_can_say_is_refused(name: str) -> None:
    (problem,) = problems_of(MAP.replace("name: Plover 20", f'name: "{name}"'))
    assert problem.expected == "a name with a letter or a digit in it"


@pytest.mark.parametrize("name", ["7", "球拍", "ชม", "Æ", "नाम", "٣"])
def test_a_name_may_be_of_any_script(name: str) -> None:
    assert not problems_of(MAP.replace("name: Plover 20", f'name: "{name}"'))
