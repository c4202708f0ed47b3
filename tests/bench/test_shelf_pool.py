"""The fewest drawers, and the least in them: against HiGHS, against published coverings, against a trap."""

from __future__ import annotations

import random

import pytest

from rimbook.bench.shelf_poisson import enough
from rimbook.bench.shelf_pool import Pooling, pool
from tests.bench.shelf_oracle import SERVICE, few_places, lines, solved


def plain(_: str, __: tuple[int, ...]) -> int:
    """A level that tells no assignment from another."""
    return 0


# Steiner triple coverings: 3^n less the size of a largest cap set, 1, 2, 4, 9 … (https://oeis.org/A090245).
@pytest.mark.parametrize(("dimension", "count", "least"), [(1, 1, 1), (2, 12, 5)])
def test_steiner_triples(dimension: int, count: int, least: int) -> None:
    options = lines(dimension)
    assert len(options) == count
    found = pool(options, plain)
    assert (len(set(found.items)), found.fewest) == (least, True)


def test_a_trap_for_the_greedy() -> None:
    """Two drawers cover all; the largest first leads to three. A usual trap for set cover, from memory."""
    upper, lower = range(7), range(7, 14)
    greedy = {"c": {*range(3, 7), *range(10, 14)}, "d": {1, 2, 8, 9}, "e": {0, 7}}
    sets = {"a": set(upper), "b": set(lower), **greedy}
    options = [[name for name, held in sorted(sets.items()) if place in held] for place in range(14)]
    assert set(pool(options, plain).items) == {"a", "b"}


@pytest.mark.parametrize("seed", range(25))
def test_against_another_solver(seed: int) -> None:
    options, means = few_places(random.Random(seed))

    def level(_: str, places: tuple[int, ...]) -> int:
        return enough(sum(means[place] for place in places), SERVICE)

    found = pool(options, level)
    assert (found.fewest, found.least) == (True, True)
    dealt: dict[str, list[int]] = {}
    for place, item in enumerate(found.items):
        assert item in options[place]
        dealt.setdefault(item, []).append(place)
    total = sum(level(item, tuple(places)) for item, places in dealt.items())
    assert (len(dealt), total) == solved(options, means)


def test_items_of_another_form_are_kept_apart() -> None:
    """A set holds less in units: it is taken, though another item serves the same places."""

    def level(item: str, _: tuple[int, ...]) -> int:
        return 1 if item == "set" else 2

    assert pool([["a", "set"], ["a", "set"]], level, lambda item: item == "set").items == ("set", "set")


def test_what_is_too_much_is_cut_off_and_said() -> None:
    chance = random.Random(7)
    names = [f"part-{number:02}" for number in range(40)]
    options = [sorted(chance.sample(names, 4)) for _ in range(160)]
    found = pool(options, lambda _, places: len(places))
    assert all(item in options[place] for place, item in enumerate(found.items))
    assert not (found.fewest and found.least)


def test_a_deal_that_is_cut_off_is_no_proof_though_no_other_cover_is_left() -> None:
    """Two drawers are needed, no other two would do, and the ways to deal twenty places out are too many."""
    options = [["a"], ["b"], *[["a", "b"]] * 20]
    found = pool(options, lambda _, places: len(places))
    assert (found.fewest, found.least) == (True, False)


def test_a_place_without_options_is_refused() -> None:
    with pytest.raises(ValueError, match="no options"):
        pool([["a"], []], plain)
    assert pool([], plain) == Pooling(())
