"""How hard all strings together pull the head."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.head_pull import head_pull
from rimbook.bench.thresholds import Thresholds
from rimbook.bench.units import convert, newtons
from rimbook.site.numbers.cited import CROSS_BOWER
from rimbook.site.numbers.figures import fig
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Topic, texts

# Cross and Bower: “around 28 kg (274 N or about 62 lb)”, and the loss right after stringing.
PRINTED_TENSION_N, PRINTED_LOSS = 274.0, 0.30


def _published(limits: Thresholds) -> Iterator[Example]:
    yield Example(
        "A tennis racket at the tension of a published measurement",
        (
            Line(
                "16 mains at the tension of the machine",
                f"16 × {fig(PRINTED_TENSION_N)}",
                fig(16 * PRINTED_TENSION_N, "N", 0),
            ),
            Line(
                "After the loss of 30 % that they measured",
                f"16 × {fig(PRINTED_TENSION_N)} × 0.7",
                fig(16 * PRINTED_TENSION_N * (1 - PRINTED_LOSS), "N", 0),
            ),
        ),
        f"{CROSS_BOWER}, for tension and loss; the number of mains is ours",
    )


def _here(shown: Shown) -> Iterator[Example]:
    frame, tension = shown.frame, shown.numbers.tension_n
    found = head_pull(frame, tension)
    lines = [
        Line("Along the racket", f"{frame.mains} mains × {fig(tension, 'N', 1)}", _force(found.along_n)),
        Line("Across it", f"{frame.crosses} crosses × {fig(tension, 'N', 1)}", _force(found.across_n)),
    ]
    limit = frame.tension_limit
    if limit:
        most = head_pull(frame, newtons(limit.value, limit.unit))
        lines.append(
            Line(
                f"Along it at the printed limit of {fig(limit.value, limit.unit)}",
                f"{frame.mains} mains × {fig(newtons(limit.value, limit.unit), 'N', 1)}",
                _force(most.along_n),
            )
        )
    yield Example(frame.name, tuple(lines))


def _force(force_n: float) -> str:
    return f"{fig(force_n, 'N', 0)}, the weight of {fig(convert(force_n, 'N', 'kg'), 'kg', 0)}"


TOPIC = Topic(
    slug="head",
    title="The pull on the whole head",
    asks="What does the frame carry when all strings are in?",
    words=texts(
        """
        Every main pulls the head and the throat together with its full tension, and every cross the two
        sides. Cut the head across in your mind: all strings of one kind are cut, and what they pulled
        must be held by the two halves.

        It is many times the tension of one string. That is why a crack in a head does not stay small.
        """
    ),
    formulas=(
        Formula("head-pull", "Along the racket", "A = M·T"),
        Formula("head-across", "Across it", "B = C·T_c"),
    ),
    symbols=(
        Symbol("A", "pull of all mains together", "N"),
        Symbol("B", "pull of all crosses together", "N"),
        Symbol("M", "number of mains"),
        Symbol("C", "number of crosses"),
        Symbol("T", "tension of the mains", "N"),
        Symbol("T_c", "tension of the crosses, that of the mains unless it is set", "N"),
    ),
    sources=texts(
        f"""
        Equilibrium of forces, of any textbook of mechanics.

        The loss of tension after stringing: {CROSS_BOWER}.
        """
    ),
    assumes=texts(
        """
        Straight strings, each at the tension of the machine, without friction.

        All mains are parallel, and all crosses.
        """
    ),
    stops=texts(
        """
        While a frame is being strung, its head is pulled one way first: between the last main and the
        first crosses it carries most.

        Soon after, about 30 % of the tension is gone.
        """
    ),
    caution="A cracked frame is not strung. Never go above the limit that the maker prints.",
    here=_here,
    published=_published,
)
