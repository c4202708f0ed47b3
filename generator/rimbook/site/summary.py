"""The little of a frame that other pages show: small enough to hold ten thousand at once."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any

from rimbook.bench.parts_list import Needed
from rimbook.book.model import Address, Frame, Sport
from rimbook.site.spans import selectors
from rimbook.site.words import size


@dataclass(frozen=True, slots=True)
class Summary:
    """What index pages, part pages and sister frames say of a frame.

    `holes` counts the drilled ones. `bores` counts holes by bore in mm as written on
    pages; a hole of unknown bore is in none. `parts` gives for each part the pieces a full
    regrommet takes, `fills` the holes they fill as selectors.
    """

    slug: str
    name: str
    maker: str
    sport: Sport
    year: int | None
    variant_of: str | None
    aliases: tuple[str, ...]
    mains: int
    crosses: int
    holes: int
    shared: str
    bores: Mapping[str, int]
    parts: Mapping[str, int]
    fills: Mapping[str, str]
    unknown_parts: int
    source: str

    @property
    def pattern(self) -> str:
        """Mains by crosses, as `22 × 21`."""
        return f"{self.mains} × {self.crosses}"

    @property
    def full_name(self) -> str:
        """The name with its year, where it has one."""
        return f"{self.name} ({self.year})" if self.year else self.name


def summarise(frame: Frame, needed: tuple[Needed, ...]) -> Summary:
    """Draw the summary out of a frame and its parts list."""
    fills: defaultdict[str, list[Address]] = defaultdict(list)
    counts: Counter[str] = Counter()
    for line in needed:
        if line.part is not None:
            fills[line.part] += line.holes
            counts[line.part] += line.count
    bores = Counter(hole.bore_mm for hole in frame.drilled if hole.bore_mm is not None)
    return Summary(
        slug=frame.slug,
        name=frame.name,
        maker=frame.maker,
        sport=frame.sport,
        year=frame.year,
        variant_of=frame.variant_of,
        aliases=frame.aliases,
        mains=frame.mains,
        crosses=frame.crosses,
        holes=len(frame.drilled),
        shared=selectors(hole.address for hole in frame.drilled if hole.shared),
        bores={size(bore): bores[bore] for bore in sorted(bores)},
        parts=dict(counts),
        fills={part: selectors(holes) for part, holes in fills.items()},
        unknown_parts=sum(line.count for line in needed if line.part is None),
        source=frame.source,
    )


def to_plain(summary: Summary) -> dict[str, Any]:
    """As values that JSON can hold."""
    return asdict(summary)


def from_plain(plain: Mapping[str, Any]) -> Summary:
    """Back from what JSON held. Raises TypeError or KeyError where it held something else."""
    return Summary(**{**plain, "aliases": tuple(plain["aliases"])})
