"""What fits a measured hole: the browser against the shared cases, and against the build on random ones."""

from __future__ import annotations

import json
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.bench.reasons import SENTENCES, Reason
from rimbook.bench.room import in_hole
from rimbook.bench.serves import Served, Wanted, ranked
from rimbook.bench.thresholds import DEFAULT, Thresholds, changed
from rimbook.book.model import Measured, Part
from rimbook.site.fits_data import fits_data
from rimbook.site.words import number
from tests.browser.small_site import look_inside
from tests.fits_cases import part_of
from tests.watch import watched_page

CASES = json.loads((Path(__file__).parents[1] / "cases" / "fits.json").read_text("utf-8"))
THRESHOLDS = changed(CASES["thresholds"])
RANDOM_CASES = 1_500
FIELDS = {
    "bore": "bore",
    "resolution": "step",
    "rim depth": "depth",
    "string diameter": "string",
    "string diameters": "string",
    "number of strings": "strings",
}
"""The browser's field for each measure that the cases name."""


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "fits_data": ["readFits"],
                "fits_hole": ["readHole", "missingOf"],
                "fits_rules": ["ranked", "nearest"],
                "fits_words": ["reasonText"],
                "millimetres": ["number"],
            },
        )
        yield page
    assert faults == []


CASE_PARTS = [part_of(name, written) for name, written in CASES["parts"].items()]


def hand_over(page: Page, parts: list[Part], thresholds: Thresholds) -> None:
    """Let the browser read the data file that the build would write."""
    data = json.loads(json.dumps(fits_data({part.id: part for part in parts}, thresholds)))
    page.evaluate("(data) => { inside.fits = inside.readFits(data); }", data)


def typed(hole: dict[str, Any]) -> dict[str, str]:
    """A hole of the cases as a reader would type it."""

    def text(value: object) -> str:
        return "" if value is None else str(value)

    return {
        "bore": text(hole["bore_mm"]),
        "depth": text(hole["depth_mm"]),
        "strings": text(hole["strings"]),
        "string": " + ".join(map(str, hole["string_mm"] or ())),
        "step": text(hole["resolution_mm"]),
    }


ANSWER = """(holes) => holes.map((typed) => {
    const { wanted, problems } = inside.readHole(typed, inside.fits.most);
    const found = inside.ranked(wanted, inside.fits).map(({ part, verdict, reasons, seat }) => ({
        part: part.id, verdict, word: seat.fit.word, kind: seat.fit.kind,
        clearance_mm: seat.fit.clearance, least_mm: seat.fit.least, most_mm: seat.fit.most,
        room: seat.room.word, needs_mm: seat.room.needs, spare_mm: seat.room.spare,
        reach: seat.reach.word, proud_mm: seat.reach.proud, trim_mm: seat.reach.trim,
        reasons: reasons.map((each) => ({ ...each, text: inside.reasonText(each, inside.fits.sentences) })),
    }));
    return { wanted, problems, missing: inside.missingOf(wanted), found };
})"""


def answers(page: Page, holes: list[dict[str, str]]) -> Any:
    return page.evaluate(ANSWER, holes)


@pytest.mark.parametrize("case", CASES["cases"], ids=lambda case: case["name"])
def test_cases(inside: Page, case: dict[str, Any]) -> None:
    hand_over(inside, CASE_PARTS, THRESHOLDS)
    [answer] = answers(inside, [typed(case["hole"])])
    assert answer["problems"] == {}
    assert answer["missing"] == case["missing"]
    assert [line["part"] for line in answer["found"]] == [line["part"] for line in case["expect"]]
    for found, line in zip(answer["found"], case["expect"], strict=True):
        numbers = {key: value for key, value in line.items() if key != "reasons"}
        assert {key: found[key] for key in numbers} == pytest.approx(numbers, abs=1e-6)
        reasons = [(each["code"], each.get("what")) for each in line["reasons"]]
        assert [(each["code"], each["what"]) for each in found["reasons"]] == reasons
        amounts = [each.get("mm") for each in line["reasons"]]
        assert [each["mm"] for each in found["reasons"]] == pytest.approx(amounts, abs=1e-6)


@pytest.mark.parametrize("case", CASES["refused"], ids=lambda case: case["name"])
def test_refused(inside: Page, case: dict[str, Any]) -> None:
    hand_over(inside, CASE_PARTS, THRESHOLDS)
    [answer] = answers(inside, [typed(case["hole"])])
    assert set(answer["problems"]) == {FIELDS[case["names"]]}
    assert case["names"] in answer["problems"][FIELDS[case["names"]]]


def test_random_holes_have_the_same_answers_as_in_the_build(inside: Page) -> None:
    """Ids, verdicts, words and reasons are equal, and so are all numbers to the last bit that matters."""
    chance = Random(20261004)
    seen: set[str] = set()
    for _ in range(15):
        parts = [random_part(chance, at) for at in range(40)]
        thresholds = random_thresholds(chance)
        hand_over(inside, parts, thresholds)
        holes = [random_hole(chance, parts) for _ in range(RANDOM_CASES // 15)]
        for hole, answer in zip(holes, answers(inside, [typed(hole) for hole in holes]), strict=True):
            strings = (
                None if hole["string_mm"] is None else in_hole(tuple(hole["string_mm"]), hole["strings"])
            )
            wanted = Wanted(hole["bore_mm"], hole["resolution_mm"], hole["depth_mm"], strings)
            expected = [said(each) for each in ranked(wanted, parts, thresholds)]
            assert [keys_of(each) for each in answer["found"]] == [keys_of(each) for each in expected], hole
            for found, line in zip(answer["found"], expected, strict=True):
                assert amounts_of(found) == pytest.approx(amounts_of(line), abs=1e-12)
            assert answer["missing"] == list(wanted.missing)
            seen |= {reason["code"] for line in expected for reason in line["reasons"]}
            seen |= {line["verdict"] for line in expected}
    of_one_barrel = {code for code in SENTENCES if "pitch" not in code and "bumper" not in code}
    assert seen == of_one_barrel - {"spacing unrecorded", "lets go"} | {"serves", "may serve", "near miss"}


def keys_of(line: dict[str, Any]) -> dict[str, Any]:
    """What has to be equal: everything but the lengths."""
    keys = {key: line[key] for key in ("part", "verdict", "word", "kind", "room", "reach")}
    reasons = [(each["code"], each["what"], each["text"]) for each in line["reasons"]]
    return {**keys, "reasons": reasons}


def amounts_of(line: dict[str, Any]) -> list[Any]:
    keys = ("clearance_mm", "least_mm", "most_mm", "needs_mm", "spare_mm", "proud_mm", "trim_mm")
    return [*(line[key] for key in keys), *(each["mm"] for each in line["reasons"])]


def said(served: Served) -> dict[str, Any]:
    """A part that the build would name, under the names that the browser uses."""
    seat = served.seats[0]
    return {
        "part": served.part,
        "verdict": served.verdict,
        "word": seat.fit.word,
        "kind": seat.fit.kind,
        "room": seat.room.word,
        "reach": seat.reach.word,
        "clearance_mm": seat.fit.clearance_mm,
        "least_mm": seat.fit.least_mm,
        "most_mm": seat.fit.most_mm,
        "needs_mm": seat.room.needs_mm,
        "spare_mm": seat.room.spare_mm,
        "proud_mm": seat.reach.proud_mm,
        "trim_mm": seat.reach.trim_mm,
        "reasons": [{**asdict(reason), "text": str(reason)} for reason in served.reasons],
    }


def random_part(chance: Random, at: int) -> Part:
    """Sizes as they are written down, in steps; now and then one that nobody knows, or that is wrong."""
    steps = chance.choice((5, 1))

    def some(low: int, high: int, unknown: float = 0.1) -> float | None:
        return None if chance.random() < unknown else chance.randrange(low, high, steps) / 100

    length = some(500, 1500)
    return Part(
        f"part-{chance.randrange(1000)}-{at}",
        f"Part {at}",
        chance.choice(("single", "single", "wide", "twin-even", "strip")),
        barrel_mm=some(180, 320, 0.05),
        bore_mm=some(100, 190),
        length_mm=None if length is None else (length,) if chance.random() < 0.97 else (length, 12.0),
        flange_mm=some(250, 520),
        tolerance_mm=chance.choice((None, 0.02, 0.05, 0.1)),
        packs=chance.choice(((), (1,), (1, 25))),
        material=chance.choice((None, "PA12", "PEBA")),
        measured=Measured("a-handle", resolution_mm=chance.choice((None, 0.01, 0.02, 0.05, 0.1))),
    )


def random_hole(chance: Random, parts: list[Part]) -> dict[str, Any]:
    """A hole near to the parts, often exactly on a threshold."""

    def maybe(value: float) -> float | None:
        return None if chance.random() < 0.08 else value

    strings = chance.randint(0, 5)
    different = chance.randint(1, max(1, min(strings, 3)))
    return {
        "bore_mm": maybe(chance.randrange(170, 360) / 100),
        "resolution_mm": chance.choice((None, 0.01, 0.02, 0.05, 0.1, 0.25)),
        "depth_mm": maybe(chance.randrange(450, 1600, 5) / 100),
        "string_mm": (
            None
            if strings and chance.random() < 0.1
            else [chance.randrange(40, 140) / 100 for _ in range(different)]
        ),
        "strings": strings,
    }


def random_thresholds(chance: Random) -> Thresholds:
    """Those that are shipped, or those of a site that sets its own."""
    if chance.random() < 0.5:
        return DEFAULT
    return changed(
        {
            "drops_out_over_mm": chance.choice((0.2, 0.3)),
            "finger_over_mm": chance.choice((0.05, 0.12)),
            "threading_mm": chance.choice((0.05, 0.15)),
            "coverage": chance.choice((1.0, 2.0)),
            "near_length_mm": chance.choice((1.0, 3.0)),
            "proud_up_to_mm": chance.choice((1.0, 2.0)),
        }
    )


def test_numbers_are_written_as_in_the_build(inside: Page) -> None:
    chance = Random(3)
    values = [eighth / 8 for eighth in range(-80, 80)] + [chance.uniform(-20, 20) for _ in range(2_000)]
    values += [0.005, 0.015, 1.005, 99.995, 100.0, 0.0, 1e-9]
    assert inside.evaluate("(values) => values.map(inside.number)", values) == [
        number(value) for value in values
    ]
    reasons = [Reason(code, 2.125, "bore") for code in SENTENCES]
    hand_over(inside, CASE_PARTS, THRESHOLDS)
    told = inside.evaluate(
        "(all) => all.map((each) => inside.reasonText(each, inside.fits.sentences))",
        [asdict(reason) for reason in reasons],
    )
    assert told == [str(reason) for reason in reasons]


def test_where_nothing_serves_the_nearest_barrel_is_named_with_the_reason(inside: Page) -> None:
    hand_over(inside, CASE_PARTS, THRESHOLDS)
    wide = {"bore": 4.2, "depth": 9.4, "strings": [0.7], "step": 0.05}
    crowded = {"bore": 2.1, "depth": 9.4, "strings": [1.3, 1.3], "step": 0.05}
    near = """(wanted) => {
        const { part, reasons } = inside.nearest(wanted, inside.fits);
        return [part.id, reasons];
    }"""
    part, reasons = inside.evaluate(near, wide)
    assert (part, [each["code"] for each in reasons]) == ("k-stub", ["too loose", "too short", "lets go"])
    part, reasons = inside.evaluate(near, crowded)
    assert (part, reasons) == ("a-plain", [{"code": "no room", "mm": pytest.approx(1.3), "what": None}])
    assert inside.evaluate("inside.nearest({ bore: null, strings: null }, inside.fits)") is None
    hand_over(inside, [], THRESHOLDS)
    assert inside.evaluate("(wanted) => inside.nearest(wanted, inside.fits)", wide) is None


@pytest.mark.parametrize("data", ["null", "{}", "{ format: 2, parts: [] }", "{ format: 1 }", "'text'"])
def test_data_of_another_edition_are_refused(inside: Page, data: str) -> None:
    said = inside.evaluate(
        f"(() => {{ try {{ inside.readFits({data}); }} catch (e) {{ return e.message; }} }})()"
    )
    assert said == "The list of parts is of another edition than this page."
