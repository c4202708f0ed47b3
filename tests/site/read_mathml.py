"""MathML read back as arithmetic: what a page shows is worked out, to hold it against the code."""

from __future__ import annotations

import math
from collections.abc import Mapping
from unicodedata import normalize

from lxml import etree

_SIGNS = {
    "·": "*",
    "−": "-",
    "+": "+",
    "(": "(",
    ")": ")",
    "=": "==",
    "≤": "<=",
    "≥": ">=",
    "<": "<",
    ",": ",",
}
_FUNCTIONS = {
    "sin": math.sin,
    "cos": math.cos,
    "asin": math.asin,
    "min": min,
    "max": max,
    "sqrt": math.sqrt,
    "abs": abs,
    "ceil": math.ceil,
    "floor": math.floor,
    "radians": math.radians,
}
_PAIRS = {"|": "abs", "⌈": "ceil", "⌊": "floor"}


def value(markup: str, symbols: Mapping[str, float]) -> float:
    """The right side of a drawn formula with numbers for its symbols."""
    return float(eval(_python(markup).split("==")[-1], dict(_FUNCTIONS), _named(symbols)))


def holds(markup: str, symbols: Mapping[str, float]) -> bool:
    """Whether a drawn relation is true of these numbers."""
    return bool(eval(_python(markup), dict(_FUNCTIONS), _named(symbols)))


def _named(symbols: Mapping[str, float]) -> dict[str, float]:
    """Names as Python compares them: the sign for micro is a Greek letter there."""
    return {normalize("NFKC", name): number for name, number in symbols.items()}


def _python(markup: str) -> str:
    return _read(etree.fromstring(markup))


def _read(element: etree._Element) -> str:
    children = list(element)
    if element.tag == "mi":
        return element.text or ""
    if element.tag == "mn":
        text = element.text or ""
        return f"radians({text[:-1]})" if text.endswith("°") else text
    if element.tag == "mo":
        return "" if element.text == "\u2061" else _SIGNS.get(element.text or "", element.text or "")
    if element.tag == "mfrac":
        over, under = children
        return f"(({_read(over)})/({_read(under)}))"
    if element.tag == "msup":
        base, exponent = children
        return f"(({_read(base)})**({_read(exponent)}))"
    if element.tag == "msub":
        name, below = children
        return f"{_read(name)}_{_read(below)}"
    if element.tag == "msqrt":
        return f"sqrt({''.join(map(_read, children))})"
    assert element.tag in ("math", "mrow")
    if children and children[0].tag == "mo" and children[0].text in _PAIRS:
        return f"{_PAIRS[children[0].text]}({''.join(map(_read, children[1:-1]))})"
    return "".join(map(_read, children))
