"""Where the holes lie: measured, derived, and always in order of the walk."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from math import acos, asin, cos, pi, sin

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.book.model import Address, Frame, Head, Side
from rimbook.rim.outline import curve
from rimbook.rim.places import DERIVED_GAP_MM, bed, bends, places
from tests.rim.frames import PLOVER_HEAD, address, frame, plover, walk_of

CIRCLE = Head("ellipse", 200, 200)
SMALL_WALK = "m1 m2 c1 c2 c3 m2 m1"


def small(walk: str = SMALL_WALK, **changes: object) -> Frame:
    """Four mains and three crosses in a circle of radius 100 mm, mains 20 mm apart, crosses 40 mm."""
    settings = {"mains": 4, "crosses": 3, "head": CIRCLE, "spacing_mm": (20.0, 40.0)} | changes
    return frame(walk, **settings)  # type: ignore[arg-type]


def down(made: Frame, side: Side = "R") -> list[float]:
    """The places of one side in mm from the middle of the head, in order of the walk."""
    length = curve(made.head).length_mm
    found = {at: hole.along_mm for at, hole in places(made).items() if at.side == side}
    return [found[at] if side == "R" else length - found[at] for at in sorted(found)]


def test_straight_strings_meet_a_circle() -> None:
    """At radius r, x off the centre is r·asin(x/r) along from the top, and the height y is r·acos(y/r)."""
    arcs = [100 * asin(0.1), 100 * asin(0.3), *(100 * acos(y) for y in (0.4, 0.0, -0.4))]
    half = curve(CIRCLE).length_mm / 2
    assert down(small()) == pytest.approx([*arcs, half - arcs[1], half - arcs[0]], abs=0.01)
    assert not any(bends(small()).values())


def test_a_shared_hole_lies_midway() -> None:
    shared = small("m1 m2+c1 c2 c3 m2 m1")
    level = bed(shared).cross(1)
    assert down(shared)[1] == pytest.approx((100 * asin(0.3) + 100 * acos(level / 100)) / 2, abs=0.01)


def test_the_right_side_runs_clockwise_from_the_head() -> None:
    made = small()
    found = places(made)
    assert list(found) == [hole.address for hole in made.holes]
    along = [hole.along_mm for hole in found.values()]
    assert along == sorted(along)
    assert found[address("R1")].at == pytest.approx((10, 99.5), abs=0.01)
    assert found[address("L1")].at == pytest.approx((-10, 99.5), abs=0.01)
    assert found[address("L7")].outward == pytest.approx((-0.1, -0.995), abs=0.001)


def test_straight_strings_meet_a_head_that_is_not_symmetric() -> None:
    """Mains stay 10 and 30 mm off the centre line and c2 level on both sides, though the left is wider."""
    points = tuple(
        (sin(pi * turn / 15) * (90 if turn < 15 else 110), 100 * cos(pi * turn / 15)) for turn in range(30)
    )
    found = places(small(head=Head("points", 200, 200, points_mm=points)))
    for word, x in {"R1": 10, "R2": 30, "R7": 10, "L1": -10, "L2": -30, "L6": -30}.items():
        assert found[address(word)].at.x == pytest.approx(x, abs=0.01)
    assert found[address("R4")].at.y == pytest.approx(found[address("L4")].at.y, abs=0.01)


def test_a_measured_place_wins() -> None:
    made = small(places_mm={"R": [None, 31.25, *[None] * 5], "L": [None, None, 120.5, *[None] * 4]})
    found = places(made)
    assert found[address("R2")].along_mm == 31.25
    assert found[address("R2")].place == "measured"
    assert found[address("R1")].place == "derived"
    assert curve(CIRCLE).length_mm - found[address("L3")].along_mm == pytest.approx(120.5)
    assert not any(bends(made).values())


def test_derived_places_follow_their_measured_neighbours() -> None:
    """Both neighbours of c2 lie 6 mm further down than the pattern has them: so does c2."""
    plain = down(small())
    made = small(places_mm={"R": [None, None, plain[2] + 6, None, plain[4] + 6, None, None]})
    assert down(made)[3] == pytest.approx(plain[3] + 6)


def test_holes_without_a_string_share_the_room_and_undrilled_places_have_no_hole() -> None:
    found = down(small("m1 m2 . c1 x . c2 c3 m2 m1"))
    m2, free, c1, other, c2 = found[1:6]
    assert free == pytest.approx((m2 + c1) / 2)
    assert other == pytest.approx(c1 + (c2 - c1) * 2 / 3)
    assert address("R5") not in places(small("m1 m2 . c1 x . c2 c3 m2 m1"))


def test_holes_nobody_knows_anything_of_are_spread_evenly() -> None:
    half = curve(CIRCLE).length_mm / 2
    assert down(small(". . . .")) == pytest.approx([half * share / 8 for share in (1, 3, 5, 7)])


def test_two_holes_swapped_on_the_walk_are_bent_and_no_others() -> None:
    swapped = bends(small("m1 m2 c2 c1 c3 m2 m1"))
    bent = {str(at) for at, bend in swapped.items() if bend > 0}
    assert bent == {"R3", "R4", "L3", "L4"}
    assert all(swapped[address(word)] > 20 for word in ("R3", "R4"))


def test_a_measured_place_out_of_order_is_told() -> None:
    made = small(places_mm={"R": [10, 30, 120, 110, 200, 280, 300]})
    assert down(made)[2:4] == pytest.approx([115, 115], abs=0.02)
    assert bends(made)[address("R3")] == pytest.approx(5, abs=0.02)
    assert bends(made)[address("R2")] == 0


def test_a_measured_place_beyond_the_throat_is_told() -> None:
    made = small(places_mm={"R": [*[None] * 6, 330.0]})
    half = curve(CIRCLE).length_mm / 2
    assert down(made)[-1] == pytest.approx(half, abs=0.01)
    assert bends(made)[address("R7")] == pytest.approx(330 - half, abs=0.01)


def test_the_plover_without_a_spacing() -> None:
    """The shared holes settle the spacing; nothing has to bend by more than the gap asks for."""
    found = bed(plover())
    assert found.mains_mm == pytest.approx(7.9, abs=0.2)
    assert found.crosses_mm == pytest.approx(9.4, abs=0.2)
    assert max(bends(plover()).values()) < 2
    along = down(plover())
    assert min(end - start for start, end in pairwise(along)) > DERIVED_GAP_MM - 1e-6


@pytest.mark.parametrize(
    ("head", "mains", "crosses", "spacing_mm", "middle_mm"),
    [
        (PLOVER_HEAD, 22, 21, (7.8, 9.3), 1.0),
        (Head("superellipse", 250, 335, exponent=2.2), 16, 19, (13.9, 13.6), 4.0),
        (Head("ellipse", 245, 325), 18, 20, (12.2, 13.1), 6.0),
        (Head("teardrop", 190, 320, taper=0.6), 14, 18, (12.4, 13.7), 3.0),
    ],
)
def test_a_spacing_is_recovered_from_the_walk_alone(
    head: Head, mains: int, crosses: int, spacing_mm: tuple[float, float], middle_mm: float
) -> None:
    """The order of the holes leaves a little play, so the spacing comes out to within 5 per cent."""
    walk = walk_of(head, mains, crosses, spacing_mm, middle_mm, shared_mm=4.5)
    made = frame(walk, mains=mains, crosses=crosses, head=head)
    found = bed(made)
    assert found.mains_mm == pytest.approx(spacing_mm[0], rel=0.05)
    assert found.crosses_mm == pytest.approx(spacing_mm[1], rel=0.05)
    assert found.middle_mm == pytest.approx(middle_mm, abs=2)
    assert max(bends(made).values()) < 2
    written = replace(made, spacing_mm=spacing_mm)
    assert (bed(written).mains_mm, bed(written).crosses_mm) == spacing_mm


words = st.sampled_from(["m1", "m2", "m3", "c1", "c2", "c9", "m1+c1", "c3+m4", "m2+m3", ".", "x"])
walks = st.lists(words, min_size=1, max_size=40)
known = st.one_of(st.none(), st.floats(0.01, 2000), st.just(5.0))
heads = st.sampled_from(
    [
        PLOVER_HEAD,
        CIRCLE,
        Head("teardrop", 190, 320, taper=1.0),
        Head("points", 4, 4, points_mm=((0, 0), (4, 4), (4, 0), (0, 4), (2, 4), (1, 2))),
        Head("ellipse", 0.01, 0.01),
    ]
)


@st.composite
def frames(draw: st.DrawFn) -> Frame:
    """Frames with any walk at all: sense is a matter for the rules."""
    right, left = draw(walks), draw(walks)
    measured: dict[Side, list[float | None]] = {
        "R": draw(st.lists(known, min_size=len(right), max_size=len(right))),
        "L": draw(st.lists(known, min_size=len(left), max_size=len(left))),
    }
    return frame(
        " ".join(right),
        left=" ".join(left),
        mains=draw(st.integers(1, 60)),
        crosses=draw(st.integers(1, 60)),
        head=draw(heads),
        places_mm=draw(st.sampled_from([None, measured])),
        spacing_mm=draw(st.sampled_from([None, (7.0, 9.0), (0.001, 500.0)])),
    )


@given(frames())
def test_places_grow_along_any_walk(made: Frame) -> None:
    found = places(made)
    assert list(found) == [hole.address for hole in made.drilled]
    assert bends(made).keys() == found.keys()
    round_trip = [0.0, *(hole.along_mm for hole in found.values()), curve(made.head).length_mm]
    assert all(start < end for start, end in pairwise(round_trip))


@given(frames())
def test_a_mirrored_frame_has_mirrored_places(made: Frame) -> None:
    if made.head.outline == "points":
        return
    other: dict[Side, Side] = {"R": "L", "L": "R"}
    holes = tuple(
        replace(hole, address=Address(other[hole.address.side], hole.address.number))
        for hole in reversed(made.holes)
    )
    mirrored = places(replace(made, holes=holes))
    for at, hole in places(made).items():
        twin = mirrored[Address(other[at.side], at.number)]
        assert twin.at == pytest.approx((-hole.at.x, hole.at.y), abs=1e-6)
        assert twin.outward == pytest.approx((-hole.outward.x, hole.outward.y), abs=1e-6)


def test_hundreds_of_holes() -> None:
    crowd = frame(" ".join(["."] * 199 + ["m1"]), mains=2, crosses=1)
    assert len(places(crowd)) == 400
