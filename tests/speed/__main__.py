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
from tests.speed.measure import Cost, run
from tests.speed.plain import write_plain_site
from tests.speed.served import seconds_until_seen

ROOT = Path(__file__).parents[2]
SIZES = (100, 1_000, 5_000, 10_000)
PLAIN_SIZE = 300
SERVED_SIZE = 1_000


def main() -> None:
    """Print one line a measurement."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("frames", nargs="*", type=int, default=SIZES, help="sizes of the generated books")
    sizes = asked.parse_args().frames
    with tempfile.TemporaryDirectory(prefix="rimbook-speed-") as name:
        folder = Path(name)
        plain = _plain(folder)
        per_frame = {size: _book(folder / str(size), size, plain) for size in sizes}
        if 1_000 in per_frame and max(sizes) > 1_000:
            growth = per_frame[max(sizes)] / per_frame[1_000]
            _say(f"cost of a frame at {max(sizes):,} against 1,000", f"{growth:.2f} times")
        _say_served(folder)


def _plain(folder: Path) -> float:
    book = write_book(folder / "yardstick", PLAIN_SIZE)
    write_plain_site(folder / "plain", book)
    cost = _build(folder / "plain")
    each = 1000 * cost.seconds / PLAIN_SIZE
    _say(f"plain Markdown, {PLAIN_SIZE} frames", _each(cost, PLAIN_SIZE))
    return each


def _book(folder: Path, size: int, plain: float) -> float:
    book = write_book(folder, size)
    _project(folder)
    cold = _build(folder)
    each = 1000 * cold.seconds / size
    _say(f"cold, {size:,} frames", f"{_each(cold, size)}, {each / plain:.2f} of plain Markdown")
    warm = _build(folder)
    _say(f"warm, {size:,} frames", f"{_each(warm, size)}, {warm.seconds / cold.seconds:.2f} of cold")
    edited = book / "maps" / "plover-76.yaml"
    edited.write_text(edited.read_text(encoding="utf-8") + "\n# edited\n", encoding="utf-8")
    once = _build(folder)
    _say(
        f"one map edited, {size:,} frames", f"{_each(once, size)}, {once.seconds / cold.seconds:.2f} of cold"
    )
    page = (folder / "site" / "frames" / "plover-76" / "index.html").read_bytes()
    _say("a frame page, compressed", f"{len(gzip.compress(page)) / 1024:.1f} KB")
    shutil.rmtree(folder)
    return each


def _say_served(folder: Path) -> None:
    served = folder / "served"
    book = write_book(served, SERVED_SIZE)
    _project(served)
    _build(served)
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


def _build(folder: Path) -> Cost:
    return run([sys.executable, "-m", "mkdocs", "build", "--quiet"], folder)


def _each(cost: Cost, size: int) -> str:
    return (
        f"{cost.seconds:.1f} s, {1000 * cost.seconds / size:.2f} ms a frame "
        f"({1000 * cost.cpu_seconds / size:.2f} ms of processor), {cost.megabytes:.0f} MB"
    )


def _say(what: str, value: str) -> None:
    print(f"{what:<48} {value}", flush=True)


if __name__ == "__main__":
    main()
