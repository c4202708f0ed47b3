"""Where each number of the book is explained: one name for each, and the place it leads to.

Pages link their numbers through `explained`, so that a topic can move without a page noticing.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from rimbook.book.problems import nearest
from rimbook.site.links import link
from rimbook.site.numbers.topics import TOPICS
from rimbook.site.pages import KINDS

SHEET = "formulas"


def topic_path(slug: str) -> str:
    """The page of a topic."""
    return f"numbers/{slug}/"


def _anchors() -> Iterator[tuple[str, tuple[str, str]]]:
    for topic in TOPICS:
        for formula in topic.formulas:
            yield formula.anchor, (topic_path(topic.slug), formula.anchor)
    for topic in TOPICS:
        yield topic.slug, (topic_path(topic.slug), "")
    yield "thresholds", (KINDS[SHEET].pattern, "thresholds")
    yield SHEET, (KINDS[SHEET].pattern, "")


ANCHORS: Mapping[str, tuple[str, str]] = dict(_anchors())
"""By name: the path of the page from the root of the site, and the place on it, empty for its top.

The name of a topic leads to its page, the name of a formula to that formula.
"""


WORKED_OUT = {"my-shelf": KINDS["my-shelf"].pattern}
"""Pages that work a topic out for whoever types something in, by name."""


def explained(name: str, root: str = "") -> str:
    """The address at which a number is explained or worked out. `root` is the way up from the page that asks.

    Raises ValueError, naming the nearest, for a name that is none.
    """
    if name in WORKED_OUT:
        return link(root, WORKED_OUT[name])
    if name not in ANCHORS:
        close = nearest(name, ANCHORS)
        hint = f"nearest: {close}" if close else f"expected one of {', '.join(ANCHORS)}"
        raise ValueError(f"{name!r} is explained nowhere; {hint}.")
    return link(root, *ANCHORS[name])
