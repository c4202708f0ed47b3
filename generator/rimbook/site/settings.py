"""What a publisher of the book decides or adds, and the book itself does not know."""

from __future__ import annotations

from dataclasses import dataclass
from urllib.parse import quote

from rimbook.bench.thresholds import DEFAULT, Thresholds
from rimbook.site.finder_index import FinderPlace


@dataclass(frozen=True, slots=True)
class Settings:
    """`edit_base` is the web address to which a file's path is added to edit it, ending in a slash.

    `places` are what the finder should find beside the book's own pages. `thresholds` divide one bench word
    from the next, and must be those with which the entries were made. `site_url` is the public address of the
    site, ending in a slash, for codes to scan. With `prints` the site carries charts and tapes as PDF.
    """

    edit_base: str | None = None
    places: tuple[FinderPlace, ...] = ()
    thresholds: Thresholds = DEFAULT
    site_url: str | None = None
    prints: bool = False

    def edit_url(self, source: str) -> str | None:
        """Where a reader corrects a file of the book, or None where nobody said."""
        return f"{self.edit_base}{quote(source)}" if self.edit_base and source else None
