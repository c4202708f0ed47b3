"""The finder's own thinking, without a page: folding, understanding, near words, the index, the search."""

from __future__ import annotations

import json
import random
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page

from rimbook.site.finder_index import FRAMES_FILE, PARTS_FILE, FinderFrame, finder_index
from tests.browser.small_site import FRAMES, MOVED, PARTS, PLACES, frame_record, handed_over, look_inside
from tests.watch import watched_page

ODD = (
    "(", ")*+?", "[a-", "\\", "|", "$^", "\u202e", "مضرب", "🏸", "\x00", "\n", "shared", "9,13", "holes",
    "70-", "plover", "2.7", "x", "'", '"><img src=x>', "__proto__", "constructor", "%", "&q=", "ﷺ",
    "e\u0301" * 20,
)  # fmt: skip
NO_FILTERS = {"sport": "", "maker": "", "bore": "", "part": "", "pattern": "", "holes": "", "shared": ""}


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "words": ["fold", "key", "counted", "listed"],
                "ask": ["understand", "range", "places"],
                "near": ["beginsNear", "nearWords"],
                "index_data": ["unpackFrames", "withParts"],
                "search": ["search"],
                "address": ["readSearch", "writeSearch", "holdsSearch"],
            },
        )
        load(page, FRAMES)
        yield page
    assert faults == []


def load(page: Page, frames: tuple[FinderFrame, ...]) -> None:
    """Let the page search these frames with the parts and places of the small site."""
    files = finder_index(frames, PARTS, PLACES, MOVED)
    page.evaluate(
        f"""() => {{
          const frames = inside.unpackFrames({handed_over(files[FRAMES_FILE])});
          globalThis.index = inside.withParts(frames, {handed_over(files[PARTS_FILE])});
          globalThis.look = (typed, filters) => {{
            const ask = inside.understand(typed, index.otherNames);
            const {{ hits, bent }} = inside.search(index, ask, filters);
            const said = (hit) => (hit.kind ? `${{hit.kind}}: ${{hit.title}}` : index.slug(hit));
            return {{ hits: hits.map(said), bent }};
          }};
        }}"""
    )


def look(page: Page, typed: str, **filters: str) -> dict[str, list[str]]:
    """What is found, and what the words were bent to."""
    found: dict[str, list[str]] = page.evaluate(
        "([typed, filters]) => look(typed, filters)", [typed, {**NO_FILTERS, **filters}]
    )
    return found


def find(page: Page, typed: str, **filters: str) -> list[str]:
    """What is found, best first."""
    return look(page, typed, **filters)["hits"]


@pytest.mark.parametrize(
    ("text", "folded"),
    [
        ("  Plover—76 ", "plover 76"),
        ("Élan Ø/S+", "elan o s"),
        ("ŁÓDKA & Søn", "lodka son"),
        ("STRASSE Straße", "strasse strasse"),
        ("22×21", "22x21"),
        ("2,70 mm.", "2.7 mm"),
        ("2.0 and 10.50", "2 and 10.5"),
        ("barrel-27-short", "barrel 27 short"),
        ("１６ｘ１９", "16x19"),
        ("Miller's", "millers"),
        ("v1.2.30", "v1.2.30"),
        ("...", ""),
        ("🏸 \ud83c", ""),
        ("ΣΊΣΥΦΟΣ", "σισυφοσ"),
        ("İstanbul", "istanbul"),
        ("مضرب", "مضرب"),
    ],
)
def test_text_is_folded(inside: Page, text: str, folded: str) -> None:
    assert inside.evaluate("(text) => inside.fold(text)", text) == folded


def test_folding_twice_changes_nothing(inside: Page) -> None:
    chance = random.Random(3)
    texts = [
        "".join(chance.choice("aÉß×.,-9 0'|ŉﬁ٣²½") for _ in range(chance.randint(0, 12))) for _ in range(400)
    ]
    assert (
        inside.evaluate(
            "(texts) => texts.map(inside.fold).filter((text) => inside.fold(text) !== text)", texts
        )
        == []
    )


@pytest.mark.parametrize(
    ("typed", "words", "holes", "shared"),
    [
        ("76 holes, shared at 9 and 13, which frames?", [], [76, 76], [9, 13]),
        ("plover 76", ["plover", "76"], None, []),
        ("shared 9 13 plover", ["plover"], None, [9, 13]),
        ("shared holes at R9, L13 & 9", [], None, [9, 13]),
        ("shared at 9,13 76 holes", [], [76, 76], [9, 13]),
        ("70-80 holes tennis", ["tennis"], [70, 80], []),
        ("70 – 80holes", [], [70, 80], []),
        ("shared", ["shared"], None, []),
        ("a shared hole", ["shared"], None, []),
        ("holes", ["holes"], None, []),
        ("shared at 9–11", [], None, [9, 10, 11]),
        ("shared 9-11", [], None, [9, 10, 11]),
        ("shared at 9–11, 27, 30", [], None, [9, 10, 11, 27, 30]),
        ("shared at 9 to 11 and R27 – R28", [], None, [9, 10, 11, 27, 28]),
        ("shared at 11-9 plover", ["plover"], None, [9, 10, 11]),
        ("shared at 9–11, 76 holes", [], [76, 76], [9, 10, 11]),
        ("number of holes 76", [], [76, 76], []),
        ("plover, number of holes: 76", ["plover"], [76, 76], []),
        ("holes 70–80", [], [70, 80], []),
        ("holes 70 to 80 tennis", ["tennis"], [70, 80], []),
        ("80-70 holes", [], [70, 80], []),
        ("22 mains", ["22x"], None, []),
        ("22 mains 21 crosses", ["22x21"], None, []),
        ("22 mains, 21 crosses, 76 holes", ["22x21"], [76, 76], []),
        ("22/21", ["22 21", "22x21"], None, []),
        ("22-21", ["22 21", "22x21"], None, []),
        ("2·7", ["2.7"], None, []),
        ("bore ø2.7 mm", ["2.7"], None, []),
        ("Ø 2,7", ["2.7"], None, []),
        ("Søn 2", ["son", "2"], None, []),
        ("crosses", ["crosses", "cross"], None, []),
        ("16 x 19", ["16x19"], None, []),
        ("16 by 19", ["16x19"], None, []),
        ("22×21", ["22x21"], None, []),
        ("2,7 mm", ["2.7"], None, []),
        ("U-shaped", ["u shaped", "twin"], None, []),
        ("u shaped grommet", ["u shaped grommet", "twin"], None, []),
        ("which frame takes the double", ["double", "wide"], None, []),
        ("the frame", ["the", "frame"], None, []),
    ],
)  # fmt: skip
def test_what_is_typed_is_understood(
    inside: Page, typed: str, words: list[str], holes: list[int] | None, shared: list[int]
) -> None:
    ask = inside.evaluate("(typed) => inside.understand(typed, index.otherNames)", typed)
    strong = [way for term in ask["terms"] if not term["weak"] for way in term["ways"]]
    if words == ["shared"] and "hole" in typed:
        strong = strong[:1]
    assert (strong, ask["shared"]) == (words, shared)
    assert (ask["holes"] and [ask["holes"]["least"], ask["holes"]["most"]]) == holes


@pytest.mark.parametrize(
    ("text", "ends"),
    [("76", [76, 76]), ("70-80", [70, 80]), ("80-70", [70, 80]), (" 70 – 80 ", [70, 80]),
     ("-80", [0, 80]), ("0", [0, 0]),
     ("", None), ("-", None), ("x", None), ("70-80-90", None), ("12345", None), ("7 6", None)],
)  # fmt: skip
def test_a_range_of_holes(inside: Page, text: str, ends: list[int] | None) -> None:
    found = inside.evaluate("(text) => inside.range(text)", text)
    assert (found and [found["least"], found["most"]]) == ends


def test_an_open_range_has_no_upper_end(inside: Page) -> None:
    assert inside.evaluate("() => inside.range('70-').most === Infinity")


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("9, 13", [9, 13]),
        ("13 9", [9, 13]),
        ("R9, 13 and L9", [9, 13]),
        ("9–11", [9, 10, 11]),
        ("9-11", [9, 10, 11]),
        ("9 — 11", [9, 10, 11]),
        ("9–11, 27, 30", [9, 10, 11, 27, 30]),
        ("R9–R11", [9, 10, 11]),
        ("9 to 11", [9, 10, 11]),
        ("11-9", [9, 10, 11]),
        ("0-2", [1, 2]),
        ("998-99999999999999999999", [998, 999]),
        ("-", []),
    ],
)
def test_places_are_read_as_the_finder_says_them(inside: Page, text: str, found: list[int]) -> None:
    assert inside.evaluate("(text) => inside.places(text)", text) == found


def test_a_near_word_is_one_slip_away(inside: Page) -> None:
    """Against the plain definition: some beginning of the word is one edit from what was typed."""
    chance = random.Random(11)
    pairs = [
        [
            "".join(chance.choice("abc") for _ in range(length))
            for length in (chance.randint(2, 5), chance.randint(1, 7))
        ]
        for _ in range(1500)
    ]
    found = inside.evaluate("(pairs) => pairs.map(([typed, word]) => inside.beginsNear(typed, word))", pairs)
    for (typed, word), near in zip(pairs, found, strict=True):
        assert near == any(word.startswith(edited) for edited in _one_edit("abc", typed)), (typed, word)


def _one_edit(letters: str, word: str) -> set[str]:
    cuts = [(word[:at], word[at:]) for at in range(len(word) + 1)]
    return (
        {word}
        | {a + b[1:] for a, b in cuts if b}
        | {a + b[1] + b[0] + b[2:] for a, b in cuts if len(b) > 1}
        | {a + letter + b[1:] for a, b in cuts if b for letter in letters}
        | {a + letter + b for a, b in cuts for letter in letters}
    )


def test_numbers_are_never_bent(inside: Page) -> None:
    assert inside.evaluate("() => inside.nearWords('barrel28', ['barrel27'])") == []
    assert inside.evaluate("() => inside.nearWords('2700', ['2701'])") == []


def test_the_index_gives_back_what_went_in(inside: Page) -> None:
    chance = random.Random(5)
    names = [
        "Plover 76",
        "  Two\twords\n",
        "Élan",
        "ß",
        "—",
        "a--b",
        "A.B",
        "مضرب",
        "🎾",
        '"<script>',
        "x" * 300,
    ]
    frames = tuple(
        frame_record(
            f"slug-{at}", chance.choice(names), year=chance.choice((None, 2020)), holes=chance.randint(1, 99),
            bores=tuple(chance.sample(["2.1", "2.7", "10"], chance.randint(0, 3))),
            shared=tuple(chance.sample(range(1, 40), chance.randint(0, 4))),
            parts=tuple(chance.sample([part.id for part in PARTS], chance.randint(0, 3))),
        )
        for at in range(200)
    )  # fmt: skip
    load(inside, frames)
    got = inside.evaluate(
        """() => index.names.map((name, frame) => ({
          slug: index.slug(frame), name, path: index.path(frame), holes: index.columns.holes[frame],
          year: index.columns.years[frame], bores: index.boreSets[index.columns.boreSet[frame]],
          shared: index.columns.sharedSets[index.columns.sharedSet[frame]],
          parts: index.parts.sets[index.parts.setOf[frame]].map((part) => index.parts.ids[part]),
        }))"""
    )
    load(inside, FRAMES)
    assert sorted(got, key=lambda one: str(one["slug"])) == sorted(
        (_expected(frame) for frame in frames), key=lambda one: str(one["slug"])
    )


def _expected(frame: FinderFrame) -> dict[str, Any]:
    return {
        "slug": frame.slug, "name": " ".join(frame.name.split()), "path": f"frames/{frame.slug}/index.html",
        "holes": frame.holes, "year": frame.year or 0, "bores": sorted(frame.bores, key=float),
        "shared": sorted(frame.shared), "parts": sorted(frame.parts),
    }  # fmt: skip


def test_filters_agree_with_a_plain_reading(inside: Page) -> None:
    chance = random.Random(8)
    frames = tuple(
        frame_record(
            f"frame-{at}", f"Frame {at}", sport=chance.choice(("squash", "tennis")),
            maker=chance.choice(("A", "B")), mains=chance.choice((14, 16)), holes=chance.randint(58, 64),
            bores=tuple(chance.sample(["2.1", "2.7", "10"], chance.randint(0, 3))),
            shared=tuple(chance.sample(range(8, 14), chance.randint(0, 4))),
            parts=tuple(chance.sample([part.id for part in PARTS], chance.randint(0, 3))),
        )
        for at in range(120)
    )  # fmt: skip
    load(inside, frames)
    for _ in range(150):
        places = chance.sample(range(8, 14), chance.randint(0, 2))
        least = chance.randint(57, 62)
        wanted = {
            "sport": chance.choice(("", "squash")), "maker": chance.choice(("", "A", "B")),
            "bore": chance.choice(("", "", "2.7")), "part": chance.choice(("", "barrel-27-short")),
            "pattern": chance.choice(("", "14x18")), "shared": " ".join(map(str, places)),
            "holes": chance.choice(("", str(least), f"{least}-{least + 2}")),
        }  # fmt: skip
        most = least + 2 if "-" in wanted["holes"] else least
        expected = {
            frame.slug
            for frame in frames
            if wanted["sport"] in ("", frame.sport)
            and wanted["maker"] in ("", frame.maker)
            and (not wanted["bore"] or wanted["bore"] in frame.bores)
            and (not wanted["part"] or wanted["part"] in frame.parts)
            and wanted["pattern"] in ("", f"{frame.mains}x{frame.crosses}")
            and set(places) <= set(frame.shared)
            and (not wanted["holes"] or least <= frame.holes <= most)
        }
        assert set(find(inside, "", **wanted)) == expected
    load(inside, FRAMES)


@pytest.mark.parametrize(
    ("typed", "first"),
    [
        ("plover 76", "plover-76"),
        ("PLOVER-78", "plover-78"),
        ("plover seventy-six", "plover-76"),
        ("elan", "elan-os"),
        ("lodka", "elan-os"),
        ("saltmarsh works", "maker: Saltmarsh Works"),
        ("2.7", "bore: Bore 2.7 mm"),
        ("2,70 mm", "bore: Bore 2.7 mm"),
        ("barrel-27-short", "part: Short barrel 2.7"),
        ("short barrel 2.7", "part: Short barrel 2.7"),
        ("how to regrommet", "page: How to regrommet"),
        ("trim", "page: Trim with care"),
        ("U-shaped", "word: Twin"),
        ("double", "word: Wide"),
        ("16 x 19", "sluice-66"),
        ("22×21", "plover-76"),
        ("22/21", "plover-76"),
        ("22-21", "plover-76"),
        ("14 mains 18 crosses", "treadle-60"),
        ("2·7", "bore: Bore 2.7 mm"),
        ("ø2.7", "bore: Bore 2.7 mm"),
        ("crosses", "word: Cross"),
        ("cross", "word: Cross"),
        ("plover-old", "plover-76"),
        ("old-barrel-27", "part: Short barrel 2.7"),
        ("2024", "plover-76"),
    ],
)
def test_the_best_comes_first(inside: Page, typed: str, first: str) -> None:
    assert find(inside, typed)[0] == first


@pytest.mark.parametrize(
    ("typed", "found"),
    [
        ("saltmarsh 78", ["plover-78"]),
        ("76 holes shared at 9 and 13", ["plover-76"]),
        ("shared at 9 and 13", ["elan-os", "plover-76"]),
        ("badminton barrel-27-short", ["plover-76", "plover-78"]),
        ("60", ["treadle-60"]),
        ("old-barrel-27", ["part: Short barrel 2.7", "plover-76", "plover-78", "sluice-66"]),
        ("22 mains", ["plover-76", "plover-78"]),
        ("number of holes 76", ["plover-76"]),
        ("shared at 9–10", ["plover-76"]),
        ("u-shaped", ["word: Twin", "part: Even twin 2.9"]),
        ("plover 77", []),
        ("🏸", []),
        ("\ud800", []),
        ("|", []),
        (".*", []),
    ],
)
def test_all_that_fits_is_found_and_nothing_else(inside: Page, typed: str, found: list[str]) -> None:
    assert sorted(find(inside, typed)) == sorted(found)


def test_a_part_leads_to_itself_and_to_the_frames_that_take_it(inside: Page) -> None:
    assert find(inside, "barrel-27-short") == [
        "part: Short barrel 2.7",
        "plover-76",
        "plover-78",
        "sluice-66",
    ]


@pytest.mark.parametrize(
    ("typed", "first", "bent"),
    [
        ("plovr", "plover-76", ["plover"]),
        ("lpover 78", "plover-78", ["plover"]),
        ("treaddle", "treadle-60", ["treadle"]),
        ("saltmarch works", "maker: Saltmarsh Works", ["saltmarsh"]),
        ("plover76", "plover-76", ["plover 76"]),
    ],
)
def test_a_slip_is_forgiven_where_nothing_else_fits(
    inside: Page, typed: str, first: str, bent: list[str]
) -> None:
    answer = look(inside, typed)
    assert (answer["hits"][0], answer["bent"]) == (first, bent)


@pytest.mark.parametrize("typed", ["plovr 77", "plover77", "30 mains"])
def test_a_near_word_that_finds_nothing_is_not_named(inside: Page, typed: str) -> None:
    assert look(inside, typed) == {"hits": [], "bent": []}


@pytest.mark.parametrize("part", ["barrel-27-short", "old-barrel-27"])
def test_an_old_id_filters_as_the_new_one(inside: Page, part: str) -> None:
    assert find(inside, "", part=part) == ["plover-76", "plover-78", "sluice-66"]


def test_what_fits_exactly_is_not_bent(inside: Page) -> None:
    assert look(inside, "plover")["bent"] == []


def test_any_text_gets_an_answer(inside: Page) -> None:
    chance = random.Random(1)
    texts = [" ".join(chance.choices(ODD, k=chance.randint(1, 9))) for _ in range(500)]
    texts += ["a" * 10_000, "shared " + "9 " * 5_000, "ﷺ" * 10_000, "\u0301" * 10_000, "1-" * 5_000]
    slowest = inside.evaluate(
        """([texts, none]) => {
          const half = String.fromCharCode(0xd83c);
          let slowest = 0;
          for (const text of [...texts, half, `plover ${half}`, "x".repeat(9_999) + half]) {
            const start = performance.now();
            look(text, none);
            look(text, { ...none, holes: text, shared: text, part: text });
            inside.readSearch(inside.writeSearch({ typed: text, filters: { ...none, maker: text } }));
            slowest = Math.max(slowest, performance.now() - start);
          }
          return slowest;
        }""",
        [texts, NO_FILTERS],
    )
    assert slowest < 500


def test_the_address_keeps_a_search(inside: Page) -> None:
    chance = random.Random(2)
    texts = [
        "".join(chance.choice("a É&=#+%/?\u202e🏸,;\"'<") for _ in range(chance.randint(1, 30)))
        for _ in range(200)
    ]
    changed = inside.evaluate(
        """([texts, none]) => texts.filter((text) => {
          const filters = { ...none, maker: text.trim(), holes: "70-80" };
          const read = inside.readSearch(inside.writeSearch({ typed: text, filters }));
          const same = Object.keys(filters).every((name) => read.filters[name] === filters[name]);
          return !same || (text.trim() && read.typed !== text);
        })""",
        [texts, NO_FILTERS],
    )
    assert changed == []


def test_unknown_keys_of_an_address_are_passed_over(inside: Page) -> None:
    read = inside.evaluate(
        "() => inside.readSearch('#q=plover&colour=red&sport=squash&sport=tennis&toString=1&__proto__=2')"
    )
    assert read == {"typed": "plover", "filters": {**NO_FILTERS, "sport": "squash"}}
    assert inside.evaluate("() => ['#content', '#R12', '#q', '', '#maker=x'].map(inside.holdsSearch)") == [
        False,
        False,
        True,
        True,
        True,
    ]


def test_an_index_of_another_edition_is_refused(inside: Page) -> None:
    files = finder_index(FRAMES[:2], PARTS, PLACES)
    other = json.loads(handed_over(files[PARTS_FILE]))
    refused = inside.evaluate(
        """(other) => [() => inside.unpackFrames({ format: 99 }), () => inside.unpackFrames(null),
          () => inside.withParts(index, other), () => inside.withParts(index, undefined)].map((act) => {
            try { act(); return "taken"; } catch (error) { return error.message; }
          })""",
        other,
    )
    assert (
        refused
        == ["The list of frames is of another edition."] * 2
        + ["The list of parts is of another edition."] * 2
    )


def test_numbers_and_lists_in_words(inside: Page) -> None:
    counts = inside.evaluate("() => [0, 1, 999, 1000, 1234567].map((count) => inside.counted(count, 'hole'))")
    assert counts == ["0 holes", "1 hole", "999 holes", "1,000 holes", "1,234,567 holes"]
    lists = inside.evaluate("() => [[], ['a'], ['a', 'b'], ['a', 'b', 'c']].map(inside.listed)")
    assert lists == ["", "a", "a and b", "a, b and c"]
