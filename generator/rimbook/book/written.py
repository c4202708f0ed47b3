"""The shape of the files as people write them: keys, types and bounds.

These models check shape alone; what the words mean is settled elsewhere. They
are also the source of the JSON Schemas, so every field says what it is for.
"""

from __future__ import annotations

from datetime import date
from typing import Annotated, Any, Literal, get_args

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, StringConstraints, WithJsonSchema
from pydantic_core import PydanticCustomError

from rimbook.book.address import address, selector
from rimbook.book.model import End, Outline, PartKind, Side, Sport

FORMAT = 1
UNKNOWN = "unknown"
SLUG = r"[a-z0-9]+(-[a-z0-9]+)*"
MAX_LENGTH_MM = 1000
SPORTS: tuple[str, ...] = get_args(Sport)

Name = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=80)]
Note = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=2000)]
Slug = Annotated[str, StringConstraints(pattern=f"^{SLUG}$", max_length=60)]
Handle = Annotated[str, StringConstraints(pattern=f"^{SLUG}$", max_length=40)]
Walk = Annotated[str, StringConstraints(min_length=1, max_length=4000)]
Mm = Annotated[float, Field(gt=0, le=MAX_LENGTH_MM, allow_inf_nan=False)]
Coordinate = Annotated[float, Field(ge=-MAX_LENGTH_MM, le=MAX_LENGTH_MM, allow_inf_nan=False)]
Year = Annotated[int, Field(ge=1900, le=2100)]
Count = Annotated[int, Field(ge=1, le=100_000)]

_MM_SCHEMA: dict[str, Any] = {"type": "number", "exclusiveMinimum": 0, "maximum": MAX_LENGTH_MM}
_UNKNOWN_SCHEMA: dict[str, Any] = {"const": UNKNOWN}
_SELECTOR_SCHEMA: dict[str, Any] = {
    "anyOf": [
        {"type": "integer", "minimum": 1, "maximum": 200},
        {"type": "string", "pattern": "^[RL]?[1-9][0-9]*(-[RL]?[1-9][0-9]*)?$"},
    ]
}


def is_mm(value: object) -> bool:
    """Whether a value is a number that can be a length in mm."""
    return isinstance(value, int | float) and not isinstance(value, bool) and 0 < value <= MAX_LENGTH_MM


def _mm_or_unknown(value: object) -> float | None:
    if value == UNKNOWN:
        return None
    if is_mm(value):
        return float(value)  # type: ignore[arg-type]
    raise PydanticCustomError("mm_or_unknown", f"a length in mm up to {MAX_LENGTH_MM}, or {UNKNOWN}")


def _iso_date(value: object) -> date:
    try:
        if isinstance(value, str) and len(value) == len("2026-10-04"):
            return date.fromisoformat(value)
    except ValueError:
        pass
    raise PydanticCustomError("iso_date", "a date as 2026-10-04")


def _lengths(value: object) -> tuple[float, ...] | None:
    if value == UNKNOWN:
        return None
    lengths = value if isinstance(value, list) else [value]
    if 1 <= len(lengths) <= 2 and all(map(is_mm, lengths)):
        return tuple(map(float, lengths))
    raise PydanticCustomError("lengths", f"a length in mm, two lengths as [10.5, 16], or {UNKNOWN}")


def _selector_word(value: object) -> str:
    if isinstance(value, int | str) and selector(value) is not None:
        return str(value)
    raise PydanticCustomError("selector", "a hole as R9, both sides as 9, or a run as R9-R13 or 9-13")


def _address_word(value: object) -> str:
    if isinstance(value, str) and address(value) is not None:
        return value
    raise PydanticCustomError("address", "a hole with its side, as R9 or L9")


def _part_word(value: object) -> str | None:
    if value == UNKNOWN:
        return None
    if isinstance(value, str) and value:
        return value[:200]
    raise PydanticCustomError("part_word", f"the id of a part in the catalogue, or {UNKNOWN}")


def _per_hole(value: object) -> Any:
    if isinstance(value, dict):
        return value
    try:
        _mm_or_unknown(value)
    except PydanticCustomError:
        raise PydanticCustomError(
            "per_hole", f"a length in mm, {UNKNOWN}, or a default with exceptions by hole"
        ) from None
    return value


MmOrUnknown = Annotated[
    float | None,
    BeforeValidator(_mm_or_unknown),
    WithJsonSchema({"anyOf": [_MM_SCHEMA, _UNKNOWN_SCHEMA]}),
]
IsoDate = Annotated[date, BeforeValidator(_iso_date), WithJsonSchema({"type": "string", "format": "date"})]
SelectorWord = Annotated[str, BeforeValidator(_selector_word), WithJsonSchema(_SELECTOR_SCHEMA)]
AddressWord = Annotated[
    str,
    BeforeValidator(_address_word),
    WithJsonSchema({"type": "string", "pattern": "^[RL][1-9][0-9]*$"}),
]
PartWord = Annotated[
    str | None,
    BeforeValidator(_part_word),
    WithJsonSchema({"type": "string", "minLength": 1}),
]
PerHole = Annotated[
    Any,
    BeforeValidator(_per_hole),
    WithJsonSchema(
        {
            "anyOf": [
                _MM_SCHEMA,
                _UNKNOWN_SCHEMA,
                {
                    "type": "object",
                    "properties": {"default": {"anyOf": [_MM_SCHEMA, _UNKNOWN_SCHEMA]}},
                    "additionalProperties": {"type": "array", "items": _SELECTOR_SCHEMA},
                    "required": ["default"],
                },
            ]
        }
    ),
]


Lengths = Annotated[
    tuple[float, ...] | None,
    BeforeValidator(_lengths),
    WithJsonSchema(
        {
            "anyOf": [
                _MM_SCHEMA,
                _UNKNOWN_SCHEMA,
                {"type": "array", "items": _MM_SCHEMA, "minItems": 2, "maxItems": 2},
            ]
        }
    ),
]


class Written(BaseModel):
    """What every model here keeps to: no key but its own, no silent conversion."""

    model_config = ConfigDict(extra="forbid", strict=True, frozen=True)


class WrittenMeasured(Written):
    """Who measured, and how finely."""

    by: Handle = Field(description="Handle of the person who measured.")
    on: IsoDate | None = Field(default=None, description="The day, as 2026-10-04.")
    with_: Name | None = Field(
        default=None, alias="with", description="The tool: calliper, pin gauge, ruler …"
    )
    resolution_mm: Mm | None = Field(default=None, description="The smallest step the tool shows, in mm.")


class WrittenConfirmed(Written):
    """Someone else who checked the map against a racket."""

    by: Handle = Field(description="Handle of the person who checked.")
    on: IsoDate | None = Field(default=None, description="The day, as 2026-10-04.")


class WrittenHead(Written):
    """The line on which the holes sit."""

    outline: Outline = Field(description="The kind of curve that fits the head.")
    inside_mm: Annotated[list[Mm], Field(min_length=2, max_length=2)] | None = Field(
        default=None, description="Width and height of the line of holes, in mm."
    )
    exponent: Annotated[float, Field(ge=1.5, le=6, allow_inf_nan=False)] | None = Field(
        default=None, description="Superellipse only: 2 is an ellipse, more is squarer."
    )
    taper: Annotated[float, Field(ge=0, le=1, allow_inf_nan=False)] | None = Field(
        default=None, description="Teardrop only: 0 is an ellipse, 1 runs to a point at the throat."
    )
    points_mm: (
        Annotated[
            list[Annotated[list[Coordinate], Field(min_length=2, max_length=2)]],
            Field(min_length=6, max_length=400),
        ]
        | None
    ) = Field(
        default=None, description="Points only: x to the right, y towards the head, in order round the rim."
    )


class WrittenSpacing(Written):
    """How far apart the strings lie, where it was measured."""

    mains: Mm = Field(description="Between neighbouring mains, in mm.")
    crosses: Mm = Field(description="Between neighbouring crosses, in mm.")


class WrittenLeft(Written):
    """A left side that differs from the right."""

    walk: Walk = Field(description="The walk down the left side.")
    places_mm: list[MmOrUnknown] | None = Field(default=None, description="Measured places of the left side.")


class WrittenStringing(Written):
    """How the frame is strung."""

    pieces: Literal[1, 2] = Field(default=2, description="Strung in one piece or in two.")
    mains_start: End = Field(default="head", description="The end at which the centre mains are joined.")
    crosses_start: End = Field(default="head", description="The end from which the crosses are strung.")
    first_cross: Side = Field(default="R", description="The side from which the first cross is pulled.")
    tie_offs: list[AddressWord] = Field(
        default_factory=list, max_length=20, description="The holes in which string ends are tied off."
    )


class WrittenStrip(Written):
    """One moulded strip."""

    name: Name = Field(description="What it is called at the bench: crown strip, bumper, side strip …")
    holes: Annotated[list[int | str], Field(min_length=2, max_length=2)] = Field(
        description="First and last hole, clockwise: [L6, R6]. Bare numbers mean one strip on each side."
    )
    part: PartWord = Field(description="Id of the strip in the catalogue, or unknown.")


TensionWord = Annotated[
    str, StringConstraints(pattern=r"^[0-9]{1,3}(\.[0-9]{1,2})? (lb|kg|N)$", max_length=12)
]


class WrittenFrame(Written):
    """A frame map."""

    format: Literal[1] = Field(description="The version of this format.")
    name: Name = Field(description="What the frame is called.")
    maker: Name = Field(description="Who makes it.")
    sport: Sport = Field(description="The sport it is for.")
    aliases: list[Name] = Field(default_factory=list, max_length=20, description="Other names it goes by.")
    year: Year | None = Field(default=None, description="The year of this version.")
    variant_of: Slug | None = Field(default=None, description="Slug of the sister frame it is a version of.")
    head: WrittenHead = Field(description="The line on which the holes sit.")
    overall_mm: Annotated[list[Mm], Field(min_length=2, max_length=2)] | None = Field(
        default=None, description="Length and width of the whole racket, in mm."
    )
    rim_depth_mm: PerHole = Field(
        default=UNKNOWN, description="Depth of the rim along a hole, in mm; by hole where it varies."
    )
    mains: Annotated[int, Field(ge=2, le=60)] = Field(description="Number of mains, on both halves.")
    crosses: Annotated[int, Field(ge=1, le=60)] = Field(description="Number of crosses.")
    spacing_mm: WrittenSpacing | None = Field(
        default=None, description="String spacing, where it was measured."
    )
    walk: Walk = Field(
        description="What passes through each hole, from the middle of the head to the middle of the throat."
    )
    left: WrittenLeft | None = Field(
        default=None, description="The left side, where it is not the mirror image."
    )
    places_mm: list[MmOrUnknown] | None = Field(
        default=None, description="Distance of each place along the rim from the middle of the head, in mm."
    )
    stringing: WrittenStringing = Field(
        default_factory=WrittenStringing, description="How the frame is strung."
    )
    bore_mm: PerHole = Field(default=UNKNOWN, description="The drilled hole, in mm; by hole where it varies.")
    fitted: dict[str, PartWord] = Field(
        default_factory=dict,
        description="What sits there: default, then `bore 2.7`, then holes; the later line wins.",
    )
    strips: list[WrittenStrip] = Field(default_factory=list, max_length=40, description="Moulded strips.")
    tension_limit: TensionWord | None = Field(
        default=None, description="As printed by the maker: 28 lb, 12.5 kg."
    )
    measured: WrittenMeasured | None = Field(default=None, description="Who measured this map.")
    confirmed: list[WrittenConfirmed] = Field(
        default_factory=list, max_length=100, description="Who else checked it."
    )
    note: Note | None = Field(default=None, description="What else a bench should know.")


class WrittenPart(Written):
    """One part of the catalogue."""

    name: Name = Field(description="What the part is called.")
    kind: PartKind = Field(description="What sort of part it is.")
    maker: Name | None = Field(default=None, description="Who makes it, where it is one maker's own.")
    barrel_mm: MmOrUnknown = Field(default=None, description="Outer diameter of a post, in mm.")
    bore_mm: MmOrUnknown = Field(default=None, description="Opening inside a post, in mm.")
    length_mm: Lengths = Field(
        default=None, description="Reach under the flange; two numbers for uneven posts, in mm."
    )
    flange_mm: MmOrUnknown = Field(default=None, description="Diameter of the flange, in mm.")
    pitch_mm: MmOrUnknown = Field(default=None, description="Twins: centre to centre of the posts, in mm.")
    tolerance_mm: Mm | None = Field(
        default=None, description="Stated tolerance of the diameters, plus or minus, in mm."
    )
    posts: Annotated[int, Field(ge=1, le=100)] | None = Field(
        default=None, description="Strips: number of barrels."
    )
    bumper: bool = Field(default=False, description="Strips: whether it guards the rim as a bumper.")
    contains: dict[str, Count] = Field(default_factory=dict, description="Sets: part id and how many.")
    frames: list[Slug] = Field(
        default_factory=list, max_length=200, description="Sets: the frames they are for."
    )
    packs: list[Count] = Field(
        default_factory=list,
        max_length=20,
        description="Counts in which it is sold by itself; none means only inside a set.",
    )
    material: Name | None = Field(default=None, description="What it is made of.")
    measured: WrittenMeasured | None = Field(default=None, description="Who measured the part.")
    note: Note | None = Field(default=None, description="What else a bench should know.")


class WrittenParts(Written):
    """A file of the catalogue."""

    format: Literal[1] = Field(description="The version of this format.")
    parts: dict[Slug, WrittenPart] = Field(min_length=1, description="The parts by id.")
