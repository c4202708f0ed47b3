"""A club file as it is meant: short forms spelled out, defaults in place."""

from __future__ import annotations

from rimbook.book.model import Club, ClubFrame, LabelSheet, Shelf, TensionLimit
from rimbook.book.written_club import WrittenClub, WrittenClubFrame, WrittenLabels, WrittenShelf


def settle_club(slug: str, written: WrittenClub, source: str) -> Club:
    """A club as a record."""
    return Club(
        slug=slug,
        name=written.name,
        frames=tuple(map(_frame, written.frames)),
        edition=written.edition,
        on=written.on,
        units=written.units,
        paper=written.paper,
        landscape=written.orientation == "landscape",
        black_and_white=written.ink == "black-and-white",
        distance_m=written.distance_m,
        labels=_labels(written.labels),
        shelf=_shelf(written.shelf) if written.shelf else None,
        note=written.note,
        source=source,
    )


def _frame(written: str | WrittenClubFrame) -> ClubFrame:
    if isinstance(written, str):
        return ClubFrame(written)
    tension = None
    if written.tension is not None:
        value, unit = written.tension.split()
        tension = TensionLimit(float(value), unit)  # type: ignore[arg-type]
    return ClubFrame(written.frame, written.count, written.restrings_per_year, tension)


def _labels(written: WrittenLabels) -> LabelSheet:
    top, right, bottom, left = written.margins_mm
    across, down = written.gap_mm
    return LabelSheet(
        written.paper, written.rows, written.columns, (top, right, bottom, left), (across, down)
    )


def _shelf(written: WrittenShelf) -> Shelf:
    return Shelf(
        written.lead_time_weeks,
        written.review_weeks,
        written.service_level,
        dict(written.shares),
        dict(written.stock),
    )
