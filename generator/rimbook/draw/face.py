"""The head face on, handle down."""

from __future__ import annotations

from collections.abc import Mapping

from rimbook.book.model import Address, Catalogue
from rimbook.draw import bands, load, palette, svg, symbols, words
from rimbook.draw.key import key
from rimbook.draw.labels import Label, pointer_end, shortened
from rimbook.draw.plan import FONT, WIDTH, Plan, bore_runs, planned, sides
from rimbook.draw.svg import Markup
from rimbook.draw.weave import inside_lines, weave
from rimbook.rim.types import Rim

_STUB = 34.0
"""How far the throat is drawn below the rim."""

_LINE = FONT * 1.35

_BAR = 9.0
"""How long the bar of a hole is for each multiple of the tension."""

_BAR_WIDTHS = (0.8, 1.6, 2.5, 3.5, 4.6)
"""How thick it is, from step to step."""


def face(
    rim: Rim, catalogue: Catalogue, *, name: str = "face", pulls: Mapping[Address, float] | None = None
) -> str:
    """The face view as SVG text. Every id in it starts with `name`: `face-R9`.

    With `pulls`, the pull on each hole as a multiple of the tension, it has the layer of the load.
    """
    frame = rim.frame
    plan, names = planned(rim, key(frame, catalogue))
    left, right = sides(plan, names)
    pad = max(0.0, WIDTH - (right - left)) / 2
    left, right = left - pad, right + pad
    ys = [y for _, y in plan.ring.spots]
    stub = max(ys) + plan.half_band + _STUB
    top = min([min(ys) - max(plan.edge), *(label.box[1] for label in names)]) - 2
    low = max([stub, *(label.box[3] for label in names)])
    return svg.drawing(
        svg.element("defs", svg.path(svg.polyline(plan.ring.spots, closed=True), id=f"{name}-rim")),
        symbols.marks(name, frame, plan.radius),
        _frame_layer(plan, name, stub),
        _string_layer(plan),
        bands.layer(frame, catalogue, plan.ring, plan.along, plan.half_band, plan.radius),
        _tie_off_layer(plan),
        _load_layer(plan, pulls) if pulls else svg.NOTHING,
        symbols.holes(name, frame, [sight.out(0) for sight in plan.sights]),
        _bore_brackets(plan),
        *_label_layers(names),
        caption(f"{frame.name} · face on, handle down", rim, (left + right) / 2, low + _LINE, right - left),
        name=name,
        title=f"{frame.name}: face on, handle down",
        description=f"{words.summary(rim)} {words.walk_words(frame)}",
        box=(left, top, right - left, low + 2 * _LINE + FONT * 0.6 - top),
    )


def caption(title: str, rim: Rim, x: float, y: float, width: float) -> Markup:
    """Two lines below a drawing: what it shows, and whether its places are measured."""
    return svg.layer(
        "caption",
        svg.text(shortened(title, FONT, width - 8), x, y, fill=palette.TEXT.light),
        svg.text(words.places_words(rim), x, y + _LINE, class_="quiet", fill=palette.QUIET.light),
        font_size=FONT,
        text_anchor="middle",
        aria_hidden="true",
    )


def _frame_layer(plan: Plan, name: str, stub: float) -> Markup:
    """The rim band, and the beginning of the throat so that nobody holds it upside down."""
    half = plan.ring.length_mm / 2
    middle = plan.ring.at(half)
    if plan.rim.frame.sport == "badminton":
        throat = svg.polyline([middle, (middle[0], stub)])
    else:
        spread = plan.ring.length_mm * 0.1
        arms = [(plan.ring.at(half + side * spread), (middle[0] - side * 8, stub)) for side in (-1, 1)]
        throat = svg.segments(arms)
    band = 2 * plan.half_band
    rim = f"#{name}-rim"
    return svg.layer(
        "frame",
        svg.path(throat, class_="throat", stroke=palette.RIM.light, stroke_width=12),
        svg.element("use", href=rim, class_="rim-edge", stroke=palette.EDGE.light, stroke_width=band + 1.2),
        svg.element("use", href=rim, class_="rim-band", stroke=palette.RIM.light, stroke_width=band),
    )


def _string_layer(plan: Plan) -> Markup:
    rim = plan.rim
    at = {hole.address: sight for hole, sight in zip(rim.frame.holes, plan.sights, strict=True)}
    mains, crosses = weave(*inside_lines(rim, at), gap=2.2)
    outside = bands.outside_runs(rim, plan.ring, at, plan.half_band - 1)
    return svg.layer(
        "strings",
        svg.path(crosses, class_="cross", stroke=palette.CROSS.light, stroke_width=1.1),
        svg.path(mains, class_="main", stroke=palette.MAIN.light, stroke_width=1.1),
        svg.path(outside, class_="outside", stroke=palette.MAIN.light, stroke_width=0.9),
    )


def _tie_off_layer(plan: Plan) -> Markup:
    """The end of a string and its knot inside the head, beside the string that leaves the same hole."""
    return svg.layer(
        "tie-offs",
        *[
            symbols.knot(
                plan.sights[index].out(0), plan.ring.at(plan.along[index] + 2.0, -plan.half_band - 3.4)
            )
            for index, hole in enumerate(plan.rim.frame.holes)
            if hole.tie_off
        ],
    )


def _load_layer(plan: Plan, pulls: Mapping[Address, float]) -> Markup:
    """A bar from each hole into the head."""
    start = -plan.half_band

    def end(pull: float) -> float:
        return plan.half_band + _BAR * pull

    bars = []
    for index, (hole, sight) in enumerate(zip(plan.rim.frame.holes, plan.sights, strict=True)):
        pull = pulls.get(hole.address, 0.0)
        bars.append(load.Bar(index, pull, sight.out(start), sight.out(-end(pull))))
    return load.layer(
        bars,
        lambda bar: plan.sights[bar.at].out(-end(bar.pull) - FONT * 0.9),
        widths=_BAR_WIDTHS,
        size=FONT,
        opacity=0.6,
    )


def _bore_brackets(plan: Plan) -> Markup:
    """A line along each run of two holes and more that one number speaks for."""
    lines = [
        svg.polyline(
            plan.ring.beside(
                plan.along[run[0]] - 1.5, plan.along[run[-1]] + 1.5, max(plan.reach[at] for at in run) + 1.2
            )
        )
        for run in bore_runs(plan)
        if len(run) > 1
    ]
    bracket = svg.path("".join(lines), class_="bore-run", stroke=palette.TEXT.light, stroke_width=0.9)
    return svg.layer("bore-numbers", bracket)


def _label_layers(names: list[Label]) -> list[Markup]:
    """The words round the rim, a layer for each kind, with the line from each to what it names."""
    layers = []
    for style, layer in (
        ("address", "addresses"),
        ("bore-label", "bore-numbers"),
        ("part-letter", "part-letters"),
    ):
        chosen = [label for label in names if label.style == style]
        pointers = svg.segments((label.spot, pointer_end(label)) for label in chosen)
        layers.append(
            svg.layer(
                layer,
                svg.path(pointers, class_="pointer", stroke=palette.QUIET.light, stroke_width=0.6),
                *[svg.text(label.text, label.middle[0], label.middle[1] + FONT * 0.36) for label in chosen],
                font_size=FONT,
                font_weight=None if style == "address" else "bold",
                text_anchor="middle",
                fill=palette.TEXT.light,
                aria_hidden="true",
            )
        )
    return layers
