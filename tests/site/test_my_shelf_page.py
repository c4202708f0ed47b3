"""The page of a shelf of one's own as it is written, and the constants that it hands over."""

from __future__ import annotations

import json
from importlib.resources import files

import pytest
from lxml import html

from rimbook.bench import shelf_terms
from rimbook.site.my_shelf_page import my_shelf_data
from rimbook.site.pages import Asset, Page
from rimbook.site.scripts import script_tag
from rimbook.site.shelf_csv import COLUMNS
from rimbook.site.shelf_rules import shelf_rules
from rimbook.site.words import KIND_NAMES
from tests.site.sample import demo_site

PAGE = "my-shelf/index.html"


def host() -> html.HtmlElement:
    page = demo_site()[PAGE]
    assert isinstance(page, Page)
    (found,) = html.fromstring(f"<main>{page.body}</main>").xpath("//*[@data-rb-my-shelf]")
    return found


def test_without_its_script_the_page_says_what_to_do() -> None:
    (said,) = host().xpath("./p")
    assert "needs JavaScript" in said.text_content()
    assert "rimbook shelf" in said.text_content()
    assert said.xpath(".//a/@href") == ["../clubs/index.html"]
    assert host().get("data-rb-root") == "../"


def test_the_page_loads_its_own_script() -> None:
    assert script_tag("my-shelf", "../") == '<script defer src="../assets/scripts/my_shelf.js"></script>'
    assert isinstance(demo_site()["assets/scripts/my_shelf.js"], Asset)


def test_the_constants_are_those_of_the_working_out() -> None:
    (block,) = host().xpath("./script[@type='application/json']/text()")
    given = json.loads(block)
    assert given == my_shelf_data()
    assert (given["lead"], given["review"]) == (
        shelf_terms.ASSUMED_LEAD_WEEKS,
        shelf_terms.ASSUMED_REVIEW_WEEKS,
    )
    assert given["service"] == shelf_terms.ASSUMED_SERVICE
    assert given["shares"] == dict(shelf_terms.ASSUMED_SHARES)
    assert given["rules"] == shelf_rules()
    assert tuple(given["columns"]) == COLUMNS
    assert given["kinds"] == KIND_NAMES


@pytest.mark.parametrize(
    ("limit", "where"),
    [
        ("weeks", ("Shelf", "lead_time_weeks")),
        ("weeks", ("Shelf", "review_weeks")),
        ("count", ("ClubFrame", "count")),
        ("restrings", ("ClubFrame", "restrings_per_year")),
    ],
)
def test_what_the_page_takes_a_club_file_takes_as_well(limit: str, where: tuple[str, str]) -> None:
    """The bounds are those of the published schema of a club's file."""
    schema = json.loads((files("rimbook") / "schemas/club.schema.json").read_text("utf-8"))
    named, key = where
    shape = schema["definitions"][named]["properties"][key]
    (most,) = {each["maximum"] for each in (shape, *shape.get("anyOf", ())) if "maximum" in each}
    assert my_shelf_data()["limits"][limit] == most


def test_the_menus_and_the_finder_know_the_page() -> None:
    index = demo_site()["data/finder.js"]
    assert isinstance(index, Asset)
    assert '["page","My shelf","my-shelf/index.html"' in index.data.decode()
