"""The whole site as a stream of pages and files, each made when it is wanted: no book is too large."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache, lru_cache, partial
from importlib.resources import files

from rimbook.bench import check
from rimbook.bench.answers import Answers
from rimbook.bench.part_index import index_parts
from rimbook.book.model import Book, Catalogue, Club, Frame, Moved
from rimbook.browser.bundle import stylesheet as script_styles
from rimbook.draw.style import stylesheet
from rimbook.rim.place import place
from rimbook.site.board_page import board_files, board_page
from rimbook.site.book_files import book_files
from rimbook.site.bore_pages import bore_pages
from rimbook.site.club_pages import club_pages
from rimbook.site.credits_page import credit_pages
from rimbook.site.cross import Cross, cross_index
from rimbook.site.csv_files import frame_table, hole_rows
from rimbook.site.data_files import frame_file, with_confidence
from rimbook.site.draft_page import draft_pages
from rimbook.site.entry import Content, entry
from rimbook.site.exchange import exchange
from rimbook.site.finder_page import finder_pages
from rimbook.site.fits_page import fits_page
from rimbook.site.frame_lists import frame_lists
from rimbook.site.frame_page import frame_body, frame_page
from rimbook.site.history_page import History, history_page, unknown_history
from rimbook.site.interchange_page import interchange_page
from rimbook.site.matrix_pages import matrix_pages
from rimbook.site.moved_pages import moved_pages
from rimbook.site.my_shelf_page import my_shelf_page
from rimbook.site.numbers.page import number_pages
from rimbook.site.numbers.shown import shown
from rimbook.site.offline_page import offline_page
from rimbook.site.pages import Asset, Page
from rimbook.site.part_lists import part_list
from rimbook.site.part_page import part_pages
from rimbook.site.prices_page import prices_page
from rimbook.site.prints import Keep, club_prints, frame_prints, made_anew
from rimbook.site.rules_page import rules_page
from rimbook.site.scripts import script_files
from rimbook.site.set_lists import set_lists
from rimbook.site.settings import Settings
from rimbook.site.shelf_page import shelf_pages
from rimbook.site.sold import sets_of
from rimbook.site.summary import Summary
from rimbook.site.tape_page import tape_pages
from rimbook.site.wanted_page import wanted_page

STYLE = "assets/rimbook.css"

Fetch = Callable[[str], Content]


@dataclass(frozen=True, slots=True)
class Source:
    """What the site is made from: all frames in summary, and a way to fetch a frame's content in its turn.

    `record` fetches a frame as it was read, for the few pages that work something out anew. `keep` keeps a
    file to print from build to build. `moved` has the names that changed, `history` what changed when.
    """

    summaries: Iterable[Summary]
    fetch: Fetch
    catalogue: Catalogue
    record: Callable[[str], Frame]
    clubs: Mapping[str, Club] = field(default_factory=dict)
    keep: Keep = made_anew
    moved: Moved = field(default_factory=Moved)
    history: Callable[[], History] = unknown_history


def publish(source: Source, settings: Settings) -> Iterator[Page | Asset]:
    """Every page and file of the site, always in the same order. None is made until it is asked for."""
    cross = cross_index(source.summaries, source.catalogue)
    sets = sets_of(source.catalogue)
    yield Asset(STYLE, style)
    yield from frame_lists(cross, source.catalogue)
    yield from part_list(source.catalogue, cross)
    book = cache(partial(exchange, cross, source.catalogue, settings.thresholds))
    yield from set_lists(source.catalogue, sets, cross)
    for part in source.catalogue.values():
        yield from part_pages(part, source.catalogue, sets, cross, settings, book)
    yield interchange_page(cross, source.catalogue, book)
    yield from bore_pages(cross, source.catalogue, settings)
    yield from matrix_pages(cross, source.catalogue)
    yield rules_page(check.catalogue())
    yield wanted_page(cross, source.catalogue, settings)
    yield history_page(source.history, cross, source.catalogue)
    yield from credit_pages(cross, source.catalogue)
    yield from number_pages(
        cache(
            partial(shown, cross.frames, source.record, source.catalogue, settings.thresholds, cross.book_day)
        ),
        settings.thresholds,
    )
    yield from script_files()
    yield from finder_pages(cross, source.catalogue, settings.places, source.moved)
    yield board_page()
    yield from fits_page(source.catalogue, settings.thresholds)
    yield from club_pages(source.clubs, cross, source.record, settings)
    yield from shelf_pages(source.clubs, cross, source.record, lambda: book().answers, settings)
    yield from prices_page(source.catalogue)
    yield from my_shelf_page()
    yield from draft_pages(cross, source.catalogue, source.fetch, settings)
    yield offline_page()
    ordered = [cross.frames[slug] for slug in sorted(cross.frames)]
    yield from book_files(ordered, source.catalogue, source.moved, cross)
    yield from moved_pages(source.moved, cross, source.catalogue)
    fetch = lru_cache(maxsize=1)(source.fetch)  # a page and its data are mostly made one after the other
    for frame in ordered:
        entry_body = partial(_entry_body, frame.slug, fetch)
        yield frame_page(frame, partial(frame_body, frame, cross, settings), entry_body)
        yield Asset(frame_file(frame.slug), partial(_frame_data, frame, fetch, cross))
        yield Asset(frame_table(frame.slug), partial(_hole_rows, frame.slug, fetch))
        yield from board_files(frame, fetch, source.catalogue, sets)
    if settings.prints:
        yield from tape_pages(ordered, source.record, source.catalogue)
        for frame in ordered:
            yield from frame_prints(frame.slug, source.record, source.catalogue, settings, source.keep)
        for club in source.clubs.values():
            yield from club_prints(club, source.record, source.catalogue, settings, source.keep)


def _entry_body(slug: str, fetch: Fetch) -> bytes:
    return fetch(slug).body


def _frame_data(frame: Summary, fetch: Fetch, cross: Cross) -> bytes:
    return with_confidence(fetch(frame.slug).data, cross.confidence(frame)).encode()


def _hole_rows(slug: str, fetch: Fetch) -> bytes:
    return hole_rows(fetch(slug).data)


def site(book: Book, settings: Settings | None = None) -> Iterator[Page | Asset]:
    """The site of a book that fits in memory: book in, pages out."""
    settings = settings or Settings()
    sets, answers = sets_of(book.parts), Answers(index_parts(book.parts), settings.thresholds)
    entries = {slug: entry(place(frame), sets, answers) for slug, frame in book.frames.items()}
    summaries = [each.summary for each in entries.values()]
    record = book.frames.__getitem__
    contents = {slug: each.content for slug, each in entries.items()}
    source = Source(summaries, contents.__getitem__, book.parts, record, clubs=book.clubs, moved=book.moved)
    return publish(source, settings)


def style() -> bytes:
    """The one style sheet that drawings and generated pages share. What holds on paper comes last."""
    static = files("rimbook.site") / "static"
    names = (
        "pages.css",
        "drawings.css",
        "cross.css",
        "numbers.css",
        "fits.css",
        "bench.css",
        "sheet.css",
        "ticket.css",
        "work.css",
        "prices.css",
        "draft.css",
        "draft_holes.css",
        "draft_photo.css",
        "tape.css",
        "shelf.css",
        "my_shelf.css",
        "print.css",
    )
    *sheets, paper = [(static / name).read_text("utf-8") for name in names]
    return "\n".join([stylesheet(), *sheets, script_styles().decode(), paper]).encode()
