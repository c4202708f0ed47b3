"""Hold a document against its model, and say every difference in plain words."""

from __future__ import annotations

import re
from typing import Any, TypeVar, get_args

from pydantic import BaseModel, ValidationError
from pydantic_core import ErrorDetails

from rimbook.book.problems import Problem, nearest
from rimbook.book.reader import Document, Path
from rimbook.book.text import shown
from rimbook.book.written import Written
from rimbook.book.written_values import PATTERN_WORDS

RULE = "shape"
MAX_REPORTED = 200

Model = TypeVar("Model", bound=Written)


def hold(document: Document, model: type[Model]) -> tuple[Model | None, tuple[Problem, ...]]:
    """The document as its model, or every way in which it differs from it."""
    if not isinstance(document.value, dict):
        found = document.problem(
            RULE, (), "The file must hold keys and values.", found=shown(document.value), expected="name: …"
        )
        return None, (found,)
    try:
        return model.model_validate(document.value), ()
    except ValidationError as error:
        details = error.errors(include_url=False, include_context=True)
        problems = {_where(document, item): item for item in details[:MAX_REPORTED]}
        return None, tuple(_problem(document, model, path, item) for path, item in problems.items())


def _where(document: Document, item: ErrorDetails) -> Path:
    """The part of pydantic's location that exists in the document."""
    path: Path = ()
    for step in item["loc"]:
        inside = document.at(path)
        known = isinstance(inside, dict) and step in inside
        counted = isinstance(inside, list) and isinstance(step, int) and step < len(inside)
        if known or counted:
            path = (*path, step)
    return (*path, item["loc"][-1]) if item["type"] == "missing" else path


def _problem(document: Document, model: type[Written], path: Path, item: ErrorDetails) -> Problem:
    key = shown(str(path[-1])) if path else ""
    if item["type"] == "missing":
        return document.problem(RULE, path, f"The key {key} is missing.")
    if item["type"] == "extra_forbidden":
        choices = _keys(model, path[:-1])
        return document.problem(
            RULE,
            path,
            f"There is no key {key} here.",
            key=True,
            expected=", ".join(choices),
            nearest=nearest(str(path[-1]), choices),
        )
    if item["loc"][-1] == "[key]":
        return document.problem(RULE, path, f"{key} cannot be a key.", key=True, expected=_expected(item))
    found = document.at(path)
    choices = re.findall("'([^']+)'", _expected(item)) if item["type"] == "literal_error" else []
    return document.problem(
        RULE,
        path,
        f"{shown(_phrase(path), quote=False)} cannot be {_brief(document, path)}.",
        expected=", ".join(choices) or _expected(item),
        nearest=nearest(str(found), choices),
        tip=_quotes(document, path) if item["type"] == "string_type" else None,
    )


def _phrase(path: Path) -> str:
    """The path as words: `strips.1.name`, counting from one."""
    return ".".join(str(step + 1 if isinstance(step, int) else step) for step in path) or "The file"


def _brief(document: Document, path: Path) -> str:
    value = document.at(path)
    if isinstance(value, dict):
        return "a mapping"
    if isinstance(value, list):
        return f"a list of {len(value)}"
    if value is None:
        return "empty"
    return shown(value) if isinstance(value, str) else shown(document.plain(path), quote=False)


def _quotes(document: Document, path: Path) -> str | None:
    """How a number, true or false becomes the text that is asked for."""
    if isinstance(document.at(path), int | float):
        return f'Put it in quotes: "{shown(document.plain(path), quote=False)}".'
    return None


_EXPECTED = {
    "string_type": "text",
    "int_type": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "finite_number": "a number that can be measured",
    "bool_type": "true or false",
    "list_type": "a list",
    "dict_type": "keys and values",
    "model_type": "keys and values",
    "greater_than": "more than {gt}",
    "greater_than_equal": "{ge} or more",
    "less_than": "less than {lt}",
    "less_than_equal": "{le} or less",
    "string_too_long": "at most {max_length} characters",
    "string_too_short": "some text",
    "too_long": "at most {max_length} of them",
    "too_short": "at least {min_length} of them",
    "literal_error": "{expected}",
}


def _expected(item: ErrorDetails) -> str:
    """What would have been right; our own validators say it as their message."""
    if item["type"] == "string_pattern_mismatch":
        return PATTERN_WORDS[item["ctx"]["pattern"]]
    phrase = _EXPECTED.get(item["type"])
    return phrase.format(**item.get("ctx", {})) if phrase else item["msg"]


def _keys(model: type[BaseModel], path: Path) -> list[str]:
    """The keys that may stand at `path`."""
    for step in path:
        fields = {field.alias or name: field for name, field in model.model_fields.items()}
        if step in fields:
            model = _inner_model(fields[str(step)].annotation) or model
    return [field.alias or name for name, field in model.model_fields.items()]


def _inner_model(annotation: Any) -> type[BaseModel] | None:
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return annotation
    inner = (_inner_model(argument) for argument in get_args(annotation))
    return next((model for model in inner if model), None)
