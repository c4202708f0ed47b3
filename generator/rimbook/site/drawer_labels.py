"""Labels for drawers, with the frames that each part serves and the address of its page."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence

from rimbook.bench.answers import Answers
from rimbook.bench.part_index import index_parts
from rimbook.bench.parts_list import regrommet
from rimbook.bench.shelf_plan import Drawer, plan
from rimbook.bench.shelf_terms import terms_of
from rimbook.bench.thresholds import DEFAULT, Thresholds
from rimbook.book.model import Catalogue, Club, Frame
from rimbook.draw.labels_sheet import DrawerLabel, Kept
from rimbook.site.links import part_path


def club_labels(
    club: Club,
    frames: Sequence[Frame],
    catalogue: Catalogue,
    site_url: str | None = None,
    thresholds: Thresholds = DEFAULT,
) -> tuple[DrawerLabel, ...]:
    """Where a club has a shelf, a label for each drawer of its plan that something is kept in.

    Without a shelf nobody knows the drawers, so there is a label for every part that the frames take.
    """
    if club.shelf is None:
        return drawer_labels(parts_of(frames, catalogue), frames, catalogue, site_url)
    answers = Answers(index_parts(catalogue), thresholds)
    shelf = plan(club, {frame.slug: frame for frame in frames}, answers, terms_of(club))
    return shelf_labels(shelf.drawers, frames, catalogue, site_url)


def shelf_labels(
    drawers: Iterable[Drawer], frames: Sequence[Frame], catalogue: Catalogue, site_url: str | None = None
) -> tuple[DrawerLabel, ...]:
    """A label for each drawer that something is kept in, with all frames that it serves and its levels."""
    names = _names(frames)
    return tuple(
        DrawerLabel(
            catalogue[drawer.item],
            tuple(sorted({names[each.frame] for each in drawer.filled.asked}, key=_in_order)),
            _address(drawer.item, site_url),
            Kept(drawer.levels.reorder, drawer.levels.up_to),
        )
        for drawer in drawers
        if drawer.levels.up_to
    )


def parts_of(frames: Iterable[Frame], catalogue: Catalogue) -> tuple[str, ...]:
    """Every part of the catalogue that a full regrommet of some frame takes, in order of id."""
    return tuple(sorted({part for frame in frames for part in _takes(frame, catalogue)}))


def drawer_labels(
    parts: Iterable[str], frames: Sequence[Frame], catalogue: Catalogue, site_url: str | None = None
) -> tuple[DrawerLabel, ...]:
    """A label for each part by id, with those of the frames that it serves, sets by what they are made for.

    `site_url` is the address of the site; without it a label has no code to scan.
    """
    takes = {frame.slug: _takes(frame, catalogue) for frame in frames}

    def serves(part: str, frame: Frame) -> bool:
        return part in takes[frame.slug] or frame.slug in catalogue[part].frames

    return tuple(
        DrawerLabel(
            catalogue[part],
            tuple(frame.name for frame in frames if serves(part, frame)),
            _address(part, site_url),
        )
        for part in dict.fromkeys(parts)
    )


def _names(frames: Sequence[Frame]) -> Mapping[str, str]:
    """What a label calls each frame: its name, with the year where two have the same."""
    alike = Counter(frame.name for frame in frames)
    return {
        frame.slug: f"{frame.name} ({frame.year})" if alike[frame.name] > 1 and frame.year else frame.name
        for frame in frames
    }


def _in_order(name: str) -> tuple[str, str]:
    return name.casefold(), name


def _address(part: str, site_url: str | None) -> str | None:
    return f"{site_url.rstrip('/')}/{part_path(part)}" if site_url else None


def _takes(frame: Frame, catalogue: Catalogue) -> frozenset[str]:
    return frozenset(
        line.part for line in regrommet(frame, catalogue) if line.part and line.part in catalogue
    )
