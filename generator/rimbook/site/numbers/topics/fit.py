"""How a barrel sits in its hole."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from rimbook.bench.fit import FIT_WORDS, SWELLS, Fit, FitWord, fit
from rimbook.bench.thresholds import COMMON, Thresholds
from rimbook.bench.uncertainty import Size, barrel_size, bore_size, limits, of_tolerance
from rimbook.site.numbers.figures import fig, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import UNKNOWN, mm


class Printed(NamedTuple):
    """A fit of ISO 286 for one nominal size in mm; deviations and clearances in micrometres."""

    name: str
    nominal_mm: float
    hole_um: tuple[int, int]
    shaft_um: tuple[int, int]
    clearance_um: tuple[int, int]
    kind: str


PRINTED = (
    Printed("H7/g6", 6, (0, 12), (-12, -4), (4, 24), "clearance"),
    Printed("H7/h6", 6, (0, 12), (-8, 0), (0, 20), "clearance"),
    Printed("H7/k6", 6, (0, 12), (1, 9), (-9, 11), "transition"),
    Printed("H7/n6", 6, (0, 12), (8, 16), (-16, 4), "transition"),
    Printed("H7/p6", 6, (0, 12), (12, 20), (-20, 0), "interference"),
    Printed("H7/s6", 6, (0, 12), (19, 27), (-27, -7), "interference"),
    Printed("H7/p6", 3, (0, 10), (6, 12), (-12, 4), "transition"),
)


def iso_fit(one: Printed) -> Fit:
    """The fit of such a hole and shaft as the bench works it out."""
    hole, shaft = (_between(one.nominal_mm, deviations) for deviations in (one.hole_um, one.shaft_um))
    return fit(hole, shaft)


def _between(nominal_mm: float, deviations_um: tuple[int, int]) -> Size:
    low, high = (nominal_mm + deviation / 1000 for deviation in deviations_um)
    return Size((low + high) / 2, of_tolerance((high - low) / 2))


def _published(limits: Thresholds) -> Iterator[Example]:
    found = [(one, iso_fit(one)) for one in PRINTED]
    yield Example(
        "Fits of machine parts, in thousandths of a millimetre",
        (),
        "ISO 286-2 by way of JIS B 0401 (1999), kinds of fit as in ANSI B4.2-1978. Its footnote makes H7/p6 "
        "a transition fit up to 3 mm. These are classes for metal: they check the arithmetic, not the words",
        Table(
            "Clearance, least to most",
            ("Fit", "Nominal size", "As printed", "By this book"),
            tuple(
                (
                    one.name,
                    mm(one.nominal_mm),
                    f"{fig(one.clearance_um[0])} to {fig(one.clearance_um[1])}, {one.kind}",
                    f"{_um(each.least_mm)} to {_um(each.most_mm)}, {each.kind}",
                )
                for one, each in found
            ),
        ),
    )


def _um(value_mm: float | None) -> str:
    return UNKNOWN if value_mm is None else fig(1000 * value_mm, digits=0)


def _here(shown: Shown) -> Iterator[Example]:
    fitted, part, need = shown.at_hole.here.fit, shown.part, shown.need
    bore = bore_size(need.bore_mm, need.resolution_mm)
    barrel = barrel_size(part) if part else None
    yield Example(
        f"{part.name if part else 'An unknown part'} in {shown.named}",
        (
            Line("Bore", "the middle, and its limits", _limited(bore, shown.limits)),
            Line("Barrel", "the middle, and its limits", _limited(barrel, shown.limits)),
            Line(
                "Clearance",
                f"{maybe(bore.mm if bore else None)} − {maybe(barrel.mm if barrel else None)}",
                f"{maybe(fitted.clearance_mm, 'mm')}: {fitted.word or UNKNOWN}",
            ),
            Line(
                "Least clearance",
                "smallest bore, thickest barrel",
                f"{maybe(fitted.least_mm, 'mm', 3)}: {fitted.tightest or UNKNOWN}",
            ),
            Line(
                "Most clearance",
                "largest bore, thinnest barrel",
                f"{maybe(fitted.most_mm, 'mm', 3)}: {fitted.loosest or UNKNOWN}",
            ),
            Line("Kind of fit", "by the signs of the two", fitted.kind or UNKNOWN),
        ),
    )


def _limited(size: Size | None, thresholds: Thresholds) -> str:
    if size is None:
        return UNKNOWN
    found = limits(size, thresholds.coverage)
    if found is None:
        return f"{fig(size.mm, 'mm')}, limits unknown"
    return f"{fig(size.mm, 'mm')}, {fig(found[0], digits=3)} to {fig(found[1], 'mm', 3)}"


def _tables(limits: Thresholds) -> Iterator[Table]:
    says: dict[FitWord, str] = {
        "drops out": f"more than {fig(limits.drops_out_over_mm, 'mm')}",
        "finger fit": f"more than {fig(limits.finger_over_mm)}, up to {fig(limits.drops_out_over_mm, 'mm')}",
        "snug": f"{fig(limits.driving_under_mm)} to {fig(limits.finger_over_mm, 'mm')}",
        "needs driving": f"below {fig(limits.driving_under_mm)}, to {fig(limits.seats_down_to_mm, 'mm')}",
        "will not seat": f"below {fig(limits.seats_down_to_mm, 'mm')}",
    }
    does: dict[FitWord, str] = {
        "drops out": "it may pop out while you string: take the next size up",
        "finger fit": "a finger pushes it in, and it stays",
        "snug": "as it should be",
        "needs driving": "it is pressed home with a setting pin",
        "will not seat": "take the next size down; never drill or ream the hole",
    }
    yield Table(
        "The bench words",
        ("Word", "Clearance", "What it means"),
        tuple((word, says[word], does[word]) for word in FIT_WORDS),
    )
    yield Table(
        "The kinds of fit",
        ("Kind", "Least clearance", "Most clearance"),
        (
            ("clearance", "0 or more", "more than 0"),
            ("transition", "less than 0", "more than 0"),
            ("interference", "less than 0", "0 or less"),
        ),
    )


TOPIC = Topic(
    slug="fit",
    title="How a part fits its hole",
    asks="Does this barrel go into this hole, and does it stay there?",
    words=texts(
        """
        Take the drilled hole in the frame and the outside of the barrel. The hole less the barrel is
        the clearance: above zero there is air between them, below zero the barrel is squeezed.

        Neither is known exactly. So the book works out the least clearance, of the smallest hole the
        measurement allows and the thickest barrel, and the most, of the reverse. If the two give
        different words, it says so.

        The word on the page is that of the sizes as they were measured. Where a size is missing there
        is no word, and the page says what to measure.
        """
    ),
    formulas=(
        Formula("clearance", "Clearance", "c = D − d"),
        Formula("least-clearance", "Least clearance", "c_min = D_min − d_max"),
        Formula("most-clearance", "Most clearance", "c_max = D_max − d_min"),
        Formula("fit-kind", "It is a clearance fit where", "c_min ≥ 0"),
        Formula("interference", "It is an interference fit where", "c_max ≤ 0"),
    ),
    symbols=(
        Symbol("D", "bore: diameter of the drilled hole in the frame", "mm"),
        Symbol("d", "outer diameter of the barrel", "mm"),
        Symbol("c", "clearance", "mm"),
        Symbol("D_min", "smallest the bore may be; see [the page on uncertainty](uncertainty)", "mm"),
        Symbol("D_max", "largest the bore may be", "mm"),
        Symbol("d_min", "thinnest the barrel may be", "mm"),
        Symbol("d_max", "thickest the barrel may be", "mm"),
    ),
    sources=texts(
        f"""
        Clearance, transition and interference: ISO 286-1:2010, 3.3. A fit of exactly 0 counts as
        clearance at the lower limit and as interference at the upper one.

        The bench words and what divides them: {COMMON}.
        """
    ),
    assumes=texts(
        """
        Hole and barrel are round, and dry.

        A value that lies on a threshold takes the word nearer to snug.
        """
    ),
    stops=texts(
        f"""
        In an oval, worn or cracked hole. A cracked frame is not strung.

        {SWELLS}

        A barrel that is squeezed closes its opening a little: try the string before you drive it home.
        """
    ),
    caution="Do not drill, ream or file a hole to make a part fit: it cuts the fibres that carry the load. "
    "Wear eye protection when you press a tight part.",
    here=_here,
    published=_published,
    tables=_tables,
    thresholds=("drops_out_over_mm", "finger_over_mm", "driving_under_mm", "seats_down_to_mm"),
)
