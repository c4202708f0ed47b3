"""One page that stands alone in a folder, with the styles it needs and no script."""

from __future__ import annotations

import html
from importlib.resources import files
from pathlib import Path

from rimbook.hosts.plain import plain_style
from rimbook.hosts.policy import META
from rimbook.site.publish import style

STYLE = "alone.css"


def write_alone(folder: Path, title: str, body: str) -> Path:
    """Write a page as `index.html` into a folder, which is made if need be. Gives the file."""
    folder.mkdir(parents=True, exist_ok=True)
    own = (files("rimbook.hosts") / "alone.css").read_text("utf-8")
    (folder / STYLE).write_text(f"{style().decode()}\n{plain_style()}\n{own}", "utf-8", newline="\n")
    page = folder / "index.html"
    page.write_text(
        f'<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n{META}\n'
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{html.escape(title)}</title>\n"
        '<link rel="icon" href="data:,">\n'
        f'<link rel="stylesheet" href="{STYLE}">\n</head>\n<body>\n'
        f'<main class="plain-body">\n{body}\n</main>\n</body>\n</html>\n',
        "utf-8",
        newline="\n",
    )
    return page
