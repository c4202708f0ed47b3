"""Leave, turn or replace, with the reason, for both ways of working."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.bench.turns import Turns
from tests.browser.sheet_frames import small_frame
from tests.browser.small_site import look_inside
from tests.watch import watched_page

CROWN, SHARED, SINGLE, OTHER, PAIR, FIFTH, UNKNOWN, FAR = range(8)


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "sheet_verdict": ["judge", "freshLeft"],
                "sheet_state": ["EMPTY", "mark", "look", "work"],
                "sheet_words": ["reasonWords", "actWords", "markWords", "minutesWords"],
            },
        )
        yield page
    assert faults == []


def judge(page: Page, way: str = "unhurried", frame: Any = None, **marks: Any) -> Any:
    """What is said where holes are marked `R4="split"` or, grooved, with their quarter turns: `R4=2`."""
    return page.evaluate(
        """([frame, way, marks]) => {
          let sheet = inside.work(inside.EMPTY, way, 10);
          for (const [address, what] of Object.entries(marks)) {
            const isGrooved = typeof what === "number";
            const own = isGrooved ? { seen: "grooved", turns: what } : { seen: what, turns: 0 };
            sheet = inside.mark(sheet, [address], own);
          }
          return inside.judge(frame, sheet);
        }""",
        [frame or small_frame(), way, marks],
    )


def said(page: Page, verdict: Any) -> tuple[str, list[str]]:
    act: str = page.evaluate("(verdict) => inside.actWords(verdict)", verdict)
    reasons: list[str] = page.evaluate("(verdict) => verdict.reasons.map(inside.reasonWords)", verdict)
    return act, reasons


def acts(judged: Any) -> dict[int, str]:
    return {each["piece"]: each["act"] for each in judged["verdicts"] if each["act"] != "leave"}


@pytest.mark.parametrize("seen", ["split", "missing", "low"])
@pytest.mark.parametrize("way", ["unhurried", "against the clock"])
@pytest.mark.parametrize(
    ("address", "piece"), [("L2", CROWN), ("R3", SHARED), ("R4", SINGLE), ("L6", PAIR), ("L4", UNKNOWN)]
)
def test_what_is_broken_is_replaced_and_must_be(
    inside: Page, seen: str, way: str, address: str, piece: int
) -> None:
    judged = judge(inside, way, **{address: seen})
    assert acts(judged) == {piece: "replace"}
    assert judged["verdicts"][piece]["presses"] == "must"


def test_one_broken_place_takes_the_strip(inside: Page) -> None:
    assert said(inside, judge(inside, L2="split", R1="missing")["verdicts"][CROWN]) == (
        "Replace",
        [
            "split at L2",
            "missing at R1",
            "one broken place takes the whole strip, R1, R2, L2 and L1",
        ],
    )


def test_one_split_post_takes_both(inside: Page) -> None:
    assert said(inside, judge(inside, L6="split")["verdicts"][PAIR]) == (
        "Replace",
        ["split at L6", "both posts are one part, R6 and L6"],
    )


@pytest.mark.parametrize("way", ["unhurried", "against the clock"])
@pytest.mark.parametrize(
    ("address", "piece", "why"),
    [
        ("R1", CROWN, "a groove alone takes no strip off, and a strip cannot be turned"),
        ("R3", SHARED, "a groove alone takes no part out of a shared hole"),
        ("R6", PAIR, "a groove alone takes no two-post part out"),
    ],
)
def test_a_groove_alone_stays_and_is_watched(
    inside: Page, way: str, address: str, piece: int, why: str
) -> None:
    judged = judge(inside, way, **{address: 1})
    assert acts(judged) == {}
    act, reasons = said(inside, judged["verdicts"][piece])
    assert act == "Leave and watch"
    assert reasons == [f"grooved at {address}", why]


def test_a_grooved_single_is_replaced_where_there_is_time(inside: Page) -> None:
    judged = judge(inside, R4=0, R5=2, L5=3, L4=1)
    assert acts(judged) == {SINGLE: "replace", OTHER: "replace", FIFTH: "replace", UNKNOWN: "replace"}
    assert [judged["verdicts"][piece]["presses"] for piece in (SINGLE, FIFTH)] == ["can wait", "should"]


def test_against_the_clock_it_is_turned_while_fresh_positions_remain(inside: Page) -> None:
    judged = judge(inside, "against the clock", R4=0, R5=2, L5=3, L4=1)
    assert acts(judged) == {SINGLE: "turn", OTHER: "turn", FIFTH: "replace", UNKNOWN: "turn"}
    verdicts = judged["verdicts"]
    assert said(inside, verdicts[SINGLE]) == (
        "Turn by a quarter",
        ["grooved at R4", "3 fresh positions left"],
    )
    assert said(inside, verdicts[OTHER])[1] == [
        "grooved at R5, 2 quarter turns so far",
        "1 fresh position left",
    ]
    assert said(inside, verdicts[FIFTH])[1] == [
        "grooved at L5, 3 quarter turns so far",
        "no fresh position left",
    ]
    assert "nobody knows" in said(inside, verdicts[UNKNOWN])[1][1]


@pytest.mark.parametrize(("turns", "act"), [(0, "Turn by a half"), (1, "Replace"), (2, "Replace")])
def test_a_wide_groove_needs_half_a_turn(inside: Page, turns: int, act: str) -> None:
    frame = small_frame()
    frame["pieces"][SINGLE] |= {"positions": 2, "step": 2}
    judged = judge(inside, "against the clock", frame, R4=turns)
    assert said(inside, judged["verdicts"][SINGLE])[0] == act


def test_fresh_positions_are_counted_as_in_the_book(inside: Page) -> None:
    for positions in (1, 2, 4):
        for step in (1, 2):
            for turned in range(7):
                left = inside.evaluate("(all) => inside.freshLeft(...all)", [positions, step, turned])
                assert left == Turns(positions, step).left(turned)


def test_what_was_not_looked_at_is_told(inside: Page) -> None:
    judged = judge(inside, R1="sound", R2="sound", R3="sound")
    assert judged["unseen"] == ["R4", "R5", "R6", "L6", "L5", "L4", "L3", "L2", "L1"]
    assert said(inside, judged["verdicts"][SHARED]) == ("Leave", ["nothing wrong"])
    assert said(inside, judged["verdicts"][CROWN])[1] == ["R1, R2, L2 and L1 not looked at"]


def test_a_crack_ends_the_job_and_the_rest_is_cared_for(inside: Page) -> None:
    script = """([frame, found]) => {
      let sheet = inside.EMPTY;
      for (const [check, what] of Object.entries(found)) sheet = inside.look(sheet, check, what);
      const { ends, cares, unchecked } = inside.judge(frame, sheet);
      return [ends, cares, unchecked];
    }"""
    frame = small_frame()
    assert inside.evaluate(script, [frame, {}]) == [False, [], ["crack", "edge", "crushed"]]
    assert inside.evaluate(script, [frame, {"crack": "found", "edge": "found"}]) == [
        True,
        ["edge"],
        ["crushed"],
    ]
    assert inside.evaluate(script, [frame, {"crack": "none", "edge": "none", "crushed": "found"}]) == [
        False,
        ["crushed"],
        [],
    ]


@pytest.mark.parametrize(
    ("seconds", "words"),
    [
        (0, "0 minutes"),
        (10, "half a minute"),
        (60, "1 minute"),
        (61, "1½ minutes"),
        (120, "2 minutes"),
        (605, "10½ minutes"),
    ],
)
def test_minutes_are_said_as_people_say_them(inside: Page, seconds: int, words: str) -> None:
    assert inside.evaluate("(seconds) => inside.minutesWords(seconds)", seconds) == words


def test_marks_in_words(inside: Page) -> None:
    marks = [None, ("sound", 0), ("grooved", 0), ("grooved", 1), ("grooved", 3), ("low", 0)]
    found = inside.evaluate(
        "(marks) => marks.map((each) => inside.markWords(each && { seen: each[0], turns: each[1] }))", marks
    )
    assert found == [
        "not looked at",
        "sound",
        "grooved, never turned",
        "grooved, turned once",
        "grooved, turned 3 times",
        "string sits low",
    ]
