"""The checked record of the book: frames, parts and who vouches for them.

Everything here is a frozen value. Lengths are millimetres. `None` means that
nobody has measured it yet; it is never filled in with a guess.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal, NamedTuple

Sport = Literal["badminton", "squash", "tennis", "racquetball"]
Side = Literal["R", "L"]
End = Literal["head", "throat"]
PartKind = Literal["single", "wide", "twin-even", "twin-uneven", "strip", "set"]
Outline = Literal["ellipse", "superellipse", "teardrop", "points"]
Units = Literal["metric", "imperial"]
PaperName = Literal["A0", "A1", "A2", "A3", "A4", "Letter", "Tabloid"]


class Address(NamedTuple):
    """A hole's name: the side, and its place on the walk from the middle of the head."""

    side: Side
    number: int

    def __str__(self) -> str:
        return f"{self.side}{self.number}"


class Pass(NamedTuple):
    """One string through one hole: main or cross, counted from the centre or the head."""

    kind: Literal["m", "c"]
    number: int

    def __str__(self) -> str:
        return f"{self.kind}{self.number}"


@dataclass(frozen=True, slots=True)
class Measured:
    """Who measured a map or a part, when, with what, and how finely (mm)."""

    by: str
    on: date | None = None
    tool: str | None = None
    resolution_mm: float | None = None


@dataclass(frozen=True, slots=True)
class Confirmed:
    """Someone else who checked the same map against a racket in their hand."""

    by: str
    on: date | None = None


@dataclass(frozen=True, slots=True)
class Head:
    """The closed line on which the holes sit, seen face on with the handle down.

    `exponent` belongs to a superellipse, `taper` to a teardrop, `points_mm`
    (x to the right, y towards the head, any origin, in order round the rim) to
    measured points.
    """

    outline: Outline
    width_mm: float
    height_mm: float
    exponent: float | None = None
    taper: float | None = None
    points_mm: tuple[tuple[float, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Hole:
    """One place on the walk, with all defaults and exceptions settled.

    An undrilled place keeps its number so that sister frames agree, but has no
    hole. `part` is the catalogue id of what sits there: of the strip, where
    `strip` is the index of one. `twin` is the index of a two-post part.
    """

    address: Address
    passes: tuple[Pass, ...] = ()
    drilled: bool = True
    bore_mm: float | None = None
    rim_depth_mm: float | None = None
    part: str | None = None
    strip: int | None = None
    twin: int | None = None
    tie_off: bool = False
    place_mm: float | None = None

    @property
    def shared(self) -> bool:
        """Whether two strings pass."""
        return len(self.passes) > 1


@dataclass(frozen=True, slots=True)
class Strip:
    """One moulded strip: the holes it covers in clockwise order, and its part."""

    name: str
    holes: tuple[Address, ...]
    part: str | None


@dataclass(frozen=True, slots=True)
class Twin:
    """A two-post part and the two neighbouring holes it fills, in clockwise order."""

    holes: tuple[Address, Address]
    part: str


@dataclass(frozen=True, slots=True)
class Stringing:
    """How the frame is strung: one piece or two, and where each begins.

    `mains_start` is the end at which the two centre mains are joined outside
    the rim. `first_cross` is the side from which the first cross is pulled.
    """

    pieces: Literal[1, 2] = 2
    mains_start: End = "head"
    crosses_start: End = "head"
    first_cross: Side = "R"
    tie_offs: tuple[Address, ...] = ()


@dataclass(frozen=True, slots=True)
class TensionLimit:
    """The tension printed on the frame by its maker, in the maker's own unit."""

    value: float
    unit: Literal["lb", "kg", "N"]


@dataclass(frozen=True, slots=True)
class Frame:
    """One frame map. `holes` runs clockwise: R1 … Rn, then Lm … L1."""

    slug: str
    name: str
    maker: str
    sport: Sport
    head: Head
    mains: int
    crosses: int
    holes: tuple[Hole, ...]
    strips: tuple[Strip, ...] = ()
    twins: tuple[Twin, ...] = ()
    stringing: Stringing = field(default_factory=Stringing)
    spacing_mm: tuple[float, float] | None = None
    tension_limit: TensionLimit | None = None
    overall_mm: tuple[float, float] | None = None
    year: int | None = None
    variant_of: str | None = None
    aliases: tuple[str, ...] = ()
    measured: Measured | None = None
    confirmed: tuple[Confirmed, ...] = ()
    note: str | None = None
    mirrored: bool = True
    source: str = ""

    @property
    def drilled(self) -> tuple[Hole, ...]:
        """The places that really have a hole."""
        return tuple(hole for hole in self.holes if hole.drilled)

    def hole(self, address: Address) -> Hole:
        """The hole at an address. Raises KeyError where the frame has none."""
        for hole in self.holes:
            if hole.address == address:
                return hole
        raise KeyError(str(address))


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the catalogue.

    `barrel_mm` is the outer diameter of a post, `bore_mm` the opening inside
    it, `length_mm` its reach under the flange: two numbers for a two-post part
    with unequal posts, the one nearer the head on the walk first, and one
    number otherwise. `posts` counts the barrels of a strip.
    `contains` is what a set holds. `packs` are the counts in which the part is
    sold by itself: none means that it comes only inside a set.
    """

    id: str
    name: str
    kind: PartKind
    maker: str | None = None
    barrel_mm: float | None = None
    bore_mm: float | None = None
    length_mm: tuple[float, ...] | None = None
    flange_mm: float | None = None
    pitch_mm: float | None = None
    tolerance_mm: float | None = None
    posts: int | None = None
    bumper: bool = False
    contains: Mapping[str, int] = field(default_factory=dict)
    frames: tuple[str, ...] = ()
    packs: tuple[int, ...] = ()
    material: str | None = None
    measured: Measured | None = None
    note: str | None = None
    source: str = ""

    @property
    def sold_alone(self) -> bool:
        """Whether the part can be bought by itself."""
        return bool(self.packs)


Catalogue = Mapping[str, Part]


@dataclass(frozen=True, slots=True)
class ClubFrame:
    """A frame of a club, by its slug: how many there are, restrings a year of them all, usual tension."""

    frame: str
    count: int = 1
    restrings_per_year: float | None = None
    tension: TensionLimit | None = None


@dataclass(frozen=True, slots=True)
class LabelSheet:
    """A sheet of drawer labels: a grid inside margins (top, right, bottom, left), with gaps (across, down).

    All lengths are in mm.
    """

    paper: PaperName = "A4"
    rows: int = 8
    columns: int = 3
    margins_mm: tuple[float, float, float, float] = (8.5, 7.0, 8.5, 7.0)
    gap_mm: tuple[float, float] = (2.5, 0.0)


@dataclass(frozen=True, slots=True)
class Shelf:
    """What a shelf of parts is planned by.

    `shares` says for each kind of part how many of a hundred restrings need one renewed, as 0 … 1; a kind
    that is not named takes the planner's assumption. `service_level` is the chance, between 0 and 1, that a
    drawer does not run empty between two orders. `stock` counts pieces by part.
    """

    lead_time_weeks: float | None = None
    review_weeks: float | None = None
    service_level: float | None = None
    shares: Mapping[PartKind, float] = field(default_factory=dict)
    stock: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Club:
    """A club or a shop: the frames it strings, and how its chart, its labels and its shelf are made."""

    slug: str
    name: str
    frames: tuple[ClubFrame, ...]
    edition: str | None = None
    on: date | None = None
    units: Units = "metric"
    paper: PaperName = "A2"
    landscape: bool = False
    black_and_white: bool = False
    distance_m: float = 2.0
    labels: LabelSheet = field(default_factory=LabelSheet)
    shelf: Shelf | None = None
    note: str | None = None
    source: str = ""


@dataclass(frozen=True, slots=True)
class Moved:
    """Names that are no longer in use: from the old slug or id to the one of today."""

    frames: Mapping[str, str] = field(default_factory=dict)
    parts: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Book:
    """All that is written down, in order of id."""

    frames: Mapping[str, Frame]
    parts: Catalogue
    clubs: Mapping[str, Club] = field(default_factory=dict)
    moved: Moved = field(default_factory=Moved)
