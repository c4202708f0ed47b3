"""Measure the build on generated books: `python -m tests.speed [frames …]`.

Machines differ and are noisy, so every number stands beside a yardstick of the
same run: the same pages as plain Markdown through the same theme.
"""

from __future__ import annotations

import argparse
import gzip
import shutil
import sys
import tempfile
from pathlib import Path

from tests.speed.generated import write_book
from tests.speed.measure import Cost, most_megabytes, run
from tests.speed.plain import write_plain_site
from tests.speed.served import seconds_until_seen

ROOT = Path(__file__).parents[2]
SIZES = (100, 1_000, 5_000, 10_000)
PLAIN_SIZE = 300
SERVED_SIZE = 1_000
BUILD = (sys.executable, "-m", "mkdocs", "build", "--quiet")


def main() -> None:
    """Print one line a measurement."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("frames", nargs="*", type=int, default=SIZES, help="sizes of the generated books")
    sizes = asked.parse_args().frames
    with tempfile.TemporaryDirectory(prefix="rimbook-speed-") as name:
        folder = Path(name)
        # Whatever deletes files comes last: for minutes after, some file systems are slow to make new ones.
        plain = _plain(folder)
        books = {size: write_book(folder / str(size), size) for size in sizes}
        cold = {size: _cold(folder / str(size), size, plain) for size in sizes}
        if 1_000 in cold and max(sizes) > 1_000:
            growth = cold[max(sizes)].seconds / max(sizes) / (cold[1_000].seconds / 1_000)
            _say(f"cost of a frame at {max(sizes):,} against 1,000", f"{growth:.2f} times")
        for size, book in books.items():
            _again(folder / str(size), book, size, cold[size].seconds)
        _say_served(folder)


def _plain(folder: Path) -> float:
    """Milliseconds a page."""
    book = write_book(folder / "yardstick", PLAIN_SIZE)
    write_plain_site(folder / "plain", book)
    cost = run(BUILD, folder / "plain")
    _say(f"plain Markdown, {PLAIN_SIZE} frames", _each(cost, PLAIN_SIZE))
    return 1000 * cost.seconds / PLAIN_SIZE


def _cold(folder: Path, size: int, plain: float) -> Cost:
    _project(folder)
    cost = run(BUILD, folder)
    share = 1000 * cost.seconds / size / plain
    _say(f"cold, {size:,} frames", f"{_each(cost, size)}, {share:.2f} of plain Markdown")
    page = (folder / "site" / "frames" / "plover-76" / "index.html").read_bytes()
    _say("a frame page, compressed", f"{len(gzip.compress(page)) / 1024:.1f} KB")
    return cost


def _again(folder: Path, book: Path, size: int, cold_seconds: float) -> None:
    edited = book / "maps" / "plover-76.yaml"
    for what, more in (("warm", ""), ("one map edited", "\n# edited\n")):
        edited.write_text(edited.read_text(encoding="utf-8") + more, encoding="utf-8")
        cost = run(BUILD, folder)
        _say(f"{what}, {size:,} frames", f"{_each(cost, size)}, {cost.seconds / cold_seconds:.2f} of cold")
    for made in ("site", ".cache"):
        shutil.rmtree(folder / made)
    _say(f"memory, cold, {size:,} frames", f"{most_megabytes(BUILD, folder):.0f} MB")
    shutil.rmtree(folder)


def _say_served(folder: Path) -> None:
    served = folder / "served"
    book = write_book(served, SERVED_SIZE)
    _project(served)
    run(BUILD, served)
    times = seconds_until_seen(served, book, "plover-76")
    _say(
        f"served, a save until it is seen, {SERVED_SIZE:,} frames", ", ".join(f"{one:.2f} s" for one in times)
    )


def _project(folder: Path) -> None:
    """The project's own configuration and written pages around another book."""
    for name in ("site_src", "generator"):
        (folder / name).symlink_to(ROOT / name)
    # Files to print are a measure of their own: a cold one takes as long as ten pages of frames.
    config = (ROOT / "mkdocs.yml").read_text("utf-8").replace("prints: true", "prints: false")
    (folder / "mkdocs.yml").write_text(config, encoding="utf-8")


def _each(cost: Cost, size: int) -> str:
    return (
        f"{cost.seconds:.1f} s, {1000 * cost.seconds / size:.2f} ms a frame "
        f"({1000 * cost.cpu_seconds / size:.2f} ms of processor)"
    )


def _say(what: str, value: str) -> None:
    print(f"{what:<48} {value}", flush=True)


if __name__ == "__main__":
    main()
