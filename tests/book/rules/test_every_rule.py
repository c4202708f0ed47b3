"""Each rule is broken once by the smallest change of a good book, and says what its page promises."""

from __future__ import annotations

import re
from dataclasses import replace

import pytest

from rimbook.bench.check import RULES, catalogue, check
from rimbook.book.load import Loaded, MovedFile
from rimbook.book.model import Moved
from rimbook.book.reader import read
from rimbook.book.rules.rule import Rule
from tests.book.rules.small_book import (
    MAP,
    PARTS,
    TODAY,
    changed,
    found,
    loaded,
    map_with,
    parts_with,
    said,
)
from tests.book.rules.small_club import club_with

WALK = "m1 m2 m3 c1 c2\n  c3 c4 m3+c5 m2 m1"
CROWN = "{name: crown strip, holes: [L2, R2], part: lapwing-crown}"


def measured_places(*places: object) -> tuple[str, str]:
    """A change that adds measured places for the first holes of the walk."""
    words = [str(place) for place in places] + ["unknown"] * (10 - len(places))
    return ("stringing:", f"places_mm: [{', '.join(words)}]\nstringing:")


def moved(old: str, new: str) -> Loaded:
    """The small book with an old name of a frame."""
    document = read(f"format: 1\nframes: {{{old}: {new}}}\n", "frames/moved.yaml")
    return replace(loaded(), moved=MovedFile(Moved({old: new}), document))


BREAKS: dict[str, Loaded] = {
    "even-mains": map_with(("mains: 6", "mains: 5")),
    "passes-add-up": map_with(("c2\n", ".\n")),
    "strings-on-each-half": map_with(("m3+c5 m2", "m3+c5 .")),
    "walk-in-order": map_with(("c1 c2", "c2 c1")),
    "places-increase": map_with(measured_places(3.5, 41, 14)),
    "head-large-enough": map_with(("[186, 244]", "[18.6, 24.4]")),
    "overall-holds-head": map_with(("[674, 206]", "[206, 230]")),
    "frame-within-law": map_with(("[674, 206]", "[680.1, 206]")),
    "tie-offs": map_with(
        ("c1 c2", ". c1 c2"), ("[8]", "[9]"), ("9-10: twin", "10-11: twin"), ("R8, L8", "R9, L9")
    ),
    "tie-off-count": map_with(("R8, L8, R4, L4", "R8, L8, R4")),
    "tension-plausible": map_with(("28 lb", "28 kg")),
    "part-exists": map_with(("default: barrel-21", "default: barel-21")),
    "part-suits-place": map_with(("9-10: twin-21", "9-10: lapwing-crown")),
    "no-idle-lines": map_with(("bore 2.7: barrel-27", "bore 2.9: barrel-27")),
    "twin-holes": map_with(("9-10: twin-21", "7: twin-21")),
    "strip-holes": map_with((CROWN, f"{CROWN}\n  - {{name: bumper, holes: [R2, R4], part: unknown}}")),
    "strip-posts": map_with(("[L2, R2]", "[L3, R3]")),
    "sides-agree": map_with(("2.7: [8]", "2.7: [8, R4]")),
    "barrel-in-bore": map_with(("default: 2.1", "default: 3.2")),
    "barrel-through-rim": parts_with(("bore_mm: 1.3\n    length_mm: 10.5", "bore_mm: 1.3\n    length_mm: 6")),
    "variant-of": map_with(("year: 2024", "variant_of: lapwin-20")),
    "someone-else-confirmed": map_with(("other-handle", "a-handle")),
    "part-keys-suit-kind": parts_with(("flange_mm: 4.2", "pitch_mm: 7.0")),
    "part-sizes": parts_with(("bore_mm: 1.3\n", "bore_mm: 2.3\n")),
    "set-contents": parts_with(("{barrel-21: 10", "{barel-21: 1, barrel-21: 10")),
    "set-frames": parts_with(("[lapwing-20]", "[lapwing-20, lapwin-20]")),
    "set-holds-enough": parts_with(("barrel-21: 10", "barrel-21: 6")),
    "sold-somewhere": parts_with((", lapwing-crown: 1", "")),
    "part-id-once": loaded(more_parts="format: 1\nparts:\n  barrel-21: {name: Another, kind: single}\n"),
    "same-part-name": loaded(more_parts="format: 1\nparts:\n  b21: {name: BARREL 2.1, kind: single}\n"),
    "unused-part": loaded(more_parts="format: 1\nparts:\n  barrel-99: {name: Odd one, kind: single}\n"),
    "same-name": loaded(more_maps={"other-20": changed(MAP, ("Lapwing 20", "LAPWING 2O"))}),
    "club-size": club_with(("- lapwing-20", "[]"), frames="frames: "),
    "club-frames": club_with(("- lapwing-20", "- lapwin-20")),
    "club-frame-once": club_with(("- lapwing-20", "- lapwing-20\n  - {frame: lapwing-20, count: 2}")),
    "club-tension": club_with(("- lapwing-20", "- {frame: lapwing-20, tension: 29 lb}")),
    "club-stock": club_with(("barrel-21: 40", "barel-21: 40")),
    "club-shelf-shares": club_with(("single: 0.04", "set: 0.04")),
    "club-shelf-time": club_with(
        ("lead_time_weeks: 3", "lead_time_weeks: 0"), ("review_weeks: 4", "review_weeks: 0")
    ),
    "club-shelf-restrings": club_with(("- lapwing-20", "- {frame: lapwing-20, restrings_per_year: 0}")),
    "no-future-dates": map_with(("2026-10-04", "2031-01-01")),
    "mixed-scripts": map_with(("name: Lapwing 20", "name: Lарwing 20")),
    "moved-names": moved("lapwing-old", "lapwin-20"),
    "strung-within-law": map_with(("[186, 244]", "[186, 280.1]")),
    "place-on-rim": map_with(measured_places(*["unknown"] * 9, 350)),
    "hole-gaps": map_with(measured_places("unknown", "unknown", 17.7, 85.4, 145.4)),
    "strings-run-straight": map_with(("m2 m3 c1 c2", "m2 c1 m3 c2")),
    "twin-pitch": map_with(measured_places(*["unknown"] * 7, 320, 324, 335.8)),
}


def test_a_good_book_has_no_problems() -> None:
    assert check(loaded(), TODAY) == ()


def test_every_rule_has_a_name_of_its_own_and_is_broken_here() -> None:
    assert [rule.name for rule in RULES] == list(dict.fromkeys(rule.name for rule in RULES))
    assert BREAKS.keys() == {rule.name for rule in RULES}


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_a_broken_rule_says_what_its_page_promises(rule: Rule) -> None:
    problems = found(rule.name, BREAKS[rule.name])
    assert rule.example in [problem.message for problem in problems]
    assert all((problem.line, problem.column) != (1, 1) for problem in problems)


@pytest.mark.parametrize("rule", RULES, ids=lambda rule: rule.name)
def test_a_rule_is_written_for_people(rule: Rule) -> None:
    assert re.fullmatch(r"[a-z]+(-[a-z]+)+", rule.name)
    for text in (rule.summary, rule.example):
        assert text.endswith(".")
        assert "\n" not in text


def test_the_catalogue_lists_every_rule_and_what_the_reader_refuses() -> None:
    entries = catalogue()
    assert [entry.name for entry in entries] == ["readable", "shape", "meaning", *(r.name for r in RULES)]
    assert {entry.scope for entry in entries} == {"map", "parts", "club", "book"}
    assert all(entry.summary and entry.example for entry in entries)


def test_problems_of_reading_are_handed_on_and_nobody_is_blamed_for_what_was_not_read() -> None:
    first = found("part-exists", BREAKS["part-exists"])[0]
    unread = loaded(
        changed(MAP, ("default: barrel-21", "default: elsewhere"), ("year: 2024", "variant_of: unread-map")),
        PARTS,
        problems=tuple(
            type(first)("readable", "error", file, 1, 1, "This is not YAML.")
            for file in ("frames/parts/broken.yaml", "frames/maps/unread-map.yaml")
        ),
    )
    assert said("readable", unread) == ["This is not YAML."] * 2
    assert said("part-exists", unread) == []
    assert said("variant-of", unread) == []
