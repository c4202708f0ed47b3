"""The shape of what is written as plain data: a page holds a draft against it as `shape.py` does."""

from __future__ import annotations

from typing import Any

from pydantic_core import PydanticCustomError

from rimbook.book.written import Written
from rimbook.book.written_values import PATTERN_WORDS

Shape = dict[str, Any]

_BOUNDS = {"gt": "above", "ge": "from", "le": "to"}


def shape_data(model: type[Written]) -> Shape:
    """What a model asks, as values that JSON can hold.

    Every shape says what it `is`: `keys` with their shapes and which of them it `needs`; `lines` or a `list`
    of `each`; `any` of several; `text`, `whole`, `number`, one `word` of some; or a value of our `own`, with
    the name of its check and what that says. `empty` means that nothing at all will do as well.

    Raises ValueError where a model asks what no page checks yet.
    """
    return _shape(model.__pydantic_core_schema__)


def _shape(asked: Any) -> Shape:
    kind = asked["type"]
    if kind == "default":
        return _shape(asked["schema"])
    if kind == "nullable":
        return {**_shape(asked["schema"]), "empty": True}
    if kind == "model":
        fields = {
            field.get("validation_alias", name): field["schema"]
            for name, field in asked["schema"]["fields"].items()
        }
        needs = [name for name, inner in fields.items() if inner["type"] != "default"]
        return {"is": "keys", "keys": {name: _shape(inner) for name, inner in fields.items()}, "needs": needs}
    if kind == "function-before":
        return _own(asked["function"]["function"])
    if kind == "union":
        return {"is": "any", "of": [_shape(choice) for choice in asked["choices"]]}
    if kind == "literal":
        return {"is": "word", "of": list(asked["expected"])}
    if kind == "dict":
        return {"is": "lines", "each": _shape(asked["values_schema"])}
    if kind == "list":
        return {"is": "list", "each": _shape(asked["items_schema"]), **_sizes(asked)}
    if kind == "str":
        pattern = asked.get("pattern")
        form = {"form": pattern, "says": PATTERN_WORDS[pattern]} if pattern else {}
        return {"is": "text", "trim": asked.get("strip_whitespace", False), **form, **_sizes(asked)}
    if kind in ("int", "float"):
        bounds = {ours: asked[theirs] for theirs, ours in _BOUNDS.items() if theirs in asked}
        return {"is": "whole" if kind == "int" else "number", **bounds}
    raise ValueError(f"No page checks {kind} yet.")


def _sizes(asked: Any) -> Shape:
    sizes = (("least", "min_length"), ("most", "max_length"))
    return {ours: asked[theirs] for ours, theirs in sizes if theirs in asked}


def _own(check: Any) -> Shape:
    """One of our own checks: asked about what is nothing at all, it says what it expects."""
    try:
        check(object())
    except PydanticCustomError as error:
        return {"is": "own", "check": error.type, "says": error.message()}
    raise ValueError(f"{check.__name__} lets anything pass.")
