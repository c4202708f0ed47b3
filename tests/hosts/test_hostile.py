"""Files that mean harm: what lies outside is neither read nor written, and time and memory stay bounded.

Limits are many times what an honest book takes, so that only a runaway fails on a slow machine.
"""

from __future__ import annotations

import os
import time
import tracemalloc
from collections.abc import Callable
from pathlib import Path

import pytest

from rimbook.bench.check import check
from rimbook.book.load import load_book
from rimbook.book.problems import Problem
from rimbook.book.reader import MAX_BYTES, MAX_REPORTED, MAX_VALUES
from rimbook.book.report import Extent, people
from rimbook.book.rules.run import OWN_FAULT_RULE
from rimbook.cli import main
from rimbook.hosts.plain import write_plain
from rimbook.hosts.workshop import WrongBook
from rimbook.site.pages import Asset
from rimbook.site.publish import publish
from rimbook.site.settings import Settings
from tests.book.rules.small_book import MAP, PARTS, changed
from tests.hosts.sample import workshop

WALK = "m1 m2 m3 c1 c2\n  c3 c4 m3+c5 m2 m1"
LONG_WALK = " ".join(("m1 m2 m3 c1 c2", *["."] * 190, "c3 c4 m3+c5 m2 m1"))


@pytest.fixture
def frames(tmp_path: Path) -> Path:
    """A small good book in a folder of its own."""
    folder = tmp_path / "place" / "frames"
    for name, text in (("maps/lapwing-20.yaml", MAP), ("parts/common.yaml", PARTS)):
        (folder / name).parent.mkdir(parents=True)
        (folder / name).write_text(text, "utf-8")
    return folder


def problems(frames: Path) -> tuple[Problem, ...]:
    found = check(load_book(frames))
    assert not [problem for problem in found if problem.rule == OWN_FAULT_RULE]
    return found


def errors(frames: Path) -> list[str]:
    return [problem.message for problem in problems(frames) if problem.severity == "error"]


def seconds(work: Callable[[], object]) -> float:
    """Time of the processor, which other programs do not lengthen."""
    start = time.process_time()
    work()
    return time.process_time() - start


# A slash cannot stand in a name of a file, so that a way out can only be tried by dots, bytes and links.
TRICKY_NAMES = (
    "..", "...", "-", "--help", "con nul", "Plover", "plover_76", "plover--76", "plover-", "a" * 61, "ñandu",
    "plоver", "plover\u202e76", "plover\n76", "%2e%2e%2f", "index", "shell.frame", "page.2", "$(touch x)",
    "`x`", "a;b", "a'b", 'a"b', "<b>", "~root", "C:", ".hidden",
)  # fmt: skip
GOOD_AFTER_ALL = {"index"}


@pytest.mark.parametrize("name", TRICKY_NAMES)
def test_a_name_that_is_no_plain_address_is_refused(frames: Path, name: str) -> None:
    (frames / "maps" / f"{name}.yaml").write_text(
        changed(MAP, ("name: Lapwing 20", "name: Other 20")), "utf-8"
    )
    told = errors(frames)
    if name in GOOD_AFTER_ALL:
        assert told == []
    else:
        assert len(told) == 1
        assert "cannot be an address of a page" in told[0]
        assert told[0].isprintable()


@pytest.mark.parametrize("slug", ["../../x", "/etc/passwd", "..", "a/b", "a\\b", "a.b", "a%2fb", "а"])
@pytest.mark.parametrize("key", ["variant_of", "measured", "fitted"])
def test_a_way_out_in_a_map_is_no_name(frames: Path, key: str, slug: str) -> None:
    swap = {
        "variant_of": ("year: 2024", f"variant_of: '{slug}'"),
        "measured": ("by: a-handle", f"by: '{slug}'"),
        "fitted": ("default: barrel-21", f"default: '{slug}'"),
    }[key]
    (frames / "maps" / "lapwing-20.yaml").write_text(changed(MAP, swap), "utf-8")
    assert errors(frames)


@pytest.mark.parametrize(
    "line",
    [
        "!include ../../secret.yaml",
        "!!python/object/apply:os.system [touch x]",
        "&a [*a, *a]",
        "<<: ../x",
        "*x",
    ],
)
def test_nothing_is_included_and_nothing_runs(
    frames: Path, line: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(frames)
    (frames / "maps" / "lapwing-20.yaml").write_text(changed(MAP, ("year: 2024", f"note: {line}")), "utf-8")
    assert errors(frames)
    assert not list(frames.rglob("x"))


@pytest.mark.parametrize("where", ["maps", "parts", "clubs", "maps/deep"])
def test_what_lies_behind_a_linked_folder_is_not_read(frames: Path, tmp_path: Path, where: str) -> None:
    secret = tmp_path / "secret"
    secret.mkdir()
    (secret / "word.yaml").write_text("password: 1234", "utf-8")
    target = frames / where
    if target.exists():
        target.rename(tmp_path / "aside")
    target.symlink_to(secret)
    told = [problem for problem in problems(frames) if "link to another place" in problem.message]
    assert [problem.file for problem in told] == [f"frames/{where}"]
    assert "1234" not in people(problems(frames), Extent(0, 0))
    assert "password" not in people(problems(frames), Extent(0, 0))


@pytest.mark.parametrize("name", ["maps/a.yaml", "parts/a.yaml", "clubs/a.yaml", "moved.yaml"])
@pytest.mark.parametrize("target", ["secret.yaml", "nowhere.yaml", "a.yaml"])
def test_a_linked_file_is_refused_wherever_it_leads(
    frames: Path, tmp_path: Path, name: str, target: str
) -> None:
    (tmp_path / "secret.yaml").write_text("password: 1234", "utf-8")
    (frames / name).parent.mkdir(exist_ok=True)
    (frames / name).symlink_to(name.rpartition("/")[2] if target == "a.yaml" else tmp_path / target)
    assert "This is not a plain file." in errors(frames)


def test_a_pipe_does_not_hold_the_check_up(frames: Path) -> None:
    os.mkfifo(frames / "maps" / "pipe.yaml")
    assert errors(frames) == ["This is not a plain file."]


@pytest.mark.parametrize(
    "source",
    [
        MAP.encode("utf-16"),
        MAP.encode("utf-32"),
        MAP.replace("Lapwing 20", "Lapwing é").encode("latin-1"),
        MAP.encode().replace(b"Lapwing", b"\xed\xa0\x80"),
        MAP.encode().replace(b"Lapwing", b"\xc0\xaf"),
        MAP.encode() + b"\x00",
        b"\x1f\x8b" + os.urandom(64),
    ],
    ids=["utf-16", "utf-32", "latin-1", "surrogate", "overlong", "nul", "gzip"],
)
def test_what_is_not_utf_8_is_refused_with_a_place(frames: Path, source: bytes) -> None:
    (frames / "maps" / "lapwing-20.yaml").write_bytes(source)
    (first, *_) = [problem for problem in problems(frames) if problem.file.endswith("lapwing-20.yaml")]
    assert first.rule == "readable"
    assert first.line >= 1


BOMBS = {
    "letters": "note: " + "a" * 10_000_000,
    "depth": "note: " + "[" * 200_000,
    "keys": "\n".join(f"k{n}: 1" for n in range(MAX_VALUES)),
    "lines": "\n" * (MAX_BYTES - 1),
    "walk": changed(MAP, (WALK, "m1 " * 90_000)),
    "bad-walk": changed(MAP, (WALK, "q " * 1_990)),
    "selectors": changed(MAP, (WALK, LONG_WALK), ("2.7: [8]", f"2.7: [{', '.join(['1-200'] * 15_000)}]")),
    "bores": changed(
        MAP, (WALK, LONG_WALK), ("2.7: [8]", ", ".join(f"2.7{n:05d}: [1-200]" for n in range(4_000)))
    ),
    "fitted": changed(
        MAP, ("  9-10: twin-21\n", "".join(f'  "bore 2.{n:05d}": barrel-21\n' for n in range(9_000)))
    ),
    "strips": changed(
        MAP, ("tension", "  - {name: a, holes: [1, 10], part: lapwing-crown}\n" * 39 + "tension")
    ),
    "aliases": changed(MAP, ("year: 2024", f"aliases: [{', '.join(['LAPWING 2O'] * 20)}]")),
    "spaces": MAP + " " * 200_000,
    "quotes": "name: " + '"' * 100_000,
    "aliased": "a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n",
}


@pytest.mark.parametrize("bomb", BOMBS.values(), ids=BOMBS)
def test_repetition_costs_little_time_and_memory(frames: Path, bomb: str) -> None:
    (frames / "maps" / "lapwing-20.yaml").write_text(bomb, "utf-8")
    tracemalloc.start()
    try:
        spent = seconds(lambda: problems(frames))
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert spent < 20
    assert most < 150_000_000


POINTS = "outline: points, points_mm: [[0, 9], [5, 5], [5, -5], [0, -9], [-5, -5], [-5, 5]]"
ELLIPSE = "outline: ellipse, inside_mm: [186, 244]"
DEGENERATE = {
    "one-place": ("stringing:", f"places_mm: [{', '.join(['150'] * 10)}]\nstringing:"),
    "nowhere": ("stringing:", f"places_mm: [{', '.join(['0.001'] * 10)}]\nstringing:"),
    "beyond": ("stringing:", f"places_mm: [{', '.join(['999'] * 10)}]\nstringing:"),
    "backwards": (
        "stringing:",
        f"places_mm: [{', '.join(str(300 - 30 * n) for n in range(10))}]\nstringing:",
    ),
    "crossing-walk": (WALK, "c5 m3 m1 c1 m2 m2 c3 m3+c2 m1 c4"),
    "all-in-one": (WALK, "m1+m2 m3+c1 c2+c3 c4+c5 m3+m2 m1"),
    "no-string": (WALK, ". . . ."),
    "no-hole": (WALK, "x x x x"),
    "one-hole": (WALK, "m1"),
    "thin": (ELLIPSE, "outline: ellipse, inside_mm: [0.001, 1000]"),
    "tiny": (ELLIPSE, "outline: ellipse, inside_mm: [0.0001, 0.0001]"),
    "pointed": (ELLIPSE, "outline: teardrop, inside_mm: [0.001, 1000], taper: 1"),
    "points": (ELLIPSE, POINTS),
    "same-points": (ELLIPSE, f"outline: points, points_mm: [{', '.join(['[1, 1]'] * 6)}]"),
    "line": (ELLIPSE, f"outline: points, points_mm: [{', '.join(f'[{n}, {n}]' for n in range(6))}]"),
    "eight": (ELLIPSE, "outline: points, points_mm: [[-5, 9], [5, 9], [-5, -9], [5, -9], [-5, 9], [5, 9]]"),
    "there-and-back": (
        ELLIPSE,
        "outline: points, points_mm: [[0, 1], [1, 0], [0, 1], [1, 0], [0, 1], [1, 0]]",
    ),
    "one-side": (ELLIPSE, "outline: points, points_mm: [[0, 0], [9, 1], [9, 2], [0, 0.001], [9, 3], [9, 4]]"),
}


@pytest.mark.parametrize("swap", DEGENERATE.values(), ids=DEGENERATE)
def test_geometry_that_cannot_be_is_a_problem_or_a_drawing_and_no_fault(
    frames: Path, tmp_path: Path, swap: tuple[str, str]
) -> None:
    (frames / "maps" / "lapwing-20.yaml").write_text(changed(MAP, swap), "utf-8")
    told = errors(frames)
    shop, _ = workshop(tmp_path, frames)
    if told:
        with pytest.raises(WrongBook) as wrong:
            shop.source()
        assert OWN_FAULT_RULE not in str(wrong.value)
    else:
        (data,) = [
            each.data
            for each in publish(shop.source(), Settings())
            if isinstance(each, Asset) and each.file == "data/frames/lapwing-20.json"
        ]
        assert b"NaN" not in data
        assert b"Infinity" not in data


PROBLEMS = {
    "shape": "format: 1\nparts:\n" + "".join(f"  b{n}: 1\n" for n in range(5_000)),
    "rules": "format: 1\nparts:\n"
    + "".join(f"  b{n}: {{name: A, kind: set, bore_mm: 1}}\n" for n in range(2_000)),
    "reading": "format: 1\n" * 5_000,
}


@pytest.mark.parametrize("wrong", PROBLEMS.values(), ids=PROBLEMS)
def test_thousands_of_problems_in_one_file_are_told_in_bounded_time(frames: Path, wrong: str) -> None:
    (frames / "parts" / "wrong.yaml").write_text(wrong, "utf-8")
    found: list[Problem] = []
    assert seconds(lambda: found.extend(problems(frames))) < 60
    assert len(found) >= MAX_REPORTED
    assert len(people(found, Extent(1, 1))) < 3_000_000


def test_a_thousand_files_with_problems_are_all_told(
    frames: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    kinds = ("name: [", changed(MAP, ("mains: 6", "mains: 5")), changed(MAP, (WALK, "q " * 500)), "\x00", "")
    for n in range(1_000):
        (frames / "maps" / f"wrong-{n}.yaml").write_text(kinds[n % len(kinds)], "utf-8")
    tracemalloc.start()
    try:
        assert seconds(lambda: main(["check", str(frames)])) < 120
        _, most = tracemalloc.get_traced_memory()
    finally:
        tracemalloc.stop()
    assert most < 600_000_000
    told = capsys.readouterr().out
    assert all(f"wrong-{n}.yaml:" in told for n in range(1_000))
    assert "Traceback" not in told


def tree(folder: Path) -> dict[str, bytes | None]:
    """Everything below a folder, with what is in it."""
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() if path.is_file() else None
        for path in sorted(folder.rglob("*"))
    }


def test_nothing_is_written_outside_the_output(
    frames: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Names, makers, aliases and notes try to lead out; the cache is the only other place."""
    monkeypatch.chdir(tmp_path)
    word = "'../../../out/of/here'"
    hostile = changed(
        MAP,
        ("name: Lapwing 20", f"name: {word}"),
        ("maker: Saltmarsh Works", f"maker: {word}"),
        ("year: 2024", f"aliases: [{word}]\nnote: {word}"),
    ).replace("crown strip", "../../../strip")
    (frames / "maps" / "lapwing-20.yaml").write_text(hostile, "utf-8")
    (frames / "moved.yaml").write_text("format: 1\nframes: {lapwing-old: lapwing-20}\n", "utf-8")
    assert errors(frames) == []
    before = tree(tmp_path)
    shop, _ = workshop(tmp_path, frames)
    write_plain(publish(shop.source(), Settings()), tmp_path / "a" / "site")
    after = {path: data for path, data in tree(tmp_path).items() if not path.startswith(("a/site", "cache"))}
    after.pop("a")
    assert after == before
    assert (tmp_path / "a" / "site" / "frames" / "lapwing-old" / "index.html").is_file()
