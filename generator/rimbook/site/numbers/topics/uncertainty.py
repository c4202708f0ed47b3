"""How well a measured length is known."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from rimbook.bench.thresholds import Thresholds
from rimbook.bench.uncertainty import (
    barrel_size,
    bore_size,
    combined,
    go_nogo,
    limits,
    of_resolution,
    of_tolerance,
)
from rimbook.site.numbers.cited import GUM
from rimbook.site.numbers.figures import fig, fixed, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Table, Topic, texts

# GUM F.2.2.1 prints u = 0.29·δx for a reading in steps of δx.
PRINTED_SHARE = 0.29


class Pins(NamedTuple):
    """The pins of an example, in mm."""

    go: float
    nogo: float


PINS = Pins(2.60, 2.65)


def _published(thresholds: Thresholds) -> Iterator[Example]:
    step = 0.05
    yield Example(
        "A calliper that shows steps of 0.05 mm",
        (
            Line("Standard uncertainty", f"{fig(step)} / √12", fixed(of_resolution(step), 4, "mm")),
            Line(
                "As printed, rounded",
                f"{fig(PRINTED_SHARE)} × {fig(step)}",
                fixed(PRINTED_SHARE * step, 4, "mm"),
            ),
        ),
        f"{GUM}, F.2.2.1, for its 0.29; the step is ours",
    )


def _here(shown: Shown) -> Iterator[Example]:
    size, coverage = go_nogo(*PINS), shown.limits.coverage
    low, high = limits(size, coverage) or (size.mm, size.mm)
    yield Example(
        "A hole that a pin of 2.60 mm enters and one of 2.65 mm does not",
        (
            Line("Bore", f"({fixed(PINS.go, 2)} + {fixed(PINS.nogo, 2)}) / 2", fixed(size.mm, 3, "mm")),
            Line(
                "Standard uncertainty",
                f"({fixed(PINS.nogo, 2)} − {fixed(PINS.go, 2)}) / √12",
                fixed(size.u_mm or 0.0, 4, "mm"),
            ),
            Line(
                "Limits",
                f"± {fig(coverage, digits=3)} standard uncertainties",
                f"{fixed(low, 3)} to {fixed(high, 3, 'mm')}",
            ),
        ),
    )
    need, part = shown.need, shown.part
    bore = bore_size(need.bore_mm, need.resolution_mm)
    barrel = barrel_size(part) if part else None
    lines = [
        Line(
            "Bore",
            f"{maybe(need.resolution_mm)} / √12",
            f"{maybe(bore.mm if bore else None, 'mm')}, u = {maybe(bore.u_mm if bore else None, 'mm', 4)}",
        )
    ]
    if part:
        lines.append(
            Line(
                f"Barrel, {part.name}",
                _working(part.tolerance_mm, part.measured.resolution_mm if part.measured else None),
                f"{maybe(barrel.mm if barrel else None, 'mm')}, "
                f"u = {maybe(barrel.u_mm if barrel else None, 'mm', 4)}",
            )
        )
    yield Example(shown.named, tuple(lines))


def _working(tolerance_mm: float | None, resolution_mm: float | None) -> str:
    terms = [f"({fig(tolerance_mm)} / √3)²"] if tolerance_mm else []
    terms += [f"({fig(resolution_mm)} / √12)²"] if resolution_mm else []
    return f"√({' + '.join(terms)})" if terms else "nothing is written down"


def _tables(thresholds: Thresholds) -> Iterator[Table]:
    yield Table(
        "What a step or a tolerance amounts to",
        ("Step or ± tolerance", "As a step: u", "As ± tolerance: u", "Both together: u"),
        tuple(
            (
                fig(each, "mm"),
                fixed(of_resolution(each), 4, "mm"),
                fixed(of_tolerance(each), 4, "mm"),
                fixed(combined(of_resolution(each), of_tolerance(each)), 4, "mm"),
            )
            for each in (0.01, 0.02, 0.05, 0.1)
        ),
    )


TOPIC = Topic(
    slug="uncertainty",
    title="How well a size is known",
    asks="I measured 2.70 mm. What may it really be?",
    words=texts(
        """
        A calliper that shows steps of 0.05 mm cannot tell 2.69 from 2.71. What it shows stands for a
        stretch of sizes, all as likely. The standard uncertainty is a fair measure of how wide that
        stretch is, and several of them can be added up by one rule.

        The finest way to measure a small hole is a pair of pins: the thickest that goes in, and the
        thinnest that does not. The bore lies between the two.

        A map says how finely it was measured. A part says it too, or has a stated tolerance. Where
        neither is written down, the book gives no limits.
        """
    ),
    formulas=(
        Formula("resolution", "Of a reading in steps", "u = δ/√12"),
        Formula("tolerance", "Of a stated tolerance of ± a", "u = a/√3"),
        Formula("combined", "Of several that do not depend on each other", "u = √(u_1^2 + u_2^2)"),
        Formula("pins", "Of a pair of pins", "D = (G + N)/2, u = (N − G)/√12"),
        Formula("limits", "Limits of a size", "D_min = D − k·u, D_max = D + k·u"),
    ),
    symbols=(
        Symbol("u", "standard uncertainty", "mm"),
        Symbol("δ", "the step of the calliper or of the pins", "mm"),
        Symbol("a", "half the width of a stated tolerance", "mm"),
        Symbol("G", "thickest pin that goes in", "mm"),
        Symbol("N", "thinnest pin that does not", "mm"),
        Symbol("D", "the size as measured", "mm"),
        Symbol("k", "coverage: so many standard uncertainties to each side"),
    ),
    sources=(f"{GUM}: F.2.2.1 for a step, 4.3.7 for a tolerance, 5.1.2 for several together.",),
    assumes=texts(
        """
        All sizes within a step, or within a tolerance, are as likely.

        The limits are those of a single even stretch: *k* = √3 gives back the step or the tolerance
        exactly. Of several together they are a little wider than most measurements fall.
        """
    ),
    stops=texts(
        """
        A step is the least there can be. A calliper may be wrong by more than it shows, the more so the
        longer the distance; its flat inside jaws read a small round hole too low. Pins do not.

        It knows nothing of a slip: a size read off wrongly is wrong by any amount.
        """
    ),
    here=_here,
    published=_published,
    tables=_tables,
    thresholds=("coverage",),
)
