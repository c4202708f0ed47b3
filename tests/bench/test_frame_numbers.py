"""All bench numbers of one frame together."""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise
from pathlib import Path

import pytest

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import NAMED, frame_numbers
from rimbook.bench.load import pull
from rimbook.bench.part_index import index_parts
from rimbook.bench.thresholds import changed
from rimbook.bench.units import newtons
from rimbook.book.load import load_book
from rimbook.book.model import TensionLimit
from rimbook.rim.place import place
from tests.bench.catalogue import PARTS, measured_plover, part, with_holes, with_strip, with_twin
from tests.rim.frames import address

ANSWERS = Answers(index_parts(PARTS))
RIM = place(measured_plover())
R1, R9 = address("R1"), address("R9")


def test_every_drilled_hole_has_its_numbers() -> None:
    found = frame_numbers(RIM, ANSWERS)
    assert list(found.holes) == [hole.address for hole in RIM.frame.drilled]
    here = found.holes[R1]
    assert (here.part, here.strings) == ("short", 1)
    assert here.here.fit.word == "snug"
    assert here.here.room.word == "runs free"
    assert here.here.reach.word == "proud"
    assert here.here.turns.positions == 4
    assert here.here.thickest_mm == pytest.approx(1.2)
    assert [each.word for each in here.here.through or ()] == ["runs free"] * 3
    assert here.here.missing == ()
    assert found.holes[R9].here.turns.positions == 2  # two strings


def test_the_pull_at_some_tension() -> None:
    found = frame_numbers(RIM, ANSWERS, tension_n=100)
    loads = pull(RIM)
    for at, hole in found.holes.items():
        assert hole.pull == pytest.approx(loads[at])
        assert hole.pull_n == pytest.approx(100 * loads[at])
    assert found.holes[R1].pressure_mpa == pytest.approx(100 * loads[R1] / (2.05 * 9.4))
    assert (found.head.along_n, found.head.across_n) == (2200, 2100)


def test_the_usual_tension_is_assumed() -> None:
    assert frame_numbers(RIM, ANSWERS).tension_n == pytest.approx(newtons(24, "lb"))


def test_friction_is_an_option() -> None:
    plain, rubbed = frame_numbers(RIM, ANSWERS), frame_numbers(RIM, ANSWERS, friction=0.2)
    loads = pull(RIM, friction=0.2)
    assert rubbed.holes[R1].pull == pytest.approx(loads[R1])
    assert rubbed.holes[R1].pull != pytest.approx(plain.holes[R1].pull)


def test_the_hardest_worked_holes() -> None:
    found = frame_numbers(RIM, ANSWERS)
    by_pull = sorted(found.holes.values(), key=lambda hole: -hole.pull)
    assert found.holes[found.hardest[0]].rank == 1
    assert len(found.hardest) >= NAMED
    least = min(found.holes[at].pull for at in found.hardest)
    assert all(hole.pull <= least + 1e-6 for hole in by_pull[len(found.hardest) :])
    assert [hole.rank for hole in by_pull] == sorted(hole.rank for hole in by_pull)


def test_holes_alike_share_a_rank() -> None:
    """Mirrored holes pull alike but for the last digits, and that must not part them."""
    holes = sorted(frame_numbers(RIM, ANSWERS).holes.values(), key=lambda hole: -hole.pull)
    alike = [(one, other) for one, other in pairwise(holes) if one.pull - other.pull < 1e-9]
    assert any(one.pull != other.pull for one, other in alike)
    assert all(one.rank == other.rank for one, other in alike)


@pytest.mark.parametrize(("tension", "cautioned"), [(newtons(28, "lb"), False), (newtons(29, "lb"), True)])
def test_above_the_limit_is_said(tension: float, cautioned: bool) -> None:
    limited = replace(RIM, frame=replace(RIM.frame, tension_limit=TensionLimit(28, "lb")))
    found = frame_numbers(limited, ANSWERS, tension_n=tension)
    assert [caution.code for caution in found.cautions] == ["over the limit"] * cautioned


@pytest.mark.parametrize("tension", [0.0, -1.0, float("nan")])
def test_tensions_that_are_none(tension: float) -> None:
    with pytest.raises(ValueError, match="tension"):
        frame_numbers(RIM, ANSWERS, tension_n=tension)
    with pytest.raises(ValueError, match="friction"):
        frame_numbers(RIM, ANSWERS, friction=-0.1)


def test_unknown_stays_unknown() -> None:
    frame = with_holes(measured_plover(), "R1", bore_mm=None, rim_depth_mm=None)
    frame = with_holes(frame, "R2", part=None)
    found = frame_numbers(place(frame), ANSWERS)
    one, two = found.holes[R1], found.holes[address("R2")]
    assert (one.here.fit.word, one.here.reach.word, one.pressure_mpa) == (None, None, None)
    assert one.here.missing == ("bore", "rim depth")
    assert one.pull > 0
    assert (two.here.fit.word, two.here.room.word, two.here.turns.positions) == (None, None, None)
    assert two.here.missing == ("part",)


def test_nonsense_is_named() -> None:
    wrong = {**PARTS, "short": part("short", flange_mm=2.0)}
    frame = with_holes(measured_plover(), "R2", bore_mm=210.0)
    found = frame_numbers(place(frame), Answers(index_parts(wrong)))
    assert [caution.code for caution in found.holes[R1].here.cautions] == ["barrel over flange"]
    assert found.holes[R1].here.fit.word is None
    codes = [caution.code for caution in found.holes[address("R2")].here.cautions]
    assert codes == ["beyond any racket", "barrel over flange"]


def test_strips_and_twins_do_not_turn() -> None:
    frame = with_twin(with_strip(measured_plover(), "R1 R2 R3 R4", "crown"), "R36", "R37", "pair-70")
    found = frame_numbers(place(frame), ANSWERS)
    assert found.holes[R1].here.turns.positions == 1
    assert found.holes[address("R36")].here.turns.positions == 1


def test_the_long_post_sits_in_the_deeper_hole() -> None:
    frame = with_twin(measured_plover(), "R36", "R37", "pair-uneven")
    found = frame_numbers(place(with_holes(frame, "R37", rim_depth_mm=15.0)), ANSWERS)
    proud = [found.holes[address(word)].here.reach.proud_mm for word in ("R36", "R37")]
    assert proud == pytest.approx([1.1, 1.0])


def test_a_site_may_set_its_own_thresholds() -> None:
    mine = Answers(
        index_parts(PARTS), changed({"finger_over_mm": 0.02, "usual_tension_lb": {"badminton": 20}})
    )
    found = frame_numbers(RIM, mine)
    assert found.holes[R1].here.fit.word == "finger fit"
    assert found.tension_n == pytest.approx(newtons(20, "lb"))


def test_every_frame_of_the_book() -> None:
    """The invented maps of the book: numbers for each hole, and no caution."""
    book = load_book(Path(__file__).parents[2] / "frames").book
    answers = Answers(index_parts(book.parts))
    assert book.frames
    for frame in book.frames.values():
        found = frame_numbers(place(frame), answers)
        assert len(found.holes) == len(frame.drilled)
        assert not found.cautions
        for hole in found.holes.values():
            assert not hole.here.cautions
            fitted, known = hole.here.fit.word, hole.here.missing
            assert fitted in ("snug", "finger fit", "needs driving", None)
            assert (fitted is None) == ("bore" in known or "part" in known or "barrel" in known)
