"""The data files for other programs: their keys are a promise."""

from __future__ import annotations

import json
from functools import cache
from math import dist
from typing import Any

import pytest

from rimbook.site.pages import Asset
from tests.site.sample import demo_book, demo_site, published, small_book

SLUGS = list(demo_book().frames)


@cache
def data(path: str) -> Any:
    asset = demo_site()[path]
    assert isinstance(asset, Asset)
    return json.loads(asset.data)


def test_the_list_of_frames_has_its_keys_and_every_frame() -> None:
    whole = data("data/frames.json")
    assert whole.keys() == {"format", "frames"}
    assert whole["format"] == 1
    assert [frame["slug"] for frame in whole["frames"]] == sorted(SLUGS)
    for frame in whole["frames"]:
        assert list(frame) == [
            "slug", "name", "maker", "sport", "mains", "crosses", "holes", "bores", "url", "confidence",
        ]  # fmt: skip
        assert frame["confidence"] == data(f"data/frames/{frame['slug']}.json")["confidence"]
        assert frame["url"] in demo_site()
        assert sum(frame["bores"].values()) <= frame["holes"]
        assert all(float(bore) > 0 for bore in frame["bores"])


@pytest.mark.parametrize("slug", SLUGS)
def test_a_frame_has_its_keys_and_drilled_holes_alone(slug: str) -> None:
    frame = demo_book().frames[slug]
    found = data(f"data/frames/{slug}.json")
    assert list(found) == [
        "format", "slug", "name", "maker", "sport", "year", "variant_of", "mains", "crosses",
        "outline", "holes", "path", "regrommet", "measured", "confirmed", "source", "confidence",
    ]  # fmt: skip
    assert [hole["address"] for hole in found["holes"]] == [str(hole.address) for hole in frame.drilled]
    for hole, written in zip(frame.drilled, found["holes"], strict=True):
        assert list(written) == [
            "address", "at_mm", "along_mm", "place", "passes", "tie_off", "bore_mm", "rim_depth_mm", "part",
            "strip", "twin_with", "pull",
        ]  # fmt: skip
        assert written["place"] in ("measured", "derived")
        assert (written["bore_mm"], written["part"]) == (hole.bore_mm, hole.part)
        assert written["passes"] == [str(string) for string in hole.passes]


@pytest.mark.parametrize("slug", SLUGS)
def test_holes_lie_clockwise_on_the_outline(slug: str) -> None:
    found = data(f"data/frames/{slug}.json")
    along = [hole["along_mm"] for hole in found["holes"]]
    assert along == sorted(along)
    assert along[0] >= 0
    assert along[-1] <= found["outline"]["length_mm"]
    points = found["outline"]["points_mm"]
    whole = sum(dist(one, other) for one, other in zip(points, [*points[1:], points[0]], strict=True))
    assert whole == pytest.approx(found["outline"]["length_mm"], rel=2e-4)
    first = found["holes"][0]
    assert first["at_mm"][0] > 0
    assert first["at_mm"][1] > 0


@pytest.mark.parametrize("slug", SLUGS)
def test_the_string_runs_through_holes_that_are_there(slug: str) -> None:
    found = data(f"data/frames/{slug}.json")
    holes = {hole["address"] for hole in found["holes"]}
    for path in found["path"]:
        assert list(path) == ["string", "legs"]
        assert path["string"] in ("mains", "crosses", "whole")
        for leg in path["legs"]:
            assert list(leg) == ["from", "to", "run"]
            assert {leg["from"], leg["to"]} <= holes
            assert leg["run"] in ("inside", "outside")


def test_what_nobody_knows_is_null() -> None:
    asset = published(small_book())["data/frames/wren-8.json"]
    assert isinstance(asset, Asset)
    found = json.loads(asset.data)
    hole = next(hole for hole in found["holes"] if hole["address"] == "R4")
    assert hole["bore_mm"] is None
    assert hole["part"] is None
    assert hole["strip"] is None
    assert {"part": None, "count": 2} in found["regrommet"]
