"""The page on which a shop enters its prices and its stock, for its own device only."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from rimbook.book.model import Catalogue
from rimbook.site.pages import KINDS, Asset, Page, to_root
from rimbook.site.prices_data import PRICES_FILE, prices_file
from rimbook.site.templates import render


def prices_page(catalogue: Catalogue) -> Iterator[Page | Asset]:
    """The page, and what its script has to know of the book."""
    kind = KINDS["prices"]
    yield Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="Enter what parts cost you, what lies on your shelf and how you charge, on this device.",
        make=partial(render, "prices.html", title=kind.title, root=to_root(kind.pattern)),
    )
    yield Asset(PRICES_FILE, partial(prices_file, catalogue))
