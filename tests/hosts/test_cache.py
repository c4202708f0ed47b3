"""Kept entries: taken when they are right, made anew when anything about them is wrong."""

from __future__ import annotations

import pickle
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from rimbook.hosts import cache as module
from rimbook.hosts.cache import Cache, Kept, write_whole
from tests.hosts.sample import book, site_of, workshop

KEPT = Kept(b'{"brief": 1}', b"{}", b"<h1>Body\n</h1>", b"", b"{}", b"[]")


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    return Cache(tmp_path / "kept", tmp_path / "spill")


def test_what_is_kept_comes_back_for_its_key_alone(cache: Cache) -> None:
    assert cache.write("plover", "key-1", KEPT)
    assert cache.read("plover", "key-1") == (KEPT, "kept")
    assert cache.read("plover", "key-2") == (None, "edited")
    assert cache.read("heron", "key-1") == (None, "none")


def test_another_version_is_told_apart(cache: Cache, monkeypatch: pytest.MonkeyPatch) -> None:
    cache.write("plover", "key", KEPT)
    monkeypatch.setattr(module, "program_version", lambda: "another")
    assert cache.read("plover", "key") == (None, "foreign")


@pytest.mark.parametrize("length", range(0, 200, 7))
def test_half_a_file_is_damaged(cache: Cache, length: int) -> None:
    cache.write("plover", "key", KEPT)
    file = cache.folder / "plover.entry"
    whole = file.read_bytes()
    file.write_bytes(whole[: min(length, len(whole) - 1)])
    assert cache.read("plover", "key") == (None, "damaged")


def test_a_changed_byte_is_damage(cache: Cache) -> None:
    cache.write("plover", "key", KEPT)
    file = cache.folder / "plover.entry"
    file.write_bytes(file.read_bytes().replace(b"Body", b"Bady"))
    assert cache.read("plover", "key") == (None, "damaged")


def test_a_folder_in_the_place_of_a_file_is_spilt_around(cache: Cache) -> None:
    (cache.folder / "plover.entry").mkdir(parents=True)
    assert cache.read("plover", "key") == (None, "damaged")
    assert not cache.write("plover", "key", KEPT)
    assert cache.read("plover", "key") == (KEPT, "kept")


def test_writing_leaves_no_crumbs(tmp_path: Path) -> None:
    file = tmp_path / "deep" / "file"
    write_whole(file, b"one")
    write_whole(file, b"two")
    assert [each.name for each in file.parent.iterdir()] == ["file"]
    with pytest.raises(OSError, match="directory"):
        write_whole(tmp_path / "deep", b"no file")
    assert not list(tmp_path.glob(".*"))


class Bomb:
    """Runs something where it is unpickled."""

    def __init__(self, mark: Path) -> None:
        self.mark = mark

    def __reduce__(self) -> tuple[Callable[..., object], tuple[object, ...]]:
        return Path.touch, (self.mark,)


def _cut(data: bytes) -> bytes:
    return data[: len(data) // 2]


SPOILT: dict[str, Callable[[bytes], bytes]] = {
    "empty": lambda data: b"",
    "cut": _cut,
    "noise": lambda data: bytes(range(256)) * 40,
    "version": lambda data: data.replace(b"rimbook-entry ", b"rimbook-entry 0", 1),
    "body": lambda data: data.replace(b"drilled hole", b"drilled h0le"),
    "lengths": lambda data: data.replace(b",", b",-", 1),
}


@pytest.mark.parametrize("spoil", SPOILT.values(), ids=SPOILT)
def test_a_spoilt_cache_is_rebuilt_and_said_once(tmp_path: Path, spoil: Callable[[bytes], bytes]) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    right = site_of(shop)
    for file in (tmp_path / "cache").glob("*.entry"):
        before = file.read_bytes()
        file.write_bytes(spoil(before))
        assert file.read_bytes() != before
    again, told = workshop(tmp_path, frames)
    assert site_of(again) == right
    assert len([words for words in told if "made anew" in words]) == 1
    last, told = workshop(tmp_path, frames)
    assert site_of(last) == right
    assert not told


def test_a_cache_never_runs_anything(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    right = site_of(shop)
    mark = tmp_path / "mark"
    for file in (tmp_path / "cache").iterdir():
        file.write_bytes(pickle.dumps(Bomb(mark)))
    again, _ = workshop(tmp_path, frames)
    assert site_of(again) == right
    assert not mark.exists()


def test_a_cache_that_cannot_be_written_is_done_without_and_said_once(tmp_path: Path) -> None:
    frames = book(tmp_path)
    (tmp_path / "cache").write_text("a file where the folder should be")
    shop, told = workshop(tmp_path, frames)
    first = site_of(shop)
    assert len(first) > 50
    assert len([words for words in told if "nothing can be kept" in words]) == 1


def test_two_builds_at_once_do_not_disturb_each_other(tmp_path: Path) -> None:
    frames = book(tmp_path)
    shops = [workshop(tmp_path, frames)[0] for _ in range(3)]
    with ThreadPoolExecutor(3) as pool:
        sites = list(pool.map(site_of, shops))
    assert sites[0] == sites[1] == sites[2]
    assert not list((tmp_path / "cache").glob(".*"))
