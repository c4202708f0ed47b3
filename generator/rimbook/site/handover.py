"""Data for a page's script: a script that hands them over, since from a folder a page loads nothing else, or
a block on the page itself.
"""

from __future__ import annotations

from typing import Any

from markupsafe import Markup
from pydantic import TypeAdapter

# Five times as fast as the `json` of Python. What is no number comes out as null.
_WRITER = TypeAdapter(Any)


def handover(name: str, value: object) -> bytes:
    """A classic script that calls `rimbook.put(name, value)`. `value` is anything JSON can hold.

    It stays harmless where it is pasted into a page, and means the same to every version of JavaScript.
    """
    return handover_text(name, json_text(value))


def handover_text(name: str, text: str) -> bytes:
    """The same for a value whose `json_text` is there already."""
    return f"rimbook.put({json_text(name)},{text});\n".encode()


def data_block(value: object) -> Markup:
    """What a `<script type="application/json">` on the page itself holds: it ends no script and runs none."""
    return Markup(json_text(value))  # noqa: S704 - every `<` in it is escaped


def json_text(value: object) -> str:
    """A value as JSON, without needless spaces and without anything that means more to a page or a script."""
    text = _WRITER.dump_json(value).decode()
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
