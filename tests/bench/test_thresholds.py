"""The thresholds: what can be set anew, what is refused, and that each says where it comes from."""

from __future__ import annotations

import json
from dataclasses import fields, replace
from typing import Any

import pytest

from rimbook.bench.thresholds import DEFAULT, BySport, Thresholds, about, as_data, changed


def test_they_travel_as_json() -> None:
    data = json.loads(json.dumps(as_data(DEFAULT)))
    assert data["drops_out_over_mm"] == 0.25
    assert data["string_mm"]["badminton"] == [0.62, 0.66, 0.70]
    assert changed(data) == DEFAULT


def test_each_says_what_it_is_and_where_it_comes_from() -> None:
    assert set(about()) == {each.name for each in fields(Thresholds)} == set(as_data(DEFAULT))
    for name, said in about().items():
        assert said["says"], name
        assert said["source"], name
        assert said["unit"] == ("mm" if name.endswith("_mm") else "lb" if name.endswith("_lb") else ""), name
    assert about()["finger_over_mm"]["source"] == "common practice, no published source"
    assert "no published value" in about()["friction"]["source"]


def test_one_may_be_set_anew() -> None:
    mine = changed(
        {"threading_mm": 0.2, "string_mm": {"tennis": [1.1, 1.3]}, "usual_tension_lb": {"squash": 24}}
    )
    assert mine.threading_mm == 0.2
    assert mine.string_mm.of("tennis") == (1.1, 1.3)
    assert mine.string_mm.of("badminton") == DEFAULT.string_mm.of("badminton")
    assert mine.usual_tension_lb.of("squash") == 24
    assert mine.drops_out_over_mm == DEFAULT.drops_out_over_mm
    assert changed({}, mine) is not None
    assert changed({}, mine) == mine


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"threding_mm": 0.2}, "'threding_mm' is no threshold; nearest: threading_mm"),
        ({"string_mm": {"tenis": [1.3]}}, "'tenis' is no sport; nearest: tennis"),
        ({"string_mm": [1.3]}, "expected a value for each sport"),
        ({"string_mm": {"tennis": 1.3}}, "expected a list of diameters"),
        ({"string_mm": {"tennis": [1.3, 1.2]}}, "thinnest first"),
        ({"string_mm": {"tennis": []}}, "thinnest first"),
        ({"string_mm": {"tennis": [-1.3, 1.2]}}, "expected 0 or more"),
        ({"threading_mm": "0.2"}, "threading_mm is '0.2'; expected a number"),
        ({"threading_mm": True}, "expected a number"),
        ({"threading_mm": -0.1}, "expected 0 or more"),
        ({"groove_per_string": 0}, "groove_per_string is 0; expected more than 0"),
        ({"derived_place_mm": 0}, "derived_place_mm is 0; expected more than 0"),
        ({"threading_mm": float("nan")}, "finite"),
        ({"finger_over_mm": 0.5}, "finger_over_mm is 0.5 and drops_out_over_mm is 0.25"),
        ({"seats_down_to_mm": 0.01}, "seats_down_to_mm is 0.01 and driving_under_mm is 0"),
        ({"leave_proud_mm": 2}, "leave_proud_mm is 2 and proud_up_to_mm is 1.5"),
        ({"hold_share": 1.2}, "expected 0 to 1"),
        ({"usual_tension_lb": {"tennis": 0}}, "expected more than 0"),
    ],
)
def test_what_contradicts_is_refused(changes: dict[str, Any], message: str) -> None:
    with pytest.raises(ValueError, match=message):
        changed(changes)


def test_a_value_for_each_sport() -> None:
    assert replace(BySport(1, 2, 3, 4), tennis=9).of("tennis") == 9
