"""Charts on the site: linked from frames and clubs, made when wanted, kept while nothing has changed."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace
from pathlib import Path

import pytest

from rimbook.book.load import load_book
from rimbook.book.model import Book
from rimbook.cli import main
from rimbook.draw.chart import chart_pdf
from rimbook.hosts.kept_prints import kept_prints
from rimbook.site.pages import Asset, Page
from rimbook.site.prints import club_print_links, club_prints, frame_print_links
from rimbook.site.publish import site
from rimbook.site.settings import Settings
from tests.draw.printed import SITE, frame, look, parts, reader, shown
from tests.site.sample import ROOT

BOOK = load_book(ROOT / "frames").book


def published(*, prints: bool) -> dict[str, Page | Asset]:
    settings = Settings(site_url=SITE, prints=prints)
    return {each.file: each for each in site(BOOK, settings)}


WITH, WITHOUT = published(prints=True), published(prints=False)


def body(files: dict[str, Page | Asset], path: str) -> str:
    page = files[path]
    assert isinstance(page, Page)
    return page.body


def test_every_frame_and_club_links_to_its_prints_and_they_are_there() -> None:
    for slug in BOOK.frames:
        text = body(WITH, f"frames/{slug}/index.html")
        for each in frame_print_links(slug):
            assert f'href="../../{each.file}"' in text
            assert isinstance(WITH[each.file], Asset)
    for slug, club in BOOK.clubs.items():
        text = body(WITH, f"clubs/{slug}/index.html")
        for each in club_print_links(club):
            assert f'href="../../{each.file}"' in text
            assert isinstance(WITH[each.file], Asset)


def test_a_site_without_prints_promises_none() -> None:
    assert not any(file.endswith(".pdf") for file in WITHOUT)
    for path in ("frames/plover-76/index.html", "clubs/weir-lane/index.html", "clubs/index.html"):
        assert ".pdf" not in body(WITHOUT, path)
        assert 'id="print"' not in body(WITHOUT, path)


def test_a_print_is_a_chart_of_its_frame() -> None:
    asset = WITH["prints/plover-76-chart-a4.pdf"]
    assert isinstance(asset, Asset)
    document = reader(asset.data)
    assert document.metadata is not None
    assert document.metadata.title == "Plover 76"
    assert "data of 2026-11-02" in document.pages[0].extract_text()


def test_the_labels_of_a_club_are_those_of_its_shelf_and_said_to_be() -> None:
    asset = WITH["prints/club.weir-lane-labels.pdf"]
    assert isinstance(asset, Asset)
    said = " ".join(" ".join(page.extract_text() for page in reader(asset.data).pages).split())
    assert "Plover full set" in said
    assert "Reorder below 6, fill up to 10" in said
    assert "Treadle full set" not in said  # none is kept
    assert "a label for every drawer of its shelf" in body(WITH, "clubs/weir-lane/index.html")


def test_a_club_that_keeps_nothing_yet_has_a_sheet_that_says_so() -> None:
    club = BOOK.clubs["weir-lane"]
    unknown = tuple(replace(each, restrings_per_year=None) for each in club.frames)
    book = replace(BOOK, clubs={"weir-lane": replace(club, frames=unknown)})
    files = {each.file: each for each in site(book, Settings(site_url=SITE, prints=True))}
    asset = files["prints/club.weir-lane-labels.pdf"]
    assert isinstance(asset, Asset)
    assert "nothing to label" in reader(asset.data).pages[0].extract_text()
    assert "Labels for the drawers" not in body(files, "clubs/weir-lane/shelf/index.html")


def test_the_labels_of_a_shelf_are_made_anew_with_any_part_and_the_chart_is_not() -> None:
    """A part that no frame of the club takes may come to stand in for one that it does."""

    def made_from(book: Book) -> dict[str, tuple[bytes, ...]]:
        found: dict[str, tuple[bytes, ...]] = {}

        def keep(name: str, pieces: Sequence[bytes], make: Callable[[], bytes]) -> bytes:
            found[name] = tuple(pieces)
            return b""

        club = book.clubs["weir-lane"]
        for asset in club_prints(club, book.frames.__getitem__, book.parts, Settings(), keep):
            assert asset.data == b""
        return found

    new = replace(BOOK.parts["bobbin-bumper"], name="Other name")
    before, after = made_from(BOOK), made_from(replace(BOOK, parts={**BOOK.parts, new.id: new}))
    assert before["prints/club.weir-lane-labels.pdf"] != after["prints/club.weir-lane-labels.pdf"]
    assert before["prints/club.weir-lane-chart.pdf"] == after["prints/club.weir-lane-chart.pdf"]


def test_the_page_of_a_club_lists_its_frames_with_what_is_known() -> None:
    text = body(WITHOUT, "clubs/weir-lane/index.html")
    club = BOOK.clubs["weir-lane"]
    assert all(f'href="../../frames/{each.frame}/index.html"' in text for each in club.frames)
    assert "36 rackets" in text
    row = re.search(r"<tr><th scope=\"row\"><a [^>]*>Plover 76[^<]*</a>.*?</tr>", text)
    assert row
    assert re.findall(r"<td[^>]*>([^<]*)</td>", row[0])[2:] == ["9", "54", "24 lb"]


def keeping(folder: Path) -> tuple[list[str], Callable[[Sequence[bytes]], bytes]]:
    """A kept file, and a list of the times it was made."""
    keep, made = kept_prints(folder), []

    def asked(pieces: Sequence[bytes]) -> bytes:
        def make() -> bytes:
            made.append("once")
            return b"%PDF " + b"".join(pieces)

        return keep("prints/a-chart.pdf", pieces, make)

    return made, asked


def test_a_print_is_made_once_while_nothing_changes(tmp_path: Path) -> None:
    made, asked = keeping(tmp_path)
    assert asked([b"one"]) == asked([b"one"]) == b"%PDF one"
    assert len(made) == 1
    assert asked([b"two"]) == b"%PDF two"
    assert len(made) == 2
    assert len(list(tmp_path.iterdir())) == 1


@pytest.mark.parametrize("harm", [b"", b"no head", b"key sum\n%PDF one"])
def test_a_damaged_print_is_made_anew(tmp_path: Path, harm: bytes) -> None:
    made, asked = keeping(tmp_path)
    asked([b"one"])
    (file,) = tmp_path.iterdir()
    file.write_bytes(harm)
    assert asked([b"one"]) == b"%PDF one"
    assert len(made) == 2


def test_half_a_print_is_not_taken(tmp_path: Path) -> None:
    _, asked = keeping(tmp_path)
    asked([b"one"])
    (file,) = tmp_path.iterdir()
    file.write_bytes(file.read_bytes()[:-1])
    assert asked([b"one"]) == b"%PDF one"


def test_a_folder_that_cannot_be_written_keeps_nothing(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    _, asked = keeping(tmp_path / "file")
    assert asked([b"one"]) == b"%PDF one"


def chart(*arguments: str | Path) -> int:
    return main(["chart", "--book", str(ROOT / "frames"), *map(str, arguments)])


def test_the_command_writes_a_chart_and_says_where(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "chart.pdf"
    assert chart("plover-76", "--paper", "A3", "--landscape", "--out", out) == 0
    assert capsys.readouterr().out == f"{out}\n"
    box = reader(out.read_bytes()).pages[0].mediabox
    assert float(box.width) > float(box.height)


def test_the_command_writes_the_sheets_of_a_club_as_svg(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert chart("weir-lane", "--format", "svg", "--out", tmp_path / "club.svg") == 0
    files = sorted(tmp_path.iterdir())
    assert [file.name for file in files] == ["club-1.svg", "club-2.svg"]
    assert capsys.readouterr().out.split() == [str(file) for file in files]
    for file in files:
        text = file.read_text("utf-8")
        assert re.match(
            r'<svg [^>]*role="img"><title>Weir Lane Rackets \(\d/2\)</title><desc>Alder 56: ', text
        )


@pytest.mark.parametrize(
    ("arguments", "code", "says"),
    [
        (("plover-67",), 2, "Did you mean plover-76?"),
        (("weir-lain",), 2, "Did you mean weir-lane?"),
        (("plover-76", "--distance", "2", "--paper", "A4"), 1, "The smallest that works is A2 portrait."),
        (("plover-76", "--fonts", "nowhere"), 2, "no folder nowhere"),
        (("plover-76", "--out", "/nowhere/chart.pdf"), 2, "cannot be written"),
    ],
)
def test_a_refusal_says_what_would_do(
    arguments: tuple[str, ...], code: int, says: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert chart(*arguments) == code
    assert says in capsys.readouterr().err


@pytest.mark.parametrize("distance", ["0", "-1", "nan", "inf", "far"])
def test_a_distance_that_is_none_is_a_wrong_call(distance: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit, match="2"):
        chart("plover-76", f"--distance={distance}")
    assert "is no distance" in capsys.readouterr().err


def test_a_book_with_errors_is_told_and_not_printed(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    for folder in ("maps", "parts", "clubs"):
        (tmp_path / "frames" / folder).mkdir(parents=True)
    (tmp_path / "frames" / "clubs" / "reed.yaml").write_text("format: 1\nname: Reed\nframes: [nobody-1]\n")
    assert main(["chart", "--book", str(tmp_path / "frames"), "reed"]) == 1
    assert "there is no such map" in capsys.readouterr().err


def test_the_chart_of_a_frame_does_not_know_the_rest_of_the_catalogue() -> None:
    """A part that the frame does not take changes no byte."""
    taken = {hole.part for hole in frame("plover-76").holes}
    fewer = {name: part for name, part in parts().items() if name in taken}
    assert chart_pdf(shown("plover-76"), fewer, look()) == chart_pdf(shown("plover-76"), parts(), look())
    renamed = {**fewer, "barrel-21-short": replace(fewer["barrel-21-short"], name="Other name")}
    assert chart_pdf(shown("plover-76"), renamed, look()) != chart_pdf(shown("plover-76"), parts(), look())
