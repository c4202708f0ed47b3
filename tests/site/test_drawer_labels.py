"""The labels of a club: a label for each drawer of its shelf, or where it has none for every part."""

from __future__ import annotations

from dataclasses import replace

from rimbook.book.model import Frame
from rimbook.draw.labels_sheet import DrawerLabel, Kept
from rimbook.site.drawer_labels import club_labels
from tests.site.sample import demo_book
from tests.site.test_shelf_page import shelf

CLUB = demo_book().clubs["weir-lane"]
FRAMES = [demo_book().frames[each.frame] for each in CLUB.frames]


def labels(frames: list[Frame] = FRAMES) -> dict[str, DrawerLabel]:
    return {each.part.id: each for each in club_labels(CLUB, frames, demo_book().parts)}


def test_every_drawer_that_something_is_kept_in_has_a_label_with_its_levels() -> None:
    kept = {each.item: each.levels for each in shelf().drawers if each.levels.up_to}
    assert {part: label.kept for part, label in labels().items()} == {
        part: Kept(levels.reorder, levels.up_to) for part, levels in kept.items()
    }
    assert len(kept) == 14


def test_sets_that_are_kept_have_a_label_and_what_is_replaced_has_none() -> None:
    found = labels()
    assert {"plover-set", "weir-set", "sluice-set"} <= found.keys()
    assert "treadle-set" not in found  # none is kept
    assert "barrel-20" not in found  # the shelf keeps Long barrel 2.1 in its place


def test_a_label_names_all_frames_that_its_drawer_serves() -> None:
    assert labels()["squash-barrel-28"].frames == (
        "Alder 56",
        "Hornbeam 76",
        "Plover 76",
        "Treadle 60",
        "Whimbrel 72",
    )


def test_frames_of_one_name_are_told_apart_by_their_year() -> None:
    named = [
        replace(frame, name="Bittern 78") if frame.slug.startswith("bittern") else frame for frame in FRAMES
    ]
    years = sorted(str(frame.year) for frame in FRAMES if frame.slug.startswith("bittern"))
    assert labels(named)["bittern-crown"].frames == tuple(f"Bittern 78 ({year})" for year in years)


def test_a_club_without_a_shelf_has_a_label_for_every_part() -> None:
    found = club_labels(replace(CLUB, shelf=None), FRAMES, demo_book().parts)
    assert len(found) == 35
    assert all(label.kept is None for label in found)
