"""The single values that people write: what each may be, and how it looks in JSON Schema.

The schema of a value refuses nothing that the value's own check lets pass; where
the check asks more than a pattern can say, the schema lets more pass.
"""

from __future__ import annotations

import re
import unicodedata
from datetime import date
from typing import Annotated, Any

from pydantic import BeforeValidator, Field, StringConstraints, WithJsonSchema
from pydantic_core import PydanticCustomError

from rimbook.book.address import address

UNKNOWN = "unknown"
SLUG = r"[a-z0-9]+(-[a-z0-9]+)*"
MAX_SLUG = 60
MAX_LENGTH_MM = 1000

_NUMBER = r"[1-9][0-9]{0,3}"
_HOLE = f"[RL]{_NUMBER}"
_BORE = r"([0-9]+(\.[0-9]*)?|\.[0-9]+)"
_SELECTOR = "|".join(f"{side}{_NUMBER}(-{side}{_NUMBER})?" for side in ("", "R", "L"))
_PLACE = r"(\.|x|[mc][1-9][0-9]{0,2}(\+[mc][1-9][0-9]{0,2})?)"

# Patterns of words as JSON Schema takes them: ECMA-262 regular expressions, closed at both ends.
DATE = "^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
ADDRESS = f"^{_HOLE}$"
SELECTOR = f"^({_SELECTOR})$"
STRIP_END = f"^[RL]?{_NUMBER}$"
TENSION = r"^[0-9]{1,3}(\.[0-9]{1,2})? (lb|kg|N)$"
WALK = rf"^\s*{_PLACE}(\s+{_PLACE})*\s*$"
FITTED_KEY = f"^(default|bore {_BORE}|{_SELECTOR}|R{_NUMBER}-L{_NUMBER}|L{_NUMBER}-R{_NUMBER})$"
PER_HOLE_KEY = f"^(default|{UNKNOWN}|{_BORE})$"

# A letter or a digit of any script: of blanks and signs alone nobody makes a name. JSON Schema goes without,
# since not every reader of it knows these classes.
NAMED = r"[\p{L}\p{N}]"

# What a message says of a pattern: nobody should have to read a regular expression.
PATTERN_WORDS = {
    f"^{SLUG}$": "small letters, digits and single hyphens, as anna-b or plover-76",
    NAMED: "a name with a letter or a digit in it",
}

_MM_SCHEMA: dict[str, Any] = {"type": "number", "exclusiveMinimum": 0, "maximum": MAX_LENGTH_MM}
_UNKNOWN_SCHEMA: dict[str, Any] = {"const": UNKNOWN}
_WHOLE_SCHEMA: dict[str, Any] = {"type": "integer", "minimum": 1, "maximum": 9999}
_MM_OR_UNKNOWN_SCHEMA: dict[str, Any] = {"anyOf": [_MM_SCHEMA, _UNKNOWN_SCHEMA]}
_SELECTOR_SCHEMA: dict[str, Any] = {"anyOf": [_WHOLE_SCHEMA, {"type": "string", "pattern": SELECTOR}]}
_EXCEPTIONS_SCHEMA: dict[str, Any] = {
    "type": "object",
    "properties": {"default": _MM_OR_UNKNOWN_SCHEMA},
    "propertyNames": {"pattern": PER_HOLE_KEY},
    "additionalProperties": {"type": "array", "items": _SELECTOR_SCHEMA},
    "required": ["default"],
}


def slug_of(name: str) -> str:
    """A name as a slug: `Plover 76` gives `plover-76`. Empty where no letter or digit is left."""
    plain = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    return re.sub(r"[^a-z0-9]+", "-", plain).strip("-")[:MAX_SLUG].strip("-")


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
        if isinstance(value, str) and re.fullmatch(DATE, value):
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


def _address_word(value: object) -> str:
    if isinstance(value, str) and address(value) is not None:
        return value
    raise PydanticCustomError("address", "a hole with its side, as R9 or L9")


def _tension_word(value: object) -> str:
    if isinstance(value, str) and re.fullmatch(TENSION, value):
        return value
    raise PydanticCustomError(
        "tension", "a number and its unit with a space between, as 28 lb, 12.5 kg or 125 N"
    )


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


Name = Annotated[
    str,
    StringConstraints(strip_whitespace=True, min_length=1, max_length=80, pattern=NAMED),
    WithJsonSchema({"type": "string", "minLength": 1, "maxLength": 80}),
]
Note = Annotated[str, StringConstraints(strip_whitespace=True, min_length=1, max_length=2000)]
Slug = Annotated[str, StringConstraints(pattern=f"^{SLUG}$", max_length=MAX_SLUG)]
Handle = Annotated[str, StringConstraints(pattern=f"^{SLUG}$", max_length=40)]
Mm = Annotated[float, Field(gt=0, le=MAX_LENGTH_MM, allow_inf_nan=False)]
Coordinate = Annotated[float, Field(ge=-MAX_LENGTH_MM, le=MAX_LENGTH_MM, allow_inf_nan=False)]
Year = Annotated[int, Field(ge=1900, le=2100)]
Count = Annotated[int, Field(ge=1, le=100_000)]
TensionWord = Annotated[
    str,
    BeforeValidator(_tension_word),
    WithJsonSchema({"type": "string", "maxLength": 12, "pattern": TENSION}),
]
Walk = Annotated[
    str,
    StringConstraints(min_length=1, max_length=4000),
    WithJsonSchema({"type": "string", "maxLength": 4000, "pattern": WALK}),
]
MmOrUnknown = Annotated[float | None, BeforeValidator(_mm_or_unknown), WithJsonSchema(_MM_OR_UNKNOWN_SCHEMA)]
IsoDate = Annotated[
    date,
    BeforeValidator(_iso_date),
    WithJsonSchema({"type": "string", "format": "date", "pattern": DATE}),
]
AddressWord = Annotated[
    str, BeforeValidator(_address_word), WithJsonSchema({"type": "string", "pattern": ADDRESS})
]
StripEnd = Annotated[
    int | str, WithJsonSchema({"anyOf": [_WHOLE_SCHEMA, {"type": "string", "pattern": STRIP_END}]})
]
PartWord = Annotated[
    str | None, BeforeValidator(_part_word), WithJsonSchema({"type": "string", "minLength": 1})
]
PerHole = Annotated[
    Any,
    BeforeValidator(_per_hole),
    WithJsonSchema({"anyOf": [_MM_SCHEMA, _UNKNOWN_SCHEMA, _EXCEPTIONS_SCHEMA]}),
]
Lengths = Annotated[
    tuple[float, ...] | None,
    BeforeValidator(_lengths),
    WithJsonSchema(
        {
            "anyOf": [
                _MM_SCHEMA,
                _UNKNOWN_SCHEMA,
                {"type": "array", "items": _MM_SCHEMA, "minItems": 1, "maxItems": 2},
            ]
        }
    ),
]
