"""Where one two-post part could take the place of two neighbouring single ones."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.load import forces
from rimbook.bench.twins import ASSUMES, BEST, TwinAdvice
from rimbook.site.numbers.figures import fig, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Constant, Example, Formula, Line, Symbol, Topic, texts
from rimbook.site.words import UNKNOWN, listed


def _here(shown: Shown) -> Iterator[Example]:
    advice = next((each for each in shown.numbers.twins if each.spread is not None), None)
    if advice is None:
        line = Line("Pairs of single parts that a twin would suit", "looked for at every pair", "none")
        yield Example(shown.frame.name, (line,))
        return
    part = shown.catalogue[advice.served.part]
    one, other = (str(each) for each in advice.holes)
    yield Example(
        f"{part.name} in {one} and {other} of {shown.frame.name}",
        (
            Line(
                "Distance of the holes",
                "from middle to middle, in a straight line",
                fig(advice.distance_mm, "mm"),
            ),
            Line(
                "Off by",
                f"{fig(advice.distance_mm)} − {maybe(part.pitch_mm)}, the pitch",
                f"{fig(advice.off_mm, 'mm')}, known to ± {maybe(advice.give_mm, 'mm')}",
            ),
            Line("Posts may be bent by", "see the table above", fig(shown.limits.pitch_play_mm, "mm")),
            Line(
                "Verdict",
                "; ".join(map(str, advice.served.reasons)) or "nothing against it",
                advice.served.verdict,
            ),
            *_spread(shown, advice),
        ),
    )


def _spread(shown: Shown, advice: TwinAdvice) -> Iterator[Line]:
    found, numbers = advice.spread, shown.numbers
    if found is None:
        yield Line("Pressure", "a length is missing", UNKNOWN)
        return
    pulls = [numbers.holes[each] for each in advice.holes]
    vectors = [forces(shown.rim)[each] for each in advice.holes]
    joined = vectors[0].plus(vectors[1]).length * numbers.tension_n
    alone = listed([f"{each.address} {maybe(each.pressure_mpa, 'MPa')}" for each in pulls])
    yield Line(
        "Pressure under two single parts", f"{alone}; the worse one counts", fig(found.before_mpa, "MPa")
    )
    yield Line(
        "Pressure under the twin",
        f"both pulls together, {fig(joined, 'N', 1)}, over the area of both posts",
        fig(found.after_mpa, "MPa"),
    )
    yield Line(
        "What is left",
        f"{fig(found.after_mpa)} / {fig(found.before_mpa)}",
        f"{fig(100 * found.share, digits=0)} %",
    )


TOPIC = Topic(
    slug="twins",
    title="Would a twin help here?",
    asks="Can one part with two posts take the place of two single ones, and what is gained?",
    words=texts(
        f"""
        At the throat, where pulls are high, one part with two posts can take the place of two single
        ones, if its posts meet the two holes. Then both posts carry together.

        For every two neighbouring holes with single parts the book tries each two-post part of the
        catalogue and names the best {BEST}: does the pitch meet the holes, do the posts fit, do the
        strings go through, does it reach. Then it compares the pressure under the worse hole before
        with that under both posts after.

        The places of most holes are worked out, not measured. Where the answer hangs on that, the page
        says: measure the distance.
        """
    ),
    formulas=(
        Formula("pitch", "How far the posts are off the holes", "o = E − P"),
        Formula("pitch-meets", "They surely meet the holes where", "|o| + G ≤ j"),
        Formula("give", "How well that is known", "G = k·√(u_1^2 + u_2^2 + u_3^2)"),
        Formula("pressure-before", "Pressure with two single parts", "p_before = max(F_1/A_1, F_2/A_2)"),
        Formula(
            "spread",
            "Pressure with a twin, the two pulls added with their directions",
            "p_after = |F_1 + F_2|/(B_1 + B_2)",
        ),
    ),
    symbols=(
        Symbol("E", "straight distance of the two holes", "mm"),
        Symbol("P", "pitch of the twin, from middle to middle of its posts", "mm"),
        Symbol("o", "what is missing or too much", "mm"),
        Symbol("j", "how far posts may be bent", "mm"),
        Symbol("G", "how far distance and pitch may be off together", "mm"),
        Symbol("k", "coverage, see [the page on uncertainty](uncertainty)"),
        Symbol(
            "u_1",
            "standard uncertainty of the one place; the others are of the other place and of the pitch",
            "mm",
        ),
        Symbol("F_1", "pull on the one hole, F₂ on the other", "N"),
        Symbol("A_1", "projected area of the single part in the one hole, A₂ in the other", "mm²"),
        Symbol("B_1", "projected area of the one post, B₂ of the other", "mm²"),
        Symbol("p_before", "nominal pressure under the worse of the two holes", "MPa"),
        Symbol("p_after", "nominal pressure under both posts", "MPa"),
    ),
    sources=texts(
        """
        That a twin at the throat spreads the load of a high tension: common practice, no published
        source.

        The pressure is the nominal one of machine design; see [the page on pressure](pressure).
        """
    ),
    assumes=ASSUMES,
    stops=texts(
        """
        A soft bridge between the posts bends, and each post carries its own pull again.

        Posts that are bent to meet their holes press sideways all the time. That is not counted.

        A derived place may be further off than is assumed.
        """
    ),
    caution="A twin does not raise the tension that a frame can bear. The maker’s limit stays what it is.",
    here=_here,
    thresholds=("pitch_play_mm", "near_pitch_mm", "derived_place_mm"),
    constants=(Constant(f"{BEST}", "so many two-post parts are named for a pair of holes", "assumption"),),
)
