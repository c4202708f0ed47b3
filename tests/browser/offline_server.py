"""A server that counts what it is asked for, can be cut off, and may hold its site below a path."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from urllib.parse import unquote, urlsplit

from rimbook.hosts.offline import all_files, write_list
from tests.serving import QuietHandler
from tests.serving import served as on_a_server


@dataclass
class Served:
    """A folder on a server. While `is_down`, every connection is closed without an answer."""

    folder: Path
    base: str = "/"
    port: int = 0
    is_down: bool = False
    asked: list[str] = field(default_factory=list)
    last: int | None = None
    """After so many answers more, the server goes down by itself; None is never."""

    @property
    def url(self) -> str:
        """The address of the site's top, without a slash at the end."""
        return f"http://127.0.0.1:{self.port}{self.base}".rstrip("/")

    def files(self) -> list[str]:
        """The files that were asked for, from the site's top, without those that lead to others."""
        found = [path.removeprefix(self.base) for path in self.asked]
        return [path for path in found if not path.startswith("offline/list") and path != "worker.js"]


@contextmanager
def served(folder: Path, base: str = "/") -> Iterator[Served]:
    """Serve a folder until the end of the block."""
    state = Served(folder, base)

    class Handler(QuietHandler):
        def do_GET(self) -> None:  # noqa: N802 - the name that the library calls
            path = unquote(urlsplit(self.path).path)
            if state.last is not None:
                state.is_down = state.is_down or state.last <= 0
                state.last -= 1
            if state.is_down:
                self.close_connection = True
                return
            state.asked.append(path)
            if not path.startswith(base):
                self.send_error(404)
                return
            self.path = "/" + self.path.removeprefix(base)
            super().do_GET()

    with on_a_server(folder, Handler) as top:
        state.port = int(top.rpartition(":")[2])
        yield state


def change(folder: Path, path: str, before: str, after: str) -> None:
    """Change a file of a built site, and write the list of its files anew."""
    file = folder / path
    text = file.read_text("utf-8")
    assert before in text
    file.write_text(text.replace(before, after), "utf-8")
    write_list(folder, all_files(folder, {}))
