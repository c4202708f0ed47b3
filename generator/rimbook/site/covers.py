"""How much of a full regrommet a set holds, as pieces and in words."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from rimbook.book.model import Catalogue
from rimbook.site.words import counted, listed

MOST_NAMED = 3


@dataclass(frozen=True, slots=True)
class Cover:
    """What a set gives a frame: `held` of `total` pieces. `lacking` counts what is missing of each part.

    Pieces of unknown parts are in `total` and `unknown`, and never held. `strips` says whether the set holds
    one of the strips of the frame.
    """

    held: int
    total: int
    lacking: Mapping[str, int]
    unknown: int
    strips: bool

    @property
    def whole(self) -> bool:
        """Whether nothing else has to be bought."""
        return self.held == self.total > 0

    @property
    def worth_naming(self) -> bool:
        """Whether it gives a strip, or at least half of all pieces."""
        return self.strips or 0 < self.total <= 2 * self.held


def cover(contents: Mapping[str, int], parts: Mapping[str, int], unknown: int, catalogue: Catalogue) -> Cover:
    """Hold the contents of a set against the parts of a regrommet, both as pieces by part."""
    lacking = {part: count - contents.get(part, 0) for part, count in parts.items()}
    lacking = {part: count for part, count in lacking.items() if count > 0}
    total = sum(parts.values())
    strips = any(part in contents and part in catalogue and catalogue[part].kind == "strip" for part in parts)
    return Cover(total - sum(lacking.values()), total + unknown, lacking, unknown, strips)


def cover_words(found: Cover, catalogue: Catalogue) -> str:
    """`the whole of it`, `all but 4 × Long barrel 2.1`, or `62 of 78 pieces`."""
    if found.whole:
        return "the whole of it"
    if not found.total:
        return "nothing is known of its parts"
    if len(found.lacking) > MOST_NAMED or 2 * found.held < found.total:
        return f"{found.held} of {counted(found.total, 'piece')}"
    named = [f"{count} × {_name(part, catalogue)}" for part, count in found.lacking.items()]
    named += [f"{found.unknown} × unknown"] if found.unknown else []
    return f"all but {listed(named)}"


def _name(part: str, catalogue: Catalogue) -> str:
    return catalogue[part].name if part in catalogue else part
