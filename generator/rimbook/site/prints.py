"""The files to print that a site carries: for each frame and each club, made when a host wants them."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import NamedTuple

from rimbook.book.model import Catalogue, Club, Frame
from rimbook.draw.chart import Look, Shown, chart_pdf
from rimbook.draw.labels_sheet import labels_pdf, no_labels_pdf
from rimbook.draw.paper import PAPERS
from rimbook.draw.tape_sheet import tape_pdf
from rimbook.rim.place import place
from rimbook.site.drawer_labels import club_labels
from rimbook.site.links import frame_path
from rimbook.site.pages import Asset
from rimbook.site.settings import Settings

Keep = Callable[[str, Sequence[bytes], Callable[[], bytes]], bytes]
"""Gives a file by its name, all that it is made from, and a way to make it."""

Record = Callable[[str], Frame]

FOLDER = "prints/"


class Print(NamedTuple):
    """A file to print: where it lies, what it is called, what it is for."""

    file: str
    title: str
    words: str


class FramePrint(NamedTuple):
    """A kind of file that every frame has; `make` gives its bytes."""

    name: str
    title: str
    words: str
    make: Callable[[Frame, Catalogue, Settings], bytes]


class ClubPrint(NamedTuple):
    """A kind of file that every club has; `make` gives its bytes.

    `of_shelf` says what it is for where the club has a shelf: its plan then makes it, and any part of the
    catalogue may change that.
    """

    name: str
    title: str
    words: str
    make: Callable[[Club, Sequence[Frame], Catalogue, Settings], bytes]
    of_shelf: str = ""

    def planned(self, club: Club) -> bool:
        """Whether it is made by the plan of the club's shelf."""
        return bool(self.of_shelf) and club.shelf is not None


def made_anew(_: str, __: Sequence[bytes], make: Callable[[], bytes]) -> bytes:
    """Keeps nothing."""
    return make()


def frame_print_links(slug: str) -> tuple[Print, ...]:
    """The files of a frame, as its page names them."""
    return tuple(Print(_file(slug, kind.name), kind.title, kind.words) for kind in FRAME_PRINTS)


def club_print_links(club: Club) -> tuple[Print, ...]:
    """The files of a club, as its page names them."""
    return tuple(
        Print(
            _file(f"club.{club.slug}", kind.name),
            kind.title,
            kind.of_shelf if kind.planned(club) else kind.words,
        )
        for kind in CLUB_PRINTS
    )


def frame_prints(
    slug: str, record: Record, catalogue: Catalogue, settings: Settings, keep: Keep
) -> Iterator[Asset]:
    """The files of a frame."""
    for kind in FRAME_PRINTS:
        file = _file(slug, kind.name)
        yield Asset(file, partial(_frame_print, file, kind, slug, record, catalogue, settings, keep))


def club_prints(
    club: Club, record: Record, catalogue: Catalogue, settings: Settings, keep: Keep
) -> Iterator[Asset]:
    """The files of a club."""
    for kind in CLUB_PRINTS:
        file = _file(f"club.{club.slug}", kind.name)
        yield Asset(file, partial(_club_print, file, kind, club, record, catalogue, settings, keep))


def club_look(club: Club, site_url: str | None) -> Look:
    """A club's chart as its file asks for it."""
    return Look(
        paper=PAPERS[club.paper].turned(landscape=club.landscape),
        title=club.name,
        owner="Frames and their grommets",
        edition=club.edition or (club.on.isoformat() if club.on else ""),
        distance_m=club.distance_m,
        black_and_white=club.black_and_white,
        units=club.units,
        site_url=site_url,
    )


def club_shown(club: Club, frames: Sequence[Frame]) -> tuple[Shown, ...]:
    """The frames of a club's chart, in the order of their names."""
    counts = {each.frame: each.count for each in club.frames}
    ordered = sorted(frames, key=lambda frame: (frame.name.casefold(), frame.slug))
    return tuple(
        Shown(
            place(frame),
            frame_path(frame.slug),
            f"{counts[frame.slug]} here" if counts[frame.slug] > 1 else "",
        )
        for frame in ordered
    )


def frame_look(frame: Frame, paper: str, site_url: str | None) -> Look:
    """A frame's own chart on one of PAPERS, its letters as large as the sheet allows."""
    return Look(PAPERS[paper], frame.name, owner="Rimbook", edition=_dated(frame), site_url=site_url)  # type: ignore[index]


def _dated(frame: Frame) -> str:
    """The newest day on which somebody measured or confirmed."""
    days = [each.on for each in (frame.measured, *frame.confirmed) if each and each.on]
    return f"data of {max(days).isoformat()}" if days else ""


def _frame_print(
    file: str,
    kind: FramePrint,
    slug: str,
    record: Record,
    catalogue: Catalogue,
    settings: Settings,
    keep: Keep,
) -> bytes:
    frame = record(slug)
    return keep(file, _pieces([frame], catalogue, settings), partial(kind.make, frame, catalogue, settings))


def _club_print(
    file: str,
    kind: ClubPrint,
    club: Club,
    record: Record,
    catalogue: Catalogue,
    settings: Settings,
    keep: Keep,
) -> bytes:
    frames = [record(each.frame) for each in club.frames]
    pieces = [repr(club).encode(), *_pieces(frames, catalogue, settings)]
    if kind.planned(club):
        pieces += [repr(catalogue[part]).encode() for part in sorted(catalogue)]
        pieces.append(repr(settings.thresholds).encode())
    return keep(file, pieces, partial(kind.make, club, frames, catalogue, settings))


def _pieces(frames: Sequence[Frame], catalogue: Catalogue, settings: Settings) -> list[bytes]:
    named = {hole.part for frame in frames for hole in frame.holes if hole.part} & catalogue.keys()
    values = (settings.site_url, frames, [catalogue[part] for part in sorted(named)])
    return [repr(value).encode() for value in values]


def _file(slug: str, name: str) -> str:
    return f"{FOLDER}{slug}-{name}.pdf"


def _frame_chart(frame: Frame, catalogue: Catalogue, settings: Settings) -> bytes:
    shown = Shown(place(frame), frame_path(frame.slug))
    return chart_pdf((shown,), catalogue, frame_look(frame, "A4", settings.site_url))


def _club_chart(club: Club, frames: Sequence[Frame], catalogue: Catalogue, settings: Settings) -> bytes:
    return chart_pdf(club_shown(club, frames), catalogue, club_look(club, settings.site_url))


def _frame_tape(frame: Frame, catalogue: Catalogue, settings: Settings) -> bytes:
    return tape_pdf(place(frame), catalogue)


def _club_labels(club: Club, frames: Sequence[Frame], catalogue: Catalogue, settings: Settings) -> bytes:
    wanted = club_labels(club, frames, catalogue, settings.site_url, settings.thresholds)
    return labels_pdf(wanted, catalogue, club.labels) if wanted else no_labels_pdf(club.labels)


FRAME_PRINTS: tuple[FramePrint, ...] = (
    FramePrint(
        "chart-a4",
        "Chart on A4",
        "the face with bores, parts, pins and cautions, to hang by the machine",
        _frame_chart,
    ),
    FramePrint(
        "tape",
        "Rim tape on A4",
        "the rim unrolled at true scale, to cut out and lay along the frame",
        _frame_tape,
    ),
)

CLUB_PRINTS: tuple[ClubPrint, ...] = (
    ClubPrint(
        "chart",
        "Wall chart",
        "every frame of the club on its own paper, with an index where it takes more than one sheet",
        _club_chart,
    ),
    ClubPrint(
        "labels",
        "Drawer labels",
        "a label for every part that its frames take, on the sheet of labels that its file names",
        _club_labels,
        of_shelf="a label for every drawer of its shelf that something is kept in, with the frames it serves "
        "and how much to keep, on the sheet of labels that its file names",
    ),
)
