"""One page of every kind that the demo site has, by name."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Page

from rimbook.site.pages import KINDS

ROOT = Path(__file__).parents[2]

WRITTEN = tuple(sorted(file.name for file in (ROOT / "site_src").glob("*.md")))

# Pages that look unlike others of their kind, and pages that a script has filled.
FURTHER = {
    "set": "parts/plover-set/index.html",
    "strip": "parts/plover-crown/index.html",
    "finder-filtered": "finder/index.html#q=plover&sport=badminton",
    "board-kept": "board/index.html#frames=plover-76,weir-72",
    "frame-pinned": "frames/plover-76/index.html#R9",
    "my-shelf-offered": "my-shelf/index.html#frames=plover-76,weir-72",
    "draft-opened": "draft/index.html#map=plover-76",
    "fits-asked": "fits/index.html#bore=2.7&depth=9.8&strings=2&step=0.05&string=0.7",
    # Old addresses lie among those of today.
    "moved-frame": "frames/plover-seventy-six/index.html",
    "moved-part": "parts/short-barrel-21/index.html",
}

# The demo has no list that is long enough for a second sheet.
GENERATED = tuple(name for name in KINDS if not name.endswith("-more") and name not in FURTHER)

PAGES = (*WRITTEN, *GENERATED, *FURTHER, "404")


def file_of(site: Path, name: str) -> str:
    """Where the page of a kind lies in a built site, with what its script is told: the largest of several."""
    if name in FURTHER:
        return FURTHER[name]
    if name not in KINDS:
        return f"{name.removesuffix('.md')}.html"
    kind = KINDS[name]
    # A dot is in no slug, only in what is further down a list.
    found = [file for file in site.glob(f"{kind.pattern}index.html") if "page." not in file.parent.name]
    largest = max(found, key=lambda file: (file.stat().st_size, file.as_posix()))
    return largest.relative_to(site).as_posix()


def stay(page: Page) -> None:
    """Lets a page at an old address stand: what leads on from it at once would leave nothing to look at."""
    page.route("**/scripts/moved.js", lambda route: route.fulfill(body="", content_type="text/javascript"))
