"""Sentences of a topic as HTML, with formulas between asterisks and links to other topics."""

from __future__ import annotations

import re

from markupsafe import Markup, escape

from rimbook.site.numbers.formula import mathml
from rimbook.site.numbers.links import explained

_SPECIAL = re.compile(r"\*([^*]+)\*|\[([^\]]+)\]\(([^)]+)\)")
_LINK = Markup('<a href="{}">{}</a>')


def prose(text: str, root: str) -> Markup:
    """The text escaped. `*θ*` becomes a formula, `[the pull](pull)` a link to what `explained` knows.

    Only for texts of the program itself. Raises ValueError for a formula or a name that is none.
    """
    found, at = [], 0
    for match in _SPECIAL.finditer(text):
        formula, words, name = match.groups()
        found += [
            escape(text[at : match.start()]),
            mathml(formula) if formula else _LINK.format(explained(name, root), words),
        ]
        at = match.end()
    return Markup("").join([*found, escape(text[at:])])
