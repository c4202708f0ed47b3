"""The list of clubs, and the page of each: its frames, and what can be printed for it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import partial

from rimbook.bench.caution import Caution
from rimbook.bench.tension import over_limit
from rimbook.bench.units import newtons
from rimbook.book.model import Club, ClubFrame, Frame
from rimbook.site.cross import Cross
from rimbook.site.links import club_path
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.prints import club_print_links
from rimbook.site.settings import Settings
from rimbook.site.templates import render
from rimbook.site.words import counted, day

Fetch = Callable[[str], Frame]


def club_pages(clubs: Mapping[str, Club], cross: Cross, record: Fetch, settings: Settings) -> Iterator[Page]:
    """The index of clubs and a page for each. `record` fetches a frame as it was read."""
    kind = KINDS["clubs"]
    yield Page(
        path=kind.pattern,
        kind=kind.name,
        title=kind.title,
        description="The clubs of this book: which frames each strings, and its chart to print.",
        make=partial(
            render,
            "clubs.html",
            title=kind.title,
            clubs=clubs.values(),
            root=to_root(kind.pattern),
        ),
    )
    for club in clubs.values():
        yield Page(
            path=club_path(club.slug),
            kind="club",
            title=club.name,
            description=f"{club.name} strings {counted(len(club.frames), 'frame')}: the list and the chart.",
            make=partial(_body, club, cross, record, settings),
            edit=club.source,
        )


def _body(club: Club, cross: Cross, record: Fetch, settings: Settings) -> str:
    chosen = [(cross.frames[each.frame], each, _caution(each, record)) for each in club.frames]
    rows = sorted(chosen, key=lambda row: (row[0].full_name.casefold(), row[0].slug))
    restrings = [each.restrings_per_year for each in club.frames if each.restrings_per_year is not None]
    return render(
        "club.html",
        club=club,
        day=day(club.on) if club.on else "",
        rows=rows,
        above=[frame for frame, _, caution in rows if caution],
        rackets=sum(each.count for each in club.frames),
        restrings=sum(restrings) if restrings else None,
        prints=club_print_links(club) if settings.prints else (),
        edit_url=settings.edit_url(club.source),
        root=to_root(club_path(club.slug)),
    )


def _caution(each: ClubFrame, record: Fetch) -> Caution | None:
    """What is said beside a tension that is above the limit printed on the frame."""
    if each.tension is None:
        return None
    return over_limit(newtons(each.tension.value, each.tension.unit), record(each.frame).tension_limit)
