"""SVG as text: the one place that knows how a drawing is written down.

Markup is built inside out: `element` takes finished children and gives text.
Only `text` and attribute values carry words from outside, and both are
cleaned and escaped here, so that no drawing has to think of it. Text is joined directly,
since svgwrite takes four times as long for the same drawing.
"""

from __future__ import annotations

import re
from collections.abc import Container, Iterable, Sequence
from functools import lru_cache
from itertools import cycle
from typing import NewType

Markup = NewType("Markup", str)
Value = str | float | int | None
Spot = tuple[float, float]
Line = tuple[Spot, Spot]

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


WHOLE = 1.5 * 2**52
"""What is added to a float to round it to a whole one: so large a float has no digits after the point.

Halves go to the even side, as `round` does it, which takes longer than the rest of a number.
"""


class _Tenths(dict[float, str]):
    """Path data's numbers by `WHOLE` plus so many tenths, as far as they have come up."""

    def __missing__(self, key: float) -> str:
        text = number((key - WHOLE) / 10)
        if len(self) < 1 << 14:
            self[key] = text
        return text


_TENTHS = _Tenths()


def escape(words: str) -> str:
    """Words from anywhere, made fit to stand in text or in an attribute."""
    if not _ODD.search(words):
        return words
    return _UNFIT.sub("", words).translate(_ESCAPES)


def escaped(texts: Sequence[str]) -> Sequence[str]:
    """Many short texts, made fit like one: mostly none has anything odd in it."""
    return [escape(each) for each in texts] if _ODD.search("".join(texts)) else texts


def element(name: str, *children: Markup, **attributes: Value) -> Markup:
    """One element. `class_` gives `class`, `data_address` gives `data-address`; None leaves one out."""
    head = name + _attributes(tuple(attributes.items()))
    return Markup(f"<{head}>{''.join(children)}</{name}>" if children else f"<{head}/>")


@lru_cache(maxsize=1 << 11)
def _attributes(attributes: tuple[tuple[str, Value], ...]) -> str:
    """Attributes as an element has them: mostly the style of something, the same again and again."""
    text = ""
    for key, value in attributes:
        if value is not None:
            shown = escape(value) if isinstance(value, str) else number(value)
            name = key if key == "viewBox" else key.rstrip("_").replace("_", "-")
            text += f' {name}="{shown}"'
    return text


def words(text: str) -> Markup:
    """Text content, escaped."""
    return Markup(escape(text))


def text(content: str, x: float, y: float, **attributes: Value) -> Markup:
    """A line of text whose baseline starts (or is centred) at a spot."""
    more = _attributes(tuple(attributes.items()))
    return Markup(f'<text x="{number(x)}" y="{number(y)}"{more}>{escape(content)}</text>')


def column(x: float, ys: Sequence[str], texts: Sequence[str], bold: Container[int] = ()) -> Markup:
    """Lines of text below each other: their heights, as `number` writes them, their words, which are bold."""
    start, weight = f'<text x="{number(x)}" y="', _attributes((("font_weight", "bold"),))
    lines = [
        f'{start}{y}"{weight if index in bold else ""}>{words}</text>'
        for index, (y, words) in enumerate(zip(ys, escaped(texts), strict=True))
    ]
    return Markup("".join(lines))


def group(*children: Markup, **attributes: Value) -> Markup:
    """A group, or nothing where it would be empty."""
    kept = [child for child in children if child]
    return element("g", *kept, **attributes) if kept else NOTHING


def layer(name: str, *children: Markup, **attributes: Value) -> Markup:
    """A group that a page can switch on and off by its class `layer-…`."""
    return group(*children, class_=f"layer layer-{name}", **attributes)


def path(d: str, **attributes: Value) -> Markup:
    """A path, or nothing where there is nothing to draw. `d` is path data, as the functions below give it."""
    return Markup(f'<path d="{d}"{_attributes(tuple(attributes.items()))}/>') if d else NOTHING


def polyline(spots: Iterable[Spot], *, closed: bool = False) -> str:
    """Path data through the spots, to a tenth of a unit."""
    tenths, whole = _TENTHS, WHOLE
    data = "M" + "L".join([f"{tenths[x * 10 + whole]} {tenths[y * 10 + whole]}" for x, y in spots])
    return data + "Z" if closed else data


def segments(lines: Iterable[Line]) -> str:
    """Path data of separate straight lines."""
    tenths, whole = _TENTHS, WHOLE
    return "".join(
        [
            f"M{tenths[ax * 10 + whole]} {tenths[ay * 10 + whole]}"
            f"L{tenths[bx * 10 + whole]} {tenths[by * 10 + whole]}"
            for (ax, ay), (bx, by) in lines
        ]
    )


def dashes(line: Line, shares: Iterable[float]) -> str:
    """Path data of a straight line, drawn up to the first share of it, left out up to the next, and so on.

    Each step is taken from where the one before came to lie, to a tenth of a unit, so that rounding never
    adds up.
    """
    tenths, whole = _TENTHS, WHOLE
    (start_x, start_y), (end_x, end_y) = line
    dx, dy = end_x - start_x, end_y - start_y
    x, y = start_x * 10 + whole, start_y * 10 + whole
    data = [f"M{tenths[x]} {tenths[y]}"]
    for pen, share in zip(cycle("lm"), shares, strict=False):
        to_x, to_y = (start_x + dx * share) * 10 + whole, (start_y + dy * share) * 10 + whole
        data.append(f"{pen}{tenths[to_x - x + whole]} {tenths[to_y - y + whole]}")
        x, y = to_x, to_y
    return "".join(data)


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
