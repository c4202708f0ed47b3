"""What is typed on the page of a shelf: read, kept, written as a file and a club's file, and read again."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator
from datetime import date
from typing import Any

import pytest
from playwright.sync_api import Browser, Page
from ruamel.yaml import YAML

from rimbook.site.my_shelf_page import my_shelf_data
from tests.browser.small_site import look_inside
from tests.watch import watched_page

LIMITS = my_shelf_data()["limits"]
KINDS = list(my_shelf_data()["shares"])
WEEKS = my_shelf_data()["rules"]["weeksOfYear"]
EMPTY: dict[str, Any] = {
    "frames": [],
    "terms": {"lead": None, "review": None, "service": None, "shares": {}},
    "used": [],
    "counted": False,
    "club": "",
}
FULL: dict[str, Any] = {
    "frames": [
        {"slug": "plover-76", "name": "Plover 76", "count": 9, "restrings": 54},
        {"slug": "1999", "name": '=1+1, "x"\nnext', "count": None, "restrings": 0},
        {"slug": "no", "name": "<b>No</b>", "count": 0, "restrings": None},
    ],
    "terms": {"lead": 3, "review": 0, "service": 0.975, "shares": {"single": 0.35, "strip": 0}},
    "used": [{"part": "plover-crown", "count": 20, "years": 26 / WEEKS}],
    "counted": True,
    "club": "Weir Lane: rackets #1",
}
OPEN = "([limits, kinds]) => inside.openShelf(limits, kinds)"
ADD = "([text, shelf, limits, kinds]) => inside.addShelf(text, shelf, limits, kinds)"


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(
            page,
            {
                "device": ["remember"],
                "my_shelf_read": [
                    "readOptional",
                    "readWeeks",
                    "readShare",
                    "readService",
                    "typedShare",
                    "typedService",
                    "asTyped",
                    "percentOf",
                ],
                "my_shelf_state": ["openShelf", "keepShelf", "withFrames", "withFrame"],
                "my_shelf_file": ["writeShelf", "addShelf"],
                "my_shelf_club": ["clubFile", "clubSlug"],
                "shelf_terms": ["takeRules"],
            },
        )
        page.evaluate("(rules) => inside.takeRules(rules)", my_shelf_data()["rules"])
        yield page
    assert faults == []


def added(page: Page, text: str, shelf: Any = EMPTY) -> Any:
    return page.evaluate(ADD, [text, shelf, LIMITS, KINDS])


def club_file(page: Page, shelf: Any, stock: dict[str, int], gone: list[str] | None = None) -> str:
    """The club's file where the book has all frames and parts but those that are `gone`."""
    text: str = page.evaluate(
        """([shelf, stock, gone]) => {
          const slugs = shelf.frames.map(({ slug }) => slug).filter((slug) => !gone.includes(slug));
          const frames = new Map(slugs.map((slug, at) => [slug, at]));
          const hasPart = (part) => !gone.includes(part);
          return inside.clubFile(shelf, stock, { index: {}, frames, hasPart }, "2026-10-04");
        }""",
        [shelf, [{"part": part, "count": count} for part, count in stock.items()], gone or []],
    )
    return text


@pytest.mark.parametrize(
    ("how", "typed", "value"),
    [
        ("readWeeks", "3", 3),
        ("readWeeks", " 1,5 weeks ", 1.5),
        ("readWeeks", "0", 0),
        ("readWeeks", "", None),
        ("readShare", "35 %", 0.35),
        ("readShare", "0", 0),
        ("readShare", "100", 1),
        ("readShare", "2.5", 0.025),
        ("readService", "99.9 %", 0.999),
        ("readService", "", None),
    ],
)
def test_what_is_typed_is_read(inside: Page, how: str, typed: str, value: float | None) -> None:
    found = inside.evaluate(f"([typed, most]) => inside.{how}(typed, most)", [typed, LIMITS["weeks"]])
    assert found == {"value": value}


@pytest.mark.parametrize(
    ("how", "typed", "says"),
    [
        ("readWeeks", "-1", "expected a number of weeks from 0 to 520"),
        ("readWeeks", "521", "from 0 to 520"),
        ("readWeeks", "soon", "“soon” will not do"),
        ("readWeeks", "1e2", "will not do"),
        ("readWeeks", "Infinity", "will not do"),
        ("readWeeks", "1,250", "can be read in two ways: write 1250 or 1.25"),
        ("readShare", "101", "from 0 to 100"),
        ("readShare", "-1", "from 0 to 100"),
        ("readShare", "half", "from 0 to 100"),
        ("readService", "100", "above 0 and below 100"),
        ("readService", "0", "above 0 and below 100"),
        ("readService", "100 %", "above 0 and below 100"),
        ("readService", "nan", "above 0 and below 100"),
    ],
)
def test_what_makes_no_sense_is_told_with_what_is_expected(
    inside: Page, how: str, typed: str, says: str
) -> None:
    found = inside.evaluate(f"([typed, most]) => inside.{how}(typed, most)", [typed, LIMITS["weeks"]])
    assert list(found) == ["problem"]
    assert says in found["problem"]


@pytest.mark.parametrize(
    ("how", "typed", "says"),
    [
        (
            "typedService",
            "0.95",
            "“0.95” can be read in two ways: write 95 for 95 %, or 0.95 % with the sign.",
        ),
        ("typedService", "0,9", "“0,9” can be read in two ways: write 90 for 90 %, or 0.9 % with the sign."),
        (
            "typedService",
            "1",
            "“1” can be read in two ways: write per cent, such as 95 for 95 %, or 1 % with the sign.",
        ),
        ("typedShare", "0.35", "“0.35” can be read in two ways: write 35 for 35 %, or 0.35 % with the sign."),
        (
            "typedShare",
            " 0.005 ",
            "“ 0.005 ” can be read in two ways: write 0.5 for 0.5 %, or 0.005 % with the sign.",
        ),
    ],
)
def test_a_share_typed_as_in_a_club_file_is_asked_about(
    inside: Page, how: str, typed: str, says: str
) -> None:
    """A club's file and the command write 0.95 for 95 %: here it would be less than one per cent."""
    found = inside.evaluate(f"(typed) => inside.{how}(typed)", typed)
    assert found == {"problem": says.replace(" %", "\u00a0%")}


@pytest.mark.parametrize(
    ("how", "typed", "value"),
    [
        ("typedService", "0.5 %", 0.005),
        ("typedService", "1%", 0.01),
        ("typedService", "1.5", 0.015),
        ("typedService", "", None),
        ("typedShare", "0,5％", 0.005),
        ("typedShare", "1", 0.01),
        ("typedShare", "0", 0),
        ("typedShare", "100", 1),
    ],
)
def test_with_a_sign_or_above_one_it_is_taken_as_written(
    inside: Page, how: str, typed: str, value: float | None
) -> None:
    assert inside.evaluate(f"(typed) => inside.{how}(typed)", typed) == {"value": value}


@pytest.mark.parametrize("how", ["typedShare", "typedService"])
def test_a_field_shows_what_could_be_typed_into_it(inside: Page, how: str) -> None:
    shares = [0.00005, 0.005, 0.0095, 0.01, 0.015, 0.35, 0.999]
    shown = inside.evaluate(f"(shares) => shares.map((each) => inside.asTyped(each, inside.{how}))", shares)
    again = inside.evaluate(f"(shown) => shown.map((each) => inside.{how}(each).value)", shown)
    assert again == shares
    assert shown[1:3] == ["0.5 %", "0.95 %"]
    assert shown[-2:] == ["35", "99.9"]


def test_a_file_says_per_cent_by_its_own_words(inside: Page) -> None:
    """What the page has saved is taken in again, however small."""
    text = "kind,name,value\nterm,service_percent,0.95\nshare_percent,single,0.5\n"
    found = added(inside, text)
    assert found["faults"] == []
    assert found["shelf"]["terms"] == {**EMPTY["terms"], "service": 0.0095, "shares": {"single": 0.005}}


def test_every_share_comes_back_as_it_was_typed(inside: Page) -> None:
    typed = [f"{whole}.{part}".rstrip("0").rstrip(".") for whole in range(1, 99) for part in ("0", "25", "1")]
    back = inside.evaluate(
        "(typed) => typed.map((each) => inside.percentOf(inside.readShare(each).value))", typed
    )
    assert back == typed


def test_what_lies_on_the_device_is_read_with_care(inside: Page) -> None:
    inside.evaluate(
        """inside.remember("shelf", {
          format: 1,
          frames: [
            { slug: "plover-76", name: "  Plover\\n76 ", count: 2.5, restrings: -1 },
            { slug: "plover-76", name: "twice", count: 1, restrings: 1 },
            { slug: "../x" }, null, 7,
            { slug: "b", name: 7, count: 3, restrings: 12.5 },
          ],
          terms: { lead: -1, review: "4", service: 1, shares: { single: 2, wide: 0.2, gold: 0.5 } },
          used: [{ part: "x", count: 1, years: 0 }, { part: "y", count: 2, years: 1 }, "z"],
          counted: "yes",
          club: { a: 1 },
        })"""
    )
    assert inside.evaluate(OPEN, [LIMITS, KINDS]) == {
        **EMPTY,
        "frames": [
            {"slug": "plover-76", "name": "Plover 76", "count": None, "restrings": None},
            {"slug": "b", "name": "b", "count": 3, "restrings": 12.5},
        ],
        "terms": {"lead": None, "review": None, "service": None, "shares": {"wide": 0.2}},
        "used": [{"part": "y", "count": 2, "years": 1}],
    }


@pytest.mark.parametrize("kept", [None, 7, "x", [], {}, {"format": 2, "frames": []}, {"format": 1}])
def test_what_is_of_another_kind_is_an_empty_shelf(inside: Page, kept: Any) -> None:
    inside.evaluate("(kept) => inside.remember('shelf', kept)", kept)
    assert inside.evaluate(OPEN, [LIMITS, KINDS]) == EMPTY


def test_a_shelf_has_so_many_frames_and_no_more(inside: Page) -> None:
    more = [{"slug": f"f-{n}", "name": f"F {n}"} for n in range(300)]
    found = inside.evaluate(
        "([shelf, more, most]) => inside.withFrames(shelf, more, most)", [FULL, more, LIMITS["frames"]]
    )
    assert len(found["frames"]) == LIMITS["frames"] == 200
    assert found["frames"][:3] == FULL["frames"]


def test_the_file_holds_everything(inside: Page) -> None:
    text = inside.evaluate("(shelf) => inside.writeShelf(shelf)", FULL)
    back = added(inside, text)
    assert back["faults"] == []
    frames = [{**each, "name": " ".join(each["name"].split())} for each in FULL["frames"]]
    assert back["shelf"] == {**FULL, "frames": frames}
    assert back["taken"] == text.count("\r\n") - 1, "every row but the heading"


def test_no_cell_of_the_file_is_a_formula(inside: Page) -> None:
    """As a spreadsheet sees it (OWASP, CSV Injection)."""
    text = inside.evaluate("(shelf) => inside.writeShelf(shelf)", FULL)
    cells = [cell for row in csv.reader(io.StringIO(text, newline="")) for cell in row]
    assert '\'=1+1, "x"\nnext' in cells
    assert not [cell for cell in cells if cell[:1] in tuple("=+-@\t\r")]


def test_a_damaged_file_tells_every_fault_and_takes_the_rest(inside: Page) -> None:
    text = "\r\n".join(
        [
            "kind,name,value",
            "frame,plover-76,Plover 76",
            "restrings,plover-76,many",
            "restrings,bobbin-64,5",
            "frame,<img src=x>,X",
            "frame,plover-76,Again",
            "term,service_percent,100",
            "term,speed,3",
            "share_percent,gold,5",
            "share_percent,single,101",
            "used,plover-crown,lots",
            "gold,x,1",
            "count,plover-76",
            "count,plover-76,3",
            'frame,a"b,C',
            "term,counted_rates,perhaps",
        ]
    )
    found = added(inside, text)
    assert [fault["row"] for fault in found["faults"]] == [3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 15, 16]
    assert found["shelf"]["frames"] == [
        {"slug": "plover-76", "name": "Plover 76", "count": 3, "restrings": None}
    ]
    says = {fault["row"]: fault["message"] for fault in found["faults"]}
    assert "expected a row of kind frame before this one" in says[4]
    assert says[6] == "It is about the same as row 2, which is kept."
    assert says[13] == "It has 2 cells; expected 3, as in the heading."
    assert found["taken"] == 2


@pytest.mark.parametrize("text", ["", "a,b,c", "kind,value\n", "\x00\x01\x02", "kind", '"' * 99, "," * 5000])
def test_a_file_of_something_else_changes_nothing(inside: Page, text: str) -> None:
    found = added(inside, text, FULL)
    assert found["shelf"] == FULL
    assert found["taken"] == 0
    assert found["faults"]


def test_rows_are_added_to_what_is_there(inside: Page) -> None:
    text = "kind;name;value\nrestrings;plover-76;60\nterm;lead_weeks;2,5\nshare_percent;strip;\n"
    found = added(inside, text, FULL)
    assert found["faults"] == []
    assert found["shelf"]["frames"][0]["restrings"] == 60
    assert found["shelf"]["terms"] == {**FULL["terms"], "lead": 2.5, "shares": {"single": 0.35}}
    assert found["shelf"]["used"] == FULL["used"]


def test_a_hostile_file_of_many_rows_is_cut(inside: Page) -> None:
    rows = [f"frame,f-{n},F" for n in range(6000)]
    found = added(inside, "\n".join(["kind,name,value", *rows]))
    assert len(found["shelf"]["frames"]) == LIMITS["frames"]
    assert "There are more than 200 frames." in {fault["message"] for fault in found["faults"]}
    assert "more than 5000 rows" in found["faults"][-1]["message"]


def test_the_club_file_says_the_same_to_a_yaml_reader(inside: Page) -> None:
    """Read by ruamel.yaml, as YAML 1.2, and by its 1.1 rules: no short name becomes a number or a no.

    The format's own key `on` does by 1.1, in every file of a book.
    """
    text = club_file(inside, FULL, {"barrel-20": 6, "1-2": 1})
    for version in ((1, 2), (1, 1)):
        yaml = YAML(typ="safe", pure=True)
        yaml.version = version
        assert yaml.load(text) == {
            "format": 1,
            "name": "Weir Lane: rackets #1",
            "on" if version == (1, 2) else True: date(2026, 10, 4),
            "frames": [
                {"frame": "plover-76", "count": 9, "restrings_per_year": 54},
                {"frame": "1999", "restrings_per_year": 0},
                {"frame": "no", "count": 0},
            ],
            "shelf": {
                "lead_time_weeks": 3,
                "review_weeks": 0,
                "service_level": 0.975,
                "shares": {"single": 0.35, "strip": 0},
                "stock": {"barrel-20": 6, "1-2": 1},
            },
        }


def test_the_club_file_leaves_out_what_the_book_has_not_and_says_so(inside: Page) -> None:
    text = club_file(inside, FULL, {"barrel-20": 6, "old-part": 1}, ["no", "old-part"])
    assert "# Left out, for the book has them not: no, old-part." in text
    found = YAML(typ="safe", pure=True).load(text)
    assert [each["frame"] for each in found["frames"]] == ["plover-76", "1999"]
    assert found["shelf"]["stock"] == {"barrel-20": 6}


@pytest.mark.parametrize(
    ("name", "slug"),
    [
        ("", "my-shelf"),
        ("Łódź & Søn", "odz-s-n"),
        ("Café 7", "cafe-7"),
        ("../..", "my-shelf"),
        ("a" * 80, "a" * 60),
    ],
)
def test_the_club_file_has_a_plain_name(inside: Page, name: str, slug: str) -> None:
    assert inside.evaluate("(club) => inside.clubSlug({ club })", name) == slug


@pytest.mark.parametrize("name", ["yes", "- a", "a: b", "“x”", '"', "\u202e", "#", "{}", "null", "\x07"])
def test_no_name_breaks_the_club_file(inside: Page, name: str) -> None:
    text = club_file(inside, {**EMPTY, "club": name, "frames": FULL["frames"][:1]}, {})
    found = YAML(typ="safe", pure=True).load(text)
    assert found["name"] == name
    assert found["shelf"] == {}
