"""The pages that explain the numbers: whole, true to the code, traceable to a source, and fit to be heard."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from dataclasses import replace

import pytest
from lxml import html

from rimbook.bench.thresholds import DEFAULT, about, changed
from rimbook.book.model import Book
from rimbook.site.numbers.figures import fig
from rimbook.site.numbers.formula import plain
from rimbook.site.numbers.links import ANCHORS, WORKED_OUT, explained
from rimbook.site.numbers.topic import Topic
from rimbook.site.numbers.topics import GROUPS, TOPICS
from rimbook.site.pages import KINDS
from tests.project.tree import ROOT, text
from tests.site.numbers_pages import SLUGS, example, pages_of, trees, words
from tests.site.sample import demo_book, demo_site, small_book

SECTIONS = ("words", "formula", "example", "source", "assumes", "stops")
RISKY = ("pull", "head", "fit", "length", "twins", "units", "parts")


def names(formula: str) -> set[str]:
    """The symbols of a formula; what stands before a bracket is a function."""
    found = re.findall(r"([^\W\d_]+(?:_[^\W_]+)?)(?!\w)(?!\()", formula)
    return {name for name in found if name not in ("Σ", "sin", "cos", "asin", "min", "max")}


@pytest.mark.parametrize("slug", SLUGS)
def test_a_topic_has_all_its_sections(slug: str) -> None:
    tree = trees()[slug]
    assert tuple(tree.xpath("//section/@id")) == SECTIONS
    for section in tree.xpath("//section"):
        assert len(" ".join(section.text_content().split())) > 40
    assert tree.xpath("//section[@id='formula']//math")
    assert tree.xpath("//section[@id='example']//*[@class='rb-example']")
    assert tree.xpath("//section[@id='source']//li | //section[@id='stops']//li")


@pytest.mark.parametrize("topic", TOPICS, ids=SLUGS)
def test_every_symbol_of_a_formula_is_explained_with_its_unit(topic: Topic) -> None:
    told = {each.text for each in topic.symbols}
    used = {name for formula in topic.formulas for name in names(formula.text)}
    said = told | {each.split("_")[0] for each in told} | {each.replace("_1", "_2") for each in told}
    unexplained = {name for name in used if not {name, name.split("_")[0], name.lstrip("Δ")} & said}
    assert unexplained == set()
    units = [cell.text for cell in trees()[topic.slug].xpath("//table[contains(@class,'rb-symbols')]//td[3]")]
    assert len(units) == len(topic.symbols)
    assert set(units) <= {"none", "mm", "1/mm", "mm²", "N", "MPa", "°", "rad", "lb", "kg", "%"}


@pytest.mark.parametrize("topic", TOPICS, ids=SLUGS)
def test_every_symbol_that_is_explained_is_used(topic: Topic) -> None:
    used = {name for formula in topic.formulas for name in names(formula.text)}
    bases = used | {name.split("_")[0] for name in used} | {name.lstrip("Δ") for name in used}
    assert {each.text for each in topic.symbols} - bases == set()


@pytest.mark.parametrize("slug", [*SLUGS, "formulas"])
def test_every_formula_stands_as_text_beside_its_drawing(slug: str) -> None:
    for formula in trees()[slug].xpath("//*[@class='rb-formula']"):
        drawn = ", ".join(formula.xpath(".//math/@alttext"))
        assert drawn == formula.xpath("string(.//code)")
        assert formula.xpath(".//math/@display") == ["block"] * len(formula.xpath(".//math"))


def test_the_sheet_has_every_formula_and_leads_to_every_topic() -> None:
    told = trees()["formulas"].xpath("//*[@class='rb-formula']//code/text()")
    assert told == [plain(formula.text) for topic in TOPICS for formula in topic.formulas]
    links = trees()["formulas"].xpath("//h3/a/@href")
    assert links == [f"../numbers/{slug}/index.html" for slug in SLUGS]


def test_anchors_are_told_apart() -> None:
    anchors = [formula.anchor for topic in TOPICS for formula in topic.formulas]
    assert len(anchors) == len(set(anchors))
    assert len(SLUGS) == len(set(SLUGS))
    for topic in TOPICS:
        assert not ({formula.anchor for formula in topic.formulas} - {topic.slug}) & set(SLUGS)


@pytest.mark.parametrize("name", ANCHORS)
def test_what_is_explained_is_there(name: str) -> None:
    path, _, anchor = explained(name).partition("#")
    tree = trees()[path.split("/")[-2]]
    assert not anchor or tree.xpath(f"//*[@id='{anchor}']")


def test_a_name_that_is_explained_nowhere_is_refused() -> None:
    with pytest.raises(ValueError, match="'presure' is explained nowhere; nearest: pressure"):
        explained("presure")
    assert explained("spread", "../../") == "../../numbers/twins/index.html#spread"


def asked_for() -> Iterator[tuple[str, str]]:
    """Every name that a template or a module hands to `explained`, with where it stands."""
    site = ROOT / "generator" / "rimbook" / "site"
    for path in sorted(site.rglob("*.html")):
        for name in re.findall(r"explained\(\s*[\"']([^\"']+)[\"']", path.read_text("utf-8")):
            yield path.name, name
    for path in sorted(site.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "explained":
                yield from (
                    (path.name, arg.value)
                    for arg in node.args[:1]
                    if isinstance(arg, ast.Constant) and isinstance(arg.value, str)
                )


def test_every_anchor_that_a_page_asks_for_exists() -> None:
    found = list(asked_for())
    assert ("numbers_topic.html", "formulas") in found
    assert [(file, name) for file, name in found if name not in ANCHORS] == []


def test_every_link_between_the_pages_leads_somewhere() -> None:
    for slug, tree in trees().items():
        here = KINDS["formulas"].pattern if slug == "formulas" else f"numbers/{slug}/"
        for href in tree.xpath("//a/@href"):
            way, _, anchor = href.partition("#")
            target = way.split("/")[-2] if way else slug
            if target in WORKED_OUT:
                assert f"{WORKED_OUT[target]}index.html" in demo_site()
                continue
            assert target in trees(), f"{here}: {href}"
            assert not anchor or trees()[target].xpath(f"//*[@id='{anchor}']"), f"{here}: {href}"


@pytest.mark.parametrize("name", about())
def test_every_threshold_stands_in_a_table_of_a_topic_and_on_the_sheet(name: str) -> None:
    told = about()[name]
    tables = [row for slug in (*SLUGS, "formulas") for row in trees()[slug].xpath(f"//tr[th/code='{name}']")]
    assert len(tables) >= 2
    for row in tables:
        said = " ".join(row.text_content().split())
        assert told["says"] in said
        assert told["source"] in said
        value = getattr(DEFAULT, name)
        for number in [value] if isinstance(value, float) else [value.badminton, value.tennis]:
            for one in number if isinstance(number, tuple) else (number,):
                assert fig(one) in said


def test_a_threshold_of_the_site_is_shown_with_what_it_is_elsewhere() -> None:
    site = changed({"threading_mm": 0.17})
    page = html.fromstring(pages_of(demo_book(), site)["room"].body)
    row = " ".join(page.xpath("//tr[th/code='threading_mm']")[0].text_content().split())
    assert "0.17 mm (elsewhere 0.1 mm)" in row
    assert "(1.9 − 0.17) / 2 0.86" in " ".join(page.text_content().split())
    assert "elsewhere" not in words("room")


@pytest.mark.parametrize("slug", RISKY)
def test_a_caution_stands_where_the_risk_is(slug: str) -> None:
    assert trees()[slug].xpath("//section[@id='words']//*[@class='rb-caution'][@role='note']")


@pytest.mark.parametrize("slug", [*SLUGS, "formulas"])
def test_a_page_can_be_heard_and_carries_no_script_or_style(slug: str) -> None:
    tree, body = trees()[slug], pages_of(demo_book())[slug].body
    assert not tree.xpath("//script | //style | //@style")
    assert "http" not in body
    assert len(tree.xpath("//h1")) == 1
    identifiers = tree.xpath("//@id")
    assert len(identifiers) == len(set(identifiers))
    assert not tree.xpath("//table[not(caption)] | //th[not(@scope)]")
    for label in tree.xpath("//@aria-labelledby"):
        assert tree.xpath(f"//*[@id='{label}']"), label


def test_without_the_first_choice_the_best_known_hole_is_shown() -> None:
    book = small_book()
    found = example(book)
    assert found
    assert found.hole.bore_mm is not None
    assert found.part is not None
    for slug, page in pages_of(book).items():
        assert found.frame.name in page.body or slug in ("formulas", "uncertainty"), slug


def test_a_hole_of_which_nothing_is_known_gives_no_figures() -> None:
    book = small_book()
    frame = book.frames["wren-8"]
    bare = tuple(
        replace(hole, bore_mm=None, part=None, rim_depth_mm=None, strip=None, twin=None)
        for hole in frame.holes
    )
    unknown = replace(frame, holes=bare, strips=(), twins=(), measured=None, confirmed=())
    for slug, page in pages_of(Book({"wren-8": unknown}, {})).items():
        said = " ".join(html.fromstring(page.body).text_content().split())
        if slug in ("pressure", "fit", "room", "length", "turns", "uncertainty", "parts"):
            assert "unknown" in said, slug
        assert not re.search(r"\bNone\b(?! of)", said)


def test_a_book_without_a_frame_still_explains_everything() -> None:
    pages = pages_of(Book({}, {}))
    assert [page.body for page in pages.values()]
    assert "There is no strung frame in this book yet" in pages["pull"].body


def test_the_same_book_gives_the_same_bytes() -> None:
    assert [page.body for page in pages_of(demo_book()).values()] == [
        page.body for page in pages_of(demo_book()).values()
    ]


def test_the_overview_lists_every_topic_in_its_order() -> None:
    written = text("site_src/numbers.md")
    links = re.findall(r"^- \[([^\]]+)\]\(numbers/([a-z-]+)/index\.html\)", written, re.MULTILINE)
    assert links == [(topic.title, topic.slug) for topic in TOPICS]
    assert re.findall(r"^## (.+?) \{", written, re.MULTILINE)[: len(GROUPS)] == [name for name, _ in GROUPS]
