"""Text from strangers: what may not stand in it, and how it is quoted back."""

from __future__ import annotations

import re
import unicodedata

MAX_SHOWN = 60

# C0 and C1 controls but tab and line ends; the marks that turn text round or join
# it invisibly; other line ends; letters and signs without a shape; tags; surrogates; private use and
# non-characters.
_HIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u00ad\u034f\u061c\u115f\u1160\u17b4\u17b5\u180e\u200b\u200e\u200f\u2028-\u202e"
    "\u2060-\u206f\u3164\ufe00-\ufe0d\ufeff\uffa0\ufff9-\uffff\ud800-\udfff\ue000-\uf8ff\U000e0000-\U000e007f]"
)


def hidden_character(text: str) -> tuple[int, str] | None:
    """The first character that a reader cannot see: its offset and its name."""
    match = _HIDDEN.search(text)
    if not match:
        return None
    character = match.group()
    name = unicodedata.name(character, "control character").lower()
    return match.start(), f"U+{ord(character):04X} {name}"


def hidden_names() -> dict[str, str]:
    """The names of the characters that a reader cannot see, where they have one, by number as `200B`."""
    letters = map(chr, (*range(0x10000), *range(0xE0000, 0xE0080)))
    named = ((letter, unicodedata.name(letter, "")) for letter in letters if _HIDDEN.match(letter))
    return {f"{ord(letter):04X}": name.lower() for letter, name in named if name}


def visible(text: str) -> str:
    """The text with every hidden character and line end written out as an escape."""
    escaped = _HIDDEN.sub(lambda match: f"\\u{ord(match.group()):04x}", text)
    return escaped.replace("\n", "\\n").replace("\r", "\\r").replace("\t", "\\t")


def shown(value: object, *, quote: bool = True) -> str:
    """A value as a message quotes it: visible, on one line, and not too long."""
    text = visible(value if isinstance(value, str) else str(value))
    if len(text) > MAX_SHOWN:
        text = f"{text[: MAX_SHOWN - 1]}…"
    return f"“{text}”" if quote else text
