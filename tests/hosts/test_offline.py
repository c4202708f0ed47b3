"""A built site has its worker and the list of what it keeps; while it is being written the worker leaves."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any, Literal

import pytest
from mkdocs.commands.build import build
from mkdocs.config import load_config

from rimbook.browser.bundle import script_of
from rimbook.hosts.offline import all_files, worker_meta
from rimbook.site.offline_list import fingerprint
from tests.hosts.sample import book


@pytest.mark.parametrize("command", ["build", "serve"])
def test_a_page_has_a_worker_only_where_the_site_is_whole(
    tmp_path: Path, command: Literal["build", "serve"], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    site = made(tmp_path, command)
    is_whole = command == "build"
    script = script_of("offline_worker" if is_whole else "offline_farewell")
    assert (site / "worker.js").read_bytes() == script
    assert (worker_meta("") in (site / "index.html").read_text("utf-8")) is is_whole
    assert (site / "offline" / "list.json").is_file() is is_whole


def test_the_list_has_the_bytes_that_were_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What a process wrote and told is what lies there, for files of the book, of the theme, and by hand."""
    monkeypatch.setenv("NO_MKDOCS_2_WARNING", "1")
    site = made(tmp_path, "build")
    for path, digest, size in listed(site):
        assert fingerprint((site / path).read_bytes()) == (digest, size), path
    names = {path for path, *_ in listed(site)}
    assert {"index.html", "frames/plover-76/index.html", "data/frames/plover-76.json"} <= names
    assert any(name.startswith("assets/stylesheets/") for name in names)
    assert names < all_files(site, {}).keys()


def made(folder: Path, command: Literal["build", "serve"]) -> Path:
    """The site of a small book, as a host makes it for a command."""
    book(folder)
    (folder / "docs").mkdir()
    (folder / "docs" / "index.md").write_text("# Home\n", "utf-8")
    config = {
        "site_name": "Book",
        "docs_dir": "docs",
        "site_dir": "site",
        "use_directory_urls": False,
        "theme": {"name": "material", "font": False},
        "plugins": [{"rimbook": {"book": "frames", "cache": "cache"}}],
    }
    file = folder / "mkdocs.yml"
    file.write_text(json.dumps(config), "utf-8")
    loaded = load_config(str(file))
    loaded.plugins.on_startup(command=command, dirty=False)
    build(loaded)
    return folder / "site"


def listed(site: Path) -> list[Any]:
    first = json.loads((site / "offline" / "list.json").read_text("utf-8"))
    pieces = [
        json.loads((site / "offline" / f"list.{number}.json").read_text("utf-8"))
        for number in range(len(first["pieces"]))
    ]
    return [*first["core"], *(file for piece in pieces for file in piece)]
