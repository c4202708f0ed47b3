"""The pull on the grommets over whole frames."""

from __future__ import annotations

from dataclasses import replace
from math import isclose, sqrt

import pytest
from hypothesis import given

from rimbook.bench.load import forces, pull
from rimbook.book.model import Frame, Head
from rimbook.rim.place import place
from tests.rim.frames import address, frame, plover
from tests.rim.test_path import sound_frames

SMALL = frame("m1 m2 c1 c2 c3 m2 m1", mains=4, crosses=3, head=Head("ellipse", 200, 260))


@given(sound_frames())
@pytest.mark.parametrize("friction", [0.0, 0.15])
def test_forces_and_moments_cancel(friction: float, made: Frame) -> None:
    """Statics of a body at rest: the strings pull only on the frame that holds them."""
    rim = place(made)
    found = forces(rim, friction=friction)
    spin = [rim.holes[at].at.x * force.y - rim.holes[at].at.y * force.x for at, force in found.items()]
    assert sum(force.x for force in found.values()) == pytest.approx(0, abs=1e-9)
    assert sum(force.y for force in found.values()) == pytest.approx(0, abs=1e-9)
    assert sum(spin) == pytest.approx(0, abs=1e-9)


def test_mains_pull_head_and_throat_together() -> None:
    """Method of sections: 16 mains at 274 N pull the two ends together by 16 × 274 N = 4384 N.

    274 N (28 kg, about 62 lb): Cross and Bower, "Measurements of string tension in a
    tennis racket", Sports Engineering.
    """
    walk = " ".join([*(f"m{n}" for n in range(1, 9)), "c1", *(f"m{n}" for n in range(8, 0, -1))])
    rim = place(frame(walk, mains=16, crosses=1, head=Head("ellipse", 250, 330), spacing_mm=(13.0, 13.0)))
    mains = replace(rim, paths=rim.paths[:1])
    head = sum(force.y for at, force in forces(mains).items() if rim.holes[at].at.y > 0)
    assert 274 * head == pytest.approx(-4384, abs=0.01)


def test_a_free_end_pulls_with_the_tension_and_an_empty_hole_not_at_all() -> None:
    made = frame("m1 m2 . c1 c2 c3 m2 m1", mains=4, crosses=3, head=Head("ellipse", 200, 260))
    found = pull(place(made))
    assert found[address("R2")] == pytest.approx(1)
    assert found[address("R3")] == 0


def test_a_cross_that_turns_about_a_right_angle_pulls_with_root_two() -> None:
    """A 90° turn carries T·√2: 2·sin 45°. The plover's c11 runs through its widest place."""
    assert pull(place(plover()))[address("R20")] == pytest.approx(sqrt(2), abs=0.01)


def test_a_symmetric_frame_with_symmetric_ends_is_pulled_alike_by_its_mains() -> None:
    rim = place(SMALL)
    found = pull(replace(rim, paths=rim.paths[:1]))
    for number in range(1, 8):
        assert found[address(f"R{number}")] == pytest.approx(found[address(f"L{number}")], abs=1e-9)


def test_every_hole_of_the_plover() -> None:
    """Nothing carries more than its strings can pull: 2 for each pass, 1 more for a knot."""
    made = plover()
    found = pull(place(made))
    assert found.keys() == {hole.address for hole in made.holes}
    for hole in made.holes:
        assert 0 < found[hole.address] < 2 * len(hole.passes) + hole.tie_off


def test_friction_never_adds_tension() -> None:
    rim = place(plover())
    smooth, rough = pull(rim), pull(rim, friction=0.2)
    plain = [hole.address for hole in rim.frame.holes if not hole.shared and not hole.tie_off]
    assert all(rough[at] < smooth[at] or isclose(rough[at], smooth[at]) for at in plain)
    assert rough[address("R18")] < smooth[address("R18")] - 0.1


def test_friction_cannot_be_negative() -> None:
    with pytest.raises(ValueError, match=r"cannot be -0\.1"):
        pull(place(SMALL), friction=-0.1)
