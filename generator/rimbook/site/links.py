"""Where each page lies, and how one page points to another.

Links name `index.html`, so that the site also works from a folder on disk.
"""

from __future__ import annotations

import hashlib
import unicodedata
from collections.abc import Iterable, Mapping

from rimbook.book.written_values import MAX_SLUG, slug_of


def frame_path(slug: str) -> str:
    """The page of a frame."""
    return f"frames/{slug}/"


def tape_path(slug: str) -> str:
    """The page from which a frame's rim tape is printed."""
    return f"{frame_path(slug)}tape/"


def part_path(part_id: str) -> str:
    """The page of a part."""
    return f"parts/{part_id}/"


def club_path(slug: str) -> str:
    """The page of a club."""
    return f"clubs/{slug}/"


def shelf_path(slug: str) -> str:
    """The page of a club's shelf."""
    return f"{club_path(slug)}shelf/"


def bore_path(bore: str) -> str:
    """The page of a bore, in mm as written on pages, or of the unknown ones."""
    return f"bores/{bore}/"


def further(path: str, number: int) -> str:
    """A list broken over several pages: the first keeps the path, the others lie below it.

    The dot keeps them apart from slugs, which have none.
    """
    return path if number == 1 else f"{path}page.{number}/"


def link(root: str, path: str, anchor: str = "") -> str:
    """The address of a page as seen from a page that has this way to the root."""
    return f"{root}{path}index.html" + (f"#{anchor}" if anchor else "")


def slugs(names: Iterable[str]) -> Mapping[str, str]:
    """A slug for each name, all different, whatever letters the names are written in."""
    found: dict[str, str] = {}
    taken: set[str] = set()
    for name in sorted(set(names)):
        slug = _slug(name)
        if slug in taken:
            slug = f"{slug[: MAX_SLUG - 9]}-{_digest(name)}"
        taken.add(slug)
        found[name] = slug
    return found


def _slug(name: str) -> str:
    without_apostrophes = unicodedata.normalize("NFKD", name).replace("'", "")
    return slug_of(without_apostrophes) or f"name-{_digest(name)}"


def _digest(name: str) -> str:
    return hashlib.blake2b(name.encode(), digest_size=4).hexdigest()
