"""What was worked out once and is kept."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

K = TypeVar("K")
V = TypeVar("V")


class Kept(dict[K, V]):
    """A dictionary that works a value out when its key is first asked for."""

    def __init__(self, work: Callable[[K], V]) -> None:
        super().__init__()
        self._work = work

    def __missing__(self, key: K) -> V:
        value = self[key] = self._work(key)
        return value
