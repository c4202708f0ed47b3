"""Now and then a word on how far a long piece of work is."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterable, Iterator
from typing import TypeVar

EVERY_SECONDS = 2.0

Tell = Callable[[str], None]
T = TypeVar("T")


def progress(items: Iterable[T], total: int, what: str, tell: Tell) -> Iterator[T]:
    """Hand the items on; while it takes long, tell `500 of 1,000 maps drawn`."""
    last = time.monotonic()
    for count, item in enumerate(items, start=1):
        yield item
        if time.monotonic() - last >= EVERY_SECONDS and count < total:
            last = time.monotonic()
            tell(f"{count:,} of {total:,} {what}")
