"""The way of the string, as a stringer would tell it."""

from __future__ import annotations

from collections import Counter
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import linear_sum_assignment

from rimbook.book.model import Address, Frame, Head, Pass
from rimbook.rim.path import NotDrawable
from rimbook.rim.place import place
from rimbook.rim.types import StringPath
from tests.rim.frames import PLOVER_HEAD, frame, plover, walk_of

SMALL_WALK = "m1 m2 c1 c2 c3 m2 m1"


def small(walk: str = SMALL_WALK, **changes: object) -> Frame:
    """Four mains and three crosses: R1 R2 at the head, R3 R4 R5 on the side, R6 R7 at the throat."""
    settings = {"mains": 4, "crosses": 3, "head": Head("ellipse", 200, 260)} | changes
    return frame(walk, **settings)  # type: ignore[arg-type]


def told(path: StringPath) -> str:
    """The holes in turn: `-` for a pass inside the head, `~` for a leg outside the rim."""
    return str(path.legs[0].start) + "".join(
        ("-" if leg.run == "inside" else "~") + str(leg.end) for leg in path.legs
    )


def ways(made: Frame) -> dict[str, str]:
    return {path.string: told(path) for path in place(made).paths}


def test_mains_run_from_left_to_right_and_crosses_from_head_to_throat() -> None:
    assert ways(small()) == {
        "mains": "L2-L6~L7-L1~R1-R7~R6-R2",
        "crosses": "R3-L3~L4-R4~R5-L5",
    }


def test_centre_mains_joined_at_the_throat() -> None:
    assert ways(small(mains_start="throat"))["mains"] == "L6-L2~L1-L7~R7-R1~R2-R6"


def test_crosses_from_the_throat_pulled_from_the_left() -> None:
    made = small(crosses_start="throat", first_cross="L")
    assert ways(made)["crosses"] == "L5-R5~R4-L4~L3-R3"


def test_each_end_ties_off_at_the_nearest_hole() -> None:
    made = small("m1 m2 . c1 . c2 c3 . m2 m1", tie_offs="R3 L3 R5 L8")
    assert ways(made) == {
        "mains": "L3~L2-L9~L10-L1~R1-R10~R9-R2~R3",
        "crosses": "R5~R4-L4~L6-R6~R7-L7~L8",
    }


def test_with_too_few_tie_offs_the_others_stop_where_they_are() -> None:
    assert ways(small("m1 m2 c1 . c2 c3 m2 m1", tie_offs="R4")) == {
        "mains": "L2-L7~L8-L1~R1-R8~R7-R2",
        "crosses": "R4~R3-L3~L5-R5~R6-L6",
    }


def test_a_tie_off_in_the_last_hole_needs_no_leg() -> None:
    assert ways(small(tie_offs="R2"))["mains"].endswith("R6-R2")


def test_one_piece_goes_on_from_the_mains_into_the_crosses() -> None:
    made = small(pieces=1, tie_offs="L3 L5")
    assert ways(made) == {"whole": "L3~L2-L6~L7-L1~R1-R7~R6-R2~R3-L3~L4-R4~R5-L5"}


def test_one_piece_with_the_long_side_on_the_left() -> None:
    made = small(pieces=1, first_cross="L")
    assert ways(made) == {"whole": "R2-R6~R7-R1~L1-L7~L6-L2~L3-R3~R4-L4~L5-R5"}


def test_a_string_may_turn_back_in_its_own_hole() -> None:
    made = small("m1 m2+c1 c2 c3 m2 m1", pieces=1)
    assert ways(made) == {"whole": "L2-L5~L6-L1~R1-R6~R5-R2-L2~L3-R3~R4-L4"}


@pytest.mark.parametrize(
    ("walk", "message"),
    [
        ("m1 m2 c1 c2 c3 m1", "m2 passes 1 hole on the right side, not 2."),
        ("m1 m2 c1 c3 m2 m1", "c2 passes 0 holes on the right side, not 1."),
        ("m1 m2 m2 c1 c2 c3 m2 m1", "m2 passes 3 holes on the right side, not 2."),
        ("m1 m2 m3 c1 c2 c3 m2 m1", "m3 is on the walk at R3, but the frame has no such pass."),
    ],
)
def test_a_faulty_pattern_names_the_pass(walk: str, message: str) -> None:
    with pytest.raises(NotDrawable) as caught:
        place(small(walk))
    assert str(caught.value) == message


def test_a_fault_on_the_left_is_told_as_such() -> None:
    with pytest.raises(NotDrawable, match="c1 passes 0 holes on the left side, not 1"):
        place(small(left="m1 m2 c2 c3 m2 m1"))


def test_mains_come_in_two_halves() -> None:
    with pytest.raises(NotDrawable, match="5 mains do not make two equal halves"):
        place(small(mains=5))


@st.composite
def sound_frames(draw: st.DrawFn) -> Frame:
    """Frames drilled for straight strings, strung in any way a map can say."""
    head = draw(st.sampled_from([PLOVER_HEAD, Head("teardrop", 190, 320, taper=0.6)]))
    mains, crosses = 2 * draw(st.integers(1, 12)), draw(st.integers(1, 24))
    spacing = draw(st.floats(0.7, 0.95)) * head.width_mm / mains, draw(st.floats(0.6, 0.8)) * 244 / crosses
    walk = walk_of(head, mains, crosses, spacing, draw(st.floats(-5, 5)), draw(st.floats(0, 6)))
    holes = st.builds("{}{}".format, st.sampled_from("RL"), st.integers(1, len(walk.split())))
    return frame(
        walk,
        mains=mains,
        crosses=crosses,
        head=head,
        pieces=draw(st.sampled_from([1, 2])),
        mains_start=draw(st.sampled_from(["head", "throat"])),
        crosses_start=draw(st.sampled_from(["head", "throat"])),
        first_cross=draw(st.sampled_from(["R", "L"])),
        tie_offs=" ".join(draw(st.lists(holes, max_size=6, unique=True))),
    )


def strings_through(made: Frame) -> dict[str, set[Pass]]:
    return {str(hole.address): set(hole.passes) for hole in made.holes}


@given(sound_frames())
def test_every_pass_is_run_exactly_once(made: Frame) -> None:
    through = strings_through(made)
    run: Counter[str] = Counter()
    for path in place(made).paths:
        for leg in path.legs:
            if leg.run == "inside":
                both = through[str(leg.start)] & through[str(leg.end)]
                main = leg.start.side == leg.end.side
                word = next(str(each) for each in both if (each.kind == "m") == main)
                run[f"{leg.start.side}{word}" if main else word] += 1
    mains = [f"{side}m{number}" for side in "RL" for number in range(1, made.mains // 2 + 1)]
    crosses = [f"c{number}" for number in range(1, made.crosses + 1)]
    assert run == Counter(mains + crosses)


@given(sound_frames())
def test_legs_join_and_never_double_back_outside(made: Frame) -> None:
    for path in place(made).paths:
        for leg, following in pairwise(path.legs):
            assert leg.end == following.start
            assert (leg.run, following.run) != ("outside", "outside")
        assert all(leg.start != leg.end for leg in path.legs)


@given(sound_frames())
def test_passes_less_holes_are_the_shared_ones(made: Frame) -> None:
    """Common practice, no published source: a shared hole carries two strings."""
    ends = 2 * sum(leg.run == "inside" for path in place(made).paths for leg in path.legs)
    assert ends - len(made.drilled) == sum(hole.shared for hole in made.holes)


@given(sound_frames())
def test_tie_offs_take_the_least_length_in_all(made: Frame) -> None:
    """Checked by scipy's solver of the assignment problem: lengths along the rim, the shorter way round."""
    rim = place(made)
    tie_offs = made.stringing.tie_offs
    passes = [[leg for leg in path.legs if leg.run == "inside"] for path in rim.paths]
    ends = [end for legs in passes for end in (legs[0].start, legs[-1].end)]
    knots = [end for path in rim.paths for end in (path.legs[0].start, path.legs[-1].end)]

    def apart(one: Address, other: Address) -> float:
        away = abs(rim.holes[one].along_mm - rim.holes[other].along_mm)
        return min(away, rim.curve.length_mm - away)

    lengths = [[apart(end, hole) for hole in tie_offs] for end in ends]
    least = sum(lengths[end][hole] for end, hole in zip(*linear_sum_assignment(lengths), strict=True))
    assert sum(map(apart, ends, knots)) == pytest.approx(least, abs=0.01)
    used = Counter(knot for end, knot in zip(ends, knots, strict=True) if end != knot)
    assert all(knot in tie_offs and count == 1 for knot, count in used.items())


def test_the_plover() -> None:
    """22 mains and 21 crosses through 76 holes: ten shared, four ends tied off."""
    rim = place(plover())
    mains, crosses = rim.paths
    assert (len(mains.legs), len(crosses.legs)) == (22 + 21 + 2, 21 + 20 + 2)
    ties = {str(path.legs[0].start) for path in rim.paths} | {str(path.legs[-1].end) for path in rim.paths}
    assert ties == {"R8", "R31", "L31", "L33"}
