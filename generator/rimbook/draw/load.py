"""The load on each hole as a bar, a layer that starts switched off.

Its length is the pull, its class and mostly its thickness the step, so that it can be read without colour.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Callable, Iterable, Sequence
from typing import NamedTuple

from rimbook.draw import palette, svg
from rimbook.draw.labels import text_width
from rimbook.draw.svg import Line, Markup, Spot

STEPS = (1.0, 1.4, 1.8, 2.2)
"""The pulls, as multiples of the tension, at which a bar becomes thicker."""

NAMED = 4
"""So many of the hardest-worked holes have their number, and those that work as hard as the last of them."""


class Bar(NamedTuple):
    """The bar of the place at an index of `frame.holes`, and the pull that it shows."""

    at: int
    pull: float
    start: Spot
    end: Spot


def step_of(pull: float) -> int:
    """The step of a pull, 1 for the least and 5 for the most."""
    return bisect_right(STEPS, pull) + 1


def pull_words(pull: float) -> str:
    """A pull as it stands on a drawing: a multiple, so that nobody takes it for a bore."""
    return f"×{pull:.1f}"


def steps_words() -> str:
    """The steps as a legend says them."""
    low = f"under {STEPS[0]:g}"
    between = [f"from {each:g}" for each in STEPS]
    return ", ".join([low, *between])


def hardest(bars: Sequence[Bar]) -> list[Bar]:
    """The bars whose number is written, those of the hardest-worked holes first."""
    most = sorted([bar.pull for bar in bars], reverse=True)[:NAMED]
    least = round(most[-1], 2) if most else 0.0
    near = [(round(bar.pull, 2), bar) for bar in bars if bar.pull > least - 0.01]
    near.sort(key=lambda each: -each[0])
    return [bar for pull, bar in near if pull >= least]


def layer(
    bars: Iterable[Bar],
    word_spot: Callable[[Bar], Spot],
    *,
    widths: Sequence[float],
    size: float,
    opacity: float,
) -> Markup:
    """The bars, one path a step with the class `pull-1` … `pull-5`, and the numbers of the hardest holes.

    `word_spot` says where the number of a bar stands, `widths` are the thicknesses of the steps, `size` that
    of the numbers, in units of the page.
    """
    drawn = [bar for bar in bars if bar.pull >= 0.005]
    by_step: dict[int, list[Line]] = {}
    for _, pull, start, end in drawn:
        by_step.setdefault(step_of(pull), []).append((start, end))
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
            *_words([(bar, word_spot(bar)) for bar in hardest(drawn)], size),
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


def _words(bars: Iterable[tuple[Bar, Spot]], size: float) -> list[Markup]:
    """The numbers: the hardest first, each where it would not lie on one before."""
    taken: list[Spot] = []
    words = []
    for bar, (x, y) in bars:
        text = pull_words(bar.pull)
        wide, high = text_width(text, size, bold=True), 1.15 * size
        if all(abs(x - left) >= wide or abs(y - top) >= high for left, top in taken):
            taken.append((x, y))
            words.append(svg.text(text, x, y + size * 0.36))
    return words
