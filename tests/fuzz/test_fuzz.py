"""Whatever stands in a file of the book, the answer is a list of problems, in bounded time."""

from __future__ import annotations

import time

from rimbook.book.reader import MAX_BYTES
from tests.fuzz.judge import fault_of, judged, sources

SECONDS = 15
LEAST = 40
"""So many files are always judged, however slow the machine is."""


def test_no_mutated_file_makes_the_program_stumble() -> None:
    end = time.monotonic() + SECONDS
    seed = 0
    while seed < LEAST or time.monotonic() < end:
        fault = judged(seed)
        assert fault is None, f"seed {seed}, {fault.file}: {fault.words}"
        seed += 1


def test_the_files_themselves_are_no_fault() -> None:
    assert [file for file, source in sources() if fault_of(file, source)] == []


def test_a_fault_would_be_seen() -> None:
    assert fault_of("maps/plover-76.yaml/..", b"format: 1") is None
    assert "Traceback" in (fault_of("maps/plover-76.yaml", 7) or "")  # type: ignore[arg-type]


def test_the_same_seed_gives_the_same_file() -> None:
    from random import Random

    from tests.fuzz.mutate import mutated

    source = sources()[0][1]
    assert [mutated(source, Random(seed)) for seed in range(20)] == [
        mutated(source, Random(seed)) for seed in range(20)
    ]
    assert len({mutated(source, Random(seed)) for seed in range(20)}) == 20
    assert max(len(mutated(source, Random(seed))) for seed in range(300)) > MAX_BYTES
