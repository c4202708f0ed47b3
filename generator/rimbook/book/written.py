"""The shape of the files as people write them: keys, types and bounds.

These models check shape alone; what the words mean is settled elsewhere. They
are also the source of the JSON Schemas, so every field says what it is for.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

from rimbook.book.model import End, Outline, PartKind, Side, Sport
from rimbook.book.written_values import (
    FITTED_KEY,
    UNKNOWN,
    AddressWord,
    Coordinate,
    Count,
    Handle,
    IsoDate,
    Lengths,
    Mm,
    MmOrUnknown,
    Name,
    Note,
    PartWord,
    PerHole,
    Slug,
    StripEnd,
    TensionWord,
    Walk,
    Year,
)


class Written(BaseModel):
    """What every model here keeps to: no key but its own, no silent conversion."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


class WrittenMeasured(Written):
    """Who measured, and how finely."""

    by: Handle = Field(description="Handle of the person who measured.", examples=["your-handle"])
    on: IsoDate | None = Field(default=None, description="The day, as 2026-10-04.", examples=["2026-10-04"])
    with_: Name | None = Field(
        default=None,
        alias="with",
        description="The tool: calliper, pin gauge, ruler …",
        examples=["calliper", "pin gauge set"],
    )
    resolution_mm: Mm | None = Field(
        default=None, description="The smallest step the tool shows, in mm.", examples=[0.05]
    )


class WrittenConfirmed(Written):
    """Someone else who checked the map against a racket."""

    by: Handle = Field(description="Handle of the person who checked.", examples=["your-handle"])
    on: IsoDate | None = Field(default=None, description="The day, as 2026-10-04.", examples=["2026-10-12"])


class WrittenHead(Written):
    """The line on which the holes sit."""

    outline: Outline = Field(description="The kind of curve that fits the head.", examples=["superellipse"])
    inside_mm: Annotated[list[Mm], Field(min_length=2, max_length=2)] | None = Field(
        default=None, description="Width and height of the line of holes, in mm.", examples=[[186, 244]]
    )
    exponent: Annotated[float, Field(ge=1.5, le=6, allow_inf_nan=False)] | None = Field(
        default=None, description="Superellipse only: 2 is an ellipse, more is squarer.", examples=[2.15]
    )
    taper: Annotated[float, Field(ge=0, le=1, allow_inf_nan=False)] | None = Field(
        default=None,
        description="Teardrop only: 0 is an ellipse, 1 runs to a point at the throat.",
        examples=[0.4],
    )
    points_mm: (
        Annotated[
            list[Annotated[list[Coordinate], Field(min_length=2, max_length=2)]],
            Field(min_length=6, max_length=400),
        ]
        | None
    ) = Field(
        default=None,
        description="Points only: x to the right, y towards the head, in order round the rim.",
        examples=[[[0, 122], [50, 105], [93, 0], [50, -105], [0, -122], [-93, 0]]],
    )


class WrittenSpacing(Written):
    """How far apart the strings lie, where it was measured."""

    mains: Mm = Field(description="Between neighbouring mains, in mm.", examples=[7.0])
    crosses: Mm = Field(description="Between neighbouring crosses, in mm.", examples=[9.5])


class WrittenLeft(Written):
    """A left side that differs from the right."""

    walk: Walk = Field(
        description="The walk down the left side.", examples=["m1 m2 m3+c1 c2 c3 . m3+c4 m2 m1"]
    )
    places_mm: list[MmOrUnknown] | None = Field(
        default=None, description="Measured places of the left side.", examples=[[4.0, 12.1, UNKNOWN]]
    )


class WrittenStringing(Written):
    """How the frame is strung."""

    pieces: Literal[1, 2] = Field(default=2, description="Strung in one piece or in two.", examples=[2])
    mains_start: End = Field(
        default="head", description="The end at which the centre mains are joined.", examples=["head"]
    )
    crosses_start: End = Field(
        default="head", description="The end from which the crosses are strung.", examples=["throat"]
    )
    first_cross: Side = Field(
        default="R", description="The side from which the first cross is pulled.", examples=["R"]
    )
    tie_offs: list[AddressWord] = Field(
        default_factory=list,
        max_length=20,
        description="The holes in which string ends are tied off.",
        examples=[["R8", "L8", "R31", "L31"]],
    )


class WrittenStrip(Written):
    """One moulded strip."""

    name: Name = Field(
        description="What it is called at the bench: crown strip, bumper, side strip …",
        examples=["crown strip"],
    )
    holes: Annotated[list[StripEnd], Field(min_length=2, max_length=2)] = Field(
        description="First and last hole, clockwise: [L6, R6]. Bare numbers mean one strip on each side.",
        examples=[["L6", "R6"], [12, 20]],
    )
    part: PartWord = Field(
        description="Id of the strip in the catalogue, or unknown.", examples=["plover-crown", UNKNOWN]
    )


class WrittenFrame(Written):
    """A frame map."""

    format: Literal[1] = Field(description="The version of this format.", examples=[1])
    name: Name = Field(description="What the frame is called.", examples=["Plover 76"])
    maker: Name = Field(description="Who makes it.", examples=["Saltmarsh Works"])
    sport: Sport = Field(description="The sport it is for.", examples=["badminton"])
    aliases: list[Name] = Field(
        default_factory=list,
        max_length=20,
        description="Other names it goes by.",
        examples=[["Plover seventy-six"]],
    )
    year: Year | None = Field(default=None, description="The year of this version.", examples=[2024])
    variant_of: Slug | None = Field(
        default=None, description="Slug of the sister frame it is a version of.", examples=["plover-75"]
    )
    head: WrittenHead = Field(
        description="The closed line on which the holes sit, and its size.",
        examples=[{"outline": "superellipse", "inside_mm": [186, 244], "exponent": 2.15}],
    )
    overall_mm: Annotated[list[Mm], Field(min_length=2, max_length=2)] | None = Field(
        default=None, description="Length and width of the whole racket, in mm.", examples=[[674, 206]]
    )
    rim_depth_mm: PerHole = Field(
        default=UNKNOWN,
        description="Depth of the rim along a hole, in mm; by hole where it varies.",
        examples=[9.4, {"default": 9.4, "11.0": ["35-38"]}],
    )
    mains: Annotated[int, Field(ge=2, le=60)] = Field(
        description="Number of mains, on both halves.", examples=[22]
    )
    crosses: Annotated[int, Field(ge=1, le=60)] = Field(description="Number of crosses.", examples=[21])
    spacing_mm: WrittenSpacing | None = Field(
        default=None,
        description="String spacing, where it was measured.",
        examples=[{"mains": 7.0, "crosses": 9.5}],
    )
    walk: Walk = Field(
        description=(
            "What passes through each hole, from the middle of the head to the middle of the throat: a main "
            "as m3, a cross as c5, both as m9+c1, no string as a dot, a place without a hole as x."
        ),
        examples=["m1 m2 m3+c1 c2 c3 . m3+c4 m2 m1"],
    )
    places_mm: list[MmOrUnknown] | None = Field(
        default=None,
        description="Distance of each place along the rim from the middle of the head, in mm.",
        examples=[[4.0, 12.1, UNKNOWN]],
    )
    left: WrittenLeft | None = Field(
        default=None,
        description="The left side, where it is not the mirror image.",
        examples=[{"walk": "m1 m2 m3+c1 c2 c3 . m3+c4 m2 m1"}],
    )
    stringing: WrittenStringing = Field(
        default_factory=WrittenStringing,
        description="In how many pieces it is strung, where they begin, and where they end.",
        examples=[{"pieces": 2, "mains_start": "head", "tie_offs": ["R8", "L8", "R31", "L31"]}],
    )
    bore_mm: PerHole = Field(
        default=UNKNOWN,
        description="The drilled hole, in mm; by hole where it varies.",
        examples=[2.1, {"default": 2.1, "2.7": [9, "13-15", "R31"], UNKNOWN: ["20-22"]}],
    )
    fitted: dict[str, PartWord] = Field(
        default_factory=dict,
        description="What sits there: default, then `bore 2.7`, then holes; the later line wins.",
        examples=[{"default": "barrel-21", "bore 2.7": "barrel-27", "R37-R38": "twin-21", "20": UNKNOWN}],
        json_schema_extra={"propertyNames": {"pattern": FITTED_KEY}},
    )
    strips: list[WrittenStrip] = Field(
        default_factory=list,
        max_length=40,
        description="Moulded strips.",
        examples=[[{"name": "crown strip", "holes": ["L6", "R6"], "part": "plover-crown"}]],
    )
    tension_limit: TensionWord | None = Field(
        default=None, description="As printed by the maker.", examples=["28 lb", "12.5 kg", "125 N"]
    )
    measured: WrittenMeasured | None = Field(
        default=None,
        description="Who measured this map.",
        examples=[{"by": "your-handle", "on": "2026-10-04", "with": "calliper", "resolution_mm": 0.05}],
    )
    confirmed: list[WrittenConfirmed] = Field(
        default_factory=list,
        max_length=100,
        description="Who else checked it.",
        examples=[[{"by": "your-handle", "on": "2026-10-12"}]],
    )
    note: Note | None = Field(
        default=None,
        description="What else a bench should know.",
        examples=["The crown strip is glued at both ends."],
    )


class WrittenPart(Written):
    """One part of the catalogue."""

    name: Name = Field(description="What the part is called.", examples=["Short barrel 2.1"])
    kind: PartKind = Field(description="What sort of part it is.", examples=["single"])
    maker: Name | None = Field(
        default=None, description="Who makes it, where it is one maker's own.", examples=["Saltmarsh Works"]
    )
    barrel_mm: MmOrUnknown = Field(
        default=None, description="Outer diameter of a post, in mm.", examples=[2.05, UNKNOWN]
    )
    bore_mm: MmOrUnknown = Field(
        default=None, description="Opening inside a post, in mm.", examples=[1.3, UNKNOWN]
    )
    length_mm: Lengths = Field(
        default=None,
        description="Reach under the flange; two numbers for uneven posts, in mm.",
        examples=[10.5, [10.5, 16]],
    )
    flange_mm: MmOrUnknown = Field(
        default=None, description="Diameter of the flange, in mm.", examples=[4.2, UNKNOWN]
    )
    pitch_mm: MmOrUnknown = Field(
        default=None, description="Twins: centre to centre of the posts, in mm.", examples=[7.5, UNKNOWN]
    )
    tolerance_mm: Mm | None = Field(
        default=None, description="Stated tolerance of the diameters, plus or minus, in mm.", examples=[0.05]
    )
    posts: Annotated[int, Field(ge=1, le=100)] | None = Field(
        default=None, description="Strips: number of barrels.", examples=[12]
    )
    bumper: bool = Field(
        default=False, description="Strips: whether it guards the rim as a bumper.", examples=[True]
    )
    contains: dict[str, Count] = Field(
        default_factory=dict,
        description="Sets: part id and how many.",
        examples=[{"barrel-21": 62, "crown-strip": 1}],
    )
    frames: list[Slug] = Field(
        default_factory=list,
        max_length=200,
        description="Sets: the frames they are for.",
        examples=[["plover-76"]],
    )
    packs: list[Count] = Field(
        default_factory=list,
        max_length=20,
        description="Counts in which it is sold by itself; none means only inside a set.",
        examples=[[1, 25, 100]],
    )
    material: Name | None = Field(default=None, description="What it is made of.", examples=["PA12"])
    measured: WrittenMeasured | None = Field(
        default=None,
        description="Who measured the part.",
        examples=[{"by": "your-handle", "on": "2026-09-12", "with": "calliper", "resolution_mm": 0.05}],
    )
    note: Note | None = Field(
        default=None, description="What else a bench should know.", examples=["Fits either way round."]
    )


class WrittenParts(Written):
    """A file of the catalogue."""

    format: Literal[1] = Field(description="The version of this format.", examples=[1])
    parts: dict[Slug, WrittenPart] = Field(
        min_length=1,
        description="The parts by id.",
        json_schema_extra={"additionalProperties": False},
        examples=[{"barrel-21-short": {"name": "Short barrel 2.1", "kind": "single", "barrel_mm": 2.05}}],
    )
