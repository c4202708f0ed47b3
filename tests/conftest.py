"""What all rooms' tests share: the built demo site, and a browser that trusts nobody."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, sync_playwright

from tests.serving import served
from tests.watch import watched_page

ROOT = Path(__file__).parents[1]
CHROMIUM_NAMES = ("chromium", "chromium-browser", "google-chrome")
NO_CHROMIUM = (
    "No Chromium found, so the browser tests are left out: "
    "`apt-get install chromium`, or set RIMBOOK_CHROMIUM to the path of one."
)
LEFT_OUT = pytest.StashKey[bool]()


def find_chromium() -> str | None:
    """The Chromium to test with: the one that is named, or the first in the PATH."""
    named = os.environ.get("RIMBOOK_CHROMIUM")
    if named:
        return shutil.which(named)
    return next((path for name in CHROMIUM_NAMES if (path := shutil.which(name))), None)


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Mark what needs a browser, and leave it out where there is none; in CI that is a failure."""
    in_browser = [item for item in items if "chromium_path" in getattr(item, "fixturenames", ())]
    for item in in_browser:
        item.add_marker("browser")
    if not in_browser or find_chromium():
        return
    if os.environ.get("CI") == "true":
        raise pytest.UsageError(NO_CHROMIUM)
    config.stash[LEFT_OUT] = True
    config.hook.pytest_deselected(items=in_browser)
    items[:] = [item for item in items if item not in in_browser]


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter, config: pytest.Config) -> None:
    """Say it last, where it is read."""
    if config.stash.get(LEFT_OUT, False):
        terminalreporter.write_line(NO_CHROMIUM, yellow=True)


@pytest.fixture(scope="session")
def chromium_path() -> str:
    """The Chromium that the browser tests run. Without one, no test that asks for it is run."""
    return find_chromium() or pytest.fail(NO_CHROMIUM)


@pytest.fixture(scope="session")
def browser(chromium_path: str) -> Iterator[Browser]:
    """One headless browser for the whole run. It resolves no name, so it can ask nobody."""
    switches = ["--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1", "--disable-background-networking"]
    if os.geteuid() == 0:
        switches.append("--no-sandbox")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(executable_path=chromium_path, args=switches)
        yield started
        started.close()


@pytest.fixture(scope="session")
def built_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo site, built once as a person builds it. A host that is told to be quiet counts no warnings."""
    target = tmp_path_factory.mktemp("built") / "site"
    command = [sys.executable, "-m", "mkdocs", "build", "--strict", "--site-dir", str(target)]
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    built = subprocess.run(
        command, cwd=ROOT, env=environment, capture_output=True, text=True, timeout=600, check=False
    )
    if built.returncode:
        pytest.fail(f"The demo site does not build:\n{built.stdout}{built.stderr}")
    return target


@pytest.fixture(scope="session")
def site_url(built_site: Path) -> Iterator[str]:
    """The address of the demo site on a server of this machine, without a slash at the end."""
    with served(built_site) as top:
        yield top


@pytest.fixture
def page(browser: Browser, request: pytest.FixtureRequest) -> Iterator[Page]:
    """A page 1440 px wide, or as wide as the test is parametrised (`indirect`) to.

    The test fails if a script or a request fails, if the console shows an error,
    or if anything is asked of another machine.
    """
    with watched_page(browser, getattr(request, "param", 1440)) as (page, faults):
        yield page
    if faults:
        pytest.fail("\n".join(faults), pytrace=False)
