"""The rules that look at several maps: asked with little in hand, and with everything where one wants it."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import replace
from datetime import date

import pytest

from rimbook.book.load import Loaded, load_book
from rimbook.book.model import Frame
from rimbook.book.rules.rule import Finding, Given, Rule
from rimbook.hosts import across
from rimbook.hosts.across import agrees
from tests.hosts.sample import ROOT

BOOK = load_book(ROOT / "frames")
FRAMES = BOOK.book.frames
TODAY = date(2027, 1, 1)


def no_need() -> Mapping[str, Frame]:
    raise AssertionError("a rule looked inside a frame")


def test_no_rule_of_the_book_looks_inside_a_frame() -> None:
    variants = {slug: ("variant-of",) for slug, frame in FRAMES.items() if frame.variant_of}
    assert variants
    assert agrees(FRAMES, BOOK.parts_files, BOOK.moved, variants, TODAY, no_need)
    renamed = {slug: replace(frame, maker="One Maker", name="One Name") for slug, frame in FRAMES.items()}
    assert not agrees(renamed, BOOK.parts_files, BOOK.moved, variants, TODAY, no_need)


@pytest.mark.parametrize("what", ["holes", "strips", "twins", "drilled"])
def test_a_rule_that_does_is_given_the_frames_as_they_were_read(
    what: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    def check(loaded: Loaded, given: Given) -> Iterator[Finding]:
        for file in loaded.maps.values():
            if sum(1 for _ in getattr(file.frame, what)) == most:
                yield Finding((), "As many as there can be.", file=file.document.file)

    most = max(len(getattr(frame, what)) for frame in FRAMES.values())
    monkeypatch.setattr(across, "RULES", (Rule("most", "book", "error", "", "", check),))
    empty = {slug: replace(frame, holes=(), strips=(), twins=()) for slug, frame in FRAMES.items()}
    assert not agrees(empty, BOOK.parts_files, None, {}, TODAY, lambda: FRAMES)
    assert agrees(empty, BOOK.parts_files, None, {}, TODAY, lambda: empty)
