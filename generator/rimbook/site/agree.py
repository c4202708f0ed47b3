"""How much of one list of parts is in another, and that in words."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from rimbook.book.model import Catalogue
from rimbook.site.words import counted, listed

Counts = Mapping[str, int]
"""Pieces by the id of their part."""

MOST_NAMED = 3


def differ(one: Counts, other: Counts) -> tuple[list[str], list[str], int]:
    """The parts of one that the other lacks, those it has besides, and by how many pieces the rest differ."""
    lacking = [part for part in one if part not in other]
    besides = [part for part in other if part not in one]
    uneven = sum(abs(count - other[part]) for part, count in one.items() if part in other)
    return lacking, besides, uneven


def agreement(one: Counts, other: Counts, known: bool, named: Callable[[Sequence[str]], str]) -> str:
    """`all parts the same`, `all but Plover crown strip`, `all parts the same (other counts)`.

    `known` says that nothing is unknown on either list, `named` puts ids into words.
    """
    lacking, besides, uneven = differ(one, other)
    every = "all" if known else "all known parts"
    words = f"{every} but {named(lacking)}" if lacking else f"all {'' if known else 'known '}parts the same"
    if uneven:
        words += " (other counts)"
    if besides and not lacking:
        words += f", and {named(besides)} besides"
    return words


def names(ids: Sequence[str], among: Iterable[str], catalogue: Catalogue) -> str:
    """A few parts by name. All the strips of a list are `the strips`, where there are several."""
    strips = [part for part in among if _is_strip(part, catalogue)]
    words = [catalogue[part].name if part in catalogue else part for part in ids]
    if len(strips) > 1 and set(strips) <= set(ids):
        words = [word for part, word in zip(ids, words, strict=True) if part not in strips]
        words.append("the strips")
    if len(words) > MOST_NAMED:
        return counted(len(words), "part")
    return listed(words)


def _is_strip(part: str, catalogue: Catalogue) -> bool:
    return part in catalogue and catalogue[part].kind == "strip"
