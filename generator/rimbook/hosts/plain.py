"""The generated pages as plain files in a folder, for any server, or for none."""

from __future__ import annotations

import html
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from importlib.resources import files
from itertools import chain
from pathlib import Path

from rimbook.draw.style import properties
from rimbook.hosts.leading_on import going_on
from rimbook.hosts.offline import worker, worker_meta, write_list
from rimbook.hosts.policy import META
from rimbook.site.offline_list import Fingerprint, fingerprint
from rimbook.site.pages import KINDS, Asset, Page
from rimbook.site.publish import STYLE
from rimbook.site.scripts import script_tag

NAME = "Rimbook"
PLAIN_STYLE = "assets/plain.css"

# Every page that is alone of its kind, as path and title.
_PLACES = tuple((kind.pattern, kind.title) for kind in KINDS.values() if kind.single)

_HOME = Page(
    path="",
    kind="home",
    title="All pages",
    description="An open book of frame grommet maps: which grommet sits in which hole.",
    make=lambda: (
        f'<h1 id="page">{NAME}</h1>\n'
        "<p>Which grommet sits in which hole, frame by frame.</p>\n"
        f"<ul>{_links('', _PLACES)}</ul>\n"
        '<p data-rb-offline="line"><a href="offline/index.html">Offline use</a></p>\n'
        '<div class="rb-caution" role="note" aria-label="Cautions">\n'
        "<p>Look for cracks first: a cracked frame is not strung. Cover your eyes when you push, pull or cut "
        "parts, and never string above the limit printed on the frame. The maker’s limit and a qualified "
        "stringer’s judgement come before this book.</p>\n</div>"
    ),
)


class CannotWrite(Exception):
    """The folder does not take what is written; the text says why."""


def write_plain(pages: Iterable[Page | Asset], folder: Path) -> int:
    """Write every page and file below `folder`, and a first page. Gives the number of pages.

    Only writes: what lies there already and has another name stays. Raises CannotWrite where the folder takes
    nothing.
    """
    written = {
        PLAIN_STYLE: _write(folder, PLAIN_STYLE, plain_style().encode()),
        _HOME.file: _write(folder, _HOME.file, whole(_HOME).encode()),
    }
    count = 1
    for each in chain([worker()], pages):
        data = whole(each).encode() if isinstance(each, Page) else each.data
        written[each.file] = _write(folder, each.file, data)
        count += isinstance(each, Page)
    with _writing():
        write_list(folder, written)
    return count


def whole(page: Page) -> str:
    """A page with the chrome of a plain site around it."""
    root = page.root
    links = _links(root, (("", NAME), *_PLACES), page.path)
    return (
        f'<!doctype html>\n<html lang="en">\n<head>\n<meta charset="utf-8">\n{META}\n'
        f"{worker_meta(root)}\n"
        '<meta name="viewport" content="width=device-width, initial-scale=1">\n'
        f"<title>{html.escape(page.title)} – {NAME}</title>\n"
        f'<meta name="description" content="{html.escape(page.description)}">\n'
        '<link rel="icon" href="data:,">\n'
        f'<link rel="stylesheet" href="{root}{STYLE}">\n'
        f'<link rel="stylesheet" href="{root}{PLAIN_STYLE}">\n'
        f"{script_tag(page.kind, root)}\n{going_on(page)}</head>\n<body>\n"
        '<a class="plain-skip" href="#page">Skip to content</a>\n'
        f'<header class="plain-bar"><nav aria-label="Pages"><ul>{links}</ul></nav></header>\n'
        f'<main class="plain-body">\n{page.body}\n</main>\n</body>\n</html>\n'
    )


def plain_style() -> str:
    """The style sheet of the chrome. It comes last, and so carries the dark drawings as well."""
    dark = properties(":root", dark=True)
    sheet = (files("rimbook.hosts") / "plain.css").read_text("utf-8")
    return f"{sheet}\n@media screen and (prefers-color-scheme: dark) {{\n{dark}\n}}\n"


def _links(root: str, places: Iterable[tuple[str, str]], current: str | None = None) -> str:
    """A list of links; the one to the current page says that it is."""
    return "".join(
        f'<li><a href="{root}{path}index.html"{" aria-current=page" if path == current else ""}>'
        f"{html.escape(name)}</a></li>"
        for path, name in places
    )


def _write(folder: Path, path: str, data: bytes) -> Fingerprint:
    file = folder / path
    with _writing():
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data)
    return fingerprint(data)


@contextmanager
def _writing() -> Iterator[None]:
    """Tells a failure to write from one to read, which a page may meet while it is made."""
    try:
        yield
    except OSError as error:
        raise CannotWrite(error.strerror or str(error)) from error
