"""Bores can be told apart by everybody: shape, number, contrast and colour."""

from __future__ import annotations

from itertools import combinations

import pytest

from rimbook.draw.palette import (
    CLASSES,
    CROSS,
    EDGE,
    INKS,
    MAIN,
    PAGE,
    QUIET,
    RIM,
    STRIP,
    TEXT,
    UNKNOWN,
    bore_class,
    limits,
)
from tests.draw.colour import VISIONS, contrast, difference, seen

APART = 15.0
"""CIEDE2000 between any two bore colours: several times what two people would call the same colour."""


@pytest.mark.parametrize(
    ("one", "other", "ratio"),
    [
        # w3c/wcag: techniques G183 and G207 and Understanding 1.4.11 print 3.9, 3.4, 3 and 1.2.
        ("#3366cc", "#000000", 3.9132),
        ("#e3660e", "#ffffff", 3.4019),
        ("#949494", "#ffffff", 3.0335),
        ("#fff000", "#ffffff", 1.1854),
        ("#000000", "#ffffff", 21.0),
    ],
)
def test_contrast_is_measured_as_published(one: str, other: str, ratio: float) -> None:
    assert contrast(one, other) == pytest.approx(ratio, abs=5e-5)


@pytest.mark.parametrize(
    ("one", "other", "apart"),
    [
        # Sharma, Wu, Dalal 2005, table 1, pairs 1, 2, 7, 9, 11, 16 and 17.
        ((50.0, 2.6772, -79.7751), (50.0, 0.0, -82.7485), 2.0425),
        ((50.0, 3.1571, -77.2803), (50.0, 0.0, -82.7485), 2.8615),
        ((50.0, 0.0, 0.0), (50.0, -1.0, 2.0), 2.3669),
        ((50.0, 2.49, -0.001), (50.0, -2.49, 0.0009), 7.1792),
        ((50.0, 2.49, -0.001), (50.0, -2.49, 0.0011), 7.2195),
        ((50.0, 2.5, 0.0), (50.0, 0.0, -2.5), 4.3065),
        ((50.0, 2.5, 0.0), (73.0, 25.0, -18.0), 27.1492),
    ],
)
def test_difference_is_measured_as_published(
    one: tuple[float, float, float], other: tuple[float, float, float], apart: float
) -> None:
    assert difference(one, other) == pytest.approx(apart, abs=5e-5)


@pytest.mark.parametrize("vision", VISIONS)
def test_grey_is_grey_for_everybody(vision: str) -> None:
    """The rows of the matrices sum to one, so that no vision tints what has no colour."""
    assert seen("#808080", vision)[1:] == pytest.approx((0.0, 0.0), abs=0.02)


def test_red_and_green_fall_together_without_green_cones() -> None:
    """A pair known to be confused; otherwise the simulation would prove nothing."""
    pair = ("#a05a2c", "#6e7a1e")
    usual, blind = (
        difference(*(seen(colour, vision) for colour in pair)) for vision in ("usual", "deuteranopia")
    )
    assert blind < usual / 2


@pytest.mark.parametrize("vision", VISIONS)
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_bore_colours_stay_apart(scheme: str, vision: str) -> None:
    colours = [getattr(known, scheme) for known in CLASSES] + [getattr(TEXT, scheme)]
    close = {
        pair: round(apart, 1)
        for pair in combinations(colours, 2)
        if (apart := difference(seen(pair[0], vision), seen(pair[1], vision))) < APART
    }
    assert close == {}


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_marks_stand_out(scheme: str) -> None:
    """WCAG 2.2, 1.4.11: 3 to 1 against the page, and bores against the rim band as well."""
    page, rim = getattr(PAGE, scheme), getattr(RIM, scheme)
    lines = [getattr(ink, scheme) for ink in (MAIN, CROSS, STRIP, EDGE)]
    bores = [getattr(known, scheme) for known in (*CLASSES, UNKNOWN)]
    assert [mark for mark in lines + bores if contrast(mark, page) < 3] == []
    assert [mark for mark in bores if contrast(mark, rim) < 3] == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_words_can_be_read(scheme: str) -> None:
    """WCAG 2.2, 1.4.3: 4.5 to 1, on the page and where a label lies on the pale throat."""
    text, quiet = getattr(TEXT, scheme), getattr(QUIET, scheme)
    assert min(contrast(text, getattr(ink, scheme)) for ink in (PAGE, RIM)) >= 4.5
    assert min(contrast(quiet, getattr(ink, scheme)) for ink in (PAGE, RIM)) >= 4.5


def test_shapes_and_names_differ() -> None:
    every = (*CLASSES, UNKNOWN)
    for what in ("name", "shape", "light", "dark", "outline"):
        assert len({getattr(known, what) for known in every}) == len(every)
    assert len({ink.name for ink in INKS}) == len(INKS)


@pytest.mark.parametrize(
    ("bore_mm", "shape"),
    [(0.5, "disc"), (2.3, "disc"), (2.31, "triangle"), (2.7, "diamond"), (2.9, "diamond"), (3.3, "square"),
     (3.4, "plus"), (4.5, "bow"), (4.51, "dome"), (99.0, "dome"), (None, "question")],
)  # fmt: skip
def test_a_bore_falls_into_the_class_whose_limit_holds_it(bore_mm: float | None, shape: str) -> None:
    assert bore_class(bore_mm).shape == shape


def test_limits_in_words() -> None:
    assert [limits(known) for known in (CLASSES[0], CLASSES[2], CLASSES[-1], UNKNOWN)] == [
        "up to 2.3 mm",
        "over 2.6 up to 2.9 mm",
        "over 4.5 mm",
        "bore unknown",
    ]
