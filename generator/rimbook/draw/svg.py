"""SVG as text: the one place that knows how a drawing is written down.

Markup is built inside out: `element` takes finished children and gives text.
Only `text` and attribute values carry words from outside, and both are
cleaned and escaped here, so that no drawing has to think of it. Text is joined directly,
since svgwrite takes four times as long for the same drawing.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import NewType

Markup = NewType("Markup", str)
Value = str | float | int | None
Spot = tuple[float, float]

NOTHING = Markup("")

_ODD = re.compile("[^ !#-%'-;=?-~]")
# What XML 1.0 cannot carry, what a reader cannot see, and what turns text round.
_UNFIT = re.compile(
    "[^\t\n\r\x20-\x7e\xa0-\xac\xae-\u061b\u061d-\u180d\u180f-\u200a\u2010-\u2027\u202f-\u205f"
    "\u2070-\ud7ff\uf900-\ufefe\uff00-\uffef\U00010000-\U0001fffd]"
)
_ESCAPES = str.maketrans(
    {"&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;", "\t": " ", "\n": " ", "\r": " "}
)


def number(value: float) -> str:
    """A number to a hundredth, with no idle zeros, and never `-0`."""
    text = f"{value:.2f}"
    if text[-1] != "0":
        return text
    text = text.rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


@lru_cache(maxsize=1 << 14)
def tenths(value: int) -> str:
    """So many tenths written as a number: the precision of path data."""
    return number(value / 10)


def escape(words: str) -> str:
    """Words from anywhere, made fit to stand in text or in an attribute."""
    if not _ODD.search(words):
        return words
    return _UNFIT.sub("", words).translate(_ESCAPES)


def element(name: str, *children: Markup, **attributes: Value) -> Markup:
    """One element. `class_` gives `class`, `data_address` gives `data-address`; None leaves one out."""
    head = name
    for key, value in attributes.items():
        if value is None:
            continue
        shown = escape(value) if isinstance(value, str) else number(value)
        head += f' {_NAMES.get(key) or _attribute(key)}="{shown}"'
    if not children:
        return Markup(f"<{head}/>")
    return Markup(f"<{head}>{''.join(children)}</{name}>")


_NAMES: dict[str, str] = {"viewBox": "viewBox", "x": "x", "y": "y", "d": "d", "id": "id"}


def _attribute(key: str) -> str:
    name = _NAMES[key] = key.rstrip("_").replace("_", "-")
    return name


def words(text: str) -> Markup:
    """Text content, escaped."""
    return Markup(escape(text))


def text(content: str, x: float, y: float, **attributes: Value) -> Markup:
    """A line of text whose baseline starts (or is centred) at a spot."""
    if attributes:
        return element("text", words(content), x=x, y=y, **attributes)
    return Markup(f'<text x="{number(x)}" y="{number(y)}">{escape(content)}</text>')


def group(*children: Markup, **attributes: Value) -> Markup:
    """A group, or nothing where it would be empty."""
    kept = [child for child in children if child]
    return element("g", *kept, **attributes) if kept else NOTHING


def layer(name: str, *children: Markup, **attributes: Value) -> Markup:
    """A group that a page can switch on and off by its class `layer-…`."""
    return group(*children, class_=f"layer layer-{name}", **attributes)


def path(d: str, **attributes: Value) -> Markup:
    """A path, or nothing where there is nothing to draw."""
    return element("path", d=d, **attributes) if d else NOTHING


def polyline(spots: Iterable[Spot], *, closed: bool = False) -> str:
    """Path data through the spots, to a tenth of a unit."""
    data = "M" + "L".join([f"{tenths(round(x * 10))} {tenths(round(y * 10))}" for x, y in spots])
    return data + "Z" if closed else data


def segments(pairs: Iterable[tuple[Spot, Spot]]) -> str:
    """Path data of separate straight lines."""
    return "".join([polyline(pair) for pair in pairs])


def drawing(
    *children: Markup, name: str, title: str, description: str, box: tuple[float, float, float, float]
) -> str:
    """A whole drawing: `name` starts every id in it, and `box` is left, top, width, height."""
    return element(
        "svg",
        element("title", words(title), id=f"{name}-title"),
        element("desc", words(description), id=f"{name}-desc"),
        *children,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=" ".join(number(round(value, 1)) for value in box),
        class_=f"drawing drawing-{name}",
        role="group",
        aria_labelledby=f"{name}-title",
        font_family="sans-serif",
        fill="none",
    )
