"""A part in section, with its sizes. What nobody has measured is drawn broken and says `?`."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise

from rimbook.book.model import Part
from rimbook.draw import dimensions, labels, palette, svg
from rimbook.draw.dimensions import FONT, Dimension, across, down
from rimbook.draw.svg import Markup
from rimbook.draw.words import bore_words

WIDTH = 268.0
FLANGE = 5.0
"""How thick a flange is drawn: no catalogue says."""

_TOP, _UNDER = 52.0, 52.0 + FLANGE
_ROOM_DOWN, _ROOM_ACROSS = 118.0, 104.0
_CLOSEST = 12.0
_HATCH = 4.0
_POSTS_SHOWN = 4
_BREAK = 18.0
"""The gap in a strip that has more posts than are drawn."""

_ABOVE, _BELOW = 8.0, 7.0
"""What axes and a bumper take beyond the part itself."""

# What an unknown size is drawn as: a barrel in mm, everything else in barrels.
_BARREL, _BORE, _FLANGE, _PITCH, _LENGTH, _LONGER = 3.0, 0.6, 1.9, 2.8, 4.0, 1.5

_KINDS = {
    "single": "one post",
    "wide": "one wide post",
    "twin-even": "two equal posts",
    "twin-uneven": "two unequal posts",
}


@dataclass(frozen=True, slots=True)
class _Shape:
    """A part on the page: the middle and the reach of each post drawn, and its widths."""

    posts: tuple[tuple[float, float], ...]
    barrel: float
    bore: float
    flange: float
    gap: tuple[float, float] | None

    @property
    def left(self) -> float:
        return self.posts[0][0] - self.flange / 2

    @property
    def right(self) -> float:
        return self.posts[-1][0] + self.flange / 2

    @property
    def bottom(self) -> float:
        return _UNDER + max(reach for _, reach in self.posts)


def section(part: Part, *, name: str | None = None) -> str:
    """A part in section as SVG text, or nothing for a set.

    Every id in it starts with `name`, which is `section-` and the part's id where none is given.
    """
    if part.kind == "set":
        return ""
    shape = _shape(part)
    what = _KINDS.get(part.kind) or f"strip of {part.posts or '?'} posts"
    caption = f"{what}, mm"
    if part.tolerance_mm is not None:
        caption += f", ± {bore_words(part.tolerance_mm)}"
    height = shape.bottom + 54
    return svg.drawing(
        _body(part, shape),
        dimensions.drawn(_sizes(part, shape)),
        svg.text(
            labels.shortened(caption, FONT, WIDTH - 8),
            WIDTH / 2,
            height - 4,
            font_size=FONT,
            text_anchor="middle",
            fill=palette.TEXT.light,
        ),
        name=name or f"section-{part.id}",
        title=f"{part.name} in section",
        description=_said(part, what),
        box=(0.0, 0.0, WIDTH, height),
    )


def bare_section(part: Part, *, name: str | None = None) -> str:
    """The same without words and numbers, cut close, for where they stand beside it; nothing for a set."""
    if part.kind == "set":
        return ""
    shape = _shape(part)
    top = _TOP - _ABOVE
    return svg.drawing(
        _body(part, shape),
        name=name or f"section-{part.id}",
        title=f"{part.name} in section",
        description=_said(part, _KINDS.get(part.kind, part.kind)),
        box=(shape.left - 3, top, shape.right - shape.left + 6, shape.bottom - top + _BELOW),
    )


def _said(part: Part, what: str) -> str:
    sizes = [("barrel", part.barrel_mm), ("bore", part.bore_mm), ("flange", part.flange_mm)]
    if part.kind in ("twin-even", "twin-uneven"):
        sizes.append(("pitch", part.pitch_mm))
    said = [f"{name} unknown" if size is None else f"{name} {bore_words(size)} mm" for name, size in sizes]
    reach = " and ".join(map(bore_words, part.length_mm or ()))
    said.append(f"length {reach} mm" if reach else "length unknown")
    return f"{what[0].upper()}{what[1:]}: {', '.join(said)}."


def _shape(part: Part) -> _Shape:
    barrel = part.barrel_mm or _BARREL
    bore = min(part.bore_mm or barrel * _BORE, barrel * 0.94)
    flange = max(part.flange_mm or barrel * _FLANGE, barrel)
    lengths = _lengths(part, barrel)
    # The posts of a strip stand at the holes of a frame, not at a pitch of its own.
    pitch = barrel * 1.6 if part.kind == "strip" else max(part.pitch_mm or barrel * _PITCH, barrel * 1.1)
    gap = _BREAK if part.kind == "strip" and (part.posts or _POSTS_SHOWN + 1) > _POSTS_SHOWN else 0.0
    scale = min(
        _CLOSEST, _ROOM_DOWN / max(lengths), (_ROOM_ACROSS - gap) / (pitch * (len(lengths) - 1) + flange)
    )
    first = WIDTH / 2 - (pitch * scale * (len(lengths) - 1) + gap) / 2
    middles = [first + pitch * scale * index for index in range(len(lengths))]
    middles[-1] += gap
    centre = sum(middles[-2:]) / 2
    return _Shape(
        tuple((middle, length * scale) for middle, length in zip(middles, lengths, strict=True)),
        barrel * scale,
        bore * scale,
        flange * scale,
        (centre - _BREAK / 2, centre + _BREAK / 2) if gap else None,
    )


def _lengths(part: Part, barrel: float) -> list[float]:
    """The reach of each post that is drawn, in mm."""
    if part.kind in ("twin-even", "twin-uneven"):
        known = part.length_mm or (
            barrel * _LENGTH,
            barrel * _LENGTH * (_LONGER if part.kind == "twin-uneven" else 1),
        )
        return [known[0], known[-1]]
    count = min(part.posts or _POSTS_SHOWN, _POSTS_SHOWN) if part.kind == "strip" else 1
    return [(part.length_mm or (barrel * _LENGTH,))[0]] * count


def _body(part: Part, shape: _Shape) -> Markup:
    """Walls, hatched, and the flange or base that joins them."""
    wall = (shape.barrel - shape.bore) / 2
    barrels = [
        (left, _UNDER, wall, reach)
        for middle, reach in shape.posts
        for left in (middle - shape.barrel / 2, middle + shape.bore / 2)
    ]
    edges = sorted(
        [
            shape.left,
            shape.right,
            *(shape.gap or ()),
            *(middle + side * shape.bore / 2 for middle, _ in shape.posts for side in (-1, 1)),
        ]
    )
    flanges = [(left, _TOP, right - left, FLANGE) for left, right in list(pairwise(edges))[::2]]
    barrel_known = None not in (part.barrel_mm, part.bore_mm, part.length_mm)
    axes = [((middle, _TOP - 5), (middle, _UNDER + reach + 5)) for middle, reach in shape.posts]
    return svg.layer(
        "section",
        svg.path(
            "".join(_hatching(*box) for box in barrels + flanges),
            class_="hatch",
            stroke=palette.QUIET.light,
            stroke_width=0.6,
        ),
        _walls(barrels, known=barrel_known),
        _walls(flanges, known=part.kind == "strip" or part.flange_mm is not None),
        _bumper(shape) if part.bumper else svg.NOTHING,
        svg.path(
            svg.segments(axes),
            class_="axis",
            stroke=palette.EDGE.light,
            stroke_width=0.7,
            stroke_dasharray="8 2 2 2",
        ),
        _more(shape.gap) if shape.gap else svg.NOTHING,
    )


def _walls(boxes: list[tuple[float, float, float, float]], *, known: bool) -> Markup:
    n = svg.number
    return svg.path(
        "".join(
            f"M{n(left)} {n(top)}h{n(width)}v{n(height)}h{n(-width)}Z" for left, top, width, height in boxes
        ),
        class_="wall" if known else "wall wall-unknown",
        stroke=palette.TEXT.light,
        stroke_width=1.2,
        stroke_dasharray=None if known else "3 2",
    )


def _hatching(left: float, top: float, width: float, height: float) -> str:
    """Lines at 45° within a rectangle."""
    lines = []
    for step in range(1, int((width + height) / _HATCH) + 1):
        away = step * _HATCH
        start = (left + min(away, width), top + max(0.0, away - width))
        end = (left + max(0.0, away - height), top + min(away, height))
        lines.append((start, end))
    return svg.segments(lines)


def _bumper(shape: _Shape) -> Markup:
    """The ribbed guard above the base."""
    y = _TOP - 3
    ends = [shape.left, *(shape.gap or ()), shape.right]
    runs = [((left, y), (right, y)) for left, right in list(pairwise(ends))[::2]]
    return svg.path(
        svg.segments(runs),
        class_="strip-band",
        stroke=palette.STRIP.light,
        stroke_width=6,
        stroke_dasharray="3 1.4",
    )


def _more(gap: tuple[float, float]) -> Markup:
    """Three dots for the posts that are not drawn."""
    middle, y = sum(gap) / 2, _TOP + FLANGE / 2
    dots = svg.segments([((middle + away, y), (middle + away + 0.1, y)) for away in (-4, 0, 4)])
    return svg.path(dots, class_="break", stroke=palette.TEXT.light, stroke_width=1.8, stroke_linecap="round")


def _sizes(part: Part, shape: _Shape) -> list[Dimension]:
    """All sizes of a part, on lines that do not meet."""
    (first, first_reach), (last, last_reach) = shape.posts[0], shape.posts[-1]
    half_barrel, half_bore = shape.barrel / 2, shape.bore / 2
    reach = part.length_mm or (None,)
    foot = _UNDER + first_reach
    sizes = [
        across(
            first - half_bore, first + half_bore, shape.bottom + 14, foot, f"bore {bore_words(part.bore_mm)}"
        ),
        across(
            first - half_barrel,
            first + half_barrel,
            shape.bottom + 30,
            foot,
            f"barrel {bore_words(part.barrel_mm)}",
        ),
        down(
            _UNDER,
            _UNDER + last_reach,
            shape.right + 12,
            last + half_barrel,
            f"length {bore_words(reach[-1])}",
        ),
    ]
    if part.kind == "twin-uneven":
        said = f"length {bore_words(reach[0])}"
        sizes.append(down(_UNDER, foot, shape.left - 12, first - half_barrel, said))
    if part.kind in ("twin-even", "twin-uneven"):
        sizes.append(across(first, last, 12.0, _TOP - 5, f"pitch {bore_words(part.pitch_mm)}"))
    if part.kind != "strip":
        left = last - shape.flange / 2
        sizes.append(across(left, shape.right, 32.0, _TOP, f"flange {bore_words(part.flange_mm)}"))
    return sizes
