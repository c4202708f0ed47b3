"""Barrels against the rim: short, flush, proud, what to cut, and unequal posts at a bridge."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimbook.bench.length import reach, reaches
from rimbook.bench.thresholds import changed

LENGTHS = st.floats(2, 30, allow_nan=False)


# Common practice, no published source: a barrel that stands proud is cut to length after fitting.
@pytest.mark.parametrize(
    ("post", "depth", "word", "proud", "trim", "holds"),
    [
        (10.5, 9.4, "proud", 1.1, 0.0, True),
        (12.0, 9.4, "trim", 2.6, 2.1, True),  # half a millimetre is left standing
        (10.9, 9.4, "proud", 1.5, 0.0, True),  # on the threshold
        (9.4, 9.4, "flush", 0.0, 0.0, True),
        (9.2, 9.4, "flush", -0.2, 0.0, True),
        (9.6, 9.4, "flush", 0.2, 0.0, True),
        (9.1, 9.4, "short", -0.3, 0.0, True),
        (7.05, 9.4, "short", -2.35, 0.0, True),  # three quarters of the rim
        (7.0, 9.4, "short", -2.4, 0.0, False),
    ],
)
def test_words(post: float, depth: float, word: str, proud: float, trim: float, holds: bool) -> None:
    found = reach(post, depth)
    assert (found.word, found.holds) == (word, holds)
    assert found.proud_mm == pytest.approx(proud)
    assert found.trim_mm == pytest.approx(trim)
    assert found.engaged_mm == pytest.approx(min(post, depth))


def test_unknown_stays_unknown() -> None:
    assert reach(None, 9.4).missing == ("post length",)
    assert reach(10.5, None).missing == ("rim depth",)
    assert reach(None, None).word is None


def test_uneven_posts_put_the_long_one_in_the_deeper_hole() -> None:
    shallow, deep = reaches((16.0, 10.5), (9.4, 15.0))
    assert (shallow.proud_mm, deep.proud_mm) == pytest.approx((1.1, 1.0))
    assert [each.word for each in reaches((10.5, 16.0), (15.0, 9.4))] == ["proud", "proud"]


def test_uneven_posts_in_holes_alike() -> None:
    """Both holes as deep: one post is too long or the other too short, and it is said of one of them."""
    assert sorted(str(each.word) for each in reaches((10.5, 16.0), (9.4, 9.4))) == ["proud", "trim"]


def test_uneven_posts_need_both_depths() -> None:
    assert [each.missing for each in reaches((10.5, 16.0), (9.4, None))] == [("rim depth",)] * 2


def test_even_posts_need_only_their_own() -> None:
    assert [each.word for each in reaches((12.0,), (11.0, None))] == ["proud", None]


def test_posts_and_holes_must_agree() -> None:
    with pytest.raises(ValueError, match="2 posts cannot go into 3 holes"):
        reaches((10.5, 16.0), (9.4, 9.4, 9.4))


@pytest.mark.parametrize("length", [0.0, -1.0, float("nan"), 1e5])
def test_lengths_that_are_none(length: float) -> None:
    with pytest.raises(ValueError, match="post length"):
        reach(length, 9.4)
    with pytest.raises(ValueError, match="rim depth"):
        reach(10.5, length)


@given(LENGTHS, LENGTHS)
def test_after_the_cut_it_is_right(post: float, depth: float) -> None:
    found = reach(post, depth)
    assert found.trim_mm is not None
    again = reach(post - found.trim_mm, depth)
    assert again.word == ("proud" if found.word == "trim" else found.word)
    assert again.holds == found.holds


def test_a_site_may_leave_more_standing() -> None:
    assert reach(12.0, 9.4, changed({"leave_proud_mm": 1.0})).trim_mm == pytest.approx(1.6)
