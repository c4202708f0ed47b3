"""Where a frame, a maker, a part or a bore stands in the matrices."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from typing import Literal

from rimbook.site.links import further, link
from rimbook.site.summary import Summary

What = Literal["bores", "parts"]

WHATS: tuple[What, What] = ("bores", "parts")

ROWS = 100
"""The most frames on one page of a matrix."""


class MatrixPlaces:
    """The rows of every sport in order of maker, and on which page each of them is.

    `makers` are the slugs of makers by name.
    """

    def __init__(self, frames: Iterable[Summary], makers: Mapping[str, str]) -> None:
        self.makers = makers
        rows: defaultdict[str, list[Summary]] = defaultdict(list)
        for frame in sorted(frames, key=_order):
            rows[frame.sport].append(frame)
        self.rows = dict(sorted(rows.items()))
        self.pages = {
            frame.slug: place // ROWS + 1 for rows in self.rows.values() for place, frame in enumerate(rows)
        }

    def of_frame(self, what: What, frame: Summary, root: str) -> str:
        """The address of a frame's row."""
        return link(root, self._page(what, frame), row_anchor(frame.slug))

    def of_maker(self, what: What, first: Summary, root: str) -> str:
        """The address at which the rows of a maker begin, by the first of them."""
        return link(root, self._page(what, first), self.maker_anchor(first.maker))

    def of_sports(self, what: What, frames: Iterable[Summary], root: str) -> Iterator[tuple[str, str]]:
        """Each sport that some frames belong to, with the address of the row of the first of them."""
        first: dict[str, Summary] = {}
        for frame in frames:
            first.setdefault(frame.sport, frame)
        for sport, frame in sorted(first.items(), key=lambda each: each[0]):
            yield sport, self.of_frame(what, frame, root)

    def maker_anchor(self, maker: str) -> str:
        """The anchor of a maker's rows on a page."""
        return f"maker-{self.makers[maker]}"

    def _page(self, what: What, frame: Summary) -> str:
        return further(matrix_path(what, frame.sport), self.pages[frame.slug])


def matrix_path(what: What, sport: str) -> str:
    """The first page of a matrix."""
    return f"matrix/{what}/{sport}/"


def row_anchor(slug: str) -> str:
    """The anchor of a frame's row on a page."""
    return f"row-{slug}"


def _order(frame: Summary) -> tuple[str, str, str, int, str]:
    return frame.maker.casefold(), frame.maker, frame.name.casefold(), frame.year or 0, frame.slug
