"""The page on which a reader types what they measured and gets the parts that fit."""

from __future__ import annotations

from collections.abc import Iterator
from functools import partial

from rimbook.bench.thresholds import DEFAULT, Thresholds
from rimbook.book.model import Catalogue
from rimbook.site.fits_data import FITS_FILE, fits_file
from rimbook.site.pages import KINDS, Asset, Page, to_root
from rimbook.site.templates import render


def fits_page(catalogue: Catalogue, thresholds: Thresholds = DEFAULT) -> Iterator[Page | Asset]:
    """The page, and the data that its script ranks by."""
    kind = KINDS["fits"]
    yield Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="Type a bore, a rim depth and a string, and get the parts of this book that fit, ranked.",
        make=partial(render, "fits.html", title=kind.title, root=to_root(kind.pattern)),
    )
    yield Asset(FITS_FILE, partial(fits_file, catalogue, thresholds))
