"""How far a map can be trusted, and what its score is counted from."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.confidence import FINE_MM, MEASURED_SHARE, MOST, OLD_YEARS, WORDS, confidence, vouched
from rimbook.bench.thresholds import Thresholds
from rimbook.site.numbers.figures import fig
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Constant, Example, Formula, Line, Symbol, Table, Topic, texts

_CHOICE = "a choice of this book, no published source"


def _here(shown: Shown) -> Iterator[Example]:
    found = confidence(vouched(shown.frame), shown.book_day)
    lines = [Line(each.asks, each.answer, fig(each.points)) for each in found.reasons]
    total = Line("Confidence", f"the sum: {found.word}", f"{found.score} of {MOST}")
    yield Example(f"The map of {shown.frame.name}", (*lines, total))


def _tables(limits: Thresholds) -> Iterator[Table]:
    rows = tuple((str(score), word) for score, word in enumerate(WORDS))
    yield Table("The word for each score", ("Score", "Confidence"), rows)


TOPIC = Topic(
    slug="confidence",
    title="How far to trust a map",
    asks="Who stands for this map, and what is its confidence counted from?",
    words=texts(
        """
        Each map gets a small whole score, from 0 to 5. Nobody gives it: it is counted from what the map
        says of itself. A point each for a signature, for a fine tool that is named, and for places that
        were measured along the rim and not worked out. Two points at most for other people who found the
        same on rackets of their own. A point goes if nobody has looked for more than five years, or no day
        is written down.

        Ages are counted to the newest day that is written anywhere in the book, not to today: so the same
        book always says the same.

        The score says how well a map is vouched for. How much of it is known at all is another question:
        [how complete a map is](completeness).
        """
    ),
    formulas=(Formula("score", "Score, never below 0", "C = s + f + p + min(2, n) − a"),),
    symbols=(
        Symbol("C", "confidence"),
        Symbol("s", "1 if somebody signed the map, otherwise 0"),
        Symbol("f", "1 if the tool is named and reads to 0.1 mm or finer, otherwise 0"),
        Symbol("p", "1 if at least half of the places were measured, otherwise 0"),
        Symbol("n", "other people who confirmed the map"),
        Symbol("a", "1 if nobody looked for more than five years or no day is known, otherwise 0"),
    ),
    sources=texts(
        """
        The weights are a choice of this book, no published source. That a second person with a second
        racket is worth more than a second reading by the first is common practice, no published source.
        """
    ),
    assumes=texts(
        """
        Handles stand for different people, and they write down what they did.
        """
    ),
    stops=texts(
        """
        A map with a high score can be wrong for the racket in your hand: makers change a frame without
        changing its name. Measure one hole before you order parts for all.

        A map with a low score need not be wrong. It waits for somebody to look.
        """
    ),
    here=_here,
    tables=_tables,
    constants=(
        Constant(fig(FINE_MM, "mm"), "a tool that shows such steps tells usual bores apart", _CHOICE),
        Constant(f"{MEASURED_SHARE:.0%}".replace("%", " %"), "so many places have to be measured", _CHOICE),
        Constant(f"{OLD_YEARS} years", "after so long without a look a point goes", _CHOICE),
    ),
)
