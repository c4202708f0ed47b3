"""Data for a page's script, as a script that hands them over: from a folder a page loads nothing else."""

from __future__ import annotations

import json


def handover(name: str, value: object) -> bytes:
    """A classic script that calls `rimbook.put(name, value)`. `value` is anything JSON can hold.

    It stays harmless where it is pasted into a page, and means the same to every version of JavaScript.
    """
    text = f"rimbook.put({_json(name)},{_json(value)});\n"
    return text.encode()


def _json(value: object) -> str:
    text = json.dumps(value, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")
