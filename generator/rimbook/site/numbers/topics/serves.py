"""What else would serve: verdicts, ranking, near misses, donors and drawers."""

from __future__ import annotations

from collections.abc import Iterator

from rimbook.bench.interchange import donors, interchange
from rimbook.bench.needs import PieceNeed, places
from rimbook.bench.serves import VERDICTS
from rimbook.bench.thresholds import Thresholds
from rimbook.site.numbers.figures import fig, maybe
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Example, Formula, Line, Symbol, Table, Topic, texts
from rimbook.site.words import listed, mm


def _here(shown: Shown) -> Iterator[Example]:
    need, answers, catalogue = shown.need, shown.answers, shown.catalogue
    answer = answers.of(need)
    rows = []
    for rank, part in enumerate((*answer.serving, *answer.near), start=1):
        served = answers.detail(need, part)
        if served is not None:
            (seat,) = served.seats
            rows.append(
                (
                    catalogue[part].name,
                    str(rank),
                    served.verdict,
                    f"{maybe(seat.fit.clearance_mm, 'mm')}, {seat.fit.word}",
                    "; ".join(map(str, served.reasons)) or "nothing against it",
                )
            )
    asked = (
        f"bore {mm(need.bore_mm)}, rim depth {mm(need.depth_mm)}, {need.strings} × "
        f"{fig(shown.limits.string_mm.of(need.sport)[-1], 'mm')} of string"
    )
    yield Example(
        shown.named,
        (
            Line("What the hole asks", "from the map", asked),
            Line(
                "Parts looked at",
                "all of one barrel whose size is known",
                str(sum(len(alike) for _, alike in answers.index.barrels)),
            ),
            Line("Parts that serve, and near misses", "", f"{len(answer.serving)} and {len(answer.near)}"),
        ),
        "",
        Table(
            "In order, the best first",
            ("Part", "Rank", "Verdict", "Clearance", "Remarks"),
            tuple(rows),
        ),
    )
    yield Example(f"Where to get the parts of {shown.frame.name}", tuple(_elsewhere(shown)))


def _elsewhere(shown: Shown) -> Iterator[Line]:
    index, names = shown.answers.index, shown.catalogue
    for place in places(shown.frame, names):
        is_strip = isinstance(place.need, PieceNeed) and place.need.kind == "strip"
        if not is_strip or place.part is None or place.part not in names:
            continue
        found = donors(place.part, shown.answers.of(place.need), index)
        sets = listed([names[each].name for each in found.sets])
        alone = listed([names[each].name for each in found.sold_alone])
        yield Line(
            names[place.part].name,
            f"held by {sets}" if sets else "held by no set",
            f"or take {alone}" if alone else "no other strip that is sold alone may serve",
        )
    whole = interchange([shown.frame], shown.answers)
    for drawer in whole.drawers:
        yield Line(
            "Its drawer",
            "the best part for each place but the strips",
            listed([names[each].name for each in drawer.parts]),
        )
    for missing in whole.untold.values():
        yield Line("Its drawer", "not known until this is measured", listed(list(missing)))
    only = [names[each].name for each in whole.irreplaceable]
    yield Line("Replaced by nothing else", "asked of this frame alone", listed(only) or "none of its parts")


def _tables(limits: Thresholds) -> Iterator[Table]:
    means = (
        "it fits, the strings go through, it reaches",
        "nothing speaks against it, but something is not known well enough to be sure",
        "it fails in one thing only, and by little: the page says in what and by how much",
        "it fails by more, or in more than one thing; or nobody knows its barrel or the bore",
    )
    yield Table("The verdicts", ("Verdict", "What it means"), tuple(zip(VERDICTS, means, strict=True)))
    yield Table(
        "What a near miss may fail by",
        ("In what", "By no more than"),
        (
            ("the fit: too loose or too tight", fig(limits.near_fit_mm, "mm")),
            ("room for the strings", fig(limits.near_room_mm, "mm")),
            ("length, as long as it still holds", fig(limits.near_length_mm, "mm")),
            ("pitch of two posts", fig(limits.near_pitch_mm, "mm")),
        ),
    )
    yield Table(
        "What decides between two parts, in this order",
        ("Step", "The better part"),
        (
            ("1. verdict", "serves before may serve before near miss"),
            ("2. fit", "snug, then finger fit, then needs driving"),
            ("3. strings", "run free before tight"),
            ("4. length", "nothing to cut before something to cut before unknown"),
            ("5. clearance", "nearer to the middle of snug"),
            ("6. opening", "less spare room, so a thicker wall"),
            ("7. end", "nearer to where a cut would leave it"),
            ("8. sale", "sold by itself before only in a set"),
            ("9. name", "the id, so that the order is always the same"),
        ),
    )


TOPIC = Topic(
    slug="serves",
    title="What else would serve",
    asks="I have not got that part. What else may go into this hole?",
    words=texts(
        """
        For every hole the book tries each part of the catalogue: does its barrel fit the bore, do the
        strings go through, does it reach the inside edge. A piece with several posts serves as well as
        the worst of its posts.

        The parts that serve are put in order, the best first. A part that fails in one thing by little
        is named as a near miss, with the reason, because a near miss in your drawer may beat a perfect
        part in another town.

        From the answers to all holes of all frames follows more. A donor is a set or a pack that holds
        what a place takes. Frames share a drawer when the best part for each of their places, strips
        apart, is the same. A part that nothing else replaces is named as such.

        A substitute always says that it is one.
        """
    ),
    formulas=(
        Formula(
            "verdict",
            "The barrel serves where the clearance lies between two thresholds",
            "c_seats ≤ c ≤ c_drops",
        ),
        Formula(
            "near-miss",
            "It is a near miss where it lies outside by no more than",
            "max(c_seats − c, c − c_drops) ≤ n",
        ),
        Formula(
            "ranking",
            "Of two that serve alike, the better lies nearer to the middle of snug",
            "o = |c − (c_drive + c_snug)/2|",
        ),
        Formula("rank-end", "and then ends nearer to where a cut would leave it", "o = |p − r|"),
    ),
    symbols=(
        Symbol("c", "clearance: bore less barrel", "mm"),
        Symbol("c_seats", "least clearance at which it seats", "mm"),
        Symbol("c_drops", "most clearance at which it stays in", "mm"),
        Symbol("c_drive", "least clearance that is snug", "mm"),
        Symbol("c_snug", "most clearance that is snug", "mm"),
        Symbol("n", "what a near miss may fail by", "mm"),
        Symbol("p", "how far the barrel stands proud", "mm"),
        Symbol("r", "what a cut leaves standing", "mm"),
        Symbol("o", "how far it is from the best: the least is first", "mm"),
    ),
    sources=texts(
        """
        That one part may stand in for another whose barrel, reach and room suit, and which of them is
        best: common practice, no published source.

        What counts as a near miss is an assumption.
        """
    ),
    assumes=texts(
        """
        The thickest usual strings of the sport go through the hole, one more at a tie-off.

        A part whose barrel nobody measured, or whose sizes contradict each other, is never said to
        serve.

        The spacing of the posts of a strip is not recorded, so a strip at best may serve: lay it on
        before you buy.
        """
    ),
    stops=texts(
        """
        The shape of a flange, its groove and its colour are not compared.

        A map that gives a wrong bore gives wrong answers. Try one part before you buy a hundred.

        What the maker of the frame names comes first.
        """
    ),
    here=_here,
    tables=_tables,
    thresholds=("near_fit_mm", "near_room_mm", "near_length_mm", "near_pitch_mm"),
)
