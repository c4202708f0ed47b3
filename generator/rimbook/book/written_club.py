"""The shape of a club file as people write it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Discriminator, Field, Tag

from rimbook.book.model import PaperName, PartKind, Units
from rimbook.book.written import Written
from rimbook.book.written_values import IsoDate, Name, Note, Slug, TensionWord

_Weeks = Annotated[float, Field(ge=0, le=520, allow_inf_nan=False)]
_Share = Annotated[float, Field(ge=0, le=1, allow_inf_nan=False)]
_Edge = Annotated[float, Field(ge=0, le=200, allow_inf_nan=False)]


class WrittenClubFrame(Written):
    """A frame of the club with what is known of its use."""

    frame: Slug = Field(
        description="The frame, by the name of its map's file without .yaml.", examples=["plover-76"]
    )
    count: Annotated[int, Field(ge=0, le=100_000)] = Field(
        default=1, description="How many the club has.", examples=[3]
    )
    restrings_per_year: Annotated[float, Field(ge=0, le=1_000_000, allow_inf_nan=False)] | None = Field(
        default=None, description="Restrings a year of all of them together.", examples=[40]
    )
    tension: TensionWord | None = Field(
        default=None, description="The usual tension.", examples=["24 lb", "11 kg", "110 N"]
    )


class WrittenLabels(Written):
    """A sheet of drawer labels."""

    paper: PaperName = Field(default="A4", description="The sheet the labels are on.", examples=["A4"])
    rows: Annotated[int, Field(ge=1, le=40)] = Field(
        default=8, description="Labels from top to bottom.", examples=[8]
    )
    columns: Annotated[int, Field(ge=1, le=20)] = Field(
        default=3, description="Labels from left to right.", examples=[3]
    )
    margins_mm: Annotated[list[_Edge], Field(min_length=4, max_length=4)] = Field(
        default=[8.5, 7.0, 8.5, 7.0],
        description="White edges in mm: top, right, bottom, left.",
        examples=[[8.5, 7.0, 8.5, 7.0]],
    )
    gap_mm: Annotated[list[_Edge], Field(min_length=2, max_length=2)] = Field(
        default=[2.5, 0.0],
        description="Between neighbouring labels in mm: across, down.",
        examples=[[2.5, 0.0]],
    )


class WrittenShelf(Written):
    """What a shelf of parts is planned by."""

    lead_time_weeks: _Weeks | None = Field(
        default=None, description="From order to delivery, in weeks.", examples=[3]
    )
    review_weeks: _Weeks | None = Field(
        default=None, description="Between two looks at the shelf, in weeks.", examples=[4]
    )
    service_level: Annotated[float, Field(gt=0, lt=1, allow_inf_nan=False)] | None = Field(
        default=None,
        description="Chance that a drawer does not run empty between two orders: 0.95.",
        examples=[0.95],
    )
    shares: dict[PartKind, _Share] = Field(
        default_factory=dict,
        description="Share of restrings at which a part of a kind is renewed, from 0 to 1.",
        examples=[{"single": 0.04, "strip": 0.1}],
    )
    stock: dict[Slug, Annotated[int, Field(ge=0, le=1_000_000)]] = Field(
        default_factory=dict,
        description="Pieces on the shelf, by part.",
        examples=[{"barrel-21-short": 120}],
        json_schema_extra={"additionalProperties": False},
    )


def _form(value: object) -> str | None:
    """How a frame is written: no tag is a key of it, since tags stand among the keys that lead to a fault."""
    return "by slug" if isinstance(value, str) else "by keys" if isinstance(value, dict) else None


ClubFrameWord = Annotated[
    Annotated[Slug, Tag("by slug")] | Annotated[WrittenClubFrame, Tag("by keys")],
    Discriminator(
        _form,
        custom_error_type="club_frame",
        custom_error_message="the slug of a frame, or {frame: plover-76, count: 3}",
    ),
]


class WrittenClub(Written):
    """A club or a shop, and the frames it strings."""

    format: Literal[1] = Field(description="The version of this format.", examples=[1])
    name: Name = Field(description="What the club is called.", examples=["Reed Street Club"])
    edition: Name | None = Field(
        default=None,
        description="What the chart says of its edition: spring 2027, third edition …",
        examples=["spring 2027"],
    )
    on: IsoDate | None = Field(
        default=None,
        description="The day of the edition, on which the stock was counted, as 2027-03-01.",
        examples=["2027-03-01"],
    )
    units: Units = Field(
        default="metric", description="Sizes in mm alone, or with inches beside them.", examples=["metric"]
    )
    paper: PaperName = Field(default="A2", description="The paper of the wall chart.", examples=["A2"])
    orientation: Literal["portrait", "landscape"] = Field(
        default="portrait", description="How the chart hangs.", examples=["portrait"]
    )
    ink: Literal["colour", "black-and-white"] = Field(
        default="colour", description="What it is printed in.", examples=["colour"]
    )
    distance_m: Annotated[float, Field(ge=0.4, le=20, allow_inf_nan=False)] = Field(
        default=2.0, description="From how far the chart is to be read, in metres.", examples=[2.0]
    )
    frames: list[ClubFrameWord] = Field(
        description="The frames, each as its slug or with what is known of its use.",
        examples=[["plover-76", {"frame": "pipit-76", "count": 4, "restrings_per_year": 30}]],
    )
    labels: WrittenLabels = Field(
        default_factory=WrittenLabels,
        description="The sheet of drawer labels.",
        examples=[{"paper": "A4", "rows": 8, "columns": 3}],
    )
    shelf: WrittenShelf | None = Field(
        default=None,
        description="What a shelf of parts is planned by.",
        examples=[{"lead_time_weeks": 3, "service_level": 0.95, "stock": {"barrel-21-short": 120}}],
    )
    note: Note | None = Field(
        default=None,
        description="What else should be known.",
        examples=["Ask at the desk for the keys of the drawers."],
    )
