"""Run a build and say what it cost: seconds, or the most memory that all its processes held at once."""

from __future__ import annotations

import os
import subprocess
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import NamedTuple


class Cost(NamedTuple):
    """Wall-clock seconds, and seconds of processor time."""

    seconds: float
    cpu_seconds: float


def run(command: Sequence[str], folder: Path) -> Cost:
    """Run a command to its end, unwatched. Raises CalledProcessError where it fails."""
    before = os.times()
    start = time.perf_counter()
    subprocess.run(command, cwd=folder, check=True, stdout=subprocess.DEVNULL)
    seconds = time.perf_counter() - start
    after = os.times()
    cpu = after.children_user + after.children_system - before.children_user - before.children_system
    return Cost(seconds, cpu)


def most_megabytes(command: Sequence[str], folder: Path) -> float:
    """Run a command to its end and watch its memory. Raises CalledProcessError where it fails.

    A run of its own, since to watch takes time from what is watched.
    """
    most = 0.0
    with subprocess.Popen(command, cwd=folder, stdout=subprocess.DEVNULL) as process:
        while process.poll() is None:
            most = max(most, sum(map(_proportional_kilobytes, _family(process.pid))) / 1024)
            time.sleep(0.1)
    if process.returncode:
        raise subprocess.CalledProcessError(process.returncode, command)
    return most


def _family(root: int) -> Iterator[int]:
    """A process and all that it started. Linux only."""
    yield root
    try:
        children = Path(f"/proc/{root}/task/{root}/children").read_text(encoding="ascii").split()
    except OSError:
        return
    for child in children:
        yield from _family(int(child))


def _proportional_kilobytes(process: int) -> int:
    """What a process holds, with shared pages counted once over all that share them."""
    try:
        text = Path(f"/proc/{process}/smaps_rollup").read_text(encoding="ascii")
    except OSError:
        return 0
    return next((int(line.split()[1]) for line in text.splitlines() if line.startswith("Pss:")), 0)
