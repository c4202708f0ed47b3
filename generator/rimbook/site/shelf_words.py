"""What a shelf plan says in words: what to order and why, what to keep and why, what cannot be planned."""

from __future__ import annotations

from collections.abc import Mapping

from rimbook.bench.shelf_demand import Unplanned
from rimbook.bench.shelf_packs import packs_for
from rimbook.bench.shelf_plan import Drawer
from rimbook.bench.shelf_terms import Terms
from rimbook.book.model import Catalogue
from rimbook.site.spans import plain, spans_of
from rimbook.site.words import counted, listed, number

CAUTION = (
    "A substitute is not the maker’s part: fit one dry before you order many, and never drill or file a hole "
    "to make it fit. Look every frame over for cracks before you renew a grommet. What the maker names comes "
    "first."
)

_UNPLANNED = {
    "restrings unknown": "nobody has written down how often it is restrung",
    "part unknown": "nobody knows what part sits there",
    "bore unknown": "the bore is not measured",
    "not sold": "nobody in this book sells it, and nothing that is sold surely serves",
}
_MEND = {
    "restrings unknown": "Write restrings_per_year in the club’s file.",
    "part unknown": "Name the part in the map of the frame.",
    "bore unknown": "Measure the bore and write it in the map.",
    "not sold": "Write its packs in the catalogue, or a set that holds it.",
}


def percent(chance: float) -> str:
    """A chance in per cent, never rounded up to certainty: `97.7 %`, `over 99.9 %`."""
    if chance > 0.9995:
        return "over 99.9\u00a0%"
    return f"{number(100 * chance, 1)}\u00a0%"


def weeks(count: float) -> str:
    """`7 weeks`, `1.5 weeks`, `1 week`."""
    return f"{number(count, 1)}\u00a0week{'' if count == 1 else 's'}"


def yearly(rate: float) -> str:
    """A demand a year: `5.2`, `0.16`, `0.004`."""
    return number(rate, 1 if rate >= 10 else 2 if rate >= 0.1 else 3)


def serves(drawer: Drawer, names: Mapping[str, str]) -> str:
    """The frames a drawer serves."""
    own = {names[each.frame] for each in drawer.filled.asked}
    return listed(sorted(own, key=lambda name: (name.lower(), name)))


def stands_in(drawer: Drawer, catalogue: Catalogue) -> str:
    """The parts on the maps that a drawer stands in for, or nothing."""
    if catalogue[drawer.item].kind == "set":
        return ""
    own = {each.part for each in drawer.filled.asked} - {drawer.item}
    return listed(sorted(catalogue[part].name for part in own))


def opened_for(drawer: Drawer, catalogue: Catalogue) -> str:
    """The parts for which a set is opened, or nothing."""
    if catalogue[drawer.item].kind != "set":
        return ""
    return listed(sorted(catalogue[part].name for part in drawer.filled.load.a_year))


def here(drawer: Drawer, catalogue: Catalogue) -> str:
    """What lies in a drawer today."""
    stock = drawer.stock
    said = [str(stock.units) if stock.units else "none"]
    said += [f"of them {count} {catalogue[part].name}" for part, count in stock.others.items()]
    return "; ".join([*said, *_beside(drawer, catalogue)])


def counts_too(drawer: Drawer, catalogue: Catalogue) -> str:
    """What counts for a drawer beside its units: `loose 1 Weir side strip; first use up 6 Barrel 2.0`."""
    return "; ".join(_beside(drawer, catalogue))


def _beside(drawer: Drawer, catalogue: Catalogue) -> list[str]:
    loose = [f"loose {count} {catalogue[part].name}" for part, count in drawer.stock.loose.items()]
    spares = [f"first use up {count} {catalogue[part].name}" for part, count in drawer.stock.spares.items()]
    return loose + spares


def packs(drawer: Drawer, catalogue: Catalogue, prices: Mapping[int, float] | None = None) -> str:
    """The packs to order: `2 packs of 25 and 3 packs of 1`."""
    if drawer.order is None:
        return ""
    sizes = list(prices) if prices else catalogue[drawer.item].packs
    found = packs_for(drawer.order.units, sizes, prices or None)
    return listed([f"{counted(count, 'pack')} of {size}" for size, count in found])


def why_order(drawer: Drawer, terms: Terms) -> str:
    """Why to order."""
    if drawer.order is None:
        return ""
    order, span = drawer.order, weeks(terms.lead_weeks + terms.review_weeks)
    return (
        f"About {yearly(drawer.a_year)} a year are asked for. Chance to last {span}: "
        f"{percent(order.before)}, with this order {percent(order.after)}."
    )


def advice(drawer: Drawer, terms: Terms) -> str:
    """Keep so many of these, or none, with the reason."""
    level, span = drawer.levels, weeks(terms.lead_weeks + terms.review_weeks)
    if level.up_to == 0:
        asked = f"about {yearly(drawer.a_year)} a year" if drawer.a_year else "none"
        return (
            f"Keep none, order when one is needed: {asked} will be asked for, and with a chance of "
            f"{percent(level.chance)} none in {span}."
        )
    less = "none" if level.up_to == 1 else f"{level.up_to - 1}"
    return (
        f"Keep {level.up_to}: with {less} the drawer lasts {span} with a chance of "
        f"{percent(level.without)} only, with {level.up_to} of {percent(level.chance)}."
    )


def holes(each: Unplanned) -> str:
    """Where something cannot be planned, `12–38 on both sides`; nothing where that is all of the frame."""
    return plain(spans_of(each.holes))


def unplanned(each: Unplanned, catalogue: Catalogue) -> str:
    """What of a frame cannot be planned, why, and what to do."""
    if not each.holes:
        return f"all of it: {_UNPLANNED[each.why]}. {_MEND[each.why]}"
    known = catalogue.get(each.part or "")
    part = f", {known.name}" if known else ""
    return f"{counted(each.pieces, 'piece')}{part} ({holes(each)}): {_UNPLANNED[each.why]}. {_MEND[each.why]}"
