"""Pages that wait to be asked for: written once, whole, and only where they belong."""

from __future__ import annotations

import os
import re
import sys
from collections.abc import Iterable
from functools import partial
from pathlib import Path
from threading import Thread
from time import sleep
from typing import Any

import pytest

from rimbook.hosts import on_demand as module
from rimbook.hosts.on_demand import OnDemand
from rimbook.hosts.shell import BODY, Shell
from rimbook.hosts.workshop import WrongBook
from rimbook.site.pages import KINDS, Asset, Page
from rimbook.site.scripts import script_tag
from rimbook.site.settings import Settings

SHELLS = {"frame": Shell.cut(KINDS["frame"], f"<main>{BODY}</main>")}


def whole(body: str) -> str:
    """A page of the shell, with the script that every frame's page loads."""
    return f"<main>{body}{script_tag('frame', '../../')}</main>"


def answered(environ: dict[str, Any], start_response: object) -> Iterable[bytes]:
    return [b"answered"]


def offered(site: Path, asked: list[str]) -> OnDemand:
    """One page and one file, which note that they are made."""

    def body() -> str:
        asked.append("page")
        return "<h1>Plover</h1>"

    def data() -> bytes:
        asked.append("data")
        return b"{}"

    made: list[Page | Asset] = [
        Page("frames/plover-76/", "frame", "Plover", "A map", body),
        Asset("data/frames/plover-76.json", data),
    ]
    on_demand = OnDemand()
    assert [page.path for page in on_demand.offer(made, SHELLS, Settings(), site)] == ["frames/plover-76/"]
    return on_demand


@pytest.mark.parametrize("address", ["/book/frames/plover-76/", "/book/frames/plover-76/index.html"])
def test_a_page_is_made_when_it_is_first_asked_for_and_then_not_again(tmp_path: Path, address: str) -> None:
    asked: list[str] = []
    app = offered(tmp_path, asked).before(answered, "/book/")
    assert not asked
    for _ in range(2):
        assert list(app({"PATH_INFO": address}, None)) == [b"answered"]
    assert asked == ["page"]
    assert (tmp_path / "frames" / "plover-76" / "index.html").read_text() == whole("<h1>Plover</h1>")


@pytest.mark.parametrize(
    "address",
    [
        "/",
        "/book/",
        "/book/../../etc/passwd",
        "/frames/plover-76/",
        "/book/frames/heron/",
        "/book/\xff\xfe",
        "/book//",
    ],
)
def test_other_addresses_write_nothing(tmp_path: Path, address: str) -> None:
    asked: list[str] = []
    app = offered(tmp_path, asked).before(answered, "/book/")
    assert list(app({"PATH_INFO": address}, None)) == [b"answered"]
    assert not asked
    assert not list(tmp_path.iterdir())


def test_who_asks_during_a_build_waits_for_its_end(tmp_path: Path) -> None:
    asked: list[str] = []
    on_demand = offered(tmp_path, asked)
    app = on_demand.before(answered, "/")
    on_demand.close()
    thread = Thread(target=lambda: app({"PATH_INFO": "/frames/plover-76/"}, None))
    thread.start()
    sleep(0.05)
    assert not asked
    on_demand.open()
    thread.join(timeout=10)
    assert asked == ["page"]


def test_writing_all_leaves_nothing_due_and_tells_how_far_it_is(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr("rimbook.hosts.progress.EVERY_SECONDS", 0.0)
    told: list[str] = []
    on_demand = offered(tmp_path, [])
    on_demand.write_all(told.append)
    assert not on_demand.due
    assert told == ["1 of 2 files written"]
    assert (tmp_path / "data" / "frames" / "plover-76.json").read_bytes() == b"{}"


def test_a_map_that_went_wrong_meanwhile_is_left_to_the_next_build(tmp_path: Path) -> None:
    def body() -> str:
        raise WrongBook("frames/maps/plover-76.yaml:1:1  error")

    on_demand = OnDemand()
    on_demand.offer(
        [Page("frames/plover-76/", "frame", "Plover", "A map", body)], SHELLS, Settings(), tmp_path
    )
    app = on_demand.before(answered, "/")
    assert list(app({"PATH_INFO": "/frames/plover-76/"}, None)) == [b"answered"]
    with pytest.raises(WrongBook, match=re.escape("plover-76.yaml:1:1")):
        on_demand.write_all(lambda words: None)


def test_what_was_asked_for_is_there_again_after_the_next_build(tmp_path: Path) -> None:
    asked: list[str] = []
    on_demand = offered(tmp_path / "one", asked)
    app = on_demand.before(answered, "/")
    for number in range(100):
        app({"PATH_INFO": f"/frames/other-{number}/"}, None)
    app({"PATH_INFO": "/frames/plover-76/"}, None)
    page = Page("frames/plover-76/", "frame", "Plover", "A map", lambda: "<h1>New</h1>")
    on_demand.offer([page], SHELLS, Settings(), tmp_path / "two")
    assert (tmp_path / "two" / "frames" / "plover-76" / "index.html").read_text() == whole("<h1>New</h1>")
    assert len(on_demand.asked) < 100


def many(site: Path, wrong: str = "") -> OnDemand:
    """Files that say which process wrote them; one may belong to a map that has become wrong."""

    def data(name: str) -> bytes:
        if name == wrong:
            raise WrongBook(f"{name} is wrong")
        return str(os.getpid()).encode()

    on_demand = OnDemand()
    names = [f"data/{number}.json" for number in range(30)]
    on_demand.offer([Asset(name, partial(data, name)) for name in names], {}, Settings(), site)
    return on_demand


@pytest.fixture
def three_processors(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "SHARE", 2)
    monkeypatch.setattr(module, "copies_are_safe", lambda: True)
    monkeypatch.setattr(os, "cpu_count", lambda: 3)


@pytest.mark.skipif(sys.platform != "linux", reason="copies are made on Linux only")
@pytest.mark.usefixtures("three_processors")
def test_a_process_writes_its_part_and_its_copies_the_rest(tmp_path: Path) -> None:
    on_demand = many(tmp_path)
    on_demand.write_all(lambda words: None)
    assert not on_demand.due
    writers = [file.read_text() for file in (tmp_path / "data").iterdir()]
    assert len(writers) == 30
    assert str(os.getpid()) in writers
    assert len(set(writers)) > 1


@pytest.mark.skipif(sys.platform != "linux", reason="copies are made on Linux only")
@pytest.mark.usefixtures("three_processors")
@pytest.mark.parametrize("wrong", ["data/0.json", "data/15.json", "data/29.json"])
def test_a_wrong_map_stops_the_writing_whoever_meets_it(tmp_path: Path, wrong: str) -> None:
    with pytest.raises(WrongBook, match=wrong):
        many(tmp_path, wrong).write_all(lambda words: None)
