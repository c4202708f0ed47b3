"""The shape of the data files: every key, what it holds, and what it says.

These models are the source of the published JSON Schemas. They are open: a file may
gain a key, and a program that read it before still can. Lengths are millimetres.
"""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, Field

from rimbook.book.model import PartKind, Sport
from rimbook.book.written_values import ADDRESS, DATE, SLUG

Slug = Annotated[str, Field(pattern=f"^{SLUG}$")]
Address = Annotated[str, Field(pattern=ADDRESS)]
Word = Annotated[str, Field(pattern=r"^[mc][1-9][0-9]*$")]
Length = Annotated[float, Field(gt=0)]
Count = Annotated[int, Field(ge=1)]
Point = Annotated[list[float], Field(min_length=2, max_length=2)]
Format = Annotated[Literal[1], Field(description="The version of this format.")]
Score = Annotated[
    int,
    Field(ge=0, le=5, description="How far the map can be trusted, from 0 to 5.", examples=[4]),
]
Page = Annotated[str, Field(pattern=r"^[^/:?#][^:?#]*\.html$")]


class ListedFrame(BaseModel):
    """One frame of the book in short."""

    slug: Slug = Field(description="The frame's short name, in its addresses.", examples=["plover-76"])
    name: str = Field(description="What the frame is called.", examples=["Plover 76"])
    maker: str = Field(description="Who makes it.", examples=["Saltmarsh Works"])
    sport: Sport = Field(description="The sport it is for.")
    mains: Count = Field(description="Number of mains, on both halves.")
    crosses: Count = Field(description="Number of crosses.")
    holes: Count = Field(description="Number of drilled holes.")
    bores: dict[str, Count] = Field(
        description="Holes by bore in mm; a hole of unknown bore is counted in `holes` alone.",
        examples=[{"2.1": 60, "2.7": 16}],
        json_schema_extra={"propertyNames": {"pattern": r"^[0-9]+(\.[0-9]+)?$"}},
    )
    url: Page = Field(
        description="The frame's page, from the root of the site.", examples=["frames/plover-76/index.html"]
    )
    confidence: Score


class FrameList(BaseModel):
    """All frames of the book, in order of slug."""

    format: Format
    frames: list[ListedFrame] = Field(description="The frames.")


class Outline(BaseModel):
    """The closed line on which the holes sit."""

    length_mm: Length = Field(description="The length of the whole line.", examples=[688.46])
    points_mm: list[Point] = Field(
        min_length=3,
        description="Points on it as [x, y], clockwise from the middle of the head, the first not repeated.",
        examples=[[[0.0, 122.0], [1.25, 122.0], [2.49, 121.99]]],
    )


class Hole(BaseModel):
    """One drilled hole."""

    address: Address = Field(description="The side and the place on the walk.", examples=["R9"])
    at_mm: Point = Field(description="Where it is, as [x, y].", examples=[[4.0, 122.0]])
    along_mm: float = Field(ge=0, description="Clockwise along the outline from the middle of the head.")
    place: Literal["measured", "derived"] = Field(
        description="Whether somebody measured the place, or it follows from the pattern."
    )
    passes: list[Word] = Field(
        max_length=2,
        description=(
            "The strings that pass: m3 is the third main from the centre, c5 the fifth cross from the head."
        ),
        examples=[["m9", "c1"], ["m1"], []],
    )
    tie_off: bool = Field(description="Whether a string end is tied off here.")
    bore_mm: Length | None = Field(description="The drilled hole; null is unknown.", examples=[2.7])
    rim_depth_mm: Length | None = Field(
        description="Depth of the rim along the hole; null is unknown.", examples=[9.4]
    )
    part: str | None = Field(
        description="Id of the part that sits here, of the strip where it is one; null is unknown.",
        examples=["barrel-27-short"],
    )
    strip: str | None = Field(
        description="Name of the strip that covers the hole; null is none.", examples=["crown strip"]
    )
    twin_with: Address | None = Field(
        description="The other hole of a part with two posts; null is none.", examples=["R38"]
    )
    pull: float = Field(
        ge=0, description="Force on the grommet divided by the string tension, without friction."
    )


class Leg(BaseModel):
    """A straight piece of string between two holes."""

    from_: Address = Field(alias="from", description="Where it begins.")
    to: Address = Field(description="Where it ends.")
    run: Literal["inside", "outside"] = Field(description="Across the head, or outside the rim.")


class StringPath(BaseModel):
    """One string from end to end."""

    string: Literal["mains", "crosses", "whole"] = Field(description="What it weaves; `whole` is both.")
    legs: list[Leg] = Field(description="Its pieces in order.")


class Needed(BaseModel):
    """One line of the parts list of a full change."""

    part: str | None = Field(description="Id of the part; null counts holes of unknown part.")
    count: Count = Field(description="Pieces: one for a strip, one for the two holes of a twin.")


class Measured(BaseModel):
    """Who measured, when and how finely."""

    by: str = Field(description="Handle of the person who measured.")
    on: Annotated[str, Field(pattern=DATE)] | None = Field(description="The day; null is unknown.")
    with_: str | None = Field(alias="with", description="The tool; null is unknown.")
    resolution_mm: Length | None = Field(
        description="The smallest step the tool shows; null is unknown.", examples=[0.05]
    )


class Confirmed(BaseModel):
    """Someone else who found the same."""

    by: str = Field(description="Handle of the person who checked the map against another racket.")
    on: Annotated[str, Field(pattern=DATE)] | None = Field(description="The day; null is unknown.")


class FrameData(BaseModel):
    """One frame, hole by hole. x to the right, y towards the head, origin in the middle of the outline."""

    format: Format
    slug: Slug = Field(description="The frame's short name, in its addresses.", examples=["plover-76"])
    name: str = Field(description="What the frame is called.", examples=["Plover 76"])
    maker: str = Field(description="Who makes it.", examples=["Saltmarsh Works"])
    sport: Sport = Field(description="The sport it is for.")
    year: int | None = Field(description="The year of this version; null is unknown.")
    variant_of: Slug | None = Field(
        description="Slug of the sister frame of which it is a variant; null is none.", examples=["plover-75"]
    )
    mains: Count = Field(description="Number of mains, on both halves.")
    crosses: Count = Field(description="Number of crosses.")
    outline: Outline = Field(description="The closed line on which the holes sit.")
    holes: list[Hole] = Field(description="The drilled holes, clockwise from the middle of the head.")
    path: list[StringPath] = Field(description="The strings, in the order in which they are strung.")
    regrommet: list[Needed] = Field(description="The parts list of a full change.")
    measured: Measured | None = Field(description="Who measured the frame; null is nobody.")
    confirmed: list[Confirmed] = Field(description="Who has checked the map since; none is nobody.")
    source: str = Field(
        description="The map, as a path in the repository of the book.",
        examples=["frames/maps/plover-76.yaml"],
    )
    confidence: Score


class PartData(BaseModel):
    """One part of the catalogue. A size is null where it is unknown, and where the kind has none."""

    id: Slug = Field(description="The part's id, as maps and frames name it.", examples=["barrel-21-short"])
    name: str = Field(description="What the part is called.")
    kind: PartKind = Field(description="What sort of part it is.")
    maker: str | None = Field(description="Who makes it, where it is one maker's own.")
    barrel_mm: Length | None = Field(description="Outer diameter of a post.", examples=[2.05])
    bore_mm: Length | None = Field(description="Opening inside a post.", examples=[1.3])
    length_mm: Annotated[list[Length], Field(min_length=1, max_length=2)] | None = Field(
        description="Reach under the flange; two numbers for uneven posts.", examples=[[10.5], [10.5, 16.0]]
    )
    flange_mm: Length | None = Field(description="Diameter of the flange.")
    pitch_mm: Length | None = Field(description="Centre to centre of the two posts of a twin.")
    tolerance_mm: Length | None = Field(description="Stated tolerance of the diameters, plus or minus.")
    posts: Count | None = Field(description="Number of barrels of a strip.")
    bumper: bool = Field(description="Whether a strip guards the rim as a bumper.")
    contains: dict[str, Count] = Field(
        description="What a set holds: part id and how many.", examples=[{"barrel-21-short": 40}]
    )
    frames: list[Slug] = Field(description="The frames a set is made for.")
    packs: list[Count] = Field(
        description="Counts in which it is sold by itself; none means only inside a set.",
        examples=[[1, 25, 100], []],
    )
    material: str | None = Field(description="What it is made of; null is unknown.")
    measured: Measured | None = Field(description="Who measured it; null is nobody.")
    url: Page = Field(
        description="The part's page, from the root of the site.",
        examples=["parts/barrel-21-short/index.html"],
    )


class PartList(BaseModel):
    """All parts of the catalogue, in order of id."""

    format: Format
    parts: list[PartData] = Field(description="The parts.")


class MovedNames(BaseModel):
    """Names that are no longer in use, in order of the old name."""

    format: Format
    frames: dict[Slug, Slug] = Field(
        description="Frames: the old slug, and the one of today.", examples=[{"plover-old": "plover-76"}]
    )
    parts: dict[Slug, Slug] = Field(
        description="Parts: the old id, and the one of today.", examples=[{"barrel-old": "barrel-21-short"}]
    )
