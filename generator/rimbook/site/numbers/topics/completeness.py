"""How complete a map is, and what sizes are refused."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from rimbook.bench.sound import DEEPEST_RIM_MM, LARGEST_BORE_MM, THICKEST_STRING_MM
from rimbook.book.model import Hole
from rimbook.site.numbers.figures import fig
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Constant, Example, Formula, Line, Symbol, Topic, texts
from rimbook.site.words import counted, percent

_FROM_MEMORY = "from memory: no racket is known beyond it"

_ASKED: tuple[tuple[str, Callable[[Hole], bool]], ...] = (
    ("Bore", lambda hole: hole.bore_mm is not None),
    ("Part", lambda hole: hole.part is not None),
    ("Rim depth", lambda hole: hole.rim_depth_mm is not None),
    ("Place measured", lambda hole: hole.place_mm is not None),
)


def _here(shown: Shown) -> Iterator[Example]:
    drilled = shown.frame.drilled
    total = len(drilled)
    lines = []
    for name, asked in _ASKED:
        known = sum(map(asked, drilled))
        lines.append(
            Line(name, f"known for {known} of {counted(total, 'hole')}", f"{percent(known, total)} %")
        )
    measured = shown.frame.measured
    lines.append(
        Line(
            "Confirmed by others",
            "people who checked it against a racket of their own",
            str(len(shown.frame.confirmed)),
        )
    )
    lines.append(
        Line(
            "Signed",
            "who measured it says so on the map",
            "yes" if measured else "no: take it as unconfirmed",
        )
    )
    yield Example(f"The map of {shown.frame.name}", tuple(lines))


TOPIC = Topic(
    slug="completeness",
    title="How complete a map is",
    asks="How much of this map was measured?",
    words=texts(
        """
        For each question the page counts the drilled holes for which the map knows the answer: the
        bore, the part, the rim depth, the place. What nobody has measured stays unknown, and no number
        is worked out from it.

        A share is printed in whole per cent. It says 100 % only where every hole is known, and 0 % only
        where none is.

        A size that no racket has was surely mistyped. The page says so and claims nothing from it.
        """
    ),
    formulas=(
        Formula("known", "Share that is known, between 1 and 99 unless it is none or all", "q = 100·k/H"),
        Formula("sound", "A part can be true only where", "B < d, d < f, d < P"),
    ),
    symbols=(
        Symbol("q", "share that is known", "%"),
        Symbol("k", "drilled holes for which it is known"),
        Symbol("H", "drilled holes"),
        Symbol("B", "opening inside the barrel", "mm"),
        Symbol("d", "outer diameter of the barrel", "mm"),
        Symbol("f", "diameter of the flange", "mm"),
        Symbol("P", "pitch of two posts", "mm"),
    ),
    sources=texts(
        """
        The share is a count. The limits of what can be true are from memory.
        """
    ),
    assumes=texts(
        """
        All holes count alike, whether they carry much or little.
        """
    ),
    stops=texts(
        """
        A map can be complete and wrong. Two people with two rackets who found the same are worth more
        than a high share.

        Makers change a frame without changing its name.
        """
    ),
    here=_here,
    constants=(
        Constant(fig(LARGEST_BORE_MM, "mm"), "a larger bore is taken for a slip", _FROM_MEMORY),
        Constant(fig(DEEPEST_RIM_MM, "mm"), "a deeper rim is taken for a slip", _FROM_MEMORY),
        Constant(fig(THICKEST_STRING_MM, "mm"), "a thicker string is taken for a slip", _FROM_MEMORY),
    ),
)
