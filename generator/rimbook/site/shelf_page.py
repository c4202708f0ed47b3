"""The page of a club's shelf, and its table."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from functools import cache, partial

from rimbook.bench.answers import Answers
from rimbook.book.model import Club, Frame
from rimbook.site.cross import Cross
from rimbook.site.links import shelf_path
from rimbook.site.pages import Asset, Page, to_root
from rimbook.site.settings import Settings
from rimbook.site.shelf_csv import shelf_rows, shelf_table
from rimbook.site.shelf_view import club_plan, view
from rimbook.site.templates import render
from rimbook.site.words import day


def shelf_pages(
    clubs: Mapping[str, Club],
    cross: Cross,
    record: Callable[[str], Frame],
    answers: Callable[[], Answers],
    settings: Settings,
) -> Iterator[Page | Asset]:
    """For each club whose file has a shelf its page and its table."""
    for club in clubs.values():
        if club.shelf is None:
            continue
        frames = cache(partial(_frames, club, record))
        yield Page(
            path=shelf_path(club.slug),
            kind="shelf",
            title=f"Shelf of {club.name}",
            description=f"What {club.name} keeps of each part, and what to order today.",
            make=partial(_body, club, cross, frames, answers, settings),
            edit=club.source,
        )
        yield Asset(shelf_table(club.slug), partial(_table, club, frames, answers))


def _frames(club: Club, record: Callable[[str], Frame]) -> dict[str, Frame]:
    return {each.frame: record(each.frame) for each in club.frames}


def _table(club: Club, frames: Callable[[], dict[str, Frame]], answers: Callable[[], Answers]) -> bytes:
    return shelf_rows(club_plan(club, frames(), answers()), answers().index.catalogue)


def _body(
    club: Club,
    cross: Cross,
    frames: Callable[[], dict[str, Frame]],
    answers: Callable[[], Answers],
    settings: Settings,
) -> str:
    names = {each.frame: cross.frames[each.frame].full_name for each in club.frames}
    root = to_root(shelf_path(club.slug))
    return render(
        "shelf.html",
        club=club,
        day=day(club.on) if club.on else "",
        labelled=settings.prints,
        table=root + shelf_table(club.slug),
        edit_url=settings.edit_url(club.source),
        root=root,
        **view(club, frames(), answers(), names),
    )
