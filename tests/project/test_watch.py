"""The browser that judges the pages must itself miss nothing."""

from __future__ import annotations

import pytest
from playwright.sync_api import Browser

from tests.watch import is_local, watched_page


@pytest.mark.parametrize(
    ("html", "fault"),
    [
        ("<script>console.error('lost')</script>", "console: lost"),
        ("<script>throw new Error('broken')</script>", "script: broken"),
        (
            "<img src='https://other.example/a.png' alt=''>",
            "asks another machine: https://other.example/a.png",
        ),
    ],
)
def test_a_page_that_misbehaves_is_reported(browser: Browser, html: str, fault: str) -> None:
    with watched_page(browser) as (page, faults):
        page.set_content(html)
    assert any(line.startswith(fault) for line in faults), faults


def test_a_page_that_behaves_is_not_reported(browser: Browser) -> None:
    with watched_page(browser, 360) as (page, faults):
        page.set_content("<img src='data:image/gif;base64,R0lGODlhAQABAAAAACw=' alt=''><p>All is well.</p>")
        width = page.evaluate("innerWidth")
    assert faults == []
    assert width == 360


@pytest.mark.parametrize("url", ["http://127.0.0.1:8000/", "file:///a/b.html", "data:,a", "blob:null/1"])
def test_this_machine_is_local(url: str) -> None:
    assert is_local(url)


@pytest.mark.parametrize(
    "url", ["https://other.example/", "http://127.0.0.1.example/", "ws://other.example/"]
)
def test_any_other_machine_is_not(url: str) -> None:
    assert not is_local(url)
