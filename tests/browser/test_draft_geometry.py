"""The drafting page places holes and proposes walks as the build does: the same frames given to both."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from random import Random

import pytest
from playwright.sync_api import Browser, Page

from rimbook.book.load import load_book
from rimbook.book.model import Frame, Head
from rimbook.book.walk import read_walk, write_place
from rimbook.rim.outline import at, curve
from rimbook.rim.places import places
from rimbook.rim.propose import propose
from tests.browser import draft_beds
from tests.browser.small_site import look_inside
from tests.watch import watched_page

FRAMES = load_book(Path(__file__).parents[2] / "frames").book.frames
CLOSE = 1e-6
"""Millimetres: what two ways of adding up the same numbers may differ by."""


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "draft_outline": ["curve", "at"],
                "draft_places": ["places"],
                "draft_propose": ["propose"],
                "draft_walk": ["readWalk", "writePlace"],
            },
        )
        yield page
    assert faults == []


def random_heads(count: int) -> list[Head]:
    draw = Random(2026)
    found = []
    for index in range(count):
        width, height = draw.uniform(150, 290), draw.uniform(180, 390)
        outline = ("ellipse", "superellipse", "teardrop")[index % 3]
        found.append(Head(outline, width, height, draw.uniform(2, 3), draw.uniform(0, 1)))  # type: ignore[arg-type]
    return found


def unmeasured(frame: Frame) -> Frame:
    holes = tuple(replace(hole, place_mm=None) for hole in frame.holes)
    return replace(frame, holes=holes, spacing_mm=None)


def half_measured(frame: Frame) -> Frame:
    """Every third place as derived, and a little off."""
    known = places(frame)
    right = frame.holes[-1].address.side

    def place(index: int) -> float | None:
        hole = frame.holes[index]
        if index % 3 or not hole.drilled or hole.address.side == right:
            return None
        return known[hole.address].along_mm + (index % 5) / 10

    holes = tuple(replace(hole, place_mm=place(index)) for index, hole in enumerate(frame.holes))
    return replace(frame, holes=holes)


@pytest.mark.parametrize("slug", FRAMES)
def test_holes_fall_where_the_build_puts_them(inside: Page, slug: str) -> None:
    for frame in (FRAMES[slug], unmeasured(FRAMES[slug]), half_measured(FRAMES[slug])):
        found = inside.evaluate("bed => Object.fromEntries(inside.places(bed))", draft_beds.bed(frame))
        wanted = places(frame)
        assert found.keys() == {str(address) for address in wanted}
        for address, placed in wanted.items():
            there = found[str(address)]
            assert there["along"] == pytest.approx(placed.along_mm, abs=CLOSE)
            assert there["at"] == pytest.approx(list(placed.at), abs=CLOSE)
            assert there["out"] == pytest.approx(list(placed.outward), abs=CLOSE)
            assert there["measured"] == (placed.place == "measured")


def test_outlines_are_the_same_lines(inside: Page) -> None:
    points = tuple((x, y) for x, y in curve(Head("teardrop", 190, 250, taper=0.4)).points[::36])
    for given in [*random_heads(30), Head("points", 190, 250, points_mm=points)]:
        line = curve(given)
        tries = [line.length_mm * step / 97 - 50 for step in range(100)]
        found = inside.evaluate(
            "([head, tries]) => { const line = inside.curve(head);"
            " return [line.length, tries.map(along => inside.at(line, along))] }",
            [draft_beds.head(given), tries],
        )
        assert found[0] == pytest.approx(line.length_mm, abs=CLOSE)
        for along, there in zip(tries, found[1], strict=True):
            point, outward = at(line, along)
            assert there["at"] == pytest.approx(list(point), abs=CLOSE)
            assert there["out"] == pytest.approx(list(outward), abs=CLOSE)


def test_walks_are_proposed_alike(inside: Page) -> None:
    draw = Random(76)
    for given in random_heads(60):
        mains, crosses = 2 * draw.randint(5, 12), draw.randint(14, 24)
        holes = draw.choice([None, 2 * (mains + crosses) - 2 * draw.randint(0, 12)])
        found = inside.evaluate(
            "given => inside.propose(...given).map(inside.writePlace)",
            [draft_beds.head(given), mains, crosses, holes],
        )
        assert found == [write_place(place) for place in propose(given, mains, crosses, holes)]


@pytest.mark.parametrize(
    "text",
    [
        "m1 m2+c1 . x",
        "",
        "  ",
        "m0 c1000 M1",
        "m1+m2+c3",
        "c1+c1",
        "+",
        "m1+",
        ".. x.",
        "m1 " * 201,
        "m999 c12",
    ],
)
def test_walks_are_read_alike(inside: Page, text: str) -> None:
    found = inside.evaluate("text => inside.readWalk(text)", text)
    wanted, faults = read_walk(text)
    assert [tuple(place["passes"]) for place in found["places"]] == [
        tuple(map(str, place.passes)) for place in wanted
    ]
    assert [place["drilled"] for place in found["places"]] == [place.drilled for place in wanted]
    assert [(fault["index"], fault["word"], fault["message"]) for fault in found["faults"]] == [
        (fault.index, fault.word, fault.message) for fault in faults
    ]
