"""Club files: what is taken, what is refused, and what the refusal says."""

from __future__ import annotations

from pathlib import Path

import pytest

from rimbook.bench.check import check
from rimbook.book.load import load_book
from rimbook.book.model import ClubFrame, TensionLimit
from rimbook.book.rules.club_size import MOST_FRAMES
from tests.book.rules.small_book import TODAY, found
from tests.book.rules.small_club import club_with, refused

DEMO = Path(__file__).parents[3] / "frames"


def test_a_good_club_has_no_problems() -> None:
    assert check(club_with(), TODAY) == ()


def test_short_and_long_forms_of_a_frame_mean_the_same() -> None:
    short = club_with().clubs["reed-street"].club.frames
    long = club_with(("- lapwing-20", "- {frame: lapwing-20}")).clubs["reed-street"].club.frames
    assert short == long == (ClubFrame("lapwing-20"),)


def test_what_is_known_of_a_frame_is_kept() -> None:
    book = club_with(
        ("- lapwing-20", "- {frame: lapwing-20, count: 4, restrings_per_year: 31.5, tension: 24 lb}")
    )
    expected = ClubFrame("lapwing-20", 4, 31.5, TensionLimit(24, "lb"))
    assert book.clubs["reed-street"].club.frames == (expected,)


def test_a_frame_without_a_map_is_told_the_nearest_name() -> None:
    (problem,) = found("club-frames", club_with(("- lapwing-20", "- {frame: lapwing-21, count: 2}")))
    assert (problem.nearest, problem.line) == ("lapwing-20", 11)


def test_a_part_in_stock_is_told_the_nearest_name() -> None:
    (problem,) = found("club-stock", club_with(("barrel-21: 40", "barel-27: 40")))
    assert problem.nearest == "barrel-27"


@pytest.mark.parametrize(
    ("count", "fine"), [(1, True), (MOST_FRAMES, True), (MOST_FRAMES + 1, False), (500, False)]
)
def test_a_club_has_a_most_of_frames(count: int, fine: bool) -> None:
    names = "\n".join(f"  - frame-{at}" for at in range(count))
    problems = found("club-size", club_with(("- lapwing-20", names.strip())))
    assert [problem.message for problem in problems] == (
        [] if fine else [f"The club has {count} frames; at most {MOST_FRAMES} go on one chart."]
    )


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("service_level: 0.95", "service_level: 1", "less than 1.0"),
        ("service_level: 0.95", "service_level: 0", "more than 0.0"),
        ("single: 0.04", "single: 1.01", "1.0 or less"),
        ("single: 0.04", "single: -0.01", "0.0 or more"),
        ("single: 0.04", "sngle: 0.04", "single"),
        ("barrel-21: 40", "barrel-21: -1", "0 or more"),
        ("- lapwing-20", "- {frame: lapwing-20, count: -1}", "0 or more"),
        ("- lapwing-20", "- {frame: lapwing-20, restrings_per_year: -1}", "0.0 or more"),
        ("- lapwing-20", "- {frame: lapwing-20, cuont: 1}", "count"),
        ("- lapwing-20", "- 7", "the slug of a frame, or {frame: plover-76, count: 3}"),
        ("paper: A2", "paper: A5", "A4"),
        ("units: metric", "units: metrik", "metric"),
        ("distance_m: 2", "distance_m: 0.1", "0.4 or more"),
        ("Reed Street Club", "R" * 200, "at most 80 characters"),
    ],
)
def test_a_club_of_the_wrong_shape_is_told_what_was_expected(old: str, new: str, says: str) -> None:
    (problem,) = refused((old, new))
    assert says in f"{problem.expected} {problem.nearest}"
    assert problem.file == "frames/clubs/reed-street.yaml"
    assert problem.line > 1


def test_a_fault_inside_a_frame_stands_at_its_key() -> None:
    (problem,) = refused(("- lapwing-20", "- {frame: lapwing-20, count: -1}"))
    assert problem.message == "frames.1.count cannot be -1."
    assert problem.expected == "0 or more"
    (problem,) = refused(("- lapwing-20", "- {frame: lapwing-20, cuont: 1}"))
    assert (problem.message, problem.nearest) == ("There is no key “cuont” here.", "count")


@pytest.mark.parametrize("share", [0, 1])
def test_all_or_none_is_a_share(share: int) -> None:
    assert check(club_with(("single: 0.04", f"single: {share}")), TODAY) == ()


def test_names_in_other_scripts_are_taken() -> None:
    club = (
        club_with(("Reed Street Club", "球拍社 · Ærø Ketcherklub · ชมรมไม้แร็กเกต")).clubs["reed-street"].club
    )
    assert club.name == "球拍社 · Ærø Ketcherklub · ชมรมไม้แร็กเกต"


def test_the_demo_club_is_whole_and_has_a_shelf() -> None:
    book = load_book(DEMO)
    (club,) = book.book.clubs.values()
    assert 8 <= len(club.frames) <= 12
    assert club.shelf is not None
    assert club.shelf.stock
    assert [problem for problem in check(book) if problem.file.startswith("frames/clubs/")] == []


def test_a_shelf_serves_no_factory() -> None:
    many = "- {frame: lapwing-20, restrings_per_year: RATE}"
    fine = club_with(("- lapwing-20", many.replace("RATE", "742857")))
    assert found("club-shelf-time", fine) == []
    (problem,) = found("club-shelf-time", club_with(("- lapwing-20", many.replace("RATE", "742858"))))
    assert problem.expected == "at most 100,000"


@pytest.mark.parametrize(
    ("tension", "says"),
    [
        ("28 lb", None),
        ("12.7 kg", None),
        ("124.55 N", None),
        ("240 lb", "240 lb is above the 28 lb"),
        ("12.71 kg", "12.71 kg is above the 28 lb"),
        ("24 kg", "24 kg is above the 28 lb"),
        ("125 N", "125 N is above the 28 lb"),
    ],
)
def test_a_tension_is_held_to_the_printed_limit_in_any_unit(tension: str, says: str | None) -> None:
    frame = f"- {{frame: lapwing-20, tension: {tension}}}"
    problems = found("club-tension", club_with(("- lapwing-20", frame)))
    assert [problem.message for problem in problems] == (
        [f"The tension {says} printed on lapwing-20."] if says else []
    )
    # The problem points at the value itself.
    assert all((problem.line, problem.column) == (11, 34) for problem in problems)
