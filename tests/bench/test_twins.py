"""Two-post parts in place of two single ones."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest

from rimbook.bench.answers import Answers
from rimbook.bench.load import forces
from rimbook.bench.part_index import index_parts
from rimbook.bench.twins import TwinAdvice, twin_advice
from rimbook.book.model import Address, Part
from rimbook.rim.types import Rim
from tests.bench.catalogue import PARTS, part, straight_pair, with_strip
from tests.rim.frames import address

PAIR = (address("R1"), address("R2"))


def advice(rim: Rim, *more: Part, holes: tuple[Address, Address] = PAIR) -> dict[str, TwinAdvice]:
    parts = PARTS if not more else {each.id: each for each in (*more, PARTS["long"], PARTS["short"])}
    found = twin_advice(rim, Answers(index_parts(parts)), forces(rim), 100)
    return {each.served.part: each for each in found if each.holes == holes}


# Common practice, no published source: posts differ in pitch, so the pitch must match.
@pytest.mark.parametrize(
    ("pitch", "verdict", "code"),
    [
        (7.0, "serves", None),
        (7.2, "serves", None),
        (7.29, "may serve", "pitch unsure"),  # the holes are known to ±0.02 or so
        (7.31, "may serve", "pitch unsure"),
        (7.5, "near miss", "pitch off"),
        (6.5, "near miss", "pitch off"),
    ],
)
def test_pitch(pitch: float, verdict: str, code: str | None) -> None:
    twin = part("twin", "twin-even", pitch_mm=pitch, length_mm=(12.0,), tolerance_mm=None)
    found = advice(straight_pair(7.0), twin)["twin"]
    assert found.distance_mm == pytest.approx(7.0, abs=0.01)
    assert found.off_mm == pytest.approx(7.0 - pitch, abs=0.01)
    assert found.served.verdict == verdict
    assert [reason.code for reason in found.served.reasons] == ([code] if code else [])


def test_a_pitch_far_off_is_not_named() -> None:
    assert not advice(straight_pair(9.0), part("twin", "twin-even", pitch_mm=7.0, length_mm=(12.0,)))


def test_the_nearest_pitch_comes_first() -> None:
    assert list(advice(straight_pair(7.2))) == ["pair-73", "pair-70", "pair-76"]


def test_places_that_were_worked_out_are_not_sure() -> None:
    """A derived place may be half a millimetre off, more than the play of the posts."""
    rim = straight_pair(7.0)
    derived = replace(rim, holes={at: replace(placed, place="derived") for at, placed in rim.holes.items()})
    found = advice(derived)["pair-70"]
    assert found.served.verdict == "may serve"
    assert found.give_mm == pytest.approx((0.5**2 * 2 + 0.05**2 + 0.01**2) ** 0.5)


def test_without_a_resolution_the_distance_is_not_sure() -> None:
    rim = straight_pair(7.0)
    found = advice(replace(rim, frame=replace(rim.frame, measured=None)))["pair-70"]
    assert found.give_mm is None
    assert "pitch unsure" in [reason.code for reason in found.served.reasons]


def test_the_load_is_spread() -> None:
    """Two holes that pull the same way: the posts share it, so nothing is won by stiffness alone."""
    rim = straight_pair(7.0)
    pull = forces(rim)
    one, other = pull[PAIR[0]], pull[PAIR[1]]
    found = advice(rim)["pair-70"].spread
    assert found
    area = 2.05 * 11.0
    assert found.before_mpa == pytest.approx(100 * max(one.length, other.length) / area)
    assert found.after_mpa == pytest.approx(100 * one.plus(other).length / (2 * area))
    assert found.share <= 1


@pytest.mark.parametrize("changes", [{"length_mm": None}, {"barrel_mm": None}])
def test_no_spread_is_claimed_of_unknown_sizes(changes: dict[str, Any]) -> None:
    rim = straight_pair(7.0)
    found = advice(rim, replace(PARTS["pair-70"], **changes))
    assert all(each.spread is None for each in found.values())
    assert bool(found) == ("length_mm" in changes)


def test_only_loose_neighbours_are_paired() -> None:
    rim = straight_pair(7.0)
    covered = replace(rim, frame=with_strip(rim.frame, "R1", "crown"))
    assert advice(rim)
    assert not advice(covered)


def test_the_pair_over_the_middle_of_the_head() -> None:
    rim = straight_pair(7.0)
    ends = (address("L1"), address("R1"))
    assert rim.holes[ends[0]].at.minus(rim.holes[ends[1]].at).length == pytest.approx(6.0, abs=0.02)
    twin = part("twin", "twin-even", pitch_mm=6.0, length_mm=(12.0,))
    assert advice(rim, twin, holes=ends)["twin"].served.verdict == "serves"


def test_uneven_posts_need_unequal_rims() -> None:
    """In two rims of 11 the long post of 16 is cut, the other short by 0.5; at a bridge both are right."""
    rim = straight_pair(7.0)
    reasons = advice(rim, PARTS["pair-uneven"])["pair-uneven"].served.reasons
    assert [reason.code for reason in reasons] == ["trim", "too short"]
    holes = tuple(
        replace(hole, rim_depth_mm=15.0 if hole.address == PAIR[1] else 9.5) for hole in rim.frame.holes
    )
    bridge = replace(rim, frame=replace(rim.frame, holes=holes))
    served = advice(bridge, PARTS["pair-uneven"])["pair-uneven"].served
    assert (served.verdict, served.reasons) == ("serves", ())
    assert [seat.reach.proud_mm for seat in served.seats] == pytest.approx([1.0, 1.0])


def test_unknown_bores_get_no_advice() -> None:
    rim = straight_pair(7.0)
    holes = tuple(replace(hole, bore_mm=None) for hole in rim.frame.holes)
    assert not advice(replace(rim, frame=replace(rim.frame, holes=holes)))
