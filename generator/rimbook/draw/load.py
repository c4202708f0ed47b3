"""The load on each hole as a bar, a layer that starts switched off.

Its length is the pull, its class and mostly its thickness the step, so that it can be read without colour.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterable, Mapping, Sequence
from math import dist
from typing import NamedTuple

from rimbook.book.model import Address
from rimbook.draw import palette, svg
from rimbook.draw.svg import Markup, Spot

STEPS = (1.0, 1.4, 1.8, 2.2)
"""The pulls, as multiples of the tension, at which a bar becomes thicker."""

NAMED = 4
"""So many of the hardest-worked holes have their number, and those that work as hard as the last of them."""


class Bar(NamedTuple):
    """The bar of one hole, the pull that it shows, and where its number stands."""

    start: Spot
    end: Spot
    pull: float
    word: Spot


def step_of(pull: float) -> int:
    """The step of a pull, 1 for the least and 5 for the most."""
    return bisect_right(STEPS, pull) + 1


def steps_words() -> str:
    """The steps as a legend says them."""
    low = f"under {STEPS[0]:g}"
    between = [f"from {each:g}" for each in STEPS]
    return ", ".join([low, *between])


def named(pulls: Mapping[Address, float]) -> list[Address]:
    """The holes whose number is written, the hardest-worked first."""
    shown = {address: round(pull, 2) for address, pull in pulls.items() if round(pull, 2)}
    least = sorted(shown.values(), reverse=True)[:NAMED][-1:] or [0.0]
    return sorted(
        (address for address, pull in shown.items() if pull >= least[0]), key=lambda each: -shown[each]
    )


def layer(
    bars: Iterable[tuple[Address, Bar]], widths: Sequence[float], size: float, opacity: float
) -> Markup:
    """The bars, one path a step with the class `pull-1` … `pull-5`, and the numbers of the hardest holes.

    `widths` are the thicknesses of the steps, `size` that of the numbers, in units of the page.
    """
    drawn = {address: bar for address, bar in bars if bar.pull >= 0.005}
    by_step: dict[int, list[tuple[Spot, Spot]]] = {}
    for bar in drawn.values():
        by_step.setdefault(step_of(bar.pull), []).append((bar.start, bar.end))
    words = [
        svg.text(f"{bar.pull:.1f}", bar.word[0], bar.word[1] + size * 0.36) for bar in _worded(drawn, size)
    ]
    return svg.layer(
        "load",
        *[
            svg.path(
                svg.segments(by_step[step]),
                class_=f"pull pull-{step}",
                stroke=palette.TEXT.light,
                stroke_width=widths[step - 1],
                stroke_opacity=opacity,
            )
            for step in sorted(by_step)
        ],
        svg.group(
            *words,
            class_="pull-words",
            font_size=size,
            font_weight="bold",
            fill=palette.TEXT.light,
            stroke=palette.PAGE.light,
            stroke_width=2.5,
            paint_order="stroke",
        ),
        text_anchor="middle",
        display="none",
        aria_hidden="true",
    )


def _worded(bars: Mapping[Address, Bar], size: float) -> list[Bar]:
    """The bars with a number: the hardest first, where it would not lie on one before."""
    words: list[Bar] = []
    for address in named({address: bar.pull for address, bar in bars.items()}):
        if all(dist(bars[address].word, other.word) >= 1.4 * size for other in words):
            words.append(bars[address])
    return words
