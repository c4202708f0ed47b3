"""How many strings go through a barrel."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.room import RATIOS, enclosing
from rimbook.bench.thresholds import COMMON, Thresholds
from rimbook.site.numbers.figures import fig, fixed, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import UNKNOWN, counted, listed

# “Circle packing in a circle”, an encyclopaedia's table; it cuts off after three places.
PRINTED_RATIOS = {1: 1.0, 2: 2.0, 3: 2.154, 4: 2.414, 5: 2.701, 6: 3.0, 7: 3.0, 8: 3.304}
_EXACT = {
    1: "1",
    2: "2",
    3: "1 + 2/√3",
    4: "1 + √2",
    5: "1 + 1/sin(36°)",
    6: "3",
    7: "3",
    8: "1 + 1/sin(180°/7)",
}
_PROVEN = {5: "Graham 1968", 6: "Graham 1968", 8: "Pirl 1969"}

# Two circles of one size lie along a diameter, so 1.30 mm twice need exactly 2.60 mm.
PRINTED_STRING_MM, PRINTED_NEED_MM = 1.30, 2.60


def _published(limits: Thresholds) -> Iterator[Example]:
    yield Example(
        "Two strings of 1.30 mm",
        (
            Line(
                "Needed",
                f"2 × {fixed(PRINTED_STRING_MM, 2)}",
                fixed(enclosing((PRINTED_STRING_MM, PRINTED_STRING_MM)), 2, "mm"),
            ),
            Line(
                "To thread them easily",
                f"+ {fig(limits.threading_mm)}",
                fixed(enclosing((PRINTED_STRING_MM,) * 2) + limits.threading_mm, 2, "mm"),
            ),
        ),
        "“Circle packing in a circle”, an encyclopaedia’s table, cut off after three places",
        Table(
            "Opening over string diameter",
            ("Strings", "Exactly", "Proven by", "As printed", "By this book"),
            tuple(
                (
                    str(strings),
                    _EXACT[strings],
                    _PROVEN.get(strings, "elementary"),
                    fixed(printed, 3),
                    fixed(enclosing((1.0,) * strings), 4),
                )
                for strings, printed in PRINTED_RATIOS.items()
            ),
        ),
    )


def _here(shown: Shown) -> Iterator[Example]:
    at, part, need = shown.at_hole, shown.part, shown.need
    held = at.here.room
    opening = part.bore_mm if part else None
    thickest = shown.limits.string_mm.of(need.sport)[-1]
    through = at.here.through
    passing = [f"{fig(each.string_mm)}: {each.word}" for each in through or ()]
    ratio = RATIOS[need.strings]
    yield Example(
        f"{counted(need.strings, 'string')} in {shown.named}",
        (
            Line(
                "Needed",
                f"{fig(ratio, digits=4)} × {fig(thickest, 'mm')}, the thickest usual string",
                maybe(held.needs_mm, "mm"),
            ),
            Line(
                "Spare",
                f"{maybe(opening)} − {maybe(held.needs_mm)}",
                f"{maybe(held.spare_mm, 'mm')}: {held.word or UNKNOWN}",
            ),
            Line("Usual strings of the sport, in mm", "each looked at by itself", listed(passing) or UNKNOWN),
            Line(
                "Thickest string that runs free",
                f"({maybe(opening)} − {fig(shown.limits.threading_mm)}) / {fig(ratio, digits=4)}",
                maybe(at.here.thickest_mm, "mm"),
            ),
        ),
    )


def _tables(limits: Thresholds) -> Iterator[Table]:
    yield Table(
        "What the words mean",
        ("Word", "Room beyond the strings"),
        (
            ("runs free", f"{fig(limits.threading_mm, 'mm')} or more"),
            ("tight", f"0 or more, less than {fig(limits.threading_mm, 'mm')}"),
            ("will not go", "less than 0"),
        ),
    )


TOPIC = Topic(
    slug="room",
    title="Room for the strings",
    asks="How many strings go through this barrel, and how thick may they be?",
    words=texts(
        """
        One string goes through most holes, two through a shared one, and one more where a string is
        tied off. Side by side they need a round opening: twice the diameter for two alike, a little
        over twice for three.

        On top comes some room to thread. With less than that the strings still go, but they are tight.

        A page of a frame asks with the thickest usual string of the sport. It also gives the thickest
        string that would run free.
        """
    ),
    formulas=(
        Formula("strings-need", "Opening that equal strings need", "B_n = q_n·d"),
        Formula("two-strings", "Two unequal strings", "B_2 = d_1 + d_2"),
        Formula(
            "three-strings",
            "Three unequal strings that all touch the wall",
            "1/B_3 = 2·√(p·q + q·r + r·p) − p − q − r, p = 1/a, q = 1/b, r = 1/c",
        ),
        Formula(
            "third-string",
            "A third string this thin lies in the gap, and needs nothing more",
            "c ≤ a·b·(a + b)/(a^2 + a·b + b^2)",
        ),
        Formula("spare", "Spare room", "s = B − B_n"),
        Formula("thickest", "Thickest string that runs free", "d = (B − j)/q_n"),
    ),
    symbols=(
        Symbol("B", "opening inside the barrel", "mm"),
        Symbol("B_n", "opening that so many strings need", "mm"),
        Symbol("d", "diameter of a string", "mm"),
        Symbol("q_n", "opening over string diameter for so many equal strings"),
        Symbol("a", "the thickest of three strings", "mm"),
        Symbol("b", "the second", "mm"),
        Symbol("c", "the thinnest", "mm"),
        Symbol("p", "one over the thickest", "1/mm"),
        Symbol("q", "one over the second", "1/mm"),
        Symbol("r", "one over the thinnest", "1/mm"),
        Symbol("s", "spare room; below zero it is what is lacking", "mm"),
        Symbol("j", "room to thread", "mm"),
    ),
    sources=texts(
        f"""
        Packing of equal circles in a circle: five and six after R. L. Graham (1968), eight after U.
        Pirl (1969), the others elementary.

        Three unequal circles: Descartes’ theorem for the outer circle, and the incircle of the arbelos
        for a thin third one.

        Room to thread: {COMMON}.
        """
    ),
    assumes=texts(
        """
        Strings are round and stiff, and lie side by side.

        Four and more unequal strings are counted as if all were as thick as the thickest: never too
        small.

        At a tie-off one more string goes through.
        """
    ),
    stops=texts(
        """
        Soft or flat strings need less than this, and a knot in the hole needs more.

        An opening worn to a groove has more room one way and none the other.

        A barrel squeezed by a tight hole has a smaller opening than the part in your hand.
        """
    ),
    here=_here,
    published=_published,
    tables=_tables,
    thresholds=("threading_mm", "string_mm"),
)
