"""The page on which a shop plans a shelf of its own, on its own device."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial
from typing import Any

from rimbook.bench.shelf_terms import (
    ASSUMED_LEAD_WEEKS,
    ASSUMED_REVIEW_WEEKS,
    ASSUMED_SERVICE,
    ASSUMED_SHARES,
)
from rimbook.book.rules.club_size import MOST_FRAMES
from rimbook.site.handover import data_block
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.shelf_csv import COLUMNS
from rimbook.site.shelf_rules import shelf_rules
from rimbook.site.shelf_words import CAUTION
from rimbook.site.templates import render
from rimbook.site.words import KIND_NAMES

MOST_WEEKS = 520
MOST_COUNT = 100_000
MOST_RESTRINGS = 1_000_000
"""The bounds of a club's file, so that what is typed on the page can always be written as one."""


def my_shelf_page() -> Iterator[Page]:
    """The page, with the constants of the working-out in a data block."""
    kind = KINDS["my-shelf"]
    root = to_root(kind.pattern)
    yield Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="Plan a shelf of parts for your frames: what to keep, what to order today and why.",
        make=partial(
            render, "my_shelf.html", title=kind.title, root=root, constants=data_block(my_shelf_data())
        ),
    )


def my_shelf_data() -> dict[str, Any]:
    """The numbers of the working-out (`rules`), what is assumed, and what the page writes and takes."""
    return {
        "rules": shelf_rules(),
        "lead": ASSUMED_LEAD_WEEKS,
        "review": ASSUMED_REVIEW_WEEKS,
        "service": ASSUMED_SERVICE,
        "shares": dict(ASSUMED_SHARES),
        "kinds": KIND_NAMES,
        "columns": list(COLUMNS),
        "caution": CAUTION,
        "limits": {
            "frames": MOST_FRAMES,
            "weeks": MOST_WEEKS,
            "count": MOST_COUNT,
            "restrings": MOST_RESTRINGS,
        },
    }
