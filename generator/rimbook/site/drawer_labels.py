"""Labels for drawers, with the frames that each part serves and the address of its page."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from rimbook.bench.parts_list import regrommet
from rimbook.book.model import Catalogue, Frame
from rimbook.draw.labels_sheet import DrawerLabel
from rimbook.site.links import part_path


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
    root = f"{site_url.rstrip('/')}/" if site_url else None

    def serves(part: str, frame: Frame) -> bool:
        return part in takes[frame.slug] or frame.slug in catalogue[part].frames

    return tuple(
        DrawerLabel(
            catalogue[part],
            tuple(frame.name for frame in frames if serves(part, frame)),
            f"{root}{part_path(part)}" if root else None,
        )
        for part in dict.fromkeys(parts)
    )


def _takes(frame: Frame, catalogue: Catalogue) -> frozenset[str]:
    return frozenset(
        line.part for line in regrommet(frame, catalogue) if line.part and line.part in catalogue
    )
