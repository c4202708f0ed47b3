"""What a shop hands in beside the club's file: its prices and stock, and what it used. Text in, rows out.

Prices have the columns of the page of prices: `kind`, `part`, `count`, `price`, `currency`, `seller`. A row
of kind `sold` is a pack of so many pieces, one of kind `shelf` what is there. Counts have the columns `part`,
`count`, `weeks`; no weeks are a year.
"""

from __future__ import annotations

import csv
import io
import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from rimbook.bench.shelf_terms import WEEKS
from rimbook.bench.shelf_update import Used

_MOST_ROWS = 5000
MOST_COUNT = 1_000_000
MOST_WEEKS = 5200
_OTHER_KINDS = ("terms", "seconds")


class Fault(NamedTuple):
    """What is wrong with a row; the heading is row 1."""

    row: int
    message: str


@dataclass(frozen=True, slots=True)
class Prices:
    """The cheapest price of each pack, by part and count, in one currency; and what is on the shelf."""

    currency: str = ""
    packs: dict[str, dict[int, float]] = field(default_factory=dict)
    shelf: dict[str, int] = field(default_factory=dict)

    def unit(self, part: str) -> float | None:
        """The least that one piece costs, or None where no price is known."""
        return min((price / count for count, price in self.packs.get(part, {}).items()), default=None)


def read_prices(text: str) -> tuple[Prices, tuple[Fault, ...]]:
    """A price list. Rows that cannot be read are left out and told."""
    found = Prices()
    currency = ""
    faults: list[Fault] = []
    for row, cells in _rows(text, ("part", "count"), faults):
        kind = (cells.get("kind") or "sold").lower()
        if kind in _OTHER_KINDS:
            continue
        own = cells.get("currency", "").upper()
        try:
            if own and currency and own != currency:
                raise ValueError(f"The price is in {own}; expected {currency}: a list has one currency.")
            if kind not in ("sold", "shelf"):
                raise ValueError(f"{kind!r} is no kind of row; expected sold or shelf.")
            part, count = _part(cells), _count(cells)
            if kind == "shelf":
                found.shelf[part] = count
                continue
            if not count:
                raise ValueError(f"{part} is sold in packs of none; expected 1 or more.")
            price = _price(cells)
        except ValueError as error:
            faults.append(Fault(row, str(error)))
            continue
        currency = currency or own
        packs = found.packs.setdefault(part, {})
        packs[count] = min(price, packs.get(count, math.inf))
    return Prices(currency, found.packs, found.shelf), tuple(faults)


def read_used(text: str) -> tuple[tuple[Used, ...], tuple[Fault, ...]]:
    """What was used. Rows that cannot be read are left out and told."""
    faults: list[Fault] = []
    found = []
    for row, cells in _rows(text, ("part", "count"), faults):
        try:
            found.append(Used(_part(cells), _count(cells), _weeks(cells) / WEEKS))
        except ValueError as error:
            faults.append(Fault(row, str(error)))
    return tuple(found), tuple(faults)


def _rows(text: str, needed: Sequence[str], faults: list[Fault]) -> Iterator[tuple[int, dict[str, str]]]:
    text = text.removeprefix("\ufeff")
    first = text.split("\n", 1)[0]
    separator = max(",;\t", key=first.count)
    try:
        rows = list(csv.reader(io.StringIO(text, newline=""), delimiter=separator, strict=True))
    except csv.Error as error:
        faults.append(Fault(1, f"It is no table of comma-separated values: {error}."))
        return
    heading = [cell.strip().lower() for cell in rows[0]] if rows else []
    missing = [name for name in needed if name not in heading]
    if missing:
        found = f"found {', '.join(heading)}" if any(heading) else "there is no row"
        faults.append(Fault(1, f"The heading lacks {' and '.join(missing)}; {found}."))
        return
    for row, cells in enumerate(rows[1:], start=2):
        if row > _MOST_ROWS:
            faults.append(Fault(row, f"There are more than {_MOST_ROWS:,} rows; the rest is left out."))
            return
        if len(cells) == len(heading):
            yield row, {name: cell.strip() for name, cell in zip(heading, cells, strict=True)}
        elif any(cell.strip() for cell in cells):
            faults.append(
                Fault(row, f"It has {len(cells)} cells; expected {len(heading)}, as in the heading.")
            )


def _part(cells: dict[str, str]) -> str:
    part = cells["part"].lower()
    if not re.fullmatch(r"[a-z0-9]+(?:-[a-z0-9]+)*", part):
        raise ValueError(f"{cells['part']!r} is no id of a part; expected one such as barrel-21-short.")
    return part


def _count(cells: dict[str, str]) -> int:
    return int(_number(cells["count"], "count", MOST_COUNT, r"\d{1,9}", "a whole number"))


def _price(cells: dict[str, str]) -> float:
    text = cells.get("price", "").replace(",", ".")
    return _number(text, "price", 1e9, r"\d{1,9}(?:\.\d{1,4})?", "an amount such as 4.90")


def _weeks(cells: dict[str, str]) -> float:
    text = cells.get("weeks", "").replace(",", ".")
    if not text:
        return WEEKS
    weeks = _number(text, "number of weeks", MOST_WEEKS, r"\d{1,4}(?:\.\d{1,4})?", "more than 0")
    if not weeks:
        raise ValueError("The number of weeks is 0; expected more than 0.")
    return weeks


def _number(text: str, what: str, most: float, form: str, expected: str) -> float:
    if not re.fullmatch(form, text, re.ASCII) or float(text) > most:
        raise ValueError(f"The {what} is {text!r}; expected {expected}, at most {most:,.0f}.")
    return float(text)
