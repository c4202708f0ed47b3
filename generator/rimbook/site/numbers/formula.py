"""Formulas written as a person types them, made into MathML that browsers draw and speak by themselves.

A formula is written once, as text: `F = 2·T·sin(θ/2)`. It is shown as MathML and, beside it, as that same
text, so that the two cannot differ. The text knows

- numbers (`0.5`, `90°`), names (`T`, `c_min`, with a subscript after `_`) and signs (`∞` and the like);
- `+ − ± · / ^`, where `/` makes a fraction of the two terms beside it and binds closer than `·`;
- relations `= ≠ < > ≤ ≥ ≈`, and a comma between two formulas;
- `√x`, `|x|`, `⌈x⌉`, `⌊x⌋`, `Σ x`, brackets, and a function as a name with a bracket: `sin(θ)`.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache

from markupsafe import Markup, escape

_TOKEN = re.compile(r"\s*(\d+(?:\.\d+)?°?|[^\W\d_]+(?:_[^\W_]+)?|[=≠<>≤≥≈+−±·/^()|⌈⌉⌊⌋√Σ,])")
_RELATIONS = frozenset("=≠<>≤≥≈")
_CLOSING = {"(": ")", "|": "|", "⌈": "⌉", "⌊": "⌋"}
_LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
_RAISED = {"2": "²", "3": "³"}


def mathml(text: str, *, block: bool = False) -> Markup:
    """The formula as one `math` element, its text in `alttext`. Raises ValueError where it is none."""
    display = Markup(' display="block"') if block else ""
    return Markup('<math{} alttext="{}">{}</math>').format(display, plain(text), _drawn(text))


def parts(text: str) -> list[str]:
    """The formulas of a text one by one: it is cut at the commas that stand in no bracket."""
    found, depth = [""], 0
    for sign in text:
        depth += (sign in "(⌈⌊") - (sign in ")⌉⌋")
        if sign == "," and not depth:
            found.append("")
        else:
            found[-1] += sign
    return [each.strip() for each in found]


def plain(text: str) -> str:
    """The formula as text to read and copy: numbers below the line and squares as they are printed."""
    text = re.sub(r"_(\d+)", lambda match: match[1].translate(_LOWERED), text)
    return re.sub(r"\^([23])(?![\d.])", lambda match: _RAISED[match[1]], text)


@cache
def _drawn(text: str) -> Markup:
    reader = _Reader(text, tuple(_tokens(text)))
    drawn = reader.list()
    if reader.here is not None:
        raise reader.wrong()
    return drawn


def _tokens(text: str) -> list[str]:
    found, at = [], 0
    while at < len(text.rstrip()):
        match = _TOKEN.match(text, at)
        if match is None:
            raise ValueError(f"{text!r} has {text[at:].strip()[0]!r}, which no formula has.")
        found.append(match[1])
        at = match.end()
    return found


def _tag(name: str, *inside: Markup | str) -> Markup:
    return Markup("<{0}>{1}</{0}>").format(name, Markup("").join(map(escape, inside)))


def _row(*inside: Markup) -> Markup:
    return inside[0] if len(inside) == 1 else _tag("mrow", *inside)


@dataclass
class _Reader:
    """Reads a formula from left to right; each method reads one kind of term and gives its MathML."""

    text: str
    tokens: tuple[str, ...]
    at: int = 0

    @property
    def here(self) -> str | None:
        return self.tokens[self.at] if self.at < len(self.tokens) else None

    def take(self) -> str:
        if self.here is None:
            raise self.wrong()
        self.at += 1
        return self.tokens[self.at - 1]

    def wrong(self) -> ValueError:
        found = f"{self.here!r} stands" if self.here else "it ends"
        return ValueError(f"{self.text!r} is no formula: {found} where a term was expected.")

    def list(self) -> Markup:
        parts = [self.relation()]
        while self.here == ",":
            parts += [Markup('<mo separator="true">{}</mo>').format(self.take()), self.relation()]
        return _row(*parts)

    def relation(self) -> Markup:
        parts = [self.sum()]
        while self.here in _RELATIONS:
            parts += [_tag("mo", self.take()), self.sum()]
        return _row(*parts)

    def sum(self) -> Markup:
        parts = [_tag("mo", self.take())] if self.here in ("−", "±") else []
        parts.append(self.product())
        while self.here in ("+", "−", "±"):
            parts += [_tag("mo", self.take()), self.product()]
        return _row(*parts)

    def product(self) -> Markup:
        parts = [self.fraction()]
        while self.here == "·":
            parts += [_tag("mo", self.take()), self.fraction()]
        return _row(*parts)

    def fraction(self) -> Markup:
        above = self.at
        over = self.power()
        if self.here == "/":
            self.at = above
            over = self.power(bare=True)
            while self.here == "/":
                self.take()
                over = _tag("mfrac", over, self.power(bare=True))
        return over

    def power(self, *, bare: bool = False) -> Markup:
        """A term and its exponent. `bare` leaves out brackets that a fraction bar makes needless."""
        start = self.at
        base = self.term(bare=bare)
        if self.here != "^":
            return base
        self.at = start
        base = self.term()
        self.take()
        return _tag("msup", base, self.term(bare=True))

    def term(self, *, bare: bool = False) -> Markup:
        sign = self.take()
        if sign == "√":
            return _tag("msqrt", self.term(bare=True))
        if sign == "Σ":
            return _row(_tag("mo", sign), self.power())
        if sign in _CLOSING:
            inside = self.list()
            if self.here != _CLOSING[sign]:
                raise self.wrong()
            closing = self.take()
            return inside if bare and sign == "(" else _row(_tag("mo", sign), inside, _tag("mo", closing))
        if sign[0].isdigit():
            return _tag("mn", sign)
        if not sign[0].isalpha():
            self.at -= 1
            raise self.wrong()
        name, _, below = sign.partition("_")
        drawn = _tag("mi", name)
        if below:
            drawn = _tag("msub", drawn, _tag("mn" if below.isdigit() else "mi", below))
        if self.here == "(":
            return _row(drawn, _tag("mo", "\u2061"), self.term())
        return drawn
