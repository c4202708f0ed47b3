"""One type for everything that can be wrong with what a person wrote."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches
from typing import Literal

Severity = Literal["error", "warning", "note"]

# A map with a problem of these cannot be placed; what geometry would say of it is only an echo.
UNPLACEABLE = frozenset(
    ("even-mains", "passes-add-up", "strings-on-each-half", "walk-in-order", "head-large-enough")
)

# What comes after a problem of these was not looked at: a file is read, then understood, then held to rules.
STOPPING = UNPLACEABLE | {"readable", "shape", "meaning"}


@dataclass(frozen=True, slots=True)
class Problem:
    """What is wrong, where, what was expected, and how to mend it.

    `line` and `column` count from 1. `message` is one sentence that names the
    offending thing. The other texts are short, and left out where they would
    only repeat it.
    """

    rule: str
    severity: Severity
    file: str
    line: int
    column: int
    message: str
    hole: str | None = None
    found: str | None = None
    expected: str | None = None
    nearest: str | None = None
    tip: str | None = None

    @property
    def place(self) -> str:
        """`file:line:column`, as editors open it."""
        return f"{self.file}:{self.line}:{self.column}"


def nearest(word: str, choices: Iterable[str]) -> str | None:
    """The choice spelled most like the word, if one is close."""
    return next(iter(get_close_matches(word[:200], list(choices), n=1, cutoff=0.6)), None)


def in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """By file, then place, then rule: the order in which a person mends them."""
    return tuple(sorted(problems, key=lambda p: (p.file, p.line, p.column, p.rule, p.message)))
