"""Frames that take the same parts: found, ranked, and told apart in words."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from random import Random

import pytest

from rimbook.bench.parts_list import regrommet
from rimbook.site.agree import Counts, agreement, differ, names
from rimbook.site.alike import Likeness
from rimbook.site.summary import Summary, summarise
from tests.site.cross_sample import FRAMES, cross_site, parts
from tests.site.reading import text_of, tree_of

SUMMARIES = {frame.slug: summarise(frame, regrommet(frame, parts())) for frame in FRAMES}


def told(slug: str) -> list[str]:
    """What the page of a frame says of those alike."""
    tree = tree_of(cross_site()[f"frames/{slug}/index.html"])
    return [text_of(item) for item in tree.xpath("//section[@id='alike']//li")]


def test_they_are_ranked_by_how_much_agrees() -> None:
    assert told("robin-8") == [
        "Twite 8 by Lantern Row: all parts the same",
        "Dipper 8 by Saltmarsh Works: all known parts the same (other counts)",
        "Linnet 8 by Saltmarsh Works: all parts the same (other counts), and Barrel 2.7 besides",
        "Siskin 8 by Saltmarsh Works: all but Twin 2.1 (other counts)",
        "Brambling 8 by Saltmarsh Works: all but Wren crown",
    ]


def test_a_frame_that_shares_the_lesser_half_of_its_pieces_is_not_alike() -> None:
    assert not any("Ouzel" in line for line in told("robin-8"))  # 2 of 12 pieces
    assert told("ouzel-8") == []


def test_each_leads_to_the_other_and_to_the_matrices() -> None:
    for one, other in (("robin-8", "twite-8"), ("twite-8", "robin-8")):
        tree = tree_of(cross_site()[f"frames/{one}/index.html"])
        section = tree.xpath("//section[@id='alike']")[0]
        assert section.xpath(f".//a[@href='../../frames/{other}/index.html']")
        assert section.xpath(f".//a[@href='../../matrix/parts/badminton/index.html#row-{one}']")


@pytest.mark.parametrize(
    ("one", "other", "known", "words"),
    [
        ({"a": 2}, {"a": 2}, True, "all parts the same"),
        ({"a": 2}, {"a": 3}, True, "all parts the same (other counts)"),
        ({"a": 2}, {"a": 2}, False, "all known parts the same"),
        ({"a": 2, "b": 1}, {"a": 2}, True, "all but b"),
        ({"a": 2, "b": 1}, {"a": 2, "c": 1}, True, "all but b"),
        ({"a": 2, "b": 1}, {"a": 1}, False, "all known parts but b (other counts)"),
        ({"a": 2}, {"a": 2, "c": 1}, True, "all parts the same, and c besides"),
        ({"a": 2, "b": 1, "c": 1, "d": 1, "e": 1}, {"a": 2}, True, "all but 4 parts"),
    ],
)
def test_what_agrees_is_said_in_words(
    one: dict[str, int], other: dict[str, int], known: bool, words: str
) -> None:
    assert agreement(one, other, known, lambda ids: names(ids, one, {})) == words


def test_all_strips_of_a_frame_are_said_as_one() -> None:
    catalogue = parts()
    among = ["barrel-21", "crown-8", "crown-9"]
    assert names(["crown-8", "crown-9"], among, catalogue) == "the strips"
    assert names(["crown-9", "barrel-21", "crown-8"], among, catalogue) == "Barrel 2.1 and the strips"
    assert names(["crown-8"], among, catalogue) == "Wren crown"


def test_differences_are_counted_both_ways() -> None:
    assert differ({"a": 2, "b": 1}, {"a": 5, "c": 1}) == (["b"], ["c"], 3)


def _copies(count: int) -> list[Summary]:
    robin = SUMMARIES["robin-8"]
    return [
        replace(robin, slug=f"robin-{place:04}", name=f"Robin {place:04}", maker=f"Maker {place % 7}")
        for place in range(count)
    ]


def test_many_frames_alike_are_counted_and_few_are_named() -> None:
    frames = _copies(500)
    likeness = Likeness(frames, parts())
    chosen, same = likeness.of(frames[250], 12)
    assert same == 499
    assert len(chosen) == 12
    assert {each.words for each in chosen} == {"all parts the same"}
    assert {each.frame.maker for each in chosen} == {frames[250].maker}
    assert frames[250].slug not in {each.frame.slug for each in chosen}


def test_the_work_for_a_frame_does_not_grow_with_the_book(monkeypatch: pytest.MonkeyPatch) -> None:
    compared: Counter[int] = Counter()
    for count in (100, 2_000):
        frames = _copies(count)

        def counting(one: Counts, other: Counts, count: int = count) -> tuple[list[str], list[str], int]:
            compared[count] += 1
            return differ(one, other)

        monkeypatch.setattr("rimbook.site.alike.differ", counting)
        Likeness(frames, parts()).of(frames[50], 12)
    assert 0 < compared[100] == compared[2_000] < 100


def test_the_order_in_which_frames_come_makes_no_difference() -> None:
    frames = [*SUMMARIES.values(), *_copies(40)]
    mixed = list(frames)
    Random(7).shuffle(mixed)
    assert mixed != frames
    one, other = Likeness(frames, parts()), Likeness(mixed, parts())
    assert [one.of(frame, 12) for frame in frames] == [other.of(frame, 12) for frame in frames]


def test_a_frame_of_which_no_part_is_known_is_like_none() -> None:
    nothing = replace(SUMMARIES["robin-8"], slug="nothing", parts={}, unknown_parts=12)
    likeness = Likeness([nothing, replace(nothing, slug="other"), *SUMMARIES.values()], parts())
    assert likeness.of(nothing, 12) == ([], 0)
