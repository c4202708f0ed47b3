"""The page that says what is kept for offline use, and where a reader asks for it or has it forgotten."""

from __future__ import annotations

from functools import partial

from rimbook.site.offline_list import ASK_OVER_BYTES, ASK_OVER_FILES
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.templates import render


def offline_page() -> Page:
    """The page; its script fills it."""
    kind = KINDS["offline"]
    return Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="What of this book is kept on the device, to be read without a network.",
        make=partial(
            render,
            "offline.html",
            title=kind.title,
            root=to_root(kind.pattern),
            most_files=ASK_OVER_FILES,
            most_mb=ASK_OVER_BYTES // 1_000_000,
        ),
    )
