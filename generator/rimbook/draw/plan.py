"""Where everything of a face view goes, before anything is drawn."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from rimbook.book.model import Frame
from rimbook.draw import bands, symbols, words
from rimbook.draw.key import Key, runs
from rimbook.draw.labels import Label, Stand, Wanted, placed
from rimbook.draw.ring import Ring, Sight, fit, places, ring
from rimbook.rim.types import Rim

WIDTH = 360.0
"""Units across: one for each pixel of a narrow phone."""

FONT = 9.6
TALLEST = 520.0
WIDEST = 372.0
"""How many units the drawing may take, so that its words are still nine pixels high on such a phone."""

_MARGINS = (46.0, 60.0, 80.0)
_SMALLEST, _LARGEST = 2.8, 4.2
_BAND = 1.75
_TICK = 3.0


@dataclass(frozen=True, slots=True)
class Plan:
    """Where everything of one face view is, in units of the page.

    `along` (mm), `sights`, `reach` and `edge` go by the index of a place in
    `frame.holes`. `reach` is how far from the line of holes the parts at a place
    extend, and `edge` the same with two neighbours on either side: there labels begin.
    """

    rim: Rim
    key: Key
    ring: Ring
    along: dict[int, float]
    sights: tuple[Sight, ...]
    radius: float
    reach: tuple[float, ...]
    edge: tuple[float, ...]

    @property
    def half_band(self) -> float:
        """Half the width of the rim band: the ring of a shared hole stays within it."""
        return self.radius * _BAND


def planned(rim: Rim, known: Key) -> tuple[Plan, list[Label]]:
    """The largest face view whose labels leave it narrow enough, and those labels."""
    for margin in _MARGINS:
        plan = _plan(rim, known, margin)
        names = placed(_wanted(plan))
        left, right = sides(plan, names)
        if right - left <= WIDEST:
            break
    return plan, names


def sides(plan: Plan, names: list[Label]) -> tuple[float, float]:
    """How far the drawing reaches to the left and to the right."""
    edge = max(plan.edge)
    xs = [x for x, _ in plan.ring.spots]
    left = min([min(xs) - edge, *(label.box[0] for label in names)])
    right = max([max(xs) + edge, *(label.box[2] for label in names)])
    return left - 1, right + 1


def bore_runs(plan: Plan) -> list[list[int]]:
    """Runs of holes whose bore is known and one and the same, and not the most common one."""
    unlike = {
        index: hole.bore_mm
        for index, hole in enumerate(plan.rim.frame.holes)
        if hole.bore_mm is not None and hole.bore_mm != plan.key.common_mm
    }
    return list(runs(plan.rim.frame, unlike))


def _plan(rim: Rim, known: Key, margin: float) -> Plan:
    view = fit(rim.curve, WIDTH - 2 * margin, TALLEST)
    along = places(rim)
    radius = _radius(rim, along, view.scale)
    reach = _reach(rim.frame, radius * _BAND)
    wide = reach[-2:] + reach + reach[:2]
    edge = tuple(map(max, wide, wide[1:], wide[2:], wide[3:], wide[4:]))
    line = ring(rim.curve, view)
    return Plan(rim, known, line, along, tuple(map(line.sight, along.values())), radius, reach, edge)


def _radius(rim: Rim, along: dict[int, float], scale: float) -> float:
    """A symbol radius with which neighbouring marks just stay apart, as far as they can still be told."""
    spreads = [symbols.spread(hole) for hole in rim.frame.holes]
    length = rim.curve.length_mm
    room = [
        (along[at] - along[at - 1]) % length * scale / (spreads[at - 1] + spreads[at])
        for at in range(1, len(spreads))
    ]
    return min(_LARGEST, max(_SMALLEST, 0.97 * min(room, default=_LARGEST)))


def _reach(frame: Frame, half_band: float) -> tuple[float, ...]:
    reach = [half_band + 1.5] * len(frame.holes)
    strip = bands.CLEAR + bands.WIDTH / 2 + 1.5
    for all_runs, out in ((bands.twin_runs(frame), bands.CROWN + 2.0), (bands.strip_runs(frame), strip)):
        for run in all_runs:
            for index in run:
                reach[index] = max(reach[index], half_band + out)
    return tuple(reach)


def _wanted(plan: Plan) -> list[Wanted]:
    """Labels in the order in which they get room: those that can stand in one place only come first."""
    ends, fifths = _address_labels(plan)
    bores = sorted(_bore_labels(plan), key=lambda want: len(want.stands))
    return [*ends, *bores, *_part_letters(plan), *fifths]


def _label(
    plan: Plan, run: list[int], text: str, style: str, *, bold: bool = False, needed: bool = True
) -> Wanted:
    """A label for a run of places: in its middle by choice, or at any place of it."""
    middle = [] if len(run) == 1 else [plan.ring.sight(bands.middle(plan.ring, plan.along, run))]
    inner = run[1:-1] or run
    out = max([plan.edge[at] for at in run]) + _TICK
    start = max([plan.reach[at] for at in run]) + (2.0 if len(run) > 1 else 0.5)
    stands = tuple(
        [
            Stand(sight.out(out), (sight.across, sight.down), sight.out(start))
            for sight in (*middle, *[plan.sights[inner[at]] for at in _from_the_middle(len(inner))])
        ]
    )
    return Wanted(text, stands, FONT, style, bold, needed)


@cache
def _from_the_middle(count: int) -> list[int]:
    """The indices of so many things, those in the middle first."""
    return sorted(range(count), key=lambda at: abs(2 * at - count + 1))


def _bore_labels(plan: Plan) -> list[Wanted]:
    holes = plan.rim.frame.holes
    return [
        _label(plan, run, words.bore_words(holes[run[0]].bore_mm), "bore-label", bold=True)
        for run in bore_runs(plan)
    ]


def _part_letters(plan: Plan) -> list[Wanted]:
    """The letter of each strip and of each two-post part."""
    frame = plan.rim.frame
    return [
        _label(plan, run, plan.key.letter(frame, frame.holes[run[0]]), "part-letter", bold=True)
        for run in (*bands.twin_runs(frame), *bands.strip_runs(frame))
    ]


def _address_labels(plan: Plan) -> tuple[list[Wanted], list[Wanted]]:
    """The first and the last of each side; and every fifth between them, where there is room."""
    holes = plan.rim.frame.holes
    last = {
        hole.address.side: hole.address.number for hole in sorted(holes, key=lambda hole: hole.address.number)
    }
    ends, fifths = [], []
    for index, hole in enumerate(holes):
        side, number = hole.address
        if number in (1, last[side]):
            ends.append(_label(plan, [index], str(hole.address), "address"))
        elif number % 5 == 0:
            fifths.append(_label(plan, [index], str(hole.address), "address", needed=False))
    return ends, fifths
