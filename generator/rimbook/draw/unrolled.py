"""The walk as two straight rulers, right half and left half, from the head down to the throat.

Each place has a row: a finger goes down the page as it goes down the rim.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache, partial

from rimbook.book.address import SIDES
from rimbook.book.model import Address, Catalogue, Frame, Hole
from rimbook.draw import bands, load, palette, svg, symbols, words
from rimbook.draw.face import caption
from rimbook.draw.key import Key, key, kind_of, runs
from rimbook.draw.rows import JOIN, RULER, TIGHT, TOP, WIDTH, Rows, across, rows
from rimbook.draw.svg import Markup, Spot
from rimbook.rim.types import Rim

FONT = 10.0
_SMALL = 9.2
_RADIUS = 4.0
_HALF_RULER = 6.0
_DROP = FONT * 0.36
"""From the middle of a line of words down to its baseline."""

# Distances from the middle of the page, the same on both halves.
_PASSES, _STUB, _ADDRESS, _BORE, _LANE, _LETTER = 54.0, 57.0, 81.5, 127.5, 162.5, 169.5
_REACH = 61.0

# The bar of a hole: where it starts, its length for each multiple of the tension, its width, and the middle
# of its number, which has a column of its own outside the bores.
_BAR_START, _BAR, _BAR_WIDTH, _BAR_WORD = 78.0, 12.0, 9.0, 145.2

_STEPS_MM = (50, 100, 200, 500)
"""From number to number on the scale: the first that leaves room."""


def unrolled(
    rim: Rim, catalogue: Catalogue, *, name: str = "unrolled", pulls: Mapping[Address, float] | None = None
) -> str:
    """The unrolled rim as SVG text. Every id in it starts with `name`: `unrolled-R9`.

    With `pulls`, the pull on each hole as a multiple of the tension, it has the layer of the load.
    """
    frame = rim.frame
    known, lines = key(frame, catalogue), rows(rim)
    loose, end = _loose_runs(frame, known), lines.bottom + JOIN
    return svg.drawing(
        symbols.marks(name, frame, _RADIUS, reach=(_REACH, TIGHT / 2)),
        _load(frame, lines, pulls) if pulls else svg.NOTHING,
        _heads(),
        _ruler(rim, lines),
        _parts(frame, catalogue, lines, loose),
        _strings(frame, lines),
        _tie_offs(frame, lines),
        symbols.holes(name, frame, [lines.mark(index) for index in range(len(frame.holes))]),
        *_columns(frame, known, lines, loose),
        caption(f"{frame.name} · rim unrolled, head at the top", rim, WIDTH / 2, end + 24, WIDTH),
        name=name,
        title=f"{frame.name}: the rim unrolled, head at the top",
        description=f"{words.summary(rim)} {words.walk_words(frame)}",
        box=(0.0, 0.0, WIDTH, end + 44),
    )


def _load(frame: Frame, lines: Rows, pulls: Mapping[Address, float]) -> Markup:
    """A bar behind the words of each hole, outwards from the ruler."""
    bars = []
    for index, hole in enumerate(frame.holes):
        pull = pulls.get(hole.address, 0.0)
        start, end = lines.line(index, _BAR_START), lines.line(index, _BAR_START + _BAR * pull)
        bars.append(load.Bar(index, pull, start, end))
    return load.layer(
        bars,
        lambda bar: lines.line(bar.at, _BAR_WORD),
        widths=[_BAR_WIDTH] * 5,
        size=_SMALL,
        opacity=0.22,
    )


@cache
def _heads() -> Markup:
    """What each column says."""
    columns = (("string", _PASSES - 16), ("hole", _ADDRESS + 6), ("bore", _BORE - 9), ("part", _LETTER - 2))
    return svg.layer(
        "heads",
        *[svg.text(text, across(side, away), 12.0) for side in SIDES for text, away in columns],
        font_size=_SMALL,
        text_anchor="middle",
        fill=palette.QUIET.light,
        aria_hidden="true",
    )


def _ruler(rim: Rim, lines: Rows) -> Markup:
    """Both halves of the rim, joined at head and throat, with a scale in millimetres between them."""
    left, right, end = across("L", RULER), across("R", RULER), lines.bottom
    halves = svg.segments([((x, TOP), (x, end)) for x in (left, right)])
    joins = "".join(
        svg.polyline([(left, y), (left, beyond), (right, beyond), (right, y)])
        for y, beyond in ((TOP, TOP - JOIN), (end, end + JOIN))
    )
    middle = WIDTH / 2
    step = next(step for step in _STEPS_MM if step * lines.scale >= 3 * _SMALL or step == _STEPS_MM[-1])
    heights = [(mm, TOP + mm * lines.scale) for mm in range(0, int(rim.curve.length_mm / 2) + 1, step // 5)]
    ticks = svg.segments(((middle - 2, y), (middle + 2, y)) for mm, y in heights if mm % step)
    return svg.layer(
        "frame",
        svg.path(
            joins, class_="rim-join", stroke=palette.EDGE.light, stroke_width=1.2, stroke_dasharray="3 3"
        ),
        svg.path(halves, class_="rim-band", stroke=palette.RIM.light, stroke_width=2 * _HALF_RULER),
        svg.group(
            svg.path(ticks, class_="tick", stroke=palette.EDGE.light, stroke_width=0.8),
            svg.text("mm", middle, 12.0),
            *[svg.text(str(mm), middle, y + _SMALL * 0.36) for mm, y in heights if mm % step == 0],
            class_="scale",
            font_size=_SMALL,
            text_anchor="middle",
            fill=palette.QUIET.light,
            aria_hidden="true",
        ),
    )


def _parts(frame: Frame, catalogue: Catalogue, lines: Rows, loose: list[list[int]]) -> Markup:
    """A lane that says which part sits where, with bands for strips; and the staples on the rulers."""
    drawn = []
    for run in bands.strip_runs(frame):
        spots = lines.lane(run, _LANE, 4.5)
        drawn.append(bands.strip_band(spots, kind_of(frame, catalogue, frame.holes[run[0]])))
        drawn.append(bands.caps([((x - 3, y), (x + 3, y)) for x, y in (spots[0], spots[-1])]))
    for first, last in bands.twin_runs(frame):
        kind = kind_of(frame, catalogue, frame.holes[first])
        near, far = bands.reaches(kind, _RADIUS)
        crown = lines.lane([first, last], RULER + _HALF_RULER + bands.CROWN, 0.0)
        drawn.append(
            bands.staple([lines.mark(first, RULER - near), *crown, lines.mark(last, RULER - far)], kind)
        )
    line = "".join(svg.polyline(lines.lane(run, _LANE, 3.5)) for run in loose)
    drawn.append(svg.path(line, class_="part-run", stroke=palette.EDGE.light, stroke_width=1.4))
    return svg.layer("parts", *drawn)


def _loose_runs(frame: Frame, known: Key) -> list[list[int]]:
    """Runs of holes outside the strips, on one side, that take the same part."""
    named = {
        index: (hole.address.side, known.letter(frame, hole), hole.twin)
        for index, hole in enumerate(frame.holes)
        if hole.drilled and hole.strip is None
    }
    return list(runs(frame, named))


def _strings(frame: Frame, lines: Rows) -> Markup:
    """A short end of string from each hole to the words that name it."""
    ends: dict[str, list[tuple[Spot, Spot]]] = {"m": [], "c": []}
    for index, hole in enumerate(frame.holes):
        (x, y), (to_x, to_y) = lines.mark(index), lines.line(index, _STUB)
        for step, passing in enumerate(hole.passes):
            aside = (step - (len(hole.passes) - 1) / 2) * 3.0
            ends[passing.kind].append(((x, y + aside * 0.6), (to_x, to_y + aside)))
    return svg.layer(
        "strings",
        svg.path(svg.segments(ends["c"]), class_="cross", stroke=palette.CROSS.light, stroke_width=1.2),
        svg.path(svg.segments(ends["m"]), class_="main", stroke=palette.MAIN.light, stroke_width=1.2),
    )


def _tie_offs(frame: Frame, lines: Rows) -> Markup:
    knots = []
    for index, hole in enumerate(frame.holes):
        if hole.tie_off:
            x, y = lines.mark(index, RULER - 9.6)
            knots.append(symbols.knot(lines.mark(index), (x, y - 3.2)))
    return svg.layer("tie-offs", *knots)


def _columns(frame: Frame, known: Key, lines: Rows, loose: list[list[int]]) -> list[Markup]:
    """The words of the rows, a layer for each column of each side."""
    heights = [svg.number(line + _DROP) for line in lines.lines]
    one_letter = [*loose, *bands.strip_runs(frame)]
    layers = []
    for side in SIDES:
        here = [
            (height, hole)
            for height, hole in zip(heights, frame.holes, strict=True)
            if hole.address.side == side
        ]
        levels = [height for height, _ in here]
        passes = [_passes(hole) for _, hole in here]
        addresses = [str(hole.address) for _, hole in here]
        drilled = [(height, hole.bore_mm) for height, hole in here if hole.drilled]
        bores = [words.bore_words(bore) for _, bore in drilled]
        # A bore that is known and not the most common one stands out.
        odd = {at for at, (_, bore) in enumerate(drilled) if bore is not None and bore != known.common_mm}
        lettered = [run for each in one_letter if (run := [at for at in each if lines.sides[at] == side])]
        middles = [svg.number(_middle(lines, run) + _DROP) for run in lettered]
        letters = [known.letter(frame, frame.holes[run[0]]) for run in lettered]
        # Words end at the rulers' side on the right half, and start there on the left one.
        to_middle, to_edge = ("end", "start") if side == "R" else ("start", "end")
        x = partial(across, side)
        layers += [
            _column("passes", svg.column(x(_PASSES), levels, passes), to_middle),
            _column("addresses", svg.column(x(_ADDRESS), levels, addresses), to_edge),
            _column(
                "bore-numbers",
                svg.column(x(_BORE), [height for height, _ in drilled], bores, bold=odd),
                to_middle,
            ),
            _column("part-letters", svg.column(x(_LETTER), middles, letters), to_edge, font_weight="bold"),
        ]
    return layers


def _column(name: str, cells: Markup, anchor: str, **more: svg.Value) -> Markup:
    return svg.layer(
        name, cells, font_size=FONT, text_anchor=anchor, fill=palette.TEXT.light, aria_hidden="true", **more
    )


def _passes(hole: Hole) -> str:
    return words.passes_words(hole.passes, " ") if hole.drilled else "no hole"


def _middle(lines: Rows, run: list[int]) -> float:
    return (lines.lines[run[0]] + lines.lines[run[-1]]) / 2
