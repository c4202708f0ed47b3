"""One page of every kind that the demo site has, by name."""

from __future__ import annotations

from pathlib import Path

from rimbook.site.pages import KINDS

ROOT = Path(__file__).parents[2]

WRITTEN = tuple(sorted(file.name for file in (ROOT / "site_src").glob("*.md")))

# The demo has no list that is long enough for a second sheet.
GENERATED = tuple(name for name in KINDS if not name.endswith("-more"))

# Pages that look unlike others of their kind.
FURTHER = {"set": "parts/plover-set/index.html", "strip": "parts/plover-crown/index.html"}

PAGES = (*WRITTEN, *GENERATED, *FURTHER, "404")


def file_of(site: Path, name: str) -> str:
    """Where the page of a kind lies in a built site: of several, the one with most on it."""
    if name in FURTHER:
        return FURTHER[name]
    if name not in KINDS:
        return f"{name.removesuffix('.md')}.html"
    kind = KINDS[name]
    # A dot is in no slug, only in what is further down a list.
    found = [file for file in site.glob(f"{kind.pattern}index.html") if "page." not in file.parent.name]
    largest = max(found, key=lambda file: (file.stat().st_size, file.as_posix()))
    return largest.relative_to(site).as_posix()
