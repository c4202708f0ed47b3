"""A shelf plan as lines of text, for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from rimbook.bench.shelf_compare import Worth, compared, curve
from rimbook.bench.shelf_files import Prices
from rimbook.bench.shelf_packs import packs_for
from rimbook.bench.shelf_plan import Drawer, ShelfPlan
from rimbook.bench.shelf_update import Learned
from rimbook.book.model import Catalogue
from rimbook.site import shelf_words
from rimbook.site.shelf_view import drawers, lost, sizes, terms
from rimbook.site.words import counted, listed


def report(shelf: ShelfPlan, catalogue: Catalogue, names: Mapping[str, str], prices: Prices) -> Iterator[str]:
    """The plan: what to order, the shelf, what cannot be planned, what it goes by."""
    yield "Order today"
    wanted = sorted(
        (drawer for drawer in shelf.drawers if drawer.order),
        key=lambda drawer: (not (drawer.order and drawer.order.urgent), -drawer.a_year, drawer.item),
    )
    for drawer in wanted:
        yield from _order(drawer, shelf, catalogue, prices)
    if not wanted:
        yield "  Nothing: every drawer lasts until the next order arrives."
    yield ""
    rows = drawers(shelf, catalogue, names)
    yield from _table(
        ("Drawer", "a year", "reorder below", "fill up to", "lasts", "short a year"),
        [
            (row.name, row.a_year, str(row.reorder), str(row.up_to), row.chance, row.short_a_year)
            for row in rows
        ],
    )
    for row in rows:
        if row.piece:
            yield f"  {row.name}: {row.advice}"
    yield ""
    for each in lost(shelf, catalogue, names):
        yield f"Cannot be planned: {each.name}: {' '.join(each.words)}"
    for term in terms(shelf.terms):
        if term.assumed:
            yield f"Assumed: {term.name}: {term.value} ({term.key})"
    if not (shelf.fewest and shelf.least):
        yield "The search for the fewest drawers was cut off: a smaller shelf may exist."
    yield ""
    yield from _sizes(shelf, catalogue, prices)


def lessons(found: Iterable[Learned], catalogue: Catalogue) -> Iterator[str]:
    """Old and new rates and levels side by side."""
    yield "What the counts say (prior and posterior: shape, rate in years)"
    rows = [
        (
            catalogue[each.part].name if each.part in catalogue else each.part,
            f"{each.used.count} in {each.used.years:.2f}",
            f"{each.prior.shape:.2f}, {each.prior.rate:.2f}",
            f"{each.posterior.shape:.2f}, {each.posterior.rate:.2f}",
            f"{each.prior.mean:.2f} -> {each.posterior.mean:.2f}",
            f"{each.old.reorder} -> {each.new.reorder}",
            f"{each.old.up_to} -> {each.new.up_to}",
        )
        for each in found
    ]
    heads = ("Part", "used in years", "prior", "posterior", "a year", "reorder below", "fill up to")
    yield from _table(heads, rows)
    yield ""


def _order(drawer: Drawer, shelf: ShelfPlan, catalogue: Catalogue, prices: Prices) -> Iterator[str]:
    order = drawer.order
    if order is None:
        return
    own = prices.packs.get(drawer.item)
    packs, cost = shelf_words.packs(drawer, catalogue, own), ""
    if own:
        paid = sum(own[size] * count for size, count in packs_for(order.units, list(own), own))
        cost = f" for {paid:.2f} {prices.currency}".rstrip()
    when = "at once" if order.urgent else "with this review"
    yield f"  {order.units} x {catalogue[drawer.item].name} ({packs}){cost}, {when}"
    yield f"      Here {shelf_words.here(drawer, catalogue)}. {shelf_words.why_order(drawer, shelf.terms)}"


def _sizes(shelf: ShelfPlan, catalogue: Catalogue, prices: Prices) -> Iterator[str]:
    worth: Worth = prices.unit
    found = sizes(compared(shelf, catalogue, worth))
    money = (f"worth ({prices.currency or 'no currency'})", "unpriced") if prices.packs else ()
    yield from _table(
        ("Way", "drawers", "not empty", "pieces", "short a year", *money),
        [
            (
                row.name,
                str(row.size.drawers),
                str(row.size.kept),
                str(row.size.units),
                f"{row.size.short_a_year:.1f}",
                *((f"{row.size.worth:.2f}", str(row.size.unpriced)) if money else ()),
            )
            for row in found
        ],
    )
    yield ""
    yield from _table(
        ("Service level", "one drawer a part", "fewest drawers", *money[:1]),
        [
            (
                shelf_words.percent(step.service),
                str(step.by_part.units),
                str(step.pooled.units),
                *((f"{step.pooled.worth:.2f}",) if money else ()),
            )
            for step in curve(shelf, catalogue, worth)
        ],
    )
    if shelf.idle:
        spare = [
            counted(count, f"piece of {part}", f"pieces of {part}") for part, count in shelf.idle.items()
        ]
        yield f"In stock, but counted for no drawer: {listed(spare)}."


def _table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> Iterator[str]:
    widths = [max(len(row[at]) for row in (heads, *rows)) for at in range(len(heads))]
    for row in (heads, *rows):
        first, *others = (
            cell.ljust(width) if at == 0 else cell.rjust(width)
            for at, (cell, width) in enumerate(zip(row, widths, strict=True))
        )
        yield "  ".join((first, *others)).rstrip()
