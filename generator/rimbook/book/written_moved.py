"""The shape of `moved.yaml`: names that changed, so that old addresses lead on."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from rimbook.book.written import Written
from rimbook.book.written_values import Slug


class WrittenMoved(Written):
    """Old names and what they are called now."""

    format: Literal[1] = Field(description="The version of this format.", examples=[1])
    frames: dict[Slug, Slug] = Field(
        default_factory=dict,
        description="Frames: the old name of the map's file, and the new one, both without .yaml.",
        examples=[{"plover-old": "plover-76"}],
        json_schema_extra={"additionalProperties": False},
    )
    parts: dict[Slug, Slug] = Field(
        default_factory=dict,
        description="Parts: the old id, and the new one.",
        examples=[{"barrel-old": "barrel-21-short"}],
        json_schema_extra={"additionalProperties": False},
    )
