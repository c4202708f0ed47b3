"""What serves a measured hole: the file of cases that the build and the browser share, and the ranking."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.bench.fit import fit
from rimbook.bench.length import reach
from rimbook.bench.reasons import MEASURE, SENTENCES, Reason
from rimbook.bench.room import in_hole, room
from rimbook.bench.serves import VERDICTS, Seat, Served, Wanted, marks_of, ranked, serve
from rimbook.bench.sound import part_cautions
from rimbook.bench.thresholds import DEFAULT, as_data, changed
from rimbook.bench.uncertainty import Size
from tests.fits_cases import part_of

CASES = json.loads((Path(__file__).parents[1] / "cases" / "fits.json").read_text("utf-8"))
THRESHOLDS = changed(CASES["thresholds"])


PARTS = [part_of(name, written) for name, written in CASES["parts"].items()]


def wanted(hole: dict[str, Any]) -> Wanted:
    strings = None if hole["string_mm"] is None else in_hole(tuple(hole["string_mm"]), hole["strings"])
    return Wanted(hole["bore_mm"], hole["resolution_mm"], hole["depth_mm"], strings)


def said(served: Served) -> dict[str, Any]:
    """What is said of a part, under the names that the file uses."""
    seat = served.seats[0]
    numbers: dict[str, Any] = {
        "clearance_mm": seat.fit.clearance_mm,
        "least_mm": seat.fit.least_mm,
        "most_mm": seat.fit.most_mm,
        "kind": seat.fit.kind,
        "needs_mm": seat.room.needs_mm,
        "spare_mm": seat.room.spare_mm,
        "proud_mm": seat.reach.proud_mm,
        "trim_mm": seat.reach.trim_mm,
    }
    return {"part": served.part, "verdict": served.verdict, "word": seat.fit.word, **numbers}


@pytest.mark.parametrize("case", CASES["cases"], ids=lambda case: case["name"])
def test_cases(case: dict[str, Any]) -> None:
    hole = wanted(case["hole"])
    found = ranked(hole, PARTS, THRESHOLDS)
    assert [each.part for each in found] == [line["part"] for line in case["expect"]]
    for served, line in zip(found, case["expect"], strict=True):
        reasons, numbers = line["reasons"], {key: value for key, value in line.items() if key != "reasons"}
        assert {key: said(served)[key] for key in numbers} == pytest.approx(numbers, abs=1e-6)
        assert [reason.code for reason in served.reasons] == [reason["code"] for reason in reasons]
        assert [reason.what for reason in served.reasons] == [reason.get("what") for reason in reasons]
        amounts = [reason.get("mm") for reason in reasons]
        assert [reason.mm for reason in served.reasons] == pytest.approx(amounts, abs=1e-6)
    missing = tuple(
        what for what in hole.missing if what != "string diameter" or case["hole"]["string_mm"] is None
    )
    assert missing == tuple(case["missing"])


@pytest.mark.parametrize("case", CASES["refused"], ids=lambda case: case["name"])
def test_refused(case: dict[str, Any]) -> None:
    with pytest.raises(ValueError, match=case["names"]):
        wanted(case["hole"])


def test_the_cases_stand_on_the_thresholds_that_are_shipped() -> None:
    shipped = as_data(DEFAULT)
    assert {name: shipped[name] for name in CASES["thresholds"]} == pytest.approx(CASES["thresholds"])


def test_the_order_of_the_catalogue_does_not_matter() -> None:
    hole = Wanted(2.1, 0.05, 9.4, (0.7,))
    assert ranked(hole, PARTS) == ranked(hole, reversed(PARTS))


def test_a_part_that_contradicts_itself_never_serves() -> None:
    part = next(part for part in PARTS if part.id == "i-flange-too-small")
    assert [caution.code for caution in part_cautions(part)] == ["barrel over flange"]


def test_every_reason_is_a_sentence() -> None:
    for code in SENTENCES:
        text = str(Reason(code, 0.25, "bore"))
        assert "{" not in text
        assert "0.25" in text or "{mm}" not in SENTENCES[code]
    assert str(Reason("trim", 2.10)) == "cut 2.1 mm off after fitting"
    assert str(Reason("unknown", what="inner bore")) == "not known: inner bore"
    assert all(text.endswith(".") for text in MEASURE.values())


LENGTHS = st.floats(0.3, 20, allow_nan=False)


@given(LENGTHS, LENGTHS, LENGTHS, LENGTHS, LENGTHS, st.floats(0.2, 2), st.integers(0, 3))
def test_the_verdict_agrees_with_the_words(
    bore: float, barrel: float, inner: float, post: float, depth: float, string: float, strings: int
) -> None:
    """Whatever the sizes: what drops out, lets no string through or is short never serves."""
    seat = Seat(fit(Size(bore, 0.0), Size(barrel, 0.0)), room(inner, (string,) * strings), reach(post, depth))
    served = serve("x", (seat,), (marks_of(seat),))
    bad = [
        seat.fit.word in ("drops out", "will not seat"),
        seat.room.word == "will not go",
        seat.reach.word == "short",
    ]
    assert (served.verdict == "serves") == (not any(bad))
    assert served.verdict != "near miss" or sum(bad) == 1
    assert served.rank[0] == VERDICTS.index(served.verdict)


@given(LENGTHS, st.floats(-0.1, 0.1), LENGTHS, st.floats(0, 10))
def test_unknown_sizes_never_make_a_verdict_better_than_may_serve(
    bore: float, clearance: float, inner: float, depth: float
) -> None:
    seat = Seat(fit(Size(bore), Size(bore + clearance + 1)), room(None, (0.7,)), reach(None, depth + 1))
    assert serve("x", (seat,), (marks_of(seat),)).verdict != "serves"
