"""The little of a frame that other pages show: small enough to hold ten thousand at once."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import NamedTuple

from rimbook.bench.confidence import Vouched, vouched
from rimbook.bench.needs import Need, Place
from rimbook.bench.parts_list import Needed
from rimbook.book.model import Address, Frame, Hole, Sport
from rimbook.site.spans import selectors
from rimbook.site.words import UNKNOWN, size


class BoreUse(NamedTuple):
    """What a frame does with the holes of one bore.

    `holes` counts them, `shared_holes` those with two strings; `shared` names these and `others` the rest,
    as selectors. `parts` counts the holes each part fills; where nobody knows what sits there is in none.
    """

    holes: int
    shared_holes: int
    shared: str
    others: str
    parts: Mapping[str, int]

    @property
    def unfilled(self) -> int:
        """The holes of this bore where nobody knows what sits there."""
        return self.holes - sum(self.parts.values())


class Asked(NamedTuple):
    """Holes of a frame that ask the same of a part and have the same: how many, and the first of them.

    As `bench.needs.Place`, but so small that all of a large book can be held.
    """

    need: Need
    part: str | None
    covered: bool
    holes: int
    first: str


class Missing(NamedTuple):
    """Drilled holes of which something is unknown: the bore, the part, the depth of the rim."""

    bores: int
    parts: int
    depths: int

    @property
    def facts(self) -> int:
        """How many facts are missing in all."""
        return sum(self)


@dataclass(frozen=True, slots=True)
class Summary:
    """What index pages, part pages and sister frames say of a frame.

    `holes` counts the drilled ones. `uses` has the bores in mm as written on pages, the smallest first
    and `unknown` last. `parts` gives for each part the pieces a full regrommet takes, `fills` the holes
    they fill as selectors. `asked` has what its holes ask, for `bench.interchange`. `vouched` says who
    measured and confirmed, `missing` what nobody has measured yet.
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
    uses: Mapping[str, BoreUse]
    parts: Mapping[str, int]
    fills: Mapping[str, str]
    unknown_parts: int
    asked: tuple[Asked, ...]
    source: str
    vouched: Vouched
    missing: Missing

    @property
    def bores(self) -> dict[str, int]:
        """Holes by bore in mm as written on pages; a hole of unknown bore is in none."""
        return {bore: use.holes for bore, use in self.uses.items() if bore != UNKNOWN}

    @property
    def pattern(self) -> str:
        """Mains by crosses, as `22 × 21`."""
        return f"{self.mains} × {self.crosses}"

    @property
    def full_name(self) -> str:
        """The name with its year, where it has one."""
        return f"{self.name} ({self.year})" if self.year else self.name


def summarise(frame: Frame, needed: tuple[Needed, ...], asked: Iterable[Place] = ()) -> Summary:
    """Draw the summary out of a frame, its parts list, and its places as `bench.needs.places` gives them."""
    fills: defaultdict[str, list[Address]] = defaultdict(list)
    counts: Counter[str] = Counter()
    for line in needed:
        if line.part is not None:
            fills[line.part] += line.holes
            counts[line.part] += line.count
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
        uses=_uses(frame.drilled),
        parts=dict(counts),
        fills={part: selectors(holes) for part, holes in fills.items()},
        unknown_parts=sum(line.count for line in needed if line.part is None),
        asked=tuple(
            Asked(place.need, place.part, place.covered, len(place.holes), str(place.holes[0]))
            for place in asked
        ),
        source=frame.source,
        vouched=vouched(frame),
        missing=missing(frame),
    )


def missing(frame: Frame) -> Missing:
    """What nobody has measured of a frame."""
    drilled = frame.drilled
    return Missing(
        sum(hole.bore_mm is None for hole in drilled),
        sum(hole.part is None for hole in drilled),
        sum(hole.rim_depth_mm is None for hole in drilled),
    )


def _uses(drilled: Iterable[Hole]) -> dict[str, BoreUse]:
    by_bore: defaultdict[str, list[Hole]] = defaultdict(list)
    for hole in sorted(drilled, key=lambda hole: (hole.bore_mm is None, hole.bore_mm or 0)):
        by_bore[size(hole.bore_mm)].append(hole)
    return {
        bore: BoreUse(
            len(holes),
            sum(hole.shared for hole in holes),
            selectors(hole.address for hole in holes if hole.shared),
            selectors(hole.address for hole in holes if not hole.shared),
            dict(Counter(hole.part for hole in holes if hole.part is not None)),
        )
        for bore, holes in by_bore.items()
    }
