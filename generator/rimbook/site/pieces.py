"""Small pieces of HTML that stand many times on a page, for templates as filters.

A filter costs a tenth of a macro, and a page of a frame has hundreds of these.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from markupsafe import Markup, escape

from rimbook.book.model import Part
from rimbook.site.bench_view import Presses, Times
from rimbook.site.links import link, part_path
from rimbook.site.numbers.links import explained
from rimbook.site.spans import Span


def holes_links(spans: Sequence[Span], base: str = "") -> Markup:
    """`1–8 and 12` as links to the first hole of each run, and which of them both sides have."""
    last, base = len(spans) - 1, escape(base)
    links = [
        f'<a href="{base}#{first}">{text}</a>'
        f"{' on both sides' if both and (index == last or not spans[index + 1].both) else ''}"
        for index, (text, first, both) in enumerate(spans)
    ]
    return Markup(", ".join(links))  # noqa: S704 - an address, already escaped, and numbers


def part_link(part: Part, root: str) -> Markup:
    """The name of a part as a link to its page."""
    return _linked(link(root, part_path(part.id)), part.name)


def why(words: str, topic: str, root: str) -> Markup:
    """Words as a link to where a number is explained."""
    return _linked(explained(topic, root), words)


def force(times: Times) -> Markup:
    """A force that the browser can work out for another tension."""
    return Markup(f'<span data-rb-times="{times.factors}">{times.newtons}</span> N')  # noqa: S704 - numbers


def press(presses: Presses) -> Markup:
    """A pressure that the browser can work out for another tension."""
    return Markup(  # noqa: S704 - numbers
        f'<span data-rb-presses="{presses.per_newton}">{presses.mpa}</span> MPa'
    )


@lru_cache(maxsize=4096)
def _linked(address: str, words: str) -> Markup:
    return Markup(f'<a href="{escape(address)}">{escape(words)}</a>')  # noqa: S704 - both are escaped
