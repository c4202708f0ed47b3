"""Which script a page loads, and the scripts as files: exactly one for each page."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from rimbook.browser.bundle import LATER_SCRIPTS, PAGE_SCRIPTS, script_of
from rimbook.site.pages import Asset

_FINDER_MARK = "data-rb-finder "
_PLANNER = "buy_worker"
_OF_KIND = {"moved-frame": "moved", "moved-part": "moved"}


def script_files() -> Iterator[Asset]:
    """Every script that a page of the site may load, and the one that plans purchases beside a page."""
    for name in (*PAGE_SCRIPTS, *LATER_SCRIPTS):
        yield Asset(_file(name), partial(script_of, name))
    yield Asset(_file(_PLANNER), partial(script_of, _PLANNER))


def script_tag(kind: str, root: str) -> str:
    """The element that loads the script of a kind of page. `root` is the way to the top of the site."""
    own = _OF_KIND.get(kind, kind.replace("-", "_"))
    name = own if own in PAGE_SCRIPTS else "page"
    return f'<script defer src="{root}{_file(name)}"></script>'


def written_page_kind(html: str) -> str:
    """The kind of a page that somebody wrote by hand: one with the finder in it needs the finder's script."""
    return "finder" if _FINDER_MARK in html else "page"


def later_script(name: str, root: str) -> str:
    """The way to a script that a page loads once somebody wants it."""
    return f"{root}{_file(name)}"


def _file(name: str) -> str:
    return f"assets/scripts/{name}.js"
