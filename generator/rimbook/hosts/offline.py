"""The worker that keeps a site for offline use, and what it keeps: told when all pages are written."""

from __future__ import annotations

import os
from collections.abc import Mapping
from functools import partial
from pathlib import Path

from rimbook.browser.bundle import script_of
from rimbook.site.offline_list import WORKER_FILE, Fingerprint, fingerprint, offline_files
from rimbook.site.pages import Asset


def worker_meta(root: str) -> str:
    """What tells a page that its site has a worker, and where. `root` is the way to the top of the site."""
    return f'<meta name="rimbook-worker" content="{root}{WORKER_FILE}">'


def worker() -> Asset:
    """The worker, as a file of a built site."""
    return Asset(WORKER_FILE, partial(script_of, "offline_worker"))


def write_list(site: Path, found: Mapping[str, Fingerprint]) -> None:
    """Write the list of what the worker keeps: `found`, the files of the site by path."""
    for path, content in offline_files(found):
        _write(site / path, content)


def write_farewell(site: Path) -> None:
    """Write a worker that only removes itself and what an earlier one kept: while a site is being changed."""
    _write(site / WORKER_FILE, script_of("offline_farewell"))


def all_files(site: Path, known: Mapping[str, Fingerprint]) -> dict[str, Fingerprint]:
    """Every file of a built site by path. Only those are read that are not yet known."""
    found: dict[str, Fingerprint] = {}
    for folder, _, names in os.walk(site):
        inside = Path(folder).relative_to(site).as_posix()
        for name in names:
            path = name if inside == "." else f"{inside}/{name}"
            found[path] = known.get(path) or fingerprint((site / path).read_bytes())
    return found


def _write(file: Path, content: bytes) -> None:
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_bytes(content)
