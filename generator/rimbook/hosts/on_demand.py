"""Pages that are filled and written all at once, or each when a browser first asks for it."""

from __future__ import annotations

import os
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from itertools import chain
from multiprocessing import get_context
from pathlib import Path
from threading import Event, Lock
from typing import Any

from rimbook.hosts.processes import copies_are_safe
from rimbook.hosts.progress import Tell, progress
from rimbook.hosts.shell import Shell
from rimbook.hosts.workshop import WrongBook
from rimbook.site.offline_list import Fingerprint, fingerprint
from rimbook.site.pages import Asset, Page
from rimbook.site.settings import Settings

# As WSGI has it: environment and start of the response in, body out.
App = Callable[..., Iterable[bytes]]

LONGEST_WAIT_SECONDS = 60
ASKED = 40

SHARE = 250
"""So many files are one piece of work: the files of a frame are neighbours and use one reading of it."""

SLOW_SHARE = 4
"""So many files to print are one piece of work: each takes as long as many pages."""


Written = tuple[str, Fingerprint | None]
"""The path of a file, and its fingerprint where it was written now."""


class OnDemand:
    """What is still to be written, by the path of its file; closed while it changes."""

    def __init__(self) -> None:
        self.due: dict[str, Callable[[], bytes]] = {}
        self.asked: dict[str, None] = {}
        self.site = Path()
        self._one_at_a_time = Lock()
        self._ready = Event()
        self._ready.set()

    def close(self) -> None:
        """Let everybody who asks wait."""
        self._ready.clear()

    def open(self) -> None:
        """Answer again."""
        self._ready.set()

    def offer(
        self, made: Iterable[Page | Asset], shells: Mapping[str, Shell], settings: Settings, site: Path
    ) -> list[Page]:
        """Take over pages and files in place of all before. Gives the pages.

        What was asked for last is written at once: a browser that shows it will ask again.
        """
        with self._one_at_a_time:
            self.site = site
            everything = list(made)
            self.due = {each.file: _content(each, shells, settings) for each in everything}
        for file in list(self.asked):
            self._write_kindly(file)
        return [each for each in everything if isinstance(each, Page)]

    def write_all(self, tell: Tell) -> dict[str, Fingerprint]:
        """Write everything now, and give what was written.

        Raises WrongBook where a map was changed since and is wrong.
        """
        files = list(self.due)
        # The longest work comes first, in small pieces.
        slow = [file for file in files if file.endswith(".pdf")]
        quick = [file for file in files if not file.endswith(".pdf")]
        shares = [slow[start : start + SLOW_SHARE] for start in range(0, len(slow), SLOW_SHARE)]
        shares += [quick[start : start + SHARE] for start in range(0, len(quick), SHARE)]
        written = (
            self._by_copies(shares) if len(shares) > 1 and copies_are_safe() else map(self._share, shares)
        )
        found: dict[str, Fingerprint] = {}
        for file, each in progress(chain.from_iterable(written), len(files), "files written", tell):
            self.due.pop(file, None)
            if each:
                found[file] = each
        return found

    def _by_copies(self, shares: Sequence[Sequence[str]]) -> Iterator[Sequence[Written]]:
        """Spread shares over copies of this process, which know already what every file is made from."""
        _WRITER[:] = [self]
        try:
            with get_context("fork").Pool(os.cpu_count()) as pool:
                yield from pool.imap_unordered(_write_share, shares)
        finally:
            _WRITER.clear()

    def _share(self, files: Sequence[str]) -> Sequence[Written]:
        return [(file, self.write(file)) for file in files]

    def write(self, file: str) -> Fingerprint | None:
        """Write one file, if it is still to be written."""
        with self._one_at_a_time:
            if make := self.due.get(file):
                target = self.site / file
                target.parent.mkdir(parents=True, exist_ok=True)
                data = make()
                target.write_bytes(data)
                del self.due[file]
                return fingerprint(data)
        return None

    def before(self, app: App, mount: str) -> App:
        """An application that writes what is asked for, and lets another answer."""

        def answer(environ: dict[str, Any], start_response: Any) -> Iterable[bytes]:
            self._ready.wait(LONGEST_WAIT_SECONDS)
            path = environ["PATH_INFO"].encode("latin-1").decode("utf-8", "replace")
            if path.startswith(mount):
                file = path.removeprefix(mount)
                self._note(f"{file}index.html" if not file or file.endswith("/") else file)
            return app(environ, start_response)

        return answer

    def _note(self, file: str) -> None:
        """Write what is asked for, and remember it: the host may first finish a build, and then look."""
        self.asked.pop(file, None)
        self.asked[file] = None
        while len(self.asked) > ASKED:
            self.asked.pop(next(iter(self.asked)), None)
        self._write_kindly(file)

    def _write_kindly(self, file: str) -> None:
        with suppress(WrongBook):  # the map is wrong by now: the build that follows will say so
            self.write(file)


def _content(each: Page | Asset, shells: Mapping[str, Shell], settings: Settings) -> Callable[[], bytes]:
    if isinstance(each, Asset):
        return each.make
    shell = shells[each.kind]
    edit_url = settings.edit_url(each.edit) if each.edit else None
    return lambda: shell.fill(each, edit_url).encode()


_WRITER: list[OnDemand] = []


def _write_share(files: Sequence[str]) -> Sequence[Written]:
    return _WRITER[0]._share(files)
