"""The page of a frame: its own entry, joined with what the rest of the book says of it."""

from __future__ import annotations

from collections.abc import Callable

from markupsafe import Markup

from rimbook.bench.confidence import MOST
from rimbook.site.cross import Cross
from rimbook.site.data_files import frame_file
from rimbook.site.draft_page import draft_link
from rimbook.site.links import frame_path
from rimbook.site.pages import INSIDE, Page, to_root
from rimbook.site.prints import frame_print_links
from rimbook.site.settings import Settings
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import counted

MOST_ALIKE = 12


def frame_page(frame: Summary, make: Callable[[], str], entry: Callable[[], bytes]) -> Page:
    """The page of a frame; `make` gives its body, as `frame_body` does, and `entry` the body of its entry."""
    return Page(
        path=frame_path(frame.slug),
        kind="frame",
        title=f"{frame.full_name} – {frame.maker}",
        description=(
            f"Grommet map of {frame.full_name} by {frame.maker}, {frame.sport}: {frame.pattern} strings, "
            f"{counted(frame.holes, 'hole')}, which part sits in which hole."
        ),
        make=make,
        inside=entry,
        edit=frame.source,
    )


def frame_body(frame: Summary, cross: Cross, settings: Settings) -> str:
    """What stands round the body of an entry: sister frames, frames alike and the link to its source."""
    alike, same = cross.likeness.of(frame, MOST_ALIKE)
    return render(
        "frame_page.html",
        frame=frame,
        entry=Markup(INSIDE),  # noqa: S704 - a comment of our own
        cross=cross,
        sisters=cross.sisters(frame),
        alike=alike,
        trust=cross.confidence(frame),
        most_trust=MOST,
        same=same,
        edit_url=settings.edit_url(frame.source),
        draft_url=draft_link(to_root(frame_path(frame.slug)), frame.slug),
        prints=frame_print_links(frame.slug) if settings.prints else (),
        data_file=frame_file(frame.slug),
        root=to_root(frame_path(frame.slug)),
    )
