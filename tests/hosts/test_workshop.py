"""The workshop: nothing made twice, nothing wrong published, and the words of `rimbook check`."""

from __future__ import annotations

from pathlib import Path

import pytest

from rimbook.bench.check import check
from rimbook.book.load import load_book
from rimbook.book.report import Extent, people
from rimbook.hosts import making, progress
from rimbook.hosts import workshop as module
from rimbook.hosts.workshop import Workshop, WrongBook
from rimbook.site.pages import Page
from rimbook.site.publish import site
from tests.hosts.sample import ROOT, book, site_of, workshop
from tests.site.sample import plain


@pytest.fixture
def made(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The slugs of the maps that are drawn, as they are drawn in this process."""
    slugs: list[str] = []
    make = making.make

    def noted(bench: making.Bench, path: Path) -> making.Made:
        slugs.append(path.stem)
        return make(bench, path)

    monkeypatch.setattr(making, "make", noted)
    return slugs


def edit(file: Path, old: str, new: str) -> None:
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new), "utf-8")


def wrong(shop: Workshop) -> str:
    with pytest.raises(WrongBook) as raised:
        shop.source()
    return str(raised.value)


def report(frames: Path) -> str:
    loaded = load_book(frames)
    return people(
        check(loaded), Extent(loaded.map_count, sum(len(file.parts) for file in loaded.parts_files))
    )


def test_the_workshop_publishes_what_the_pure_site_publishes(tmp_path: Path) -> None:
    frames = book(tmp_path)
    pure = {each.file: plain(each) for each in site(load_book(frames).book) if isinstance(each, Page)}
    made = site_of(workshop(tmp_path, frames)[0])
    assert pure == {path: data for path, data in made.items() if path in pure}
    assert len(pure) > 50


def test_an_unchanged_book_is_neither_parsed_nor_drawn_again(
    tmp_path: Path, made: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    frames = book(tmp_path)
    first = site_of(workshop(tmp_path, frames)[0])
    assert len(made) == 4
    made.clear()
    monkeypatch.setattr(making, "load_map", None)
    assert site_of(workshop(tmp_path, frames)[0]) == first
    assert not made


def test_one_edited_map_remakes_only_its_own_entry(tmp_path: Path, made: list[str]) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    before = site_of(shop)
    made.clear()
    edit(frames / "maps" / "weir-72.yaml", "tension_limit: 27 kg", "tension_limit: 26 kg")
    after = site_of(shop)
    assert made == ["weir-72"]
    changed = {path for path in after if after[path] != before[path]}
    assert changed == {"frames/weir-72/index.html", "data/drafts/bittern-78.js"}  # its page, and its draft


def test_a_new_name_reaches_every_page_that_shows_it(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    site_of(shop)
    edit(frames / "maps" / "bittern-78.yaml", "name: Bittern 78", "name: Bittern Seventy")
    after = site_of(shop)
    fresh, _ = workshop(tmp_path / "elsewhere", frames)
    assert after == site_of(fresh)
    assert b"Bittern Seventy" in after["frames/bittern-78-2025/index.html"]


def test_a_changed_part_remakes_what_shows_it(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    site_of(shop)
    edit(frames / "parts" / "badminton-barrels.yaml", "name: Short barrel 2.1", "name: Stub 2.1")
    assert b"Stub 2.1" in site_of(shop)["frames/plover-76/index.html"]


def test_removed_and_moved_maps_are_followed(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    site_of(shop)
    (frames / "maps" / "badminton").mkdir()
    (frames / "maps" / "bittern-78-2025.yaml").rename(frames / "maps" / "badminton" / "bittern-78-2025.yaml")
    assert b"frames/maps/badminton/bittern-78-2025.yaml" in site_of(shop)["frames/bittern-78-2025/index.html"]


def test_a_wrong_map_stops_the_site_with_the_words_of_check(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    edit(frames / "maps" / "weir-72.yaml", "m7+c1 m8", "m7+c1 m8 m8")
    edit(frames / "maps" / "plover-76.yaml", "sport: badminton", "sport: badmington")
    words = wrong(shop)
    assert words == report(frames)
    assert "frames/maps/weir-72.yaml:" in words
    assert "frames/maps/plover-76.yaml:" in words
    assert "badminton" in words


def test_what_is_wrong_between_maps_stops_the_site_too(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    site_of(shop)
    (frames / "maps" / "plover-75.yaml").write_text(
        (frames / "maps" / "plover-76.yaml").read_text("utf-8"), "utf-8"
    )
    words = wrong(shop)
    assert words == report(frames)
    assert "same-name" in words


def test_a_variant_of_nothing_stops_the_site_too(tmp_path: Path) -> None:
    frames = book(tmp_path)
    edit(frames / "maps" / "bittern-78-2025.yaml", "variant_of: bittern-78", "variant_of: bittern-77")
    words = wrong(workshop(tmp_path, frames)[0])
    assert words == report(frames)
    assert "variant-of" in words


def test_a_wrong_part_stops_the_site_too(tmp_path: Path) -> None:
    frames = book(tmp_path)
    edit(frames / "parts" / "badminton-barrels.yaml", "kind: single", "kind: sinlge")
    words = wrong(workshop(tmp_path, frames)[0])
    assert "badminton-barrels.yaml:" in words
    assert "single" in words


def test_a_mended_book_is_published_again(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    before = site_of(shop)
    file = frames / "maps" / "weir-72.yaml"
    text = file.read_text("utf-8")
    file.write_text(text.replace("mains: 18", "mains: 17"), "utf-8")
    wrong(shop)
    file.write_text(text, "utf-8")
    assert site_of(shop) == before


def test_what_is_no_file_is_named_and_hangs_nobody(tmp_path: Path) -> None:
    frames = book(tmp_path)
    (frames / "maps" / "linked.yaml").symlink_to("/dev/zero")
    (frames / "maps" / "huge.yaml").write_bytes(b"a" * 10_000_000)
    words = wrong(workshop(tmp_path, frames)[0])
    assert "frames/maps/linked.yaml:1:1" in words
    assert "frames/maps/huge.yaml:1:1" in words


def test_many_maps_are_spread_over_processes_and_come_out_the_same(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    one = site_of(Workshop(ROOT / "frames", tmp_path / "one", lambda words: None))
    monkeypatch.setattr(module, "FEW", 1)
    monkeypatch.setattr(progress, "EVERY_SECONDS", 0.0)
    told: list[str] = []
    many = site_of(Workshop(ROOT / "frames", tmp_path / "many", told.append))
    assert one == many
    assert any("maps drawn" in words for words in told)


def test_a_part_given_twice_stops_the_site_though_the_catalogue_is_the_same(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    site_of(shop)
    file = frames / "parts" / "badminton-barrels.yaml"
    (frames / "parts" / "zz-copy.yaml").write_text(file.read_text("utf-8"), "utf-8")
    words = wrong(shop)
    assert words == report(frames)
    assert "zz-copy.yaml" in words


def test_two_maps_of_one_name_in_two_folders_stop_the_site(tmp_path: Path) -> None:
    frames = book(tmp_path)
    (frames / "maps" / "more").mkdir()
    (frames / "maps" / "more" / "weir-72.yaml").write_text(
        (frames / "maps" / "weir-72.yaml").read_text("utf-8"), "utf-8"
    )
    words = wrong(workshop(tmp_path, frames)[0])
    assert words == report(frames)


def test_a_page_that_cannot_be_drawn_is_our_own_fault_and_said_so(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def broken(*given: object) -> None:
        raise ZeroDivisionError("no room")

    monkeypatch.setattr(making, "entry", broken)
    words = wrong(workshop(tmp_path, book(tmp_path))[0])
    assert words.count("Drawing the page failed: this is rimbook's own fault.") == 4
    assert "ZeroDivisionError: no room" in words
