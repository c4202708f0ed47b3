"""What makes a saved map visible sooner while the site is served."""

from __future__ import annotations

from contextlib import suppress
from types import CodeType

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.livereload import LiveReloadServer

SHORTEST_SECONDS = 0.1
LONGEST_SECONDS = 0.5
MAPS_A_SECOND = 5_000
"""So many maps can be looked at in a second while leaving a processor mostly idle."""


def look_more_often(server: LiveReloadServer, config: MkDocsConfig, maps: int) -> None:
    """Let the host look for saved files as often as the size of the book allows.

    It looks every half second by itself. What it watches already goes over to the new observer.
    """
    before = []
    for path in (config.docs_dir, config.config_file_path, *config.theme.dirs):
        with suppress(KeyError):  # it was never watched
            server.unwatch(path)
            before.append(path)
    seconds = min(LONGEST_SECONDS, max(SHORTEST_SECONDS, maps / MAPS_A_SECOND))
    server.observer = type(server.observer)(timeout=seconds)
    for path in before:
        server.watch(path)


class Compiled(BytecodeCache):
    """The theme's templates, compiled once for all builds of a process: a host compiles them for each."""

    def __init__(self) -> None:
        self.held: dict[str, tuple[str, CodeType]] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        checksum, code = self.held.get(bucket.key, ("", None))
        if checksum == bucket.checksum:
            bucket.code = code

    def dump_bytecode(self, bucket: Bucket) -> None:
        if bucket.code is not None:
            self.held[bucket.key] = (bucket.checksum, bucket.code)
