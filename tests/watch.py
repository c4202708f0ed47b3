"""A browser page that is watched: whatever goes wrong on it is written down."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from typing import Literal
from urllib.parse import urlsplit

from playwright.sync_api import Browser, ConsoleMessage, Page, Request, WebError

LOCAL_SCHEMES = ("about", "blob", "data", "file")


@contextmanager
def watched_page(
    browser: Browser, width: int = 1440, workers: Literal["allow", "block"] = "block"
) -> Iterator[tuple[Page, list[str]]]:
    """A page of a width in px, and the list of its faults, which is whole when the page is closed.

    A service worker would fetch the whole site for each test, so only those that are about it allow one.
    """
    faults: list[str] = []

    def on_console(message: ConsoleMessage) -> None:
        if message.type == "error":
            faults.append(f"console: {message.text} ({message.location['url']})")

    def on_error(error: WebError) -> None:
        faults.append(f"script: {error.error}")

    def on_request(request: Request) -> None:
        if not is_local(request.url):
            faults.append(f"asks another machine: {request.url}")

    context = browser.new_context(
        viewport={"width": width, "height": 900 if width > 600 else 780}, service_workers=workers
    )
    context.on("console", on_console)
    context.on("weberror", on_error)
    context.on("request", on_request)
    try:
        yield context.new_page(), faults
    finally:
        context.close()


def is_local(url: str) -> bool:
    """Whether an address stays on this machine."""
    parts = urlsplit(url)
    return parts.scheme in LOCAL_SCHEMES or parts.hostname == "127.0.0.1"
