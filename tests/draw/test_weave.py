"""Strings go over and under in turn, and are broken only where they go under."""

from __future__ import annotations

import pytest

from rimbook.draw.face import face
from rimbook.draw.weave import weave
from tests.draw.drawn import all_of, book, ends, parsed, rim


def breaks(path: str) -> list[list[tuple[float, float]]]:
    """The gaps of each line: pairs of points between which nothing is drawn."""
    lines = [f"M{line}" for line in path.split("M") if line]
    return [
        [spot for pair in zip(ends(line)[1::2], ends(line)[2::2], strict=False) for spot in pair]
        for line in lines
    ]


def test_two_mains_and_two_crosses_pass_over_and_under_by_turns() -> None:
    mains = [((10.0, 0.0), (10.0, 30.0)), ((20.0, 0.0), (20.0, 30.0))]
    crosses = [((0.0, 10.0), (30.0, 10.0)), ((0.0, 20.0), (30.0, 20.0))]
    down, across = weave(mains, crosses, 2.0)
    assert down == "M10 0l0 18m0 4l0 8M20 0l0 8m0 4l0 18"
    assert across == "M0 10l8 0m4 0l18 0M0 20l18 0m4 0l8 0"


def test_lines_that_do_not_meet_are_whole() -> None:
    assert weave([((0.0, 0.0), (0.0, 5.0))], [((1.0, 9.0), (5.0, 9.0))], 2.0) == ("M0 0l0 5", "M1 9l4 0")


@pytest.mark.parametrize("slug", ["plover-76", "tallow-65"])
def test_at_every_crossing_of_a_frame_one_string_goes_under(slug: str) -> None:
    frame = rim("frames", slug).frame
    tree = parsed(face(rim("frames", slug), book("frames").parts))
    (mains,), (crosses,) = all_of(tree, "path", "main"), all_of(tree, "path", "cross")
    main_gaps, cross_gaps = breaks(mains.attrib["d"]), breaks(crosses.attrib["d"])
    assert (len(main_gaps), len(cross_gaps)) == (frame.mains, frame.crosses)
    under_main, under_cross = sum(map(len, main_gaps)) // 2, sum(map(len, cross_gaps)) // 2
    assert abs(under_main - under_cross) <= frame.mains
    assert under_main + under_cross > 0.75 * frame.mains * frame.crosses
