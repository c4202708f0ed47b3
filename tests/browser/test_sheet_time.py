"""How long the work takes, what comes first against the clock, and what it costs the player."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.book.load import load_book
from tests.browser.sheet_frames import everything_new, small_frame
from tests.browser.small_site import look_inside
from tests.watch import watched_page

MAPS = Path(__file__).parents[2] / "frames"
TERMS = {"hourly": 3000, "least": 0, "markup": 0, "half": "away"}


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "sheet_time": ["tasks", "secondsFor", "againstTheClock", "USUAL_LABOUR"],
                "sheet_quote": ["quote"],
            },
        )
        yield page
    assert faults == []


def verdict(piece: int, act: str, presses: str = "can wait") -> dict[str, Any]:
    return {"piece": piece, "act": act, "presses": presses, "quarters": 0, "watch": False, "reasons": []}


def tasks(page: Page, *verdicts: dict[str, Any], frame: Any = None) -> Any:
    return page.evaluate("(all) => inside.tasks(...all)", [frame or small_frame(), list(verdicts)])


def clock(page: Page, work: Any, minutes: float | None) -> Any:
    return page.evaluate("(all) => inside.againstTheClock(...all)", [work, minutes])


def test_a_full_badminton_regrommet_takes_ten_to_twenty_minutes(inside: Page) -> None:
    """Common practice, no published source. On every badminton map of the demo book."""
    book = load_book(MAPS).book
    frames = [frame for frame in book.frames.values() if frame.sport == "badminton"]
    assert len(frames) >= 5
    for frame in frames:
        new = everything_new(frame, book.parts)
        pieces = [{"kind": each["kind"], "holes": [0] * each["holes"]} for each in new]
        whole = {"holes": [{"pull": 1}], "pieces": pieces}
        work = tasks(inside, *(verdict(at, "replace") for at in range(len(pieces))), frame=whole)
        minutes = inside.evaluate("(work) => inside.secondsFor(work)", work) / 60
        assert 10 <= minutes <= 20, frame.slug


def test_what_presses_comes_first_then_the_hardest_pull(inside: Page) -> None:
    work = tasks(
        inside,
        verdict(0, "replace", "must"),
        verdict(1, "replace", "must"),
        verdict(2, "turn"),
        verdict(3, "turn"),
        verdict(4, "leave", "nothing"),
        verdict(5, "replace", "should"),
        verdict(6, "replace"),
        verdict(7, "replace", "must"),
    )
    assert [each["piece"] for each in work] == [1, 7, 0, 5, 3, 6, 2]
    assert [each["pull"] for each in work] == [1.9, 1.9, 1.4, 1.4, 1.6, 1.3, 1.2]


def test_seconds_follow_the_kind_of_part(inside: Page) -> None:
    work = tasks(inside, *(verdict(at, "replace") for at in range(5)), verdict(5, "turn"))
    usual = inside.evaluate("inside.USUAL_LABOUR")
    assert {each["piece"]: each["seconds"] for each in work} == {
        0: usual["strip"] + 4 * usual["post"],
        1: usual["wide"],
        2: usual["single"],
        3: usual["single"],
        4: usual["twin"],
        5: usual["turn"],
    }
    total = sum(each["seconds"] for each in work)
    assert inside.evaluate("(work) => inside.secondsFor(work)", work) == total + usual["setUp"]
    assert inside.evaluate("inside.secondsFor([])") == 0


def test_against_the_clock_the_rest_waits(inside: Page) -> None:
    work = tasks(
        inside,
        verdict(2, "replace", "must"),
        verdict(1, "replace", "should"),
        verdict(3, "turn"),
        verdict(5, "turn"),
    )
    usual = inside.evaluate("inside.USUAL_LABOUR")
    base = usual["setUp"] + usual["single"]
    found = clock(inside, work, (base + usual["turn"]) / 60)
    assert [each["piece"] for each in found["now"]] == [2, 3]
    assert [each["piece"] for each in found["later"]] == [1, 5]
    assert found["fits"]
    assert found["seconds"] == base + usual["turn"]


def test_what_must_be_done_is_never_left_undone(inside: Page) -> None:
    random = Random(8)
    for _ in range(60):
        presses = [random.choice(["must", "should", "can wait"]) for _ in range(8)]
        work = tasks(inside, *(verdict(at, "replace", press) for at, press in enumerate(presses)))
        minutes = random.choice([0, 0.5, 1.8, 2, 2.5, 3, 5, 60])
        found = clock(inside, work, minutes)
        must = [at for at, press in enumerate(presses) if press == "must"]
        now = [each["piece"] for each in found["now"]]
        assert set(must) <= set(now)
        assert len(now) + len(found["later"]) == len(work)
        need = inside.evaluate("(work) => inside.secondsFor(work)", [w for w in work if w["piece"] in must])
        assert found["fits"] == (need <= minutes * 60)
        assert found["over"] == max(0, need - minutes * 60)
        if found["fits"]:
            assert found["seconds"] <= minutes * 60


def test_without_a_time_nothing_waits(inside: Page) -> None:
    work = tasks(inside, *(verdict(at, "replace") for at in range(8)))
    found = clock(inside, work, None)
    assert found["now"] == work
    assert (found["later"], found["fits"], found["over"]) == ([], True, 0)


def quote(page: Page, work: Any, parts: list[dict[str, Any]], **terms: Any) -> Any:
    return page.evaluate("(all) => inside.quote(...all)", [work, parts, {**TERMS, **terms}])


def part(name: str, count: int, each: int) -> dict[str, Any]:
    return {"name": name, "count": count, "each": each}


def test_a_quote_worked_out_by_hand(inside: Page) -> None:
    """90 s + 2 × 10 s + 12 s + 5 s = 127 s at 30.00 an hour is 1.0583…, so 1.06."""
    work = tasks(
        inside,
        verdict(2, "replace"),
        verdict(3, "replace"),
        verdict(1, "replace", "must"),
        verdict(5, "turn"),
    )
    found = quote(inside, work, [part("Post A", 2, 60), part("Wide A", 1, 95)])
    assert [(line["what"], line["count"], line["amount"]) for line in found["lines"]] == [
        ("set-up", 1, 75),
        ("wide", 1, 10),
        ("single", 2, 17),
        ("turn", 1, 4),
        ("part", 2, 120),
        ("part", 1, 95),
    ]
    assert (found["labour"], found["parts"], found["total"]) == (106, 215, 321)


def test_the_least_charge_fills_up_the_work(inside: Page) -> None:
    work = tasks(inside, verdict(5, "turn"))
    found = quote(inside, work, [part("Post A", 1, 60)], least=500)
    assert found["lines"][-2]["what"] == "least charge"
    assert (found["labour"], found["total"]) == (500, 560)
    assert quote(inside, [], [], least=500)["total"] == 0


def test_half_a_cent_on_parts_is_rounded_as_asked(inside: Page) -> None:
    parts = [part("Post A", 1, 5), part("Wide A", 1, 15)]
    away = quote(inside, [], parts, markup=10)
    even = quote(inside, [], parts, markup=10, half="even")
    assert [line["amount"] for line in away["lines"]] == [6, 17]
    assert [line["amount"] for line in even["lines"]] == [6, 16]


def test_lines_always_add_up_to_the_total(inside: Page) -> None:
    random = Random(9)
    for _ in range(100):
        work = tasks(inside, *(verdict(at, random.choice(["turn", "replace", "leave"])) for at in range(8)))
        parts = [
            part(f"P{i}", random.randint(1, 9), random.randint(0, 999)) for i in range(random.randint(0, 4))
        ]
        terms = {
            "hourly": random.randint(0, 9999),
            "least": random.choice([0, 700]),
            "markup": random.choice([0, 12.5]),
        }
        found = quote(inside, work, parts, **terms)
        assert (
            sum(line["amount"] for line in found["lines"])
            == found["total"]
            == found["labour"] + found["parts"]
        )
        seconds = inside.evaluate("(work) => inside.secondsFor(work)", work)
        if work and not terms["least"]:
            assert abs(found["labour"] - terms["hourly"] * seconds / 3600) <= 0.5
