"""The last answer is kept for the very same things, and for no others."""

from __future__ import annotations

import pytest

from rimbook.rim.once import once


def test_the_very_same_things_are_worked_out_once() -> None:
    asked = []

    @once
    def joined(one: list[int], other: list[int]) -> list[int]:
        asked.append((one, other))
        return one + other

    first, second = [1], [2]
    assert joined(first, second) is joined(first, second)
    assert len(asked) == 1


def test_equal_things_are_not_the_same() -> None:
    """What is equal now may have been changed since."""

    @once
    def total(numbers: list[int]) -> int:
        return sum(numbers)

    assert [total([1, 2]), total([1, 2, 3]), total([1, 2])] == [3, 6, 3]


def test_another_argument_is_another_question() -> None:
    @once
    def pair(one: object, other: object) -> tuple[object, object]:
        return one, other

    first, second = object(), object()
    assert [pair(first, second), pair(second, first), pair(first, first)] == [
        (first, second),
        (second, first),
        (first, first),
    ]


def test_a_failure_is_no_answer() -> None:
    tries = []

    @once
    def works_later(thing: object) -> int:
        tries.append(thing)
        if len(tries) == 1:
            raise ValueError("not yet")
        return len(tries)

    thing = object()
    with pytest.raises(ValueError, match="not yet"):
        works_later(thing)
    assert works_later(thing) == 2
