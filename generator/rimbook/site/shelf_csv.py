"""A shelf plan as a table for spreadsheets: one drawer a row, then what cannot be planned."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from rimbook.bench.shelf_plan import Drawer, ShelfPlan
from rimbook.book.model import Catalogue
from rimbook.site import shelf_words
from rimbook.site.csv_files import Cell, plain, table

COLUMNS = (
    "part",
    "name",
    "kind",
    "frames",
    "stands_in_for",
    "opened_for",
    "a_year",
    "reorder_below",
    "fill_up_to",
    "chance",
    "short_a_year",
    "stock",
    "order",
    "packs",
    "urgent",
    "why",
    "counts_too",
    "holes",
)


def shelf_table(slug: str) -> str:
    """Where the table of a club lies."""
    return f"data/shelves/{slug}.csv"


def shelf_rows(shelf: ShelfPlan, catalogue: Catalogue) -> bytes:
    """The plan. A row of kind `cannot be planned` has a frame, why, and the holes in words."""
    return table(COLUMNS, _rows(shelf, catalogue))


def _rows(shelf: ShelfPlan, catalogue: Catalogue) -> Iterator[Sequence[Cell]]:
    for drawer in shelf.drawers:
        yield _drawer(drawer, shelf, catalogue)
    for each in shelf.unplanned:
        cells = {
            "part": plain(each.part),
            "kind": "cannot be planned",
            "frames": plain(each.frame),
            "why": plain(each.why),
            "holes": plain(shelf_words.holes(each)) or None,
        }
        yield [cells.get(column) for column in COLUMNS]


def _drawer(drawer: Drawer, shelf: ShelfPlan, catalogue: Catalogue) -> Sequence[Cell]:
    order, level, part = drawer.order, drawer.levels, catalogue[drawer.item]
    is_set = part.kind == "set"
    own = sorted({each.part for each in drawer.filled.asked} - {drawer.item})
    return (
        plain(part.id),
        plain(part.name),
        part.kind,
        plain(" ".join(sorted({each.frame for each in drawer.filled.asked}))),
        None if is_set else plain(" ".join(own)) or None,
        plain(" ".join(own)) if is_set else None,
        round(drawer.a_year, 4),
        level.reorder,
        level.up_to,
        round(level.chance, 6),
        round(level.short_a_year, 4),
        drawer.stock.units,
        order.units if order else 0,
        plain(shelf_words.packs(drawer, catalogue)) or None,
        "true" if order and order.urgent else "false",
        plain(
            (shelf_words.why_order(drawer, shelf.terms) or shelf_words.advice(drawer, shelf.terms)).replace(
                "\u00a0", " "
            )
        ),
        plain(shelf_words.counts_too(drawer, catalogue)) or None,
        None,
    )
