"""What the holes ask survives being kept on disk: interchange says the same of a book that was read back."""

from __future__ import annotations

from pathlib import Path

from rimbook.bench.needs import HoleNeed, PieceNeed
from rimbook.hosts.workshop import Workshop
from tests.hosts.sample import book, site_of


def test_needs_come_back_as_what_they_were(tmp_path: Path) -> None:
    frames, cache = book(tmp_path), tmp_path / "cache"
    first = Workshop(frames, cache, lambda words: None)
    made = {frame.slug: frame.asked for frame in first.source().summaries}
    again = Workshop(frames, cache, lambda words: None)
    for frame in again.source().summaries:
        assert frame.asked == made[frame.slug]
        for asked in frame.asked:
            assert type(asked.need) in (HoleNeed, PieceNeed)
            holes = asked.need.holes if isinstance(asked.need, PieceNeed) else (asked.need,)
            assert all(type(hole) is HoleNeed for hole in holes)
    assert any(isinstance(asked.need, PieceNeed) for asked in made["plover-76"])
    page = "interchange/index.html"
    assert site_of(again)[page] == site_of(first)[page]
