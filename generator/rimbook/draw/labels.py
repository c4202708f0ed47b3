"""Words round a drawing that never lie on each other."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import chain, count
from typing import NamedTuple

from rimbook.draw.svg import Spot

Box = tuple[float, float, float, float]
"""Left, top, right, bottom."""

# Widths in font sizes of a wide common face, so that no narrower one ever runs over.
_WIDE = {"m": 0.98, "M": 0.87, "w": 0.82, "W": 0.99, "+": 0.84, "R": 0.7, "·": 0.33, "…": 1.0}
_NARROW = {
    " ": 0.33,
    ".": 0.33,
    ",": 0.33,
    "i": 0.3,
    "l": 0.3,
    "j": 0.3,
    "-": 0.37,
    "?": 0.54,
    ":": 0.34,
    "c": 0.56,
}
_WIDTHS = _NARROW | _WIDE


def text_width(text: str, size: float, *, bold: bool = False) -> float:
    """How wide a line of text may come out, in the unit of its size."""
    width = 0.0
    for character in text:
        width += _WIDTHS.get(character) or (0.65 if character < "\u2e80" else 1.1)
    return width * size * (1.1 if bold else 1.0)


def shortened(text: str, size: float, width: float) -> str:
    """The text, cut with an ellipsis where it would be wider."""
    if text_width(text, size) <= width:
        return text
    while text and text_width(f"{text}…", size) > width:
        text = text[:-1]
    return f"{text.rstrip()}…"


class Stand(NamedTuple):
    """Where a label would like to stand: just outside a spot, in a direction, pointing to `origin`."""

    spot: Spot
    outward: Spot
    origin: Spot


class Wanted(NamedTuple):
    """A label and where it would stand, best first: what names several holes may stand at any of them.

    One that is `needed` is pushed outwards from its first stand until it has room; any
    other is left out where the places nearest to it are taken.
    """

    text: str
    stands: tuple[Stand, ...]
    size: float
    style: str
    bold: bool = False
    needed: bool = True


class Label(NamedTuple):
    """A label in its place: the middle of its text, the box it fills, and what it points to."""

    text: str
    middle: Spot
    box: Box
    spot: Spot
    style: str
    size: float
    moved: bool


GAP = 1.6
_NEAR = (0.0, 3.0, -3.0, 6.0, -6.0)
_FAR = tuple(side * step for step in (9.0, 12.0, 15.0, 18.0, 21.0) for side in (1, -1))
"""Steps along the rim, those away from the middle line first, so that halves keep to themselves."""


_RINGS, _FEW_RINGS = 24, 2


def placed(wanted: Sequence[Wanted], taken: Sequence[Box] = ()) -> list[Label]:
    """Labels in the order in which they ask for room.

    A box that lies wholly outside the tangent at its spot cannot touch a rim
    that curves away from it, so only labels and pointers are compared.
    """
    boxes = list(taken)
    labels = []
    for want in wanted:
        label = _place(want, boxes)
        if label:
            labels.append(label)
            boxes.append(label.box)
            if label.moved:
                boxes += _beads(label)
    return labels


def _place(want: Wanted, boxes: list[Box]) -> Label | None:
    """The nearest free place whose pointer crosses no label; failing that, if needed, any free place."""
    half = text_width(want.text, want.size, bold=want.bold) / 2 + 0.8, want.size * 0.46
    near = (middle for stand in want.stands for middle in _middles(stand, half, (0,), _NEAR))
    aside = (middle for stand in want.stands for middle in _middles(stand, half, (0,), _FAR))
    rings = range(1, _RINGS if want.needed else _FEW_RINGS)
    pushed = _middles(want.stands[0], half, rings, _NEAR + _FAR)
    for middle in chain(near, aside, pushed):
        label = _free(want, half, middle, boxes)
        if label and not (label.moved and any(_meets(bead, boxes) for bead in _beads(label))):
            return label
    if not want.needed:
        return None
    anywhere = _middles(want.stands[0], half, count(1), _NEAR)
    return next(label for middle in anywhere if (label := _free(want, half, middle, boxes)))


_Middle = tuple[float, float, Spot, bool]
"""A place to try: the middle of the label, what it would point to, and whether it is not the nearest."""


def _middles(stand: Stand, half: Spot, rings: Iterable[int], asides: Sequence[float]) -> Iterator[_Middle]:
    """Where a label half so wide and half so high might come to lie, ring by ring outwards and step by step
    along the rim.
    """
    half_width, half_height = half
    (x, y), (nx, ny), origin = stand
    if not (nx or ny):
        ny = -1.0
    support = abs(nx) * half_width + abs(ny) * half_height
    step = abs(nx) * half_width + abs(ny) * half_height * 2.2
    turn = 1.0 if nx * ny <= 0 else -1.0
    for ring in rings:
        out = GAP + support + ring * step
        moved = ring > 0 or asides is not _NEAR
        for aside in asides:
            yield x + nx * out - ny * aside * turn, y + ny * out + nx * aside * turn, origin, moved


def _free(want: Wanted, half: Spot, at: _Middle, boxes: list[Box]) -> Label | None:
    """The label in a place, unless another lies there."""
    x, y, origin, moved = at
    box = x - half[0], y - half[1], x + half[0], y + half[1]
    return None if _meets(box, boxes) else Label(want.text, (x, y), box, origin, want.style, want.size, moved)


def _meets(box: Box, boxes: list[Box]) -> bool:
    left, top, right, bottom = box
    for its_left, its_top, its_right, its_bottom in boxes:
        if left < its_right and its_left < right and top < its_bottom and its_top < bottom:
            return True
    return False


def pointer_end(label: Label) -> Spot:
    """Where the pointer from a label's spot meets its box."""
    (x, y), (left, top, right, bottom) = label.spot, label.box
    return min(max(x, left), right), min(max(y, top), bottom)


def _beads(label: Label) -> list[Box]:
    (ax, ay), (bx, by) = label.spot, pointer_end(label)
    return [
        (x - 0.4, y - 0.4, x + 0.4, y + 0.4)
        for x, y in ((ax + (bx - ax) * share, ay + (by - ay) * share) for share in (0.1, 0.3, 0.5, 0.7, 0.9))
    ]
