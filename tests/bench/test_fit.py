"""Fits in bench words: the thresholds, the unknown, and that a thicker barrel is never looser."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.bench.fit import FIT_WORDS, FitWord, fit, fit_word, swells
from rimbook.bench.thresholds import DEFAULT, changed
from rimbook.bench.uncertainty import Size, barrel_size, of_resolution, of_tolerance
from rimbook.book.model import Measured, Part

WIDTHS = st.floats(0.5, 12, allow_nan=False)
UNCERTAIN = st.floats(0, 0.2, allow_nan=False)


# Common practice, no published source: a part that slides in loose may pop out, snug is right.
@pytest.mark.parametrize(
    ("bore", "barrel", "word"),
    [
        (2.7, 2.05, "drops out"),
        (2.31, 2.05, "drops out"),
        (2.30, 2.05, "finger fit"),  # on the threshold: the word nearer to snug
        (2.2, 2.05, "finger fit"),
        (2.15, 2.05, "snug"),
        (2.1, 2.05, "snug"),
        (2.05, 2.05, "snug"),
        (2.0, 2.05, "needs driving"),
        (1.9, 2.05, "needs driving"),
        (1.89, 2.05, "will not seat"),
        (2.1, 2.65, "will not seat"),
    ],
)
def test_words(bore: float, barrel: float, word: FitWord) -> None:
    assert fit(Size(bore, 0.0), Size(barrel, 0.0)).word == word


def test_limits_from_what_was_measured() -> None:
    """A bore read in steps of 0.05 is ±0.025; a barrel stated ±0.05 and read in 0.02 is ±√(0.05² + 0.01²)."""
    part = Part(
        "x", "X", "single", barrel_mm=2.05, tolerance_mm=0.05, measured=Measured("a", resolution_mm=0.02)
    )
    found = fit(Size(2.1, of_resolution(0.05)), barrel_size(part))
    half = 0.025 + math.hypot(0.05, 0.01)
    assert found.clearance_mm == pytest.approx(0.05)
    assert (found.least_mm, found.most_mm) == pytest.approx((0.05 - half, 0.05 + half))
    assert (found.kind, found.loosest, found.tightest) == ("transition", "finger fit", "needs driving")
    assert not found.sure
    assert fit(Size(2.1, of_resolution(0.02)), Size(2.05, of_resolution(0.02))).sure


def test_unknown_bore_claims_nothing() -> None:
    found = fit(None, Size(2.05, 0.01))
    assert (found.word, found.kind, found.clearance_mm, found.missing) == (None, None, None, ("bore",))


def test_unknown_uncertainty_gives_no_limits() -> None:
    found = fit(Size(2.1), Size(2.05, 0.01))
    assert (found.word, found.kind, found.least_mm) == ("snug", None, None)
    assert found.missing == ("bore resolution",)
    assert fit(Size(2.1), Size(2.05)).missing == ("bore resolution", "barrel tolerance")


def test_a_site_may_set_its_own_words() -> None:
    loose = changed({"finger_over_mm": 0.02})
    assert fit(Size(2.1, 0.0), Size(2.05, 0.0), loose).word == "finger fit"


@given(WIDTHS, WIDTHS, st.floats(0, 3), UNCERTAIN, UNCERTAIN)
def test_a_larger_barrel_is_never_looser(bore: float, barrel: float, more: float, u: float, v: float) -> None:
    thin, thick = fit(Size(bore, u), Size(barrel, v)), fit(Size(bore, u), Size(barrel + more, v))
    assert thin.word
    assert thick.word
    assert FIT_WORDS.index(thick.word) >= FIT_WORDS.index(thin.word)
    assert (thick.most_mm or 0) <= (thin.most_mm or 0)


@given(WIDTHS, WIDTHS, UNCERTAIN, UNCERTAIN)
def test_the_word_lies_between_those_of_the_limits(bore: float, barrel: float, u: float, v: float) -> None:
    found = fit(Size(bore, u), Size(barrel, v))
    assert found.loosest
    assert found.word
    assert found.tightest
    order = [FIT_WORDS.index(word) for word in (found.loosest, found.word, found.tightest)]
    assert order == sorted(order)


@given(st.floats(-1, 1))
def test_every_clearance_has_one_word(clearance: float) -> None:
    assert fit_word(clearance, DEFAULT) in FIT_WORDS


@pytest.mark.parametrize(
    ("material", "yes"),
    [
        ("PA12", True),
        ("clear PA66", True),
        ("nylon", True),
        ("brass", False),
        ("SPARE", False),
        (None, False),
    ],
)
def test_nylon_swells(material: str | None, yes: bool) -> None:
    assert swells(material) is yes


def test_tolerance_is_a_half_width() -> None:
    assert of_tolerance(0.05) == pytest.approx(of_resolution(0.1))
