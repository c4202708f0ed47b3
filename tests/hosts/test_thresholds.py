"""A site may set thresholds of the bench in its configuration; a wrong one is told with the nearest."""

from __future__ import annotations

from pathlib import Path

import pytest
from mkdocs.exceptions import Abort

from rimbook.bench.thresholds import DEFAULT, changed
from rimbook.hosts.workshop import Workshop
from tests.hosts.sample import book
from tests.hosts.test_mkdocs import built, project

FRAME = "frames/plover-76/index.html"


def test_thresholds_of_the_configuration_reach_the_pages(tmp_path: Path) -> None:
    site = built(project(tmp_path), {"thresholds": {"usual_tension_lb": {"badminton": 21}}})
    assert "<b data-rb-at>21 lb</b>" in (site / FRAME).read_text("utf-8")
    assert '"badminton": 21.0' in (site / "data/fits.js").read_text("utf-8") or '"badminton":21.0' in (
        site / "data/fits.js"
    ).read_text("utf-8")


@pytest.mark.parametrize(
    ("thresholds", "told"),
    [
        ({"finger_over": 0.2}, "nearest: finger_over_mm"),
        ({"usual_tension_lb": {"badmington": 21}}, "nearest: badminton"),
        ({"finger_over_mm": "wide"}, "expected a number"),
        ({"finger_over_mm": 9}, "expected finger_over_mm to be no more than drops_out_over_mm"),
    ],
)
def test_a_wrong_threshold_stops_the_build(
    tmp_path: Path, caplog: pytest.LogCaptureFixture, thresholds: dict[str, object], told: str
) -> None:
    with pytest.raises(Abort):
        built(project(tmp_path), {"thresholds": thresholds})
    assert "Option “thresholds”" in caplog.text
    assert told in caplog.text


def test_entries_are_made_anew_when_thresholds_change(tmp_path: Path) -> None:
    frames, cache = book(tmp_path), tmp_path / "cache"
    told: list[str] = []
    assert Workshop(frames, cache, told.append).source().fetch("plover-76").body.count(b"24 lb") > 0
    other = changed({"usual_tension_lb": {"badminton": 21}}, DEFAULT)
    assert b"21 lb" in Workshop(frames, cache, told.append, other).source().fetch("plover-76").body
