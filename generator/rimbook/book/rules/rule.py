"""What a rule is, what it is given to look at, and what it hands back."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from datetime import date
from typing import Any, Literal

from rimbook.book.model import Book
from rimbook.book.problems import Severity
from rimbook.book.reader import Path

Scope = Literal["map", "parts", "club", "book"]


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that a rule does not like.

    `path` leads into the document: of the map or catalogue file that is looked
    at, or of `file` where a rule looks at the whole book. `key` means that the
    key itself is at fault, not what it holds. `severity` is given where one
    case weighs less than the rule usually does.
    """

    path: Path
    message: str
    hole: str | None = None
    found: str | None = None
    expected: str | None = None
    nearest: str | None = None
    tip: str | None = None
    file: str | None = None
    key: bool = False
    severity: Severity | None = None


@dataclass(frozen=True, slots=True)
class Given:
    """What every rule may know besides the file it looks at.

    `unread_maps` are the slugs of maps that could not be read, and
    `parts_unread` says whether a catalogue file could not: what they would
    have said is unknown, so nobody is blamed for naming them.
    """

    book: Book
    today: date
    unread_maps: frozenset[str] = frozenset()
    parts_unread: bool = False


@dataclass(frozen=True, slots=True)
class Rule:
    """One rule: a name, a sentence for people, and the check itself.

    By scope the check is called with a `MapFile`, a `PartsFile`, a `ClubFile`, or
    all that was `Loaded`, and always with `Given`. `example` is a message as the rule
    really prints it; a test holds it to that.
    """

    name: str
    scope: Scope
    severity: Severity
    summary: str
    example: str
    check: Callable[[Any, Given], Iterable[Finding]]
