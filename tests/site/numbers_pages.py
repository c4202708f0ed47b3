"""The pages that explain the numbers, as tests read them."""

from __future__ import annotations

from functools import cache

from lxml import html

from rimbook.bench.thresholds import DEFAULT, Thresholds
from rimbook.book.model import Book
from rimbook.site.numbers.page import number_pages
from rimbook.site.numbers.shown import Shown, shown
from rimbook.site.numbers.topics import TOPICS
from rimbook.site.pages import Page
from tests.site.sample import demo_book

SLUGS = [topic.slug for topic in TOPICS]


def example(book: Book, thresholds: Thresholds = DEFAULT) -> Shown | None:
    """What the worked examples of a book are about."""
    return shown(book.frames, book.frames.__getitem__, book.parts, thresholds)


def pages_of(book: Book, thresholds: Thresholds = DEFAULT) -> dict[str, Page]:
    """The pages of a book by the last part of their path."""
    pages = number_pages(lambda: example(book, thresholds), thresholds)
    return {page.path.split("/")[-2]: page for page in pages}


@cache
def trees() -> dict[str, html.HtmlElement]:
    """The pages of the demo book, read."""
    return {
        slug: html.fromstring(f"<main>{page.body}</main>") for slug, page in pages_of(demo_book()).items()
    }


def words(slug: str, path: str = "//main") -> str:
    """The words of a page in one line, with plain spaces."""
    return " ".join(" ".join(each.text_content() for each in trees()[slug].xpath(path)).split())
