"""JSON Schemas of maps, parts files and data files, made from the models that check or describe them.

Draft 07 is the newest that editors of YAML read. What the models say in a newer
draft is put into its words: `definitions`, and `allOf` around a reference with company.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any, Protocol

from rimbook.book.written import WrittenFrame, WrittenParts
from rimbook.book.written_club import WrittenClub
from rimbook.book.written_moved import WrittenMoved
from rimbook.site.data_shapes import FrameData, FrameList, MovedNames, PartList

DRAFT = "http://json-schema.org/draft-07/schema#"
FOLDER = "schemas/"

Schema = dict[str, Any]

_HOLDS_SCHEMAS = frozenset({"properties", "patternProperties"})
_HOLDS_DATA = frozenset({"examples", "default", "const", "enum", "required"})


class Model(Protocol):
    """A model that can describe itself, keys named as they are written."""

    def model_json_schema(self, by_alias: bool = True) -> Schema: ...


SCHEMAS: Mapping[str, tuple[str, Model]] = {
    "map.schema.json": ("Rimbook frame map", WrittenFrame),
    "parts.schema.json": ("Rimbook parts file", WrittenParts),
    "club.schema.json": ("Rimbook club file", WrittenClub),
    "moved.schema.json": ("Rimbook moved names", WrittenMoved),
    "data-frames.schema.json": ("Rimbook data: all frames", FrameList),
    "data-frame.schema.json": ("Rimbook data: one frame", FrameData),
    "data-parts.schema.json": ("Rimbook data: all parts", PartList),
    "data-moved.schema.json": ("Rimbook data: moved names", MovedNames),
}


def schema_text(name: str) -> bytes:
    """The schema file of this name, one of SCHEMAS. The same models give the same bytes."""
    return (json.dumps(schema(name), ensure_ascii=False, indent=2) + "\n").encode()


def schema(name: str) -> Schema:
    """The schema of this name as plain values."""
    title, model = SCHEMAS[name]
    made = model.model_json_schema()
    inner = made.pop("$defs", {})
    return {
        "$schema": DRAFT,
        "$comment": "Made by `rimbook schemas` from the models of the program. Change those, not this file.",
        "title": title,
        **_draft_07(made),
        "definitions": {
            _short(known): {"title": _short(known), **_draft_07(each)} for known, each in inner.items()
        },
    }


def _draft_07(node: Any) -> Any:
    """A schema without made-up titles and without what draft 07 does not know."""
    if isinstance(node, list):
        return [_draft_07(each) for each in node]
    if not isinstance(node, dict):
        return node
    found: Schema = {}
    for key, value in node.items():
        if key == "$ref":
            found["$ref"] = f"#/definitions/{_short(value.removeprefix('#/$defs/'))}"
        elif key in _HOLDS_SCHEMAS:
            found[key] = {name: _draft_07(each) for name, each in value.items()}
        elif key in _HOLDS_DATA:
            # A default of null would only make an editor offer to write it.
            found |= {key: value} if (key, value) != ("default", None) else {}
        elif key != "title":
            found[key] = _draft_07(value)
    if "$ref" in found and len(found) > 1:
        return {"allOf": [{"$ref": found.pop("$ref")}], **found}
    return found


def _short(name: str) -> str:
    return name.removeprefix("Written")
