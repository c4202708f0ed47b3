"""How a host starts processes beside its own."""

from __future__ import annotations

import sys
import threading


def copies_are_safe() -> bool:
    """Whether a process may be copied as it stands, with all that it holds: on Linux, and without threads."""
    return sys.platform == "linux" and threading.active_count() == 1


def start_method() -> str:
    """`fork` where that is safe, since a fresh process first reads all modules, else `spawn`."""
    return "fork" if copies_are_safe() else "spawn"
