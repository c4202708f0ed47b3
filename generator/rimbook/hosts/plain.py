"""The generated pages as plain files in a folder, for any server, or for none."""

from __future__ import annotations

import html
from collections.abc import Iterable
from pathlib import Path

from rimbook.site.pages import Asset, Page
from rimbook.site.publish import STYLE

NAME = "Rimbook"

_PLACES = (
    ("frames/", "Frames"),
    ("sports/", "Sports"),
    ("makers/", "Makers"),
    ("parts/", "Parts"),
    ("sets/", "Sets and strips"),
    ("rules/", "Rules"),
)

_PLAIN_STYLE = "assets/plain.css"
_PLAIN_CSS = b"""\
:root { color-scheme: light; }
body { max-width: 70rem; margin: 0 auto; padding: 0 1rem 3rem; font: 1rem/1.5 system-ui, sans-serif; }
body > nav ul { display: flex; flex-wrap: wrap; gap: 0.3rem 1.2rem; padding: 0; list-style: none; }
h1, h2 { line-height: 1.2; }
@media print { body > nav { display: none; } body { max-width: none; } }
"""

_HOME = Page(
    path="",
    kind="home",
    title="All pages",
    description="An open book of frame grommet maps: which grommet sits in which hole.",
    make=lambda: (
        '<h1 id="page">Rimbook</h1>\n'
        "<p>Which grommet sits in which hole, frame by frame. Begin with one of the lists above.</p>"
    ),
)


def write_plain(pages: Iterable[Page | Asset], folder: Path) -> int:
    """Write every page and file below `folder`, and a first page. Gives the number of pages.

    Only writes: what lies there already and has another name stays.
    """
    _write(folder, _PLAIN_STYLE, _PLAIN_CSS)
    _write(folder, _HOME.file, whole(_HOME).encode())
    count = 1
    for each in pages:
        if isinstance(each, Asset):
            _write(folder, each.file, each.data)
        else:
            _write(folder, each.file, whole(each).encode())
            count += 1
    return count


def whole(page: Page) -> str:
    """A page with the chrome of a plain site around it."""
    root = page.root
    places = "".join(f'<li><a href="{root}{path}index.html">{name}</a></li>' for path, name in _PLACES)
    return (
        '<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{html.escape(page.title)} – {NAME}</title>\n"
        f'<meta name="description" content="{html.escape(page.description)}">\n'
        f'<link rel="stylesheet" href="{root}{_PLAIN_STYLE}">\n'
        f'<link rel="stylesheet" href="{root}{STYLE}">\n</head>\n<body>\n'
        f'<nav aria-label="Lists"><ul><li><a href="{root}index.html">{NAME}</a></li>{places}</ul></nav>\n'
        f"<main>\n{page.body}\n</main>\n</body>\n</html>\n"
    )


def _write(folder: Path, path: str, data: bytes) -> None:
    file = folder / path
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(data)
