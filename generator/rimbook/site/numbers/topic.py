"""What a page of numbers is made of: words first, then formula, symbols, sources and worked examples.

All sentences of a topic but those of its tables and examples are read by `prose`: they may hold formulas and
links. Texts of tables and examples are plain, since names out of the book occur in them.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from typing import NamedTuple

from rimbook.bench.thresholds import COMMON, Thresholds
from rimbook.site.numbers.shown import Shown


class Formula(NamedTuple):
    """One formula as `formula.mathml` reads it, what it gives, and the anchor under which it is linked."""

    anchor: str
    gives: str
    text: str


class Symbol(NamedTuple):
    """A symbol of the formulas, what it stands for, and its unit (empty for a plain number)."""

    text: str
    means: str
    unit: str = ""


class Line(NamedTuple):
    """One line of a worked example: what is worked out, how, and what comes out."""

    what: str
    working: str
    value: str


class Table(NamedTuple):
    """A table of plain texts; the first cell of a row is its heading."""

    caption: str
    heads: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


class Example(NamedTuple):
    """A worked example. `source` names who published it; empty for one out of this book."""

    title: str
    lines: tuple[Line, ...]
    source: str = ""
    table: Table | None = None


class Constant(NamedTuple):
    """A number that the code keeps to and a site cannot change."""

    value: str
    says: str
    source: str = COMMON


def texts(written: str) -> tuple[str, ...]:
    """Paragraphs with an empty line between them, each on one line."""
    return tuple(" ".join(each.split()) for each in written.split("\n\n"))


def nothing_published(limits: Thresholds) -> Iterable[Example]:
    """For a topic of which no published example was found."""
    return ()


@dataclass(frozen=True, slots=True)
class Topic:
    """One page.

    `published` gives examples that somebody else published, `here` those out of the book, `tables` what
    a reader looks up. `thresholds` names those that the topic uses. `caution` stands where there is a risk.
    """

    slug: str
    title: str
    asks: str
    words: tuple[str, ...]
    formulas: tuple[Formula, ...]
    symbols: tuple[Symbol, ...]
    sources: tuple[str, ...]
    assumes: tuple[str, ...]
    stops: tuple[str, ...]
    here: Callable[[Shown], Iterable[Example]]
    published: Callable[[Thresholds], Iterable[Example]] = nothing_published
    tables: Callable[[Thresholds], Iterable[Table]] | None = None
    thresholds: tuple[str, ...] = ()
    constants: tuple[Constant, ...] = ()
    caution: str = ""
