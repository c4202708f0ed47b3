"""When a process may be copied as it stands."""

from __future__ import annotations

import subprocess
import sys

import pytest

LINUX = pytest.mark.skipif(sys.platform != "linux", reason="copies are made on Linux alone")

ALONE = "from rimbook.hosts.processes import copies_are_safe, start_method\n"
TYPESETTER = "from rimbook.draw.typeset import document, typeset\ntypeset(document('A', '= A'))\n"
SLEEPER = "import _thread, time\n_thread.start_new_thread(time.sleep, (60,))\n"


def told(program: str) -> str:
    """What a fresh process says that went through a program."""
    asked = f"{ALONE}{program}print(copies_are_safe(), start_method())"
    done = subprocess.run(
        [sys.executable, "-c", asked], capture_output=True, text=True, check=True, timeout=60
    )
    return done.stdout.strip()


@LINUX
def test_a_process_without_threads_may_be_copied() -> None:
    assert told("") == "True fork"


@LINUX
@pytest.mark.parametrize("program", [SLEEPER, TYPESETTER], ids=["a thread nobody counts", "a typesetter"])
def test_threads_of_a_library_forbid_it(program: str) -> None:
    assert told(program) == "False spawn"
