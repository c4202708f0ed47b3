"""The page that lists every rule a map or a part is held to."""

from __future__ import annotations

from collections.abc import Iterable
from functools import partial

from rimbook.bench.check import Entry
from rimbook.site.pages import KINDS, Page
from rimbook.site.templates import render
from rimbook.site.words import counted

_SCOPES: dict[str, str] = {
    "map": "Rules for each map",
    "parts": "Rules for each file of parts",
    "club": "Rules for each club",
    "book": "Rules for the whole book",
}


def rules_page(rules: Iterable[Entry]) -> Page:
    """All rules by what they look at, each with a message as it is really printed."""
    rules = list(rules)
    groups = [(title, [rule for rule in rules if rule.scope == scope]) for scope, title in _SCOPES.items()]
    return Page(
        path="rules/",
        kind="rules",
        title=KINDS["rules"].title,
        description=f"The {counted(len(rules), 'rule')} that every map and part of this book is checked by.",
        make=partial(render, "rules.html", groups=[group for group in groups if group[1]]),
    )
