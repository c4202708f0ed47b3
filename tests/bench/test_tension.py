"""Tension along the string of a whole frame, and the maker's limit."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from rimbook.bench.load import pull
from rimbook.bench.tension import Pulled, along, capstan, over_limit, usual_tension
from rimbook.bench.thresholds import changed
from rimbook.bench.units import newtons
from rimbook.book.model import TensionLimit
from rimbook.rim.place import place
from rimbook.rim.types import StringPath
from tests.rim.frames import plover

RIM = place(plover())


@pytest.mark.parametrize("friction", [0.0, 0.1, 0.35])
def test_the_pull_of_each_station_is_that_of_the_load(friction: float) -> None:
    """Worked out twice: here by the law of cosines, there as a sum of vectors."""
    loads = pull(RIM, friction=friction)
    checked = 0
    for path in RIM.paths:
        for station in along(RIM, path, 100, friction):
            hole = RIM.frame.hole(station.address)
            if station.before_n and station.after_n and not hole.shared and not hole.tie_off:
                assert station.pull_n == pytest.approx(100 * loads[station.address], rel=1e-9, abs=1e-9)
                checked += 1
    assert checked > 60


@pytest.mark.parametrize("pulled", ["every pass", "one end"])
def test_without_friction_the_tension_is_the_same_everywhere(pulled: Pulled) -> None:
    for path in RIM.paths:
        stations = along(RIM, path, 100, 0, pulled)
        assert {station.after_n for station in stations[:-1]} == {100}
        assert {station.before_n for station in stations[1:]} == {100}
        assert all(
            station.pull_n == pytest.approx(200 * math.sin(station.turn / 2)) for station in stations[1:-1]
        )


def test_pulled_at_one_end_the_tension_falls_at_every_hole() -> None:
    for path in RIM.paths:
        stations = along(RIM, path, 100, 0.1, "one end")
        assert stations[-1].before_n == 100
        for station in stations[1:-1]:
            assert station.before_n == pytest.approx(station.after_n * math.exp(-0.1 * station.turn))
        turned = sum(station.turn for station in stations[1:-1])
        assert stations[0].after_n == pytest.approx(100 * math.exp(-0.1 * turned))


def test_pulled_at_every_pass_the_inside_keeps_it_all() -> None:
    (mains, *_) = RIM.paths
    stations = along(RIM, mains, 100, 0.1)
    for leg, station in zip(mains.legs, stations, strict=False):
        assert (station.after_n == 100) == (leg.run == "inside")
        assert station.after_n >= 100 * math.exp(-0.1 * math.pi) - 1e-9


def test_a_string_without_legs() -> None:
    assert along(RIM, StringPath("mains", ()), 100, 0.1) == ()


@given(st.floats(0, 3), st.floats(0, 3), st.floats(0, 30))
@settings(max_examples=50)
def test_more_friction_never_leaves_more(friction: float, more: float, turn: float) -> None:
    assert capstan(100, friction + more, turn) <= capstan(100, friction, turn) <= 100


@pytest.mark.parametrize("tension", [0.0, -20.0, float("nan"), 1e6])
def test_tensions_that_are_none(tension: float) -> None:
    with pytest.raises(ValueError, match="tension is"):
        along(RIM, RIM.paths[0], tension, 0.1)
    with pytest.raises(ValueError, match="tension is"):
        over_limit(tension, None)


def test_the_usual_tension_can_be_set() -> None:
    assert usual_tension(RIM.frame) == pytest.approx(newtons(24, "lb"))
    mine = changed({"usual_tension_lb": {"badminton": 20}})
    assert usual_tension(RIM.frame, mine) == pytest.approx(newtons(20, "lb"))


def test_the_usual_tension_never_exceeds_the_printed_one() -> None:
    old = replace(RIM.frame, tension_limit=TensionLimit(9, "kg"))
    assert usual_tension(old) == pytest.approx(newtons(9, "kg"))
    assert over_limit(usual_tension(old), old.tension_limit) is None


@pytest.mark.parametrize(
    ("tension", "limit", "cautioned"),
    [
        (newtons(28, "lb"), TensionLimit(28, "lb"), False),
        (newtons(28.1, "lb"), TensionLimit(28, "lb"), True),
        (newtons(28, "lb"), TensionLimit(12.7, "kg"), True),  # 12.7 kg are 27.99 lb
        (newtons(28, "lb"), TensionLimit(12.8, "kg"), False),
        (125.0, TensionLimit(124.5, "N"), True),
        (500.0, None, False),
    ],
)
def test_the_limit_of_the_maker(tension: float, limit: TensionLimit | None, cautioned: bool) -> None:
    caution = over_limit(tension, limit)
    assert (caution is not None) is cautioned
    if caution and limit:
        assert caution.code == "over the limit"
        assert f"{limit.value:g} {limit.unit} printed on the frame" in caution.says
