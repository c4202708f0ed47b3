"""What the page of prices is given: what the parts of the book are called, and a list of invented prices."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from rimbook.book.model import Catalogue, Part
from rimbook.site.handover import handover

PRICES_FILE = "data/prices.js"

_PIECE = {"single": 45, "wide": 60, "twin-even": 90, "twin-uneven": 95, "strip": 480, "set": 0}
"""Invented prices of one piece by kind, in cents."""

_LAST = 9
_SELLERS = ("Example Supply", "Sample & Sons")


def prices_file(catalogue: Catalogue) -> bytes:
    """The script at `PRICES_FILE`."""
    return handover("prices", prices_data(catalogue))


def prices_data(catalogue: Catalogue) -> dict[str, Any]:
    """Names by part id, and the example list as the browser's `buy_list.js` has it: amounts in cents."""
    return {
        "names": {part.id: part.name for part in catalogue.values()},
        "example": {
            "currency": "EUR",
            "hourly": 3000,
            "least": 500,
            "markup": 20,
            "sold": list(_sold(catalogue)),
            "shelf": list(_shelf(catalogue)),
        },
    }


def _sold(catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    """Each pack that the book knows: the larger, the cheaper a piece; a set for much less than its parts."""
    for part in catalogue.values():
        for count in part.packs:
            price = round(
                _worth(part, catalogue) * count * (1.0 if count == 1 else 0.75 if count < 50 else 0.55)
            )
            yield {"part": part.id, "count": count, "price": _odd(price), "seller": _SELLERS[count > 10]}


def _shelf(catalogue: Catalogue) -> Iterator[dict[str, Any]]:
    """A few left-over single parts: none of a kind that a repair could live on."""
    for part in catalogue.values():
        if part.kind in ("single", "wide") and part.packs:
            count = len(part.id) % 4
            if count:
                yield {"part": part.id, "count": count, "price": _odd(round(_PIECE[part.kind] * 1.4))}


def _worth(part: Part, catalogue: Catalogue) -> float:
    if part.kind != "set":
        return _PIECE[part.kind]
    held = sum(_PIECE[catalogue[each].kind] * n for each, n in part.contains.items() if each in catalogue)
    return max(500.0, held * 0.5)


def _odd(price: int) -> int:
    """The nearest price that ends in a nine, as prices do."""
    return max(_LAST, round((price - _LAST) / 10) * 10 + _LAST)
