"""The same plugin in another host: every file that it makes has the same bytes."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]

# What a host says of itself, and when it built.
_OWN = re.compile(rb'<meta name="generator"[^>]*>|<lastmod>[^<]*</lastmod>')

# Fingerprint and size of a page in which a host says something of itself, and the sum of all sizes.
_PRINT = re.compile(rb'(?<=",)"[\w-]{12}",\d+|"bytes":\d+|(?<=\d),\d+(?=\])')


@pytest.fixture(scope="module")
def other_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo site as the other host builds it from the same configuration."""
    target = tmp_path_factory.mktemp("other") / "site"
    command = [sys.executable, "-m", "properdocs", "build", "--strict"]
    command += ["--config-file", "mkdocs.yml", "--site-dir", str(target)]
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    built = subprocess.run(
        command, cwd=ROOT, env=environment, capture_output=True, text=True, timeout=600, check=False
    )
    if built.returncode:
        pytest.fail(f"The demo site does not build:\n{built.stdout}{built.stderr}")
    return target


def test_both_hosts_write_the_same_files(built_site: Path, other_site: Path) -> None:
    one, other = files_of(built_site), files_of(other_site)
    assert one.keys() == other.keys()
    assert len(one) > 150
    assert [path for path, content in one.items() if content != other[path]] == []


def test_the_hosts_are_two(built_site: Path, other_site: Path) -> None:
    page = Path("frames/plover-76/index.html")
    lines = [
        re.search(rb'name="generator"[^>]*>', (site / page).read_bytes()) for site in (built_site, other_site)
    ]
    assert None not in lines
    assert len({line[0] for line in lines if line}) == 2


def files_of(site: Path) -> dict[str, bytes]:
    found = {
        file.relative_to(site).as_posix(): _OWN.sub(b"", file.read_bytes())
        for file in site.rglob("*")
        if file.is_file() and file.suffix != ".gz"
    }
    return {
        path: _PRINT.sub(b"", content) if path.startswith("offline/list") else content
        for path, content in found.items()
    }
