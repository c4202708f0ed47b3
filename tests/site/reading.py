"""A published site as a reader follows it: pages as trees, and links to their ends."""

from __future__ import annotations

import posixpath
from collections.abc import Iterator, Mapping
from typing import Any
from urllib.parse import unquote, urlsplit

from lxml import html

from rimbook.site.pages import Asset, Page
from tests.site.sample import EDIT_BASE


def tree_of(page: Page | Asset) -> Any:
    """The body of a page as elements."""
    assert isinstance(page, Page)
    return html.fromstring(f"<main>{page.body}</main>")


def text_of(element: Any) -> str:
    """What is read of an element, with single spaces."""
    return " ".join(element.text_content().split())


def rows_of(table: Any) -> list[list[str]]:
    """The rows of a table's bodies as texts."""
    return [[text_of(cell) for cell in row] for row in table.xpath("./tbody/tr")]


def links(trees: Mapping[str, Any]) -> Iterator[tuple[str, str]]:
    """Every link: the file of the page it is on, and its address."""
    for file, tree in trees.items():
        for href in tree.xpath("//a/@href"):
            yield file, href


def broken(site: Mapping[str, Page | Asset], trees: Mapping[str, Any]) -> list[tuple[str, str]]:
    """The links that lead to no file of the site, or to no place on it; links to edit must be to YAML."""
    places = {file: set(tree.xpath("//@id")) for file, tree in trees.items()}
    return [(file, href) for file, href in links(trees) if not _leads(site, places, file, href)]


def _leads(site: Mapping[str, Page | Asset], places: Mapping[str, set[str]], file: str, href: str) -> bool:
    if href.startswith(EDIT_BASE):
        return href.endswith(".yaml")
    found = urlsplit(href)
    if found.scheme or found.netloc:
        return False
    target = file
    if found.path:
        target = posixpath.normpath(posixpath.join(posixpath.dirname(file), unquote(found.path)))
    if target not in site:
        return False
    # A hole filled in, as `bore=2.7`, is no place on the page.
    return not found.fragment or "=" in found.fragment or found.fragment in places.get(target, ())
