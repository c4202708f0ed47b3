"""The sheet in the address bar: it comes back whole, and whatever is broken is told."""

from __future__ import annotations

from collections.abc import Iterator
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from tests.browser.sheet_frames import hole, small_frame
from tests.browser.small_site import look_inside
from tests.watch import watched_page

SEEN = ["sound", "grooved", "split", "missing", "low"]
NO_CHECKS = {"crack": "not looked", "edge": "not looked", "crushed": "not looked"}


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"sheet_code": ["encode", "decode", "guesses"], "sheet_frame": ["fingerprint"]})
        yield page
    assert faults == []


def encode(page: Page, frame: Any, sheet: Any) -> str:
    text: str = page.evaluate("(all) => inside.encode(...all)", [frame, sheet])
    return text


def decode(page: Page, frame: Any, text: str) -> Any:
    return page.evaluate("(all) => inside.decode(...all)", [frame, text])


def sheet(marks: dict[str, Any], **others: Any) -> dict[str, Any]:
    plain: dict[str, Any] = {
        "checks": NO_CHECKS,
        "way": "unhurried",
        "minutes": None,
        "doubts": [],
        "last": None,
    }
    return {"marks": marks, **plain, **others}


def mark(seen: str, turns: int = 0) -> dict[str, Any]:
    return {"seen": seen, "turns": turns}


def large_frame(holes: int = 76) -> dict[str, Any]:
    """A frame with singles only; every hole has strings of its own."""
    half = holes // 2
    addresses = [*(f"R{i + 1}" for i in range(half)), *(f"L{half - i}" for i in range(half))]
    return {**small_frame(), "slug": "large", "holes": [hole(a, 0, f"c{a[1:]}") for a in addresses]}


def random_sheet(random: Random, frame: Any) -> dict[str, Any]:
    marks = {}
    for each in frame["holes"]:
        if random.random() < 0.7:
            seen = random.choice([*SEEN, "sound", "sound", "sound"])
            marks[each["address"]] = mark(seen, random.randint(0, 9) if seen == "grooved" else 0)
    checks = {check: random.choice(["not looked", "none", "found"]) for check in NO_CHECKS}
    hurried = random.random() < 0.5
    minutes = random.choice([None, random.randint(0, 240)]) if hurried else None
    return sheet(marks, checks=checks, way="against the clock" if hurried else "unhurried", minutes=minutes)


def test_a_sheet_comes_back_whole(inside: Page) -> None:
    random = Random(1)
    for frame in (small_frame(), large_frame()):
        for _ in range(60):
            given = random_sheet(random, frame)
            text = encode(inside, frame, given)
            assert set(text) <= set("abcdefghijklmnopqrstuvwxyz0123456789._")
            assert decode(inside, frame, text) == {"sheet": given, "isOtherMap": False, "problems": []}
            assert decode(inside, frame, f" {text.upper()} ")["sheet"] == given


def test_it_stays_short(inside: Page) -> None:
    """A frame of 76 holes, all looked at, ten worn: short enough for a code that a phone scans."""
    frame = large_frame()
    marks = {each["address"]: mark("sound") for each in frame["holes"]}
    marks |= {f"R{i}": mark("grooved", 1) for i in range(3, 31, 4)} | {
        f"L{i}": mark("split") for i in (5, 9, 20)
    }
    assert len(encode(inside, frame, sheet(marks))) < 200


def test_every_cut_is_noticed_and_what_is_left_is_true(inside: Page) -> None:
    random = Random(3)
    frame = large_frame()
    given = random_sheet(random, frame)
    text = encode(inside, frame, given)
    for end in range(1, len(text)):
        found = decode(inside, frame, text[:end])
        assert found["problems"]
        wrong = {a: m for a, m in found["sheet"]["marks"].items() if given["marks"].get(a) != m}
        assert wrong == {}


def test_most_slips_are_noticed(inside: Page) -> None:
    """The check at the end has two signs of 36: about one slip in 1,300 passes it."""
    random = Random(4)
    frame = small_frame()
    noticed = 0
    for _ in range(200):
        text = encode(inside, frame, random_sheet(random, frame))
        at = random.randrange(len(text))
        other = random.choice([sign for sign in "abcz019._" if sign != text[at]])
        noticed += bool(decode(inside, frame, text[:at] + other + text[at + 1 :])["problems"])
    assert noticed >= 197


@pytest.mark.parametrize(
    "text",
    ["%%%", "1", "1.", "1.....", "é" * 50, "1.abcde.f9.c9999.gxx", "__proto__", "1.abcde.zzz", "\ud83c"],
)
def test_rubbish_is_told_in_words(inside: Page, text: str) -> None:
    found = decode(inside, small_frame(), text)
    assert found["problems"]
    assert found["sheet"] == sheet({})


def test_what_is_not_understood_is_named_and_the_rest_read(inside: Page) -> None:
    frame = small_frame()
    text = encode(inside, frame, sheet({"R4": mark("split")}))
    found = decode(inside, frame, text.replace(".u.", ".u.q7.c999x."))
    assert found["sheet"]["marks"] == {"R4": mark("split")}
    assert [problem.split("”")[0] for problem in found["problems"]] == [
        "The address was cut short or changed on the way: look whether all marks are there.",
        "“q7",
        "“c999x",
    ]


def test_too_long_is_cut_off_with_a_word(inside: Page) -> None:
    frame = small_frame()
    text = encode(inside, frame, sheet({"R4": mark("split")}))
    found = decode(inside, frame, text + ".x" * 10_000)
    assert "longer than 4000" in found["problems"][0]
    assert found["sheet"]["marks"] == {"R4": mark("split")}


def test_another_edition_is_told(inside: Page) -> None:
    (problem,) = decode(inside, small_frame(), "2.abcde.whatever")["problems"]
    assert "edition 2" in problem


def test_an_empty_address_is_an_empty_sheet(inside: Page) -> None:
    assert decode(inside, small_frame(), "") == {"sheet": sheet({}), "isOtherMap": False, "problems": []}


def renumbered() -> dict[str, Any]:
    """The small frame after someone found a place that was left out: what was R3 to R6 is R4 to R7."""
    frame = small_frame()
    for each in frame["holes"]:
        side, number = each["address"][0], int(each["address"][1:])
        if side == "R" and number >= 3:
            each["address"] = f"R{number + 1}"
    frame["holes"].insert(2, hole("R3", 2))
    return frame


def test_marks_of_moved_holes_are_kept_and_asked_about(inside: Page) -> None:
    worn = {
        "R1": mark("sound"),
        "R2": mark("sound"),
        "R4": mark("split"),
        "R5": mark("grooved", 1),
        "L4": mark("low"),
    }
    text = encode(inside, small_frame(), sheet(worn))
    new = renumbered()
    found = decode(inside, new, text)
    assert found["isOtherMap"]
    assert found["problems"] == []
    kept = found["sheet"]["marks"]
    doubts = found["sheet"]["doubts"]
    assert kept == {"R1": mark("sound"), "R2": mark("sound"), "L4": mark("low")}
    assert [(each["from"], each["mark"]) for each in doubts] == [
        ("R5", mark("grooved", 1)),
        ("R4", mark("split")),
    ]
    guesses = [inside.evaluate("(all) => inside.guesses(...all)", [new, doubt]) for doubt in doubts]
    assert guesses == [["R6"], ["R5"]]


def test_doubts_survive_a_reload_until_they_are_settled(inside: Page) -> None:
    text = encode(
        inside, small_frame(), sheet({"R4": mark("split"), "R3": mark("sound"), "R5": mark("sound")})
    )
    new = renumbered()
    first = decode(inside, new, text)["sheet"]
    assert len(first["doubts"]) == 3
    again = decode(inside, new, encode(inside, new, first))
    assert again["sheet"] == first
    assert not again["isOtherMap"]


def test_a_sheet_of_another_frame_is_told_and_its_marks_are_in_doubt(inside: Page) -> None:
    text = encode(inside, large_frame(), sheet({"R4": mark("split"), "R30": mark("low")}))
    found = decode(inside, small_frame(), text)
    assert found["isOtherMap"]
    assert found["sheet"]["marks"] == {}
    assert len(found["sheet"]["doubts"]) == 2


def test_a_new_part_on_the_map_moves_no_hole(inside: Page) -> None:
    frame, other = small_frame(), small_frame()
    other["pieces"][2]["part"] = "post-b"
    other["serves"] = [[]] * 4
    prints = inside.evaluate("(frames) => frames.map(inside.fingerprint)", [frame, other, renumbered()])
    assert prints[0] == prints[1] != prints[2]
