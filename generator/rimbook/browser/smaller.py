"""Scripts in fewer bytes: a phone at the bench loads them over a poor network.

The minifier is written in Go, whose runtime hangs in a process that was forked, as a build's are. So this
file is run as a program of its own, once for all scripts.
"""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Mapping


def smaller(scripts: Mapping[str, str]) -> dict[str, bytes]:
    """Each script with short local names and no blanks. Raises CalledProcessError on anything else."""
    done = subprocess.run(  # noqa: S603 - the program is this file
        [sys.executable, __file__], input=json.dumps(dict(scripts)).encode(), capture_output=True, check=True
    )
    return {name: f"{text}\n".encode() for name, text in json.loads(done.stdout).items()}


def _run() -> None:
    import minify

    scripts = json.load(sys.stdin)
    json.dump(
        {name: minify.string("application/javascript", text) for name, text in scripts.items()}, sys.stdout
    )


if __name__ == "__main__":
    _run()
