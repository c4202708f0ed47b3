"""A server on this machine for as long as a test needs one."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread
from typing import Any


class QuietHandler(SimpleHTTPRequestHandler):
    """Serves a folder and keeps silent about it."""

    def log_message(self, format: str, *args: object) -> None:  # noqa: A002
        """Say nothing: the browser tells what failed."""


@contextmanager
def served(folder: Path, handler: Callable[..., Any] = QuietHandler) -> Iterator[str]:
    """The address of a folder on a server, without a slash at the end."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(handler, directory=str(folder)))
    thread = Thread(target=server.serve_forever, daemon=True)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}"
    finally:
        server.shutdown()
        thread.join()
        server.server_close()
