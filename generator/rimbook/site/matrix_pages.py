"""The matrices: for each sport its frames against bores and against parts, and the way into them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import groupby

from rimbook.book.model import Catalogue
from rimbook.site.cross import Cross, bore_order
from rimbook.site.links import bore_path, link, part_path
from rimbook.site.matrix import Counts, matrix
from rimbook.site.matrix_places import ROWS, WHATS, What, matrix_path, row_anchor
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.paging import Sheet, sheets
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import UNKNOWN, capital, counted


@dataclass(frozen=True, slots=True)
class Across:
    """What stands across the top: how a frame counts it, how columns are ordered, and which get none."""

    what: What
    title: str
    counted: str
    counts: Callable[[Summary], Counts]
    order: Callable[[Sequence[str]], Sequence[str]]
    least: int


def _bores(frame: Summary) -> Counts:
    return {bore: use.holes for bore, use in frame.uses.items()}


def _parts(frame: Summary) -> Counts:
    return {**frame.parts, UNKNOWN: frame.unknown_parts} if frame.unknown_parts else frame.parts


BORES = Across("bores", "frames by bore", "holes", _bores, partial(sorted, key=bore_order), least=1)
PARTS = Across("parts", "frames by part", "pieces", _parts, list, least=2)


def matrix_pages(cross: Cross, catalogue: Catalogue) -> Iterator[Page]:
    """The index of the matrices, then for each sport its frames by bore and by part."""
    kind = KINDS["matrix"]
    yield Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="All frames against bores and against parts, for each sport and maker.",
        make=partial(_index_body, cross),
    )
    for sport, frames in cross.matrix.rows.items():
        for across in (BORES, PARTS):
            for sheet in sheets(matrix_path(across.what, sport), frames, ROWS):
                title = f"{capital(sport)} {across.title}{sheet.suffix}"
                yield Page(
                    path=sheet.path,
                    kind="matrix-sport" if sheet.number == 1 else "matrix-sport-more",
                    title=title,
                    description=f"{title}: {counted(len(frames), 'frame')} in one table, maker by maker.",
                    make=partial(_body, title, across, sport, sheet, cross, catalogue),
                )


def _index_body(cross: Cross) -> str:
    kind = KINDS["matrix"]
    root = to_root(kind.pattern)
    sports = [
        (sport, *(link(root, matrix_path(what, sport)) for what in WHATS), list(_makers(frames, cross, root)))
        for sport, frames in cross.matrix.rows.items()
    ]
    return render("matrix_index.html", title=kind.title, sports=sports)


def _makers(frames: Sequence[Summary], cross: Cross, root: str) -> Iterator[tuple[str, int, str, str]]:
    """Each maker, its number of frames, and where they begin by bore and by part."""
    for maker, own in groupby(frames, key=lambda frame: frame.maker):
        first, *others = own
        by_bore, by_part = (cross.matrix.of_maker(what, first, root) for what in WHATS)
        yield maker, 1 + len(others), by_bore, by_part


def _body(
    title: str, across: Across, sport: str, sheet: Sheet[Summary], cross: Cross, catalogue: Catalogue
) -> str:
    root = to_root(sheet.path)
    other = PARTS if across is BORES else BORES
    return render(
        "matrix.html",
        title=title,
        across=across,
        matrix=matrix(sheet.rows, across.counts, across.order, across.least),
        heading=partial(_heading, across, catalogue, root),
        sport=sport,
        sheet=sheet,
        cross=cross,
        other=(other.title, link(root, matrix_path(other.what, sport))),
        row_anchor=row_anchor,
        root=root,
    )


def _heading(across: Across, catalogue: Catalogue, root: str, name: str) -> tuple[str, str]:
    """What a column is called and where it leads: nowhere for parts that nobody knows."""
    if across is BORES:
        return name, link(root, bore_path(name))
    if name == UNKNOWN:
        return "unknown part", ""
    return (catalogue[name].name if name in catalogue else name), link(root, part_path(name))
