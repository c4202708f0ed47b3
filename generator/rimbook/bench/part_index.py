"""A catalogue put in order once, so that each hole looks only at parts of about its size."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from typing import NamedTuple

from rimbook.bench.sound import part_cautions
from rimbook.bench.uncertainty import Size, barrel_size
from rimbook.book.model import Catalogue, Part


class Profile(NamedTuple):
    """All that is judged of a barrel: two parts with the same profile serve alike."""

    barrel: Size
    bore_mm: float | None
    posts_mm: tuple[float, ...] | None


Alike = tuple[Profile, tuple[tuple[bool, str], ...]]
"""Parts of one profile. Of each: whether it is not sold by itself, and its id."""


@dataclass(frozen=True, slots=True)
class PartIndex:
    """The parts of a catalogue whose barrel is known and whose sizes do not contradict each other.

    `profiles` are by id. `barrels` are the profiles of one-barrel parts in order of the barrel. `twins`
    are in order of the barrel too, `strips` by the number of posts. `holding` names the sets a part comes in.
    """

    catalogue: Catalogue
    profiles: Mapping[str, Profile]
    barrels: tuple[Alike, ...]
    twins: tuple[tuple[Part, Profile], ...]
    strips: Mapping[int, tuple[tuple[Part, Profile], ...]]
    holding: Mapping[str, tuple[str, ...]]

    def near(self, least_mm: float, most_mm: float) -> tuple[Alike, ...]:
        """The one-barrel parts whose barrel lies between two diameters (mm)."""
        first = bisect_left(self.barrels, least_mm, key=lambda each: each[0].barrel.mm)
        last = bisect_right(self.barrels, most_mm, key=lambda each: each[0].barrel.mm)
        return self.barrels[first:last]

    def twins_near(self, least_mm: float, most_mm: float) -> tuple[tuple[Part, Profile], ...]:
        """The two-post parts whose barrels lie between two diameters (mm)."""
        first = bisect_left(self.twins, least_mm, key=lambda each: each[1].barrel.mm)
        last = bisect_right(self.twins, most_mm, key=lambda each: each[1].barrel.mm)
        return self.twins[first:last]


def index_parts(catalogue: Catalogue) -> PartIndex:
    """Put a catalogue in order."""
    barrels: defaultdict[Profile, list[tuple[bool, str]]] = defaultdict(list)
    twins: list[tuple[Part, Profile]] = []
    strips: defaultdict[int, list[tuple[Part, Profile]]] = defaultdict(list)
    holding: defaultdict[str, list[str]] = defaultdict(list)
    profiles: dict[str, Profile] = {}
    for part in catalogue.values():
        for held in part.contains:
            holding[held].append(part.id)
        profile = profile_of(part)
        if profile is None or part_cautions(part):
            continue
        profiles[part.id] = profile
        if part.kind in ("single", "wide"):
            barrels[profile].append((not part.sold_alone, part.id))
        elif part.kind in ("twin-even", "twin-uneven") and part.pitch_mm is not None:
            twins.append((part, profile))
        elif part.kind == "strip" and part.posts is not None:
            strips[part.posts].append((part, profile))
    in_order = sorted(barrels.items(), key=lambda each: each[0].barrel.mm)
    return PartIndex(
        catalogue,
        profiles,
        tuple((profile, tuple(parts)) for profile, parts in in_order),
        tuple(sorted(twins, key=lambda each: (each[1].barrel.mm, each[0].id))),
        {posts: tuple(each) for posts, each in strips.items()},
        {held: tuple(sorted(sets)) for held, sets in holding.items()},
    )


def profile_of(part: Part) -> Profile | None:
    """What is judged of a part's barrels, or None where nobody measured them."""
    barrel = barrel_size(part)
    return None if barrel is None else Profile(barrel, part.bore_mm, part.length_mm)
