"""Pages that are filled and written all at once, or each when a browser first asks for it."""

from __future__ import annotations

import gc
import os
from collections import deque
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from contextlib import suppress
from dataclasses import replace
from functools import partial
from itertools import chain
from multiprocessing import get_context
from multiprocessing.pool import AsyncResult
from pathlib import Path
from threading import Event, Lock
from typing import Any

from rimbook.hosts.processes import copies_are_safe, settle
from rimbook.hosts.progress import Tell, progress
from rimbook.hosts.shell import Shell
from rimbook.hosts.workshop import WrongBook
from rimbook.site.offline_list import Fingerprint, fingerprint
from rimbook.site.pages import INSIDE, Asset, Page
from rimbook.site.settings import Settings

# As WSGI has it: environment and start of the response in, body out.
App = Callable[..., Iterable[bytes]]

LONGEST_WAIT_SECONDS = 60
ASKED = 40

SHARE = 100
"""So many files are one piece of work: the files of a frame are neighbours and use one reading of it."""

SLOW_SHARE = 4
"""So many files to print are one piece of work: each takes as long as many pages."""

WAITING = 2
"""So many pieces of work lie ready for each copy, so that none waits for more."""

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
        copies = (os.cpu_count() or 1) - 1 if len(shares) > 1 and copies_are_safe() else 0
        written = self._with_copies(shares, copies) if copies else map(self._share, shares)
        found: dict[str, Fingerprint] = {}
        for file, each in progress(chain.from_iterable(written), len(files), "files written", tell):
            self.due.pop(file, None)
            if each:
                found[file] = each
        return found

    def _with_copies(self, shares: Sequence[Sequence[str]], copies: int) -> Iterator[Sequence[Written]]:
        """Share the work with copies of this process, which know already what every file is made from.

        This process takes its own part: in a large book every copy costs as much memory again.
        """
        _WRITER[:] = [self]
        usual = gc.get_threshold()
        settle()
        left, given = deque(shares), deque[AsyncResult[Sequence[Written]]]()
        try:
            with get_context("fork").Pool(copies) as pool:
                while left or given:
                    while left and len(given) < WAITING * copies:
                        given.append(pool.apply_async(_write_share, (left.popleft(),)))
                    if left:
                        yield self._share(left.pop())
                    while given and (given[0].ready() or not left):
                        yield given.popleft().get()
        finally:
            gc.unfreeze()
            gc.set_threshold(*usual)
            _WRITER.clear()

    def _share(self, files: Sequence[str]) -> Sequence[Written]:
        return [(file, self.write(file)) for file in files]

    def write(self, file: str) -> Fingerprint | None:
        """Write one file, if it is still to be written."""
        with self._one_at_a_time:
            if make := self.due.get(file):
                target, data = self.site / file, make()
                try:
                    target.write_bytes(data)
                except FileNotFoundError:
                    target.parent.mkdir(parents=True, exist_ok=True)
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
    return partial(_filled, shells[each.kind], each, settings)


def _filled(shell: Shell, page: Page, settings: Settings) -> bytes:
    """A whole page. What is kept as bytes goes into it as it is: to read it as text first takes longer."""
    edit_url = settings.edit_url(page.edit) if page.edit else None
    text = shell.fill(replace(page, inside=None), edit_url).encode()
    return text.replace(INSIDE.encode(), page.inside(), 1) if page.inside else text


_WRITER: list[OnDemand] = []


def _write_share(files: Sequence[str]) -> Sequence[Written]:
    return _WRITER[0]._share(files)
