"""How much a club keeps of each part, and how many drawers it needs."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.shelf_compare import compared
from rimbook.bench.shelf_levels import lasts, levels
from rimbook.bench.shelf_plan import plan
from rimbook.bench.shelf_poisson import at_most, enough
from rimbook.bench.shelf_terms import (
    ASSUMED_LEAD_WEEKS,
    ASSUMED_REVIEW_WEEKS,
    ASSUMED_SERVICE,
    ASSUMED_SHARES,
    terms_of,
)
from rimbook.bench.shelf_update import PRIOR_YEARS, Gamma
from rimbook.bench.thresholds import Thresholds
from rimbook.book.model import Club, ClubFrame
from rimbook.site.numbers.figures import fig, fixed
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Constant, Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import KIND_NAMES, UNKNOWN, counted

_ASSUMPTION = "an assumption; a club’s file can say otherwise"
_RESTRINGS = 50.0


def _published(_: Thresholds) -> Iterator[Example]:
    yield Example(
        "Poisson demand with mean 6, holding 1 and lacking 4 a piece",
        (
            Line("Service that costs least", "4 / (1 + 4)", fig(0.8)),
            Line("P(D ≤ 7)", "", fixed(at_most(7, 6), 4)),
            Line("P(D ≤ 8)", "", fixed(at_most(8, 6), 4)),
            Line("Least S that reaches it", "printed: 8", str(enough(6, 0.8))),
        ),
        "L. V. Snyder and Z.-J. M. Shen, Fundamentals of Supply Chain Theory, example 4.7",
    )
    first, second = Gamma(2, 1).seen(217, 111), Gamma(2, 1).seen(66, 44)
    yield Example(
        "Two groups counted, both with the prior Gamma(2, 1)",
        (
            Line("217 counted in 111", "(2 + 217) / (1 + 111); printed: 1.955", fixed(first.mean, 3)),
            Line("66 counted in 44", "(2 + 66) / (1 + 44); printed: 1.511", fixed(second.mean, 3)),
        ),
        "P. D. Hoff, A First Course in Bayesian Statistical Methods, section 3.2 (from memory)",
    )


def _here(shown: Shown) -> Iterator[Example]:
    frame, catalogue = shown.frame, shown.catalogue
    club = Club("example", "Example", (ClubFrame(frame.slug, 1, _RESTRINGS),))
    terms = terms_of(club)
    shelf = plan(club, {frame.slug: frame}, shown.answers, terms)
    lines = []
    for drawer in shelf.drawers:
        level = levels(drawer.filled.load, terms)
        lines.append(
            (
                catalogue[drawer.item].name,
                fig(drawer.a_year),
                fig(drawer.a_year * terms.cover_years, digits=3),
                str(level.reorder),
                str(level.up_to),
                fig(lasts(level.up_to, drawer.filled.load, terms.cover_years), digits=4),
            )
        )
    found = compared(shelf, catalogue)
    yield Example(
        f"A shelf for {frame.name} alone, restrung {_RESTRINGS:.0f} times a year, with all that is assumed",
        (
            Line("Drawers, every part its own", "", str(found.by_part.drawers)),
            Line("Fewest drawers", "", str(found.pooled.drawers) if shelf.drawers else UNKNOWN),
            Line(
                "What cannot be planned",
                "unknown parts and bores",
                counted(sum(each.pieces for each in shelf.unplanned), "piece"),
            ),
        ),
        "",
        Table(
            "The drawers",
            ("Drawer", "A year", "In the weeks to cover", "Reorder below", "Fill up to", "Chance"),
            tuple(lines),
        ),
    )


def _tables(_: Thresholds) -> Iterator[Table]:
    means = (0.1, 0.25, 0.5, 1.0, 1.5, 2.0, 3.0, 5.0, 9.0)
    yield Table(
        "The least that is enough, by mean demand and service level",
        ("Mean", "80 %", "90 %", "95 %", "99 %"),
        tuple(
            (fig(mean), *(str(enough(mean, service)) for service in (0.80, 0.90, 0.95, 0.99)))
            for mean in means
        ),
    )


TOPIC = Topic(
    slug="shelf",
    title="The shelf of a club",
    asks="How much of each part do we keep, and what do we order today?",
    words=texts(
        """
        At a share of all restrings one part of a kind is renewed. Which of the places of that kind it is,
        is left to chance, so every place gets its part of the demand. One broken hole of a strip takes
        the whole strip.

        An order has to last until the one after it arrives: over the time of delivery and the time between
        two reviews. *P(D ≤ S)* is the chance that no more than *S* are asked for in that time. The drawer is
        filled up to the least *S* with which this chance reaches the service level. With fewer than the
        reorder point even the time of delivery is not covered, so an order cannot wait for the next review.

        What sits on the map may be replaced by what [surely serves](serves). Places that the same things
        serve come out of one drawer. Of all ways to serve every place the shelf is one with the fewest
        drawers, and of those one that holds the fewest pieces. Both are searched exactly; where a search had
        to be cut off, the page says so. If several parts are as good, it is the one that most maps name.

        A part that comes only in a set is kept as that set, and the set is enough when each of its parts
        is. Stock of a part that serves only some places of a drawer is used up there first; of several such
        parts the one that serves fewer places comes first at them.

        After a season, what was counted changes the rates: the plan weighs as much as one year of counting.

        A shop without a club's file plans on [My shelf](my-shelf), by the same working-out on its own device.
        """
    ),
    formulas=(
        Formula("shelf-demand", "Demand a year of the places of a frame that are alike", "λ = N·s·k/K"),
        Formula("shelf-pooled", "Mean demand of a drawer over the time to cover: a sum", "m = (L + R)·Σ λ"),
        Formula("shelf-level", "Fill up to the least S for which", "P(D ≤ S) ≥ q"),
        Formula("shelf-reorder", "Reorder below the least r for which, over the delivery", "P(D_L ≤ r) ≥ q"),
        Formula(
            "shelf-set",
            "Of a set with two parts, the least S for which",
            "P(D_1 ≤ n_1·S)·P(D_2 ≤ n_2·S) ≥ q",
        ),
        Formula("shelf-short", "Pieces a year that are not there", "u = (E(S, m) − E(S, m_L))/R"),
        Formula("shelf-update", "The rate after a count", "λ = (a + x)/(b + t)"),
    ),
    symbols=(
        Symbol("λ", "demand, pieces a year"),
        Symbol("N", "restrings of the frame a year"),
        Symbol("s", "share of restrings that renew one part of the kind"),
        Symbol("k", "pieces at the places looked at"),
        Symbol("K", "pieces of that kind in the frame"),
        Symbol("L", "from order to delivery, in years"),
        Symbol("R", "between two reviews, in years"),
        Symbol("m", "mean demand over the time to cover, m_L over the delivery"),
        Symbol("D", "demand over the time to cover, D_L over the delivery"),
        Symbol("S", "pieces, or sets, of the full drawer"),
        Symbol("r", "reorder point"),
        Symbol("q", "service level, between 0 and 1"),
        Symbol("n", "pieces of a part in one set"),
        Symbol("u", "pieces a year asked for and not there; E(S, m) is the mean of what lacks of D beyond S"),
        Symbol("a", "shape of the prior"),
        Symbol("b", "rate of the prior, in years"),
        Symbol("x", "pieces counted"),
        Symbol("t", "time of counting, in years"),
    ),
    sources=texts(
        """
        Levels: the base-stock policy for Poisson demand, L. V. Snyder and Z.-J. M. Shen, Fundamentals of
        Supply Chain Theory.

        That independent Poisson demands add up to a Poisson demand: any textbook of probability.

        Fewest drawers: the set covering problem, for instance L. A. Wolsey, Integer Programming.

        The update: P. D. Hoff, A First Course in Bayesian Statistical Methods.

        How often parts are renewed is an assumption, until a club counts it.
        """
    ),
    assumes=texts(
        """
        Parts are renewed one at a time, independently, and as often in every month.

        All places of a kind in a frame wear alike.

        The supplier delivers in the time stated. A year has 52 weeks.

        The service level is a promise for each drawer. With many drawers, some drawer runs short more often.
        """
    ),
    stops=texts(
        """
        A frame whose restrings nobody has written down, a place of unknown part or bore, and a part that
        nobody sells cannot be planned: they are named, and nothing is guessed.

        A bad batch, a tournament week or a full regrommet asks for many parts at once. Order for these apart.

        Where two needs share a drawer, both are asked for more often than either: the sum may need one piece
        where each alone would need none.

        A new count is taken for the rate itself; how unsure it still is, is not added to the level.
        """
    ),
    here=_here,
    published=_published,
    tables=_tables,
    constants=(
        Constant(fig(ASSUMED_LEAD_WEEKS), "weeks from order to delivery", _ASSUMPTION),
        Constant(fig(ASSUMED_REVIEW_WEEKS), "weeks between two reviews", _ASSUMPTION),
        Constant(fig(ASSUMED_SERVICE), "service level", _ASSUMPTION),
        *(
            Constant(
                fig(share), f"share of restrings that renew one part of kind {KIND_NAMES[kind]}", _ASSUMPTION
            )
            for kind, share in ASSUMED_SHARES.items()
        ),
        Constant(fig(PRIOR_YEARS), "years of counting that the plan weighs as much as", "an assumption"),
    ),
    caution=(
        "A part in the drawer is not a reason to fit it. Look the frame over for cracks before you renew a "
        "grommet, and what the maker names comes first."
    ),
)
