"""Work grows with distinct needs, not with holes or frames."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

import pytest

from rimbook.bench import answers as module
from rimbook.bench.answers import Answers
from rimbook.bench.interchange import interchange
from rimbook.bench.marks import Mark
from rimbook.bench.part_index import index_parts
from rimbook.bench.serves import verdict_of
from tests.bench.big_book import frames, parts

CATALOGUE = parts(300)
INDEX = index_parts(CATALOGUE)
FRAMES = frames(30, CATALOGUE)


@pytest.fixture
def judged(monkeypatch: pytest.MonkeyPatch) -> list[int]:
    """Counts how often a verdict is reached."""
    count = [0]

    def counting(marks: Iterable[Mark]) -> int:
        count[0] += 1
        return verdict_of(marks)

    monkeypatch.setattr(module, "verdict_of", counting)
    return count


def test_the_same_frames_again_cost_nothing(judged: list[int]) -> None:
    interchange(FRAMES, Answers(INDEX))
    once = judged[0]
    assert once > 0
    again = [replace(frame, slug=f"{frame.slug}-{copy}") for copy in range(5) for frame in FRAMES]
    found = interchange(again, Answers(INDEX))
    assert judged[0] == 2 * once
    assert sum(len(drawer.frames) for drawer in found.drawers) == 5 * len(FRAMES)


def test_more_holes_of_the_same_kind_cost_nothing(judged: list[int]) -> None:
    few = frames(10, CATALOGUE, holes=60)
    many = frames(10, CATALOGUE, holes=120)
    interchange(few, Answers(INDEX))
    once = judged[0]
    interchange(many, Answers(INDEX))
    assert judged[0] == 2 * once


def test_a_part_of_another_size_costs_nothing(judged: list[int]) -> None:
    interchange(FRAMES, Answers(INDEX))
    once = judged[0]
    far = {
        f"far-{number}": replace(part, id=f"far-{number}", barrel_mm=9.0 + number / 100, flange_mm=20.0)
        for number, part in enumerate(CATALOGUE.values())
    }
    interchange(FRAMES, Answers(index_parts({**CATALOGUE, **far})))
    assert judged[0] <= 2.1 * once
