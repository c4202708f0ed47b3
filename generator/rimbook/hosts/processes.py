"""How a host starts processes beside its own."""

from __future__ import annotations

import gc
import sys
from pathlib import Path

SELDOM = (50_000, 20, 100)
"""So many new objects there are before the collector looks: usual are 700, and making a page brings thousands
that are all gone by its end."""


def copies_are_safe() -> bool:
    """Whether a process may be copied as it stands, with all that it holds: on Linux, and without threads.

    Those that a library has started count as well, as a typesetter does: what such a thread holds locked
    would stay locked in the copy for ever.
    """
    return sys.platform == "linux" and sum(1 for _ in Path("/proc/self/task").iterdir()) == 1


def start_method() -> str:
    """`fork` where that is safe, since a fresh process first reads all modules, else `spawn`."""
    return "fork" if copies_are_safe() else "spawn"


def settle() -> None:
    """From now on nobody looks for garbage in what is loaded, and seldom in what is new.

    To look through the same again and again takes a tenth of the time of a build; and a copy that never looks
    through what it shares leaves it shared.
    """
    gc.freeze()
    gc.set_threshold(*SELDOM)
