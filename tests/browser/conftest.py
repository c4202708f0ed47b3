"""The small site, opened from a folder and from a server, and the demo as plain files."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from rimbook.cli import main
from tests.browser.small_site import write_site
from tests.serving import served


@pytest.fixture(scope="session")
def small_folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("small")
    write_site(folder)
    return folder


@pytest.fixture(scope="session")
def small_site(small_folder: Path) -> str:
    """The address of the small site in its folder, where a browser allows least; no slash at the end."""
    return small_folder.as_uri()


@pytest.fixture(scope="session")
def plain_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo book as plain files, without a theme."""
    folder = tmp_path_factory.mktemp("plain")
    assert main(["pages", str(folder / "site"), "--cache", str(folder / "cache")]) == 0
    return folder / "site"


@pytest.fixture(scope="session", params=["file", "http"])
def anywhere(request: pytest.FixtureRequest, small_folder: Path) -> Iterator[str]:
    """The same from the folder and then from a server."""
    if request.param == "file":
        yield small_folder.as_uri()
        return
    with served(small_folder) as top:
        yield top
