"""Fold names that a reader takes for the same into one form."""

from __future__ import annotations

import re
import unicodedata

# Letters of other scripts that look like Latin ones, as small letters.
LATIN = str.maketrans(
    "авегкмнорстухүһіӏјѕѡѵҽԁԍԛԝьꙇᴦαβγεζηικμνορστυχωϝϳϻıɑɡ",
    "aberkmhopctyxyhiijswvedgqwbirabyeznikmvopotuxwfjmiag",
)
# Greek capitals that look like another Latin letter than their small ones do.
CAPITALS = str.maketrans("ΗΝΥ", "HNY")
# Beside digits alone, these letters are read as digits.
_NUMBER = re.compile(r"(?<!\w)[\dOoIl|]*\d[\dOoIl|]*(?!\w)")
_DIGITS = str.maketrans("OoIl|", "00111")

_SCRIPTS = ("LATIN", "GREEK", "CYRILLIC", "ARMENIAN", "CHEROKEE", "COPTIC")


def folded(name: str) -> str:
    """The name without case, accents, spaces and signs, and with look-alike letters made one."""
    plain = unicodedata.normalize("NFKD", name)
    plain = _NUMBER.sub(lambda match: match[0].translate(_DIGITS), plain)
    return "".join(letter for letter in plain.casefold().translate(LATIN) if letter.isalnum())


def forms(name: str) -> tuple[str, ...]:
    """Every form of a name: a Greek capital may be taken for what it looks like, or for its small letter."""
    plain = unicodedata.normalize("NFKD", name)
    return tuple(dict.fromkeys((folded(plain), folded(plain.translate(CAPITALS)))))


def mixed_word(name: str) -> tuple[str, tuple[str, ...]] | None:
    """The first word with letters of several scripts that look alike, and these scripts. None without one."""
    for word in name.split():
        scripts = {script for script in map(_script, unicodedata.normalize("NFC", word)) if script}
        if len(scripts) > 1:
            return word, tuple(sorted(scripts))
    return None


def script_ranges() -> dict[str, list[tuple[int, int]]]:
    """The letters of each script that has look-alikes in another, as first and last number."""
    ranges: dict[str, list[tuple[int, int]]] = {}
    for number in range(0x20000):
        if script := _script(chr(number)):
            found = ranges.setdefault(script, [])
            start = found.pop()[0] if found and found[-1][1] == number - 1 else number
            found.append((start, number))
    return ranges


def _script(letter: str) -> str | None:
    """The script of a letter, of those that have look-alikes in each other."""
    first = unicodedata.name(letter, "").split(" ", 1)[0]
    return first.capitalize() if letter.isalpha() and first in _SCRIPTS else None
