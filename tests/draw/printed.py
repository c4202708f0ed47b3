"""Charts of the demo book, made once, and what independent readers find in them."""

from __future__ import annotations

import io
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pypdfium2
from numpy.typing import NDArray
from pypdf import PageObject, PdfReader

from rimbook.book.load import Loaded, load_book
from rimbook.book.model import Catalogue, Frame, PaperName
from rimbook.draw.chart import Look, Shown
from rimbook.draw.paper import PAPERS
from rimbook.rim.place import place

ROOT = Path(__file__).parents[2]
SITE = "https://example.org/rimbook/"
MM_PER_POINT = 25.4 / 72


@cache
def demo() -> Loaded:
    """The demo book."""
    return load_book(ROOT / "frames")


def parts() -> Catalogue:
    return demo().book.parts


def shown(*slugs: str) -> tuple[Shown, ...]:
    """Frames of the demo book, as a chart takes them."""
    return tuple(Shown(place(demo().maps[slug].frame), f"frames/{slug}/") for slug in slugs)


def frame(slug: str) -> Frame:
    return demo().maps[slug].frame


def look(paper: PaperName = "A4", *, landscape: bool = False, **more: Any) -> Look:
    """How a chart of the tests is made, unless a test says otherwise."""
    more = {"title": "Charts of the tests", "site_url": SITE, **more}
    return Look(PAPERS[paper].turned(landscape=landscape), **more)


def reader(pdf: bytes) -> PdfReader:
    return PdfReader(io.BytesIO(pdf), strict=True)


def catalog(pdf: bytes) -> Any:
    """The dictionary that says of the document what it is."""
    return reader(pdf).trailer["/Root"]


def words(pdf: bytes) -> list[str]:
    """The words of each page, in one line, as pypdf reads them."""
    return [" ".join(page.extract_text().split()) for page in reader(pdf).pages]


def letter_heights_mm(pdf: bytes, cap_height: float) -> list[tuple[float, str]]:
    """For each piece of text the height of its capitals in mm on paper, and the text."""
    found: list[tuple[float, str]] = []

    def visit(text: str, cm: list[float], tm: list[float], _: object, size: float) -> None:
        if text.strip():
            # Text is upright: the way up of the text matrix, as the page's matrix stretches it.
            stretched = abs(tm[2] * cm[1] + tm[3] * cm[3])
            found.append((size * stretched * cap_height * MM_PER_POINT, text.strip()))

    for page in reader(pdf).pages:
        page.extract_text(visitor_text=visit)
    return found


def fonts(page: PageObject) -> list[Any]:
    """The descriptors of all fonts of a page, those inside its drawings too."""
    found: list[Any] = []

    def look_into(resources: Any) -> None:
        for each in resources.get("/Font", {}).values():
            font = each.get_object()
            inner = font["/DescendantFonts"][0].get_object() if "/DescendantFonts" in font else font
            found.append(inner.get("/FontDescriptor"))
        for each in resources.get("/XObject", {}).values():
            form = each.get_object()
            if "/Resources" in form:
                look_into(form["/Resources"])

    look_into(page["/Resources"])
    return found


def raster(pdf: bytes, page: int = 0, dpi: float = 300) -> NDArray[np.uint8]:
    """A page as a grey picture."""
    with pypdfium2.PdfDocument(pdf) as document:
        picture = document[page].render(scale=dpi / 72, grayscale=True)
        return np.array(picture.to_numpy()[..., 0] if picture.to_numpy().ndim == 3 else picture.to_numpy())
