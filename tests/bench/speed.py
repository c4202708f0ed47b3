"""How fast the bench numbers are, against what is promised: `python -m tests.bench.speed`.

Processor time of one process, so that a busy machine does not spoil it. Ends with 1 where a promise is
broken.
"""

from __future__ import annotations

import resource
import sys
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median

from rimbook.bench.answers import Answers
from rimbook.bench.frame_numbers import frame_numbers
from rimbook.bench.interchange import interchange
from rimbook.bench.part_index import index_parts
from rimbook.bench.shelf_compare import compared, curve
from rimbook.bench.shelf_plan import plan
from rimbook.bench.shelf_terms import terms_of
from rimbook.book.load import load_book
from rimbook.book.model import Club, ClubFrame, Shelf
from rimbook.rim.place import place
from tests.bench.big_book import frames, parts

FRAME_MS = 3.0
BOOK_S = 20.0
BOOK_MB = 1000.0
SHELF_S = 1.0


def seconds(work: Callable[[], object], times: int = 1) -> float:
    """The processor time of some work: the median of several times."""
    taken = []
    for _ in range(times):
        start = time.process_time()
        work()
        taken.append(time.process_time() - start)
    return median(taken)


def slowest_frame() -> tuple[str, float]:
    """The frame of the book whose numbers take longest, in ms, with nothing worked out before."""
    book = load_book(Path(__file__).parents[2] / "frames").book
    index = index_parts(book.parts)
    rims = [place(frame) for frame in book.frames.values()]
    taken = {
        rim.frame.slug: 1000 * seconds(lambda rim=rim: frame_numbers(rim, Answers(index)), 11)  # type: ignore[misc]
        for rim in rims
    }
    slug = max(taken, key=lambda name: taken[name])
    return slug, taken[slug]


def shelf_seconds() -> float:
    """The shelf of a club with 60 frames from 400 parts, with what is compared, and nothing known before."""
    catalogue = parts(400)
    club_frames = {frame.slug: frame for frame in frames(60, catalogue)}
    one = Club(
        "club", "Club", tuple(ClubFrame(slug, 3, 20.0) for slug in club_frames), shelf=Shelf(3, 4, 0.95)
    )

    def work() -> None:
        shelf = plan(one, club_frames, Answers(index_parts(catalogue)), terms_of(one))
        compared(shelf, catalogue)
        curve(shelf, catalogue)

    return seconds(work, 3)


def main() -> int:
    slug, frame_ms = slowest_frame()
    shelf_s = shelf_seconds()
    catalogue = parts(2000)
    book = frames(10_000, catalogue)
    holes = sum(len(frame.holes) for frame in book)
    answers: list[int] = []
    book_s = seconds(lambda: answers.append(len(interchange(book, Answers(index_parts(catalogue))).answers)))
    book_mb = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    lines = (
        (f"all bench numbers of a frame, the slowest ({slug})", frame_ms, FRAME_MS, "ms"),
        (
            f"interchange, 10,000 frames × 2,000 parts, {holes:,} holes, {answers[0]:,} needs",
            book_s,
            BOOK_S,
            "s",
        ),
        ("shelf of a club, 60 frames × 400 parts", shelf_s, SHELF_S, "s"),
        ("memory with that book in it", book_mb, BOOK_MB, "MB"),
    )
    for what, taken, most, unit in lines:
        sys.stdout.write(f"{what}: {taken:.1f} {unit} (at most {most:g} {unit})\n")
    return int(any(taken > most for _, taken, most, _ in lines))


if __name__ == "__main__":
    raise SystemExit(main())
