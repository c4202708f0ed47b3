"""Donors, shared drawers, and parts that nothing else replaces."""

from __future__ import annotations

from dataclasses import replace

from rimbook.bench.answers import Answers
from rimbook.bench.interchange import Donors, Drawer, donors, interchange
from rimbook.bench.needs import HoleNeed, PieceNeed
from rimbook.bench.part_index import index_parts
from rimbook.book.model import Frame
from tests.bench.catalogue import PARTS, measured_plover, with_holes, with_strip, with_twin

INDEX = index_parts(PARTS)
NEED = HoleNeed("badminton", 2.1, 0.02, 9.4, 1)


def named(frame: Frame, slug: str) -> Frame:
    return replace(frame, slug=slug)


def test_every_need_is_answered_once() -> None:
    frames = [named(measured_plover(), "one"), named(measured_plover(), "two")]
    found = interchange(frames, Answers(INDEX))
    assert set(found.answers) == set(found.frames)
    assert found.frames[NEED] == ("one", "two")
    assert found.answers[NEED].serving[0] == "short"
    assert NEED in found.by_part()["long"]  # it would serve, though it sits nowhere
    assert "long" not in found.fitted


def test_frames_that_share_a_drawer() -> None:
    """Other depths and other parts on the map, but the same best parts."""
    deeper = tuple(replace(hole, rim_depth_mm=9.9) for hole in measured_plover().holes)
    frames = [
        named(measured_plover(), "one"),
        named(replace(measured_plover(), holes=deeper), "two"),
        named(with_holes(measured_plover(), "R1", part="short-too"), "three"),
        named(with_holes(measured_plover(), "R20", rim_depth_mm=11.5), "four"),
    ]
    found = interchange(frames, Answers(INDEX))
    assert found.drawers == (
        Drawer(("long", "short", "wide"), ("four",)),
        Drawer(("short", "wide"), ("one", "three", "two")),
    )


def test_strips_are_in_no_drawer_and_twins_are() -> None:
    deep = with_holes(measured_plover(), "R1 R2 R3 R4", rim_depth_mm=11.5)  # loose, they would take long ones
    frame = with_twin(with_strip(deep, "R1 R2 R3 R4", "crown"), "R36", "R37", "pair-70")
    found = interchange([frame], Answers(INDEX))
    assert found.drawers == (Drawer(("pair-70", "short", "wide"), ("plover-76",)),)


def test_what_is_not_known_gets_no_drawer() -> None:
    """A bore that nobody measured, and a hole for which neither the map nor the catalogue has a part."""
    frames = [
        named(with_holes(measured_plover(), "R5", bore_mm=None), "no-bore"),
        named(with_holes(measured_plover(), "R5", bore_mm=5.0, part=None), "no-part"),
        named(with_holes(measured_plover(), "R5", bore_mm=5.0, part="made-to-measure"), "as-the-map-says"),
    ]
    found = interchange(frames, Answers(INDEX))
    assert found.untold == {"no-bore": ("bore",), "no-part": ("part",)}
    assert found.drawers == (Drawer(("made-to-measure", "short", "wide"), ("as-the-map-says",)),)


def test_parts_that_nothing_else_replaces() -> None:
    found = interchange([measured_plover()], Answers(INDEX))
    assert found.irreplaceable == ("wide",)
    assert "short" not in found.only
    alone = interchange(
        [measured_plover()], Answers(index_parts({name: PARTS[name] for name in ("short", "wide")}))
    )
    assert alone.irreplaceable == ("short", "wide")


def test_a_part_may_be_replaceable_in_one_place_only() -> None:
    """Nothing else fills a rim of 11.5; in the ordinary holes others serve."""
    frame = with_holes(
        with_holes(measured_plover(), "R20", rim_depth_mm=11.5, part="long"), "R21", part="long"
    )
    found = interchange([frame], Answers(INDEX))
    assert len(found.fitted["long"]) == 2
    assert found.only["long"] == (NEED._replace(depth_mm=11.5),)
    assert "long" not in found.irreplaceable


def test_unknown_bores_do_not_make_a_part_irreplaceable() -> None:
    found = interchange([with_holes(measured_plover(), "R5", bore_mm=None, part="long")], Answers(INDEX))
    assert "long" not in found.only


def test_donors_of_a_strip() -> None:
    """The crown comes only in its own set; another set holds one like it, and loose parts fit its holes."""
    answers = Answers(INDEX)
    strip = PieceNeed("strip", (NEED,), 4, None, False)
    assert donors("crown", answers.of(strip), INDEX) == Donors("crown", ("own-set",), (), ("other-set",))
    assert donors("crown", answers.of(NEED), INDEX) == Donors(
        "crown", ("own-set",), ("short", "long"), ("other-set",)
    )


def test_no_frames_no_answers() -> None:
    found = interchange([], Answers(INDEX))
    assert (found.answers, found.drawers, found.irreplaceable, found.by_part()) == ({}, (), (), {})
