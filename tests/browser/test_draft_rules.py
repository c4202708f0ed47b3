"""The drafting page says of a draft what `rimbook check` says of the same map, word for word."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from copy import deepcopy
from pathlib import Path
from random import Random
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.bench.check import RULES
from rimbook.book.load import MapFile, catalogue, load_book, map_paths
from rimbook.book.model import Catalogue
from rimbook.book.problems import Problem, nearest
from rimbook.book.reader import Document, read
from rimbook.book.rules.look_alike import folded, forms, mixed_word
from rimbook.book.rules.words import counted, listed, mm
from rimbook.book.text import shown
from rimbook.site.draft_data import draft_constants, draft_frames, draft_parts
from tests.book.rules.small_book import TODAY
from tests.browser.draft_cases import FILE as CASES_FILE
from tests.browser.draft_cases import Draft, case_of, in_json, judged, kept, problems_of, texts_of
from tests.browser.draft_mutations import mutated
from tests.browser.small_site import look_inside
from tests.watch import watched_page

CASES: list[dict[str, Any]] = json.loads(CASES_FILE.read_text("utf-8"))
FRAMES = Path(__file__).parents[2] / "frames"
MUTATIONS = 12
"""Of each map of the demo."""

OF_BOOKS = ("same-name", "no-future-dates", "mixed-scripts")
"""Rules of the whole book that a map can break."""

ORDERED = ("fitted", "bore_mm", "rim_depth_mm")


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "draft_number": ["general", "fixed", "mm", "readNumber"],
                "draft_names": ["folded", "forms", "mixedWord"],
                "draft_rules": ["judged", "problems"],
                "draft_text": ["nearest", "shown"],
                "draft_words": ["counted", "listed"],
            },
        )
        limits = json.loads(json.dumps(draft_constants()))
        page.evaluate("(limits) => { inside.limits = limits; }", limits)
        yield page
    assert faults == []


def in_pairs(draft: Draft) -> Draft:
    """The draft with lists of pairs where a plain object would lose the order of lines."""
    return {
        key: [list(pair) for pair in value.items()]
        if key in ORDERED and value and isinstance(value, dict)
        else value
        for key, value in draft.items()
    }


def asked(
    page: Page, drafts: Iterable[tuple[Draft, str]], parts: Catalogue, others: Mapping[str, MapFile]
) -> list[list[dict[str, Any]]]:
    """What the browser says of drafts, each with its slug."""
    frames = draft_frames({slug: file.frame for slug, file in others.items()})
    found = page.evaluate(
        "([drafts, parts, frames, today]) => drafts.map(([draft, slug]) =>"
        " inside.problems(draft, { parts, frames, today, slug, limits: inside.limits }))",
        [[[in_pairs(draft), slug] for draft, slug in drafts], draft_parts(parts), frames, TODAY.isoformat()],
    )
    assert isinstance(found, list)
    return found


def compare(found: list[dict[str, Any]], document: Document | None, wanted: Iterable[Problem]) -> None:
    """Word for word, and at the same places."""
    said = [
        {key: value for key, value in problem.items() if value is not None and key not in ("path", "isKey")}
        for problem in found
    ]
    assert said == [texts_of(problem) for problem in wanted]
    if document:
        marks = [document.mark(tuple(problem["path"]), key=problem["isKey"]) for problem in found]
        assert marks == [(problem.line, problem.column) for problem in wanted]


@pytest.mark.parametrize("written", CASES, ids=[case["name"] for case in CASES])
def test_the_build_says_what_was_kept(written: dict[str, Any]) -> None:
    """If it is meant to say something else, the head of `draft_cases.py` tells what to do."""
    assert kept(case_of(written))["problems"] == written["problems"]


@pytest.mark.parametrize("written", CASES, ids=[case["name"] for case in CASES])
def test_the_browser_says_the_same(inside: Page, written: dict[str, Any]) -> None:
    case = case_of(written)
    parts = catalogue((case.parts_file,))
    (found,) = asked(inside, [(case.draft, case.slug)], parts, case.maps)
    compare(found, *problems_of(case))


def test_every_rule_that_a_draft_can_break_is_broken() -> None:
    told = {problem["rule"] for case in CASES for problem in case["problems"]}
    of_maps = {rule.name for rule in RULES if rule.scope == "map"}
    assert told == {"readable", "shape", "meaning", *of_maps, *OF_BOOKS}


BOOK = load_book(FRAMES)


@pytest.mark.parametrize("path", map_paths(FRAMES), ids=lambda path: path.stem)
def test_maps_of_the_demo_and_changed_ones(inside: Page, path: Path) -> None:
    slug = path.stem
    whole: Draft = in_json(read(path.read_text("utf-8"), path.name).value)
    parts = catalogue(BOOK.parts_files)
    others = {other: file for other, file in BOOK.maps.items() if other < slug}
    draw = Random(slug)
    drafts = [whole, *(in_json(mutated(whole, draw, list(parts))) for _ in range(MUTATIONS))]
    found = asked(inside, [(draft, slug) for draft in drafts], parts, others)
    for draft, said in zip(drafts, found, strict=True):
        compare(said, *judged(draft, slug, BOOK.parts_files, others))


@pytest.mark.parametrize(
    "changes",
    [
        {"bore_mm": {"default": 2.1, "2.7": [1] * 900, "3": [2] * 101}},
        {"rim_depth_mm": {"default": 9.4, "8": ["nine"] * 300}},
        {"fitted": {f"bore {index / 10}": "unknown" for index in range(1, 1_101)}},
        {"walk": "m0 " * 300, "left": {"walk": "c0 " * 300}},
        {"note": "x\u200b", "aliases": ["\U000e0041"] * 150},
        {
            "aliases": [1] * 20,
            "strips": [{"name": index} for index in range(40)],
            "confirmed": [{"x": 1}] * 100,
        },
    ],
    ids=["named", "faults", "lines", "walks", "hidden", "shapes"],
)
def test_a_wall_of_problems_ends_alike(inside: Page, changes: Draft) -> None:
    case = case_of(CASES[0])
    draft = {**case.draft, **changes}
    (found,) = asked(inside, [(draft, case.slug)], catalogue((case.parts_file,)), {})
    compare(found, *judged(draft, case.slug, (case.parts_file,), {}))


def test_a_frame_can_be_drawn_before_it_has_a_name(inside: Page) -> None:
    draft = deepcopy(case_of(CASES[0]).draft)
    del draft["name"], draft["maker"]
    found = inside.evaluate(
        "(draft) => inside.judged(draft, { parts: {}, frames: {}, today: '', limits: inside.limits })", draft
    )
    assert [problem["message"] for problem in found["problems"]] == [
        "The key “maker” is missing.",
        "The key “name” is missing.",
    ]
    assert len(found["frame"]["holes"]) == 2 * len(draft["walk"].split())


def test_near_words_are_those_of_the_build(inside: Page) -> None:
    draw = Random(5)
    letters = "abcdefgh-12"
    choices = ["".join(draw.choices(letters, k=draw.randint(1, 12))) for _ in range(60)]
    words = ["".join(draw.choices(letters, k=draw.randint(0, 12))) for _ in range(150)]
    words += [choice[1:] + choice[:1] for choice in choices] + ["ab" * 150, "abcd" * 60 + "e", "ä☃😀"]
    choices += ["ab" * 110, "abcdefghij" * 22, "ä☃", ""]
    found = inside.evaluate(
        "([words, choices]) => words.map((word) => inside.nearest(word, choices))", [words, choices]
    )
    assert found == [nearest(word, choices) for word in words]
    assert sum(near is not None for near in found) > 50


def test_every_character_is_shown_alike(inside: Page) -> None:
    numbers = (*range(0x10000), *range(0xDFFF0, 0xE0100))
    points = [point for point in numbers if not 0xD800 <= point < 0xE000]
    found = inside.evaluate(
        "(points) => points.map((point) => inside.shown(String.fromCodePoint(point)))", points
    )
    assert found == [shown(chr(point)) for point in points]
    long = ["x" * 60, "x" * 61, "😀" * 61, "\u200b" * 20]
    assert inside.evaluate("(texts) => texts.map(inside.shown)", long) == [shown(text) for text in long]


def test_numbers_are_written_alike(inside: Page) -> None:
    draw = Random(3)
    values = [draw.uniform(-1, 1) * 10 ** draw.randint(-6, 3) for _ in range(400)]
    values += [index / 16 for index in range(-40, 200)] + [0.0, -0.0, 999999.5, 123456.5, 1000.125, 1e-5, 2e7]
    found = inside.evaluate(
        "(values) => values.map((value) => [inside.general(value), inside.mm(value), inside.fixed(value, 0),"
        " inside.fixed(value, 1)])",
        values,
    )
    for value, said in zip(values, found, strict=True):
        assert said == [f"{value:g}", mm(value), f"{value:.0f}", f"{value:.1f}"]


@pytest.mark.parametrize(
    ("text", "value"),
    [
        (" 2.70 ", 2.7),
        ("1e1", 10),
        (".5", 0.5),
        ("1_0", 10),
        ("-3", -3),
        ("0x10", None),
        ("", None),
        ("a", None),
    ],
)
def test_numbers_are_read_as_the_build_reads_them(inside: Page, text: str, value: float | None) -> None:
    found = inside.evaluate("(text) => String(inside.readNumber(text))", text)
    assert found == ("NaN" if value is None else f"{value:g}")


@pytest.mark.parametrize(
    "name",
    [
        "Lapwing 2O",
        "LAPWING-20",
        "Łódka & Søn",
        "Straße ẞ",
        "ΟΔΟΣ ς",
        "ﬁnch ½ ²",
        "I|l 1O",
        "х-Ray 7l",
        "İı",
        "ΝΥΗ",
        "Lарwing Ν2O",
        "ⲁbc",
        "µm",
        "é\u0301",
    ],
)
def test_look_alike_names_fold_alike(inside: Page, name: str) -> None:
    found = inside.evaluate(
        "(name) => [inside.folded(name, inside.limits.look_alike), [...inside.forms(name, inside.limits)],"
        " inside.mixedWord(name, inside.limits.scripts)]",
        name,
    )
    mixed = mixed_word(name)
    assert found == [
        folded(name),
        list(forms(name)),
        {"word": mixed[0], "scripts": list(mixed[1])} if mixed else None,
    ]


def test_counts_and_lists_are_worded_alike(inside: Page) -> None:
    items = [f"m{index}" for index in range(14)]
    for count in range(14):
        assert inside.evaluate("(items) => inside.listed(items)", items[:count]) == listed(items[:count])
        assert inside.evaluate("(items) => inside.listed(items, 12)", items[:count]) == listed(
            items[:count], 12
        )
        found = inside.evaluate(
            "(count) => [inside.counted(count, 'hole'), inside.counted(count, 'pass')]", count
        )
        assert found == [counted(count, "hole"), counted(count, "pass")]
