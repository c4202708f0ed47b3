"""Long lists broken over several pages, so that no page grows with the book."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Generic, TypeVar

from rimbook.site.links import further, link
from rimbook.site.pages import to_root

ROWS = 250

T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Sheet(Generic[T]):
    """One page of a list: its number, path and rows, and the links to all pages of the list."""

    number: int
    path: str
    rows: Sequence[T]
    links: Sequence[tuple[int, str]]

    @property
    def suffix(self) -> str:
        """What the titles of later pages add."""
        return "" if self.number == 1 else f", page {self.number}"


def sheets(path: str, rows: Sequence[T], most: int = ROWS) -> Iterator[Sheet[T]]:
    """Break a list up into pages of at most so many rows. An empty list still gives one page."""
    count = max(1, -(-len(rows) // most))
    for number in range(1, count + 1):
        own = further(path, number)
        links = [(other, link(to_root(own), further(path, other))) for other in range(1, count + 1)]
        yield Sheet(number, own, rows[(number - 1) * most : number * most], links)
