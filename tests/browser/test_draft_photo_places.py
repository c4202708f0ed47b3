"""From points of a photo to places along the rim, and from those into the draft."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from playwright.sync_api import Browser, Page

from rimbook.book.load import load_book
from rimbook.rim.outline import at, curve
from tests.browser import draft_beds
from tests.browser.small_site import look_inside
from tests.watch import watched_page

FRAMES = load_book(Path(__file__).parents[2] / "frames").book.frames
SHEET = [150.0, 100.0]


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "draft_outline": ["curve"],
                "draft_photo": ["sightOf", "readingOf", "nearestAlong", "placeDown", "holeAt"],
                "draft_photo_places": ["withPlaces", "spreadOf", "outOfOrder", "uncertaintyOf"],
            },
        )
        yield page
    assert faults == []


def camera(points: list[list[float]], height: float = 0.0) -> list[list[float]]:
    """A pinhole 1 m above the plane, tilted a little; pixels from the top left."""
    tilt = np.radians(6)
    turn = np.array([[1, 0, 0], [0, np.cos(tilt), -np.sin(tilt)], [0, np.sin(tilt), np.cos(tilt)]])
    seen = []
    for x, y in points:
        across, up, away = turn @ np.array([x, y, height - 1000.0])
        seen.append([2000 + 6000 * across / -away, 2500 - 6000 * up / -away])
    return seen


def corners(x: float = 10, y: float = -20, height: float = 0) -> list[list[float]]:
    long, short = SHEET[0] / 2, SHEET[1] / 2
    around = [[x - long, y + short], [x + long, y + short], [x + long, y - short], [x - long, y - short]]
    return camera(around, height)


def sight(inside: Page, slug: str, pixels: list[list[float]], middles: list[list[float]]) -> Any:
    head = draft_beds.head(FRAMES[slug].head)
    return inside.evaluate(
        "([pixels, sheet, middles, head]) => inside.sightOf(pixels, sheet, middles, inside.curve(head))",
        [pixels, SHEET, middles, head],
    )


def middles_of(slug: str) -> list[list[float]]:
    """The middle of the head and of the throat, on the line of holes."""
    line = curve(FRAMES[slug].head)
    half = FRAMES[slug].head.height_mm / 2
    assert at(line, 0)[0] == pytest.approx((0, half))
    return [[0, half], [0, -half]]


@pytest.mark.parametrize("slug", ["plover-76"])
def test_a_tilted_camera_is_seen_through(inside: Page, slug: str) -> None:
    head = FRAMES[slug].head
    line = curve(head)
    found = sight(inside, slug, corners(), camera(middles_of(slug)))
    assert found["apartMm"] == pytest.approx(head.height_mm, abs=1e-6)
    for side, along in (("R", 3.0), ("R", 120.5), ("R", 300.0), ("L", 3.0), ("L", 222.2)):
        where, out = at(line, along if side == "R" else line.length_mm - along)
        point = [where[0] + 0.7 * out[0], where[1] + 0.7 * out[1]]
        reading = inside.evaluate(
            "([sight, head, hole, pixel]) => inside.readingOf(sight, inside.curve(head), hole, pixel)",
            [found, draft_beds.head(head), f"{side}1", camera([point])[0]],
        )
        assert reading["place"] == pytest.approx(along, abs=0.02)
        assert reading["off"] == pytest.approx(0.7, abs=0.01)
        assert 0.14 < reading["pixel"] < 0.21


def test_what_lies_above_the_sheet_comes_out_too_long(inside: Page) -> None:
    """Similar triangles: 5 mm above the sheet, seen from 1 m, by 5/995; the page warns of it."""
    found = sight(inside, "plover-76", corners(), camera(middles_of("plover-76"), height=5))
    share = found["apartMm"] / found["drawnMm"] - 1
    assert share == pytest.approx(5 / 995, rel=0.03)
    level = sight(inside, "plover-76", corners(height=5), camera(middles_of("plover-76"), height=5))
    assert level["apartMm"] == pytest.approx(level["drawnMm"], abs=1e-6)


def test_points_that_cannot_be_are_refused_with_a_word(inside: Page) -> None:
    middles = camera(middles_of("plover-76"))
    assert "anticlockwise" in sight(inside, "plover-76", corners()[::-1], middles)
    assert "too close" in sight(inside, "plover-76", corners(), [middles[0], middles[0]])
    crossed = [corners()[index] for index in (0, 2, 1, 3)]
    assert "cross" in sight(inside, "plover-76", crossed, middles)


def test_a_hole_across_the_middle_is_below_nought(inside: Page) -> None:
    length = 700
    for side, along, place in (("R", 4, 4), ("R", 698, -2), ("L", 698, 2), ("L", 3, -3), ("R", 352, 352)):
        assert (
            inside.evaluate(
                "([length, side, along]) => inside.placeDown({ length }, side, along)", [length, side, along]
            )
            == place
        )
    expected = "new Map([['R1', 4], ['R2', 12], ['L1', 11]])"
    assert inside.evaluate(f"inside.holeAt({expected}, 'R', 11)") == "R2"
    assert inside.evaluate(f"inside.holeAt({expected}, 'L', 99)") == "L1"


def reading(address: str, place: float, off: float = 0.0, pixel: float = 0.204) -> dict[str, Any]:
    return {"address": address, "place": place, "off": off, "pixel": pixel}


def taken(inside: Page, draft: dict[str, Any], *readings: dict[str, Any]) -> Any:
    return inside.evaluate("([draft, readings]) => inside.withPlaces(draft, readings)", [draft, readings])


def test_one_list_for_both_sides_takes_their_mean(inside: Page) -> None:
    """A middle picked 0.5 mm to the right makes one side shorter and the other longer by as much."""
    draft = {"walk": "m1 x m2 m3", "places_mm": [1, "unknown", "unknown", 30.25]}
    found = taken(inside, draft, reading("R1", 3.5), reading("R3", 20.04), reading("L1", 4.5))
    assert found["places_mm"] == [4, "unknown", 20, 30.25]
    assert found["measured"] == {"with": "photo", "resolution_mm": 0.21}
    assert "note" not in found


def test_a_left_side_of_its_own_has_places_of_its_own(inside: Page) -> None:
    draft = {"walk": "m1 m2", "left": {"walk": "m1 m2 ."}, "measured": {"by": "a-hand"}}
    found = taken(inside, draft, reading("R1", 3.456, pixel=0.05), reading("L3", 19.321, pixel=0.05))
    assert found["places_mm"] == [3.46, "unknown"]
    assert found["left"]["places_mm"] == ["unknown", "unknown", 19.32]
    assert found["measured"] == {"by": "a-hand", "with": "photo", "resolution_mm": 0.05}


def test_the_step_of_a_calliper_is_not_lost(inside: Page) -> None:
    """Bores are judged by it."""
    measured = {"by": "a-hand", "with": "calliper", "resolution_mm": 0.05}
    draft = {"walk": "m1 m2", "measured": measured, "note": "Second hand."}
    once = taken(inside, draft, reading("R1", 4, pixel=0.3))
    twice = taken(inside, once, reading("R1", 4))
    assert once["measured"] == twice["measured"] == measured
    assert once["note"] == "Second hand. Places along the rim: photo, 0.3 mm a pixel."
    assert twice["note"] == "Second hand. Places along the rim: photo, 0.21 mm a pixel."


def test_how_far_picks_agree(inside: Page) -> None:
    readings = [reading("R1", 4, 0.3), reading("R2", 12, -0.4), reading("L1", 5, 0, 0.36)]
    found = inside.evaluate("readings => inside.spreadOf(readings)", readings)
    assert found["offMm"] == pytest.approx((0.25 / 3) ** 0.5)
    assert found["farthest"]["address"] == "R2"
    assert (found["pairs"], found["sidesMm"], found["pixelMm"]) == (1, 0.5, 0.36)
    # JCGM 100:2008 (the GUM), F.2.2.1: 0.29 of the resolution (from memory).
    assert inside.evaluate("inside.uncertaintyOf(1)") == pytest.approx(0.29, abs=0.005)
    assert found["uncertaintyMm"] == pytest.approx(0.36 / 12**0.5)


def test_picks_against_the_walk_are_told(inside: Page) -> None:
    def told(*readings: dict[str, Any]) -> Any:
        return inside.evaluate("readings => inside.outOfOrder(readings)", readings)

    assert told(reading("R1", 4), reading("R2", 12), reading("L1", 3), reading("L2", 11)) == []
    [behind] = told(reading("R1", 12), reading("R2", 11.9))
    assert behind.startswith("R2 lies before R1")
    [across] = told(reading("R1", -0.5), reading("R2", 12))
    assert "other side of the middle" in across
