"""How soon a saved map is seen in the browser while the site is served."""

from __future__ import annotations

import re
import socket
import subprocess
import sys
import time
from pathlib import Path
from urllib.error import URLError
from urllib.request import urlopen

PATIENCE_SECONDS = 300.0


def seconds_until_seen(project: Path, book: Path, slug: str, saves: int = 3) -> list[float]:
    """Serve a project, save one of its maps several times, and time each until the page shows it."""
    port = _free_port()
    command = [sys.executable, "-m", "mkdocs", "serve", "--quiet", "--dev-addr", f"127.0.0.1:{port}"]
    with subprocess.Popen(
        command, cwd=project, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
    ) as server:
        try:
            page = f"http://127.0.0.1:{port}/frames/{slug}/index.html"
            _wait_for(page, "")
            return [
                _one_save(book / "maps" / f"{slug}.yaml", page, f"Saved {index}") for index in range(saves)
            ]
        finally:
            server.terminate()


def _one_save(file: Path, page: str, name: str) -> float:
    text = file.read_text(encoding="utf-8")
    time.sleep(1.0)
    start = time.perf_counter()
    file.write_text(
        re.sub(r"^name: .*$", f"name: {name}", text, count=1, flags=re.MULTILINE), encoding="utf-8"
    )
    _wait_for(page, name)
    return time.perf_counter() - start


def _wait_for(page: str, words: str) -> None:
    end = time.monotonic() + PATIENCE_SECONDS
    while time.monotonic() < end:
        try:
            with urlopen(page, timeout=10) as answer:
                if words in answer.read().decode():
                    return
        except (URLError, OSError):
            pass
        time.sleep(0.02)
    raise TimeoutError(f"{page} never showed {words!r}")


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])
