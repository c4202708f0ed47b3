"""What a stranger writes is text: on no page does it become an element, an attribute or an address."""

from __future__ import annotations

import json
import subprocess
import sys
from dataclasses import replace
from functools import cache
from hashlib import sha256
from xml.etree.ElementTree import Element

import html5lib
import pytest

from rimbook.book.model import Book, Confirmed, Measured
from rimbook.hosts.plain import whole
from rimbook.site.pages import Asset, Page
from tests.site.sample import ROOT, published, small_frame, small_parts

HOSTILE = {
    "script": "<script>alert(1)</script>",
    "attribute": "\" onmouseover='alert(1)' x=\"",
    "image": "'\"><img src=x onerror=alert(1)>",
    "markdown": "](javascript:alert(1)) [x](javascript:alert(1)) ![x](//example.org/x.png)",
    "template": "{{ 7 * 7 }} {% include 'x' %} ${7*7} #{7*7}",
    "ends": "]]> --> </title></textarea></style></svg></table> <!-- <![CDATA[",
    "entities": "&lt;script&gt; &#60;b&#62; &amp;amp;",
    "slots": "rimbook-slot-title <!--<h1 rimbook-slot-body--> frames/shell.frame/index.html",
    "controls": "a\x00b\x1b[31mc\x7f\u202ed\u2066e\ufeff\n\r\tf",
    "long": "W" * 1_000,
    "formula": "=HYPERLINK(1);@SUM(1+1)*cmd|' /C calc'!A0",
    "typst": '#import "x.typ": * $ #read("/etc/passwd") @label <label> \\',
    "letters": "Ünïcödé 牛 👟 ﷺ",
}


def book_of(word: str) -> Book:
    """A small book with the word in every field that holds free text."""
    frame = small_frame()
    hostile = replace(
        frame,
        name=word,
        maker=word,
        aliases=(word, word + "2"),
        note=word,
        strips=tuple(replace(strip, name=word) for strip in frame.strips),
        measured=Measured(word, None, word, 0.05),
        confirmed=(Confirmed(word),),
        source=f"frames/maps/{word}",
    )
    parts = {
        key: replace(
            part,
            name=word,
            maker=word,
            material=word,
            note=word,
            measured=Measured(word, None, word),
            source=word,
        )
        for key, part in small_parts().items()
    }
    return Book({frame.slug: hostile}, parts)


def elements(text: str) -> list[Element]:
    """All elements of a page as a browser reads it."""
    tree = html5lib.parse(text, treebuilder="etree", namespaceHTMLElements=False)
    return [element for element in tree.iter() if isinstance(element.tag, str)]


def skeleton(page: Page) -> list[tuple[str, tuple[str, ...]]]:
    """All elements of a whole page, with the names of their attributes."""
    return [(element.tag, tuple(sorted(map(str, element.attrib)))) for element in elements(whole(page))]


@cache
def site_of(word: str) -> dict[str, Page | Asset]:
    return published(book_of(word))


def pages_of(word: str) -> list[Page]:
    return [each for each in site_of(word).values() if isinstance(each, Page)]


@cache
def harmless() -> list[list[tuple[str, tuple[str, ...]]]]:
    return [skeleton(page) for page in pages_of("Plain words")]


@pytest.mark.parametrize("word", HOSTILE.values(), ids=HOSTILE)
def test_pages_have_the_same_elements_whatever_the_words(word: str) -> None:
    for plain, page in zip(harmless(), pages_of(word), strict=True):
        assert skeleton(page) == plain, page.path


@pytest.mark.parametrize("word", HOSTILE.values(), ids=HOSTILE)
def test_addresses_are_made_of_safe_letters(word: str) -> None:
    for path in site_of(word):
        assert path.isascii()
        assert path.replace("/", "").replace("-", "").replace(".", "").replace("_", "").isalnum()
        assert ".." not in path
        assert len(path) < 200
    for page in pages_of(word):
        for href in (element.attrib["href"] for element in elements(page.body) if "href" in element.attrib):
            assert href.startswith(("../", "#", "https://example.org/edit/", "index.html")), href


@pytest.mark.parametrize("word", ["script", "template", "entities", "letters"])
def test_the_words_are_shown_as_they_were_written(word: str) -> None:
    page = site_of(HOSTILE[word])["frames/wren-8/index.html"]
    assert isinstance(page, Page)
    assert [element.text for element in elements(page.body) if element.tag == "h1"] == [HOSTILE[word]]


@pytest.mark.parametrize("word", HOSTILE.values(), ids=HOSTILE)
def test_data_files_stay_json(word: str) -> None:
    for path, each in site_of(word).items():
        if path.endswith(".json"):
            assert isinstance(each, Asset)
            assert json.loads(each.data)


DIGEST = """
from hashlib import sha256
from tests.site.sample import demo_site, plain
whole = sha256()
for path, each in demo_site().items():
    whole.update(path.encode() + plain(each))
print(whole.hexdigest())
"""


def test_the_same_book_gives_the_same_bytes_whatever_the_hash_seed() -> None:
    digests = {
        subprocess.run(
            [sys.executable, "-c", DIGEST],
            cwd=ROOT,
            env={"PYTHONPATH": "generator:.", "PYTHONHASHSEED": seed, "TZ": zone, "LC_ALL": locale},
            capture_output=True,
            text=True,
            check=True,
        ).stdout
        for seed, zone, locale in (("0", "UTC", "C"), ("4711", "Asia/Kolkata", "C.UTF-8"))
    }
    assert len(digests) == 1
    assert len(digests.pop().strip()) == len(sha256().hexdigest())
