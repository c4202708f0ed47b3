"""Fold names that a reader takes for the same into one form."""

from __future__ import annotations

import re
import unicodedata

# Letters of other scripts that look like Latin ones, as small letters.
LATIN = str.maketrans("авекмнорстухіјѕԁԛԝьһαβεηικνορτυχγı", "abekmhopctyxijsdqwbhabeniknoptuxyi")
# Beside digits alone, these letters are read as digits.
_NUMBER = re.compile(r"(?<!\w)[\dOoIl|]*\d[\dOoIl|]*(?!\w)")
_DIGITS = str.maketrans("OoIl|", "00111")


def folded(name: str) -> str:
    """The name without case, accents, spaces and signs, and with look-alike letters made one."""
    plain = unicodedata.normalize("NFKD", name)
    plain = _NUMBER.sub(lambda match: match[0].translate(_DIGITS), plain)
    return "".join(letter for letter in plain.casefold().translate(LATIN) if letter.isalnum())
