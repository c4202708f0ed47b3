"""Bearing pressure against a worked example, and the pull on a whole head against the sum of its parts."""

from __future__ import annotations

import pytest

from rimbook.bench.head_pull import head_pull
from rimbook.bench.pressure import bearing_pressure, projected_area
from rimbook.bench.units import newtons
from rimbook.rim.place import place
from tests.rim.frames import plover


def test_worked_example() -> None:
    """3550 N on a pin of 10.0 mm over 15.0 mm: 150 mm² and 23.7 MPa.

    Mott, Machine Elements in Mechanical Design, question 3-18, as copied at https://holooly.com/?p=799833
    """
    assert projected_area(10.0, 15.0) == pytest.approx(150)
    assert bearing_pressure(3550, 10.0, 15.0) == pytest.approx(23.7, abs=0.05)


@pytest.mark.parametrize(("width", "length"), [(0.0, 9.0), (2.0, -1.0), (float("nan"), 9.0)])
def test_lengths_that_are_none(width: float, length: float) -> None:
    with pytest.raises(ValueError, match="expected more than 0"):
        bearing_pressure(100, width, length)


def test_no_force_no_pressure() -> None:
    assert bearing_pressure(0, 2.0, 9.0) == 0
    with pytest.raises(ValueError, match="force"):
        bearing_pressure(-1, 2.0, 9.0)


def test_the_head_is_pulled_by_every_string_that_is_cut() -> None:
    """Equilibrium of one half: cut the head across the middle, and the cut strings hold it.

    The strings are those of the placed frame, counted where they cross the line, not those of the map's
    heading. 16 mains at 274 N (Cross and Bower, 2001) would be 4.38 kN.
    """
    rim = place(plover())
    tension = newtons(24, "lb")
    cut = {"along": 0.0, "across": 0.0}
    for path in rim.paths:
        for leg in path.legs:
            start, end = rim.holes[leg.start].at, rim.holes[leg.end].at
            if leg.run == "inside":
                way = end.minus(start).unit
                cut["along"] += abs(way.y) * tension if start.y * end.y < 0 and abs(way.y) > 0.9 else 0.0
                cut["across"] += abs(way.x) * tension if start.x * end.x < 0 and abs(way.x) > 0.9 else 0.0
    found = head_pull(rim.frame, tension)
    assert found.along_n == pytest.approx(cut["along"], rel=2e-3)
    assert found.across_n == pytest.approx(cut["across"], rel=2e-3)


def test_crosses_of_their_own() -> None:
    found = head_pull(plover(), 100, 90)
    assert (found.along_n, found.across_n) == (2200, 21 * 90)
