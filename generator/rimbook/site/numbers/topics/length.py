"""Whether a barrel reaches through the rim, and what to cut off."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.length import reach
from rimbook.bench.thresholds import COMMON, Thresholds
from rimbook.site.numbers.figures import fig, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import UNKNOWN, listed


def _here(shown: Shown) -> Iterator[Example]:
    reached, part, depth = shown.at_hole.here.reach, shown.part, shown.need.depth_mm
    must = None if depth is None else shown.limits.hold_share * depth
    lengths = listed([fig(each) for each in part.length_mm]) if part and part.length_mm else UNKNOWN
    yield Example(
        f"{part.name if part else 'An unknown part'} in {shown.named}",
        (
            Line(
                "Stands proud by",
                f"{lengths} − {maybe(depth)}",
                f"{maybe(reached.proud_mm, 'mm')}: {reached.word or UNKNOWN}",
            ),
            Line("Stays in the rim", "the shorter of the two", maybe(reached.engaged_mm, "mm")),
            Line(
                "Must fill at least",
                f"{fig(shown.limits.hold_share)} × {maybe(depth)}",
                f"{maybe(must, 'mm')}: {_holds(reached.holds)}",
            ),
            Line(
                "To cut after fitting",
                f"nothing, unless it stands proud by more than {fig(shown.limits.proud_up_to_mm, 'mm')}",
                maybe(reached.trim_mm, "mm"),
            ),
        ),
    )
    depth = 10.0
    yield Example(
        f"Made-up barrels in a rim of {fig(depth, 'mm')}",
        (),
        "",
        Table(
            "From too short to too long",
            ("Length", "Proud by", "Word", "To cut", "Holds"),
            tuple(
                (
                    fig(length, "mm"),
                    maybe(each.proud_mm, "mm"),
                    str(each.word),
                    maybe(each.trim_mm, "mm"),
                    "yes" if each.holds else "no",
                )
                for length in (7.0, 9.0, 9.8, 10.2, 11.5, 13.0)
                for each in (reach(length, depth, shown.limits),)
            ),
        ),
    )


def _holds(holds: bool | None) -> str:
    return UNKNOWN if holds is None else "it holds" if holds else "it does not hold"


def _tables(limits: Thresholds) -> Iterator[Table]:
    yield Table(
        "What the words mean",
        ("Word", "Stands proud by", "What to do"),
        (
            (
                "short",
                f"less than {fig(-limits.flush_within_mm, 'mm')}",
                "take a longer one: the string would meet the frame",
            ),
            ("flush", f"within {fig(limits.flush_within_mm, 'mm')} of 0", "nothing"),
            ("proud", f"up to {fig(limits.proud_up_to_mm, 'mm')}", "nothing"),
            (
                "trim",
                f"more than {fig(limits.proud_up_to_mm, 'mm')}",
                f"cut it after fitting, so that {fig(limits.leave_proud_mm, 'mm')} stand out",
            ),
        ),
    )


TOPIC = Topic(
    slug="length",
    title="Length, and what to trim",
    asks="Is the barrel long enough, and how much do I cut off?",
    words=texts(
        """
        A barrel must reach through the rim to its inside edge, or the string saws at the frame. What
        stands far out is cut to length after fitting.

        The length counts under the flange, the depth along the hole from the seat of the flange to the
        inside edge. Of two unequal posts the longer one goes into the deeper hole, as at the bridge.

        A barrel that fills too little of the rim does not hold, however well it fits.
        """
    ),
    formulas=(
        Formula("proud", "How far it stands proud", "p = l − t"),
        Formula("engaged", "Length in the rim", "L = min(l, t)"),
        Formula("holds", "It holds where", "L ≥ h·t"),
        Formula("trim", "What to cut off, where it stands too far out", "z = p − r"),
    ),
    symbols=(
        Symbol("l", "length of the barrel under its flange", "mm"),
        Symbol("t", "rim depth at the hole", "mm"),
        Symbol("p", "how far it stands proud; below zero it is short by that", "mm"),
        Symbol("L", "length of barrel in the rim", "mm"),
        Symbol("h", "share of the depth that must be filled"),
        Symbol("r", "what a cut leaves standing", "mm"),
        Symbol("z", "what is cut off", "mm"),
    ),
    sources=(f"{COMMON.capitalize()}.",),
    assumes=texts(
        """
        The flange lies on the rim all round.

        The end is cut square, and the hole goes straight through.
        """
    ),
    stops=texts(
        """
        Where the hole is drilled at a slant, one side of the barrel is short while the other is proud.

        Where a strip or a bumper lies under the flange, its thickness is lost from the length.

        The uncertainty of length and depth is not carried along here: it is small beside these limits.
        """
    ),
    caution="Trim with a sharp blade, away from your hand, with the frame held still. Wear eye protection: "
    "the end flies off. Keep heat away from the frame.",
    here=_here,
    tables=_tables,
    thresholds=("flush_within_mm", "proud_up_to_mm", "leave_proud_mm", "hold_share"),
)
