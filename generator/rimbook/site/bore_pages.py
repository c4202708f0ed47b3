"""The bores: where holes of each size go, which parts sit there, and which holes nobody has measured."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import partial
from typing import Any, NamedTuple

from rimbook.bench.reasons import MEASURE
from rimbook.bench.thresholds import DEFAULT
from rimbook.book.model import Catalogue
from rimbook.site.bore_parts import bore_parts
from rimbook.site.cross import Cross
from rimbook.site.fits_link import fits_link
from rimbook.site.links import bore_path
from rimbook.site.numbers.figures import fixed
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.paging import Sheet, sheets
from rimbook.site.settings import Settings
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import UNKNOWN, counted


class BoreSum(NamedTuple):
    """All holes of a bore in the book; `unfilled` are those where nobody knows what sits there."""

    bore: str
    frames: int
    holes: int
    shared: int
    unfilled: int
    parts: int


def bore_pages(cross: Cross, catalogue: Catalogue, settings: Settings) -> Iterator[Page]:
    """The list of all bores, then the page of each, broken up where many frames have it."""
    kind = KINDS["bores"]
    yield Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="Every size of drilled hole in this book, and where it goes.",
        make=partial(_index_body, cross),
    )
    for bore, slugs in cross.by_bore.items():
        for sheet in sheets(bore_path(bore), slugs):
            yield Page(
                path=sheet.path,
                kind="bore" if sheet.number == 1 else "bore-more",
                title=bore_title(bore) + sheet.suffix,
                description=f"{bore_title(bore)}: holes of {counted(len(slugs), 'frame')}, and their parts.",
                make=partial(_body, bore, sheet, cross, catalogue, settings),
            )


def bore_title(bore: str) -> str:
    """What the page of a bore is called."""
    return "Where the bore is unknown" if bore == UNKNOWN else f"Where {bore} goes"


def _index_body(cross: Cross) -> str:
    kind = KINDS["bores"]
    sums = [_sum(bore, cross.chosen(slugs)) for bore, slugs in cross.by_bore.items()]
    root = to_root(kind.pattern)
    return render("bores.html", title=kind.title, sums=sums, root=root)


def _body(bore: str, sheet: Sheet[str], cross: Cross, catalogue: Catalogue, settings: Settings) -> str:
    return render(
        "bore.html" if sheet.number == 1 else "bore_more.html",
        title=bore_title(bore) + sheet.suffix,
        bore=bore,
        known=bore != UNKNOWN,
        count=len(cross.by_bore[bore]),
        sheet=sheet,
        frames=cross.chosen(sheet.rows),
        catalogue=catalogue,
        cross=cross,
        settings=settings,
        root=to_root(sheet.path),
        **(_above(bore, to_root(sheet.path), cross, catalogue) if sheet.number == 1 else {}),
    )


def _above(bore: str, root: str, cross: Cross, catalogue: Catalogue) -> dict[str, Any]:
    """What the first page of a bore says before it lists frames."""
    frames = cross.chosen(cross.by_bore[bore])
    bore_mm = None if bore == UNKNOWN else float(bore)
    return {
        "sum": _sum(bore, frames),
        "parts": bore_parts(bore_mm, bore, frames, catalogue),
        "measure": MEASURE["bore"],
        "limits": DEFAULT,
        "fixed": fixed,
        "fits": fits_link(root, bore_mm),
        "matrices": list(cross.matrix.of_sports("bores", frames, root)),
    }


def _sum(bore: str, frames: Sequence[Summary]) -> BoreSum:
    uses = [frame.uses[bore] for frame in frames]
    return BoreSum(
        bore,
        len(frames),
        sum(use.holes for use in uses),
        sum(use.shared_holes for use in uses),
        sum(use.unfilled for use in uses),
        len({part for use in uses for part in use.parts}),
    )
