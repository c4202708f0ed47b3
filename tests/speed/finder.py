"""How large the finder's index is, and how long a key stroke takes to be answered in a Chromium.

python -m tests.speed.finder [frames]
"""

from __future__ import annotations

import gzip
import os
import random
import shutil
import statistics
import sys
import tempfile
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from rimbook.browser.bundle import script_of
from rimbook.site.finder_index import FinderFrame, FinderPart, FinderPlace, finder_index, glossary_word

FAMILY = 4
"""Frames that share a name but for its number, and most of their parts."""

RUNS = 3
"""How often each key is struck. The best is kept, so that other programs on the machine do not count."""

TYPED = (
    "barrel-27-short",
    "76 holes, shared at 9 and 13",
    "Corack 84",
    "tennis 16x19 bore 3.1",
    "nothing has this name",
    "corakc",
    "u-shaped",
)

_BEGINNINGS = (
    "bar",
    "cor",
    "dal",
    "fen",
    "gor",
    "hal",
    "jun",
    "kel",
    "lor",
    "mir",
    "nas",
    "pel",
    "ros",
    "sil",
    "tor",
)
_MIDDLES = ("", "a", "am", "and", "el", "en", "er", "ia", "il", "in", "lo", "min", "on", "or", "ta")
_ENDINGS = ("ack", "ane", "ard", "ax", "es", "et", "is", "lan", "mo", "na", "ock", "ra", "to", "um")
_SPORTS = {
    "badminton": ((22, 21), (22, 22), (22, 23)),
    "squash": ((16, 19), (14, 18), (12, 19), (16, 17)),
    "tennis": ((16, 19), (18, 20), (16, 18), (16, 20), (18, 19)),
    "racquetball": ((16, 18), (14, 18), (16, 19)),
}


@dataclass(frozen=True, slots=True)
class Book:
    """All that an index is made of."""

    frames: list[FinderFrame]
    parts: list[FinderPart]
    places: list[FinderPlace]


def generated(count: int) -> Book:
    """An invented book of so many frames, the same for the same count."""
    chance = random.Random(count)
    words = [f"{a}{b}{c}" for a in _BEGINNINGS for b in _MIDDLES for c in _ENDINGS]
    chance.shuffle(words)
    makers = [f"{word.title()} {chance.choice(('Works', 'Row', 'Lane', 'Frames'))}" for word in words[:150]]
    single = list(_singles())
    frames: list[FinderFrame] = []
    strips: list[FinderPart] = []
    for family, word in zip(range(-(-count // FAMILY)), words[150:], strict=False):
        name, maker = word.title(), chance.choice(makers)
        sport = chance.choice(list(_SPORTS))
        own = [
            FinderPart(f"{word}-crown", f"{name} crown", "strip", maker),
            FinderPart(f"{word}-side", f"{name} side", "strip", maker),
            FinderPart(f"{word}-set", f"{name} set", "set", maker),
        ]
        strips += own
        numbers = chance.sample(range(40, 120), FAMILY)
        frames += [_frame(chance, f"{name} {each}", maker, sport, own, single, family) for each in numbers]
    bores = sorted({bore for frame in frames for bore in frame.bores})
    return Book(frames[:count], single + strips, list(_places(makers, bores)))


def _frame(
    chance: random.Random,
    name: str,
    maker: str,
    sport: str,
    own: list[FinderPart],
    single: list[FinderPart],
    family: int,
) -> FinderFrame:
    mains, crosses = chance.choice(_SPORTS[sport])
    shared = sorted(chance.sample(range(7, 36), chance.randint(0, 6)))
    start = family * 7 % (len(single) - 20)
    fitted = chance.sample(single[start : start + 20], chance.randint(2, 5))
    return FinderFrame(
        slug=name.lower().replace(" ", "-"),
        name=name,
        maker=maker,
        sport=sport,
        mains=mains,
        crosses=crosses,
        holes=2 * (mains + crosses) - 2 * len(shared) - chance.choice((0, 0, 2, 4)),
        bores=tuple(sorted({f"{chance.randint(18, 36) / 10:g}" for _ in range(chance.randint(1, 3))})),
        shared=tuple(shared),
        parts=tuple(part.id for part in fitted + own[:2]),
        aliases=(f"{name} {chance.choice(('old', 'light', 'club'))}",) if chance.random() < 0.2 else (),
        year=chance.choice((None, *range(2012, 2027))),
    )


def _singles() -> Iterator[FinderPart]:
    for tenths in range(18, 38):
        for length in ("short", "middle", "long", "extra-long"):
            kind = "wide" if tenths > 26 else "single"
            yield FinderPart(
                f"barrel-{tenths}-{length}", f"{length.capitalize()} barrel {tenths / 10:g}", kind
            )
        for pitch in range(60, 76, 2):
            name = f"Even twin {tenths / 10:g}, pitch {pitch / 10:g}"
            yield FinderPart(f"twin-{tenths}-even-{pitch}", name, "even twin")


def _places(makers: list[str], bores: list[str]) -> Iterator[FinderPlace]:
    for maker in sorted(set(makers)):
        yield FinderPlace(
            "maker", maker, f"makers/{maker.lower().replace(' ', '-')}/index.html", (), "66 frames"
        )
    for bore in bores:
        yield FinderPlace("bore", f"Bore {bore} mm", f"bores/{bore}/index.html", (bore,), "1,203 frames")
    for number in range(120):
        title = f"Heading {number} of a written page on how to do one thing well"
        yield FinderPlace("page", title, f"page/index.html#heading-{number}", (), "How to read a map")
    yield glossary_word("Twin", "glossary/index.html#twin", ("U-shaped grommet", "two-post grommet"))
    for number in range(60):
        yield glossary_word(
            f"Word{number}", f"glossary/index.html#word{number}", (f"other{number}", f"more{number}")
        )


def sizes(book: Book) -> dict[str, tuple[int, int]]:
    """Bytes of each file that a look-up loads, plain and as gzip makes them."""
    files = {**finder_index(book.frames, book.parts, book.places), "finder script": script_of("finder")}
    return {name: (len(data), len(gzip.compress(data, 9, mtime=0))) for name, data in files.items()}


def write_site(folder: Path, book: Book) -> Path:
    """A site with nothing but the finder in it; gives its page."""
    for path, data in finder_index(book.frames, book.parts, book.places).items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(data)
    (folder / "finder.js").write_bytes(script_of("finder"))
    page = folder / "index.html"
    page.write_text(
        '<!doctype html><html lang="en"><meta charset="utf-8"><title>Finder</title>'
        "<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; script-src 'self'\">"
        '<script defer src="finder.js"></script><main data-rb-finder data-rb-root=""></main></html>',
        encoding="utf-8",
    )
    return page


def key_strokes(page: Page, address: str) -> list[float]:
    """Type every text of `TYPED` key by key; for each key, ms until its answer is laid out."""
    page.goto(address)
    page.locator("datalist option").first.wait_for(state="attached")
    return [
        time
        for text in TYPED
        for time in page.evaluate(
            """(text) => {
              const box = document.querySelector("input[type=search]");
              const times = [];
              for (let end = 1; end <= text.length; end += 1) {
                const start = performance.now();
                box.value = text.slice(0, end);
                box.dispatchEvent(new Event("input", { bubbles: true }));
                document.body.getBoundingClientRect();
                times.push(performance.now() - start);
              }
              return times;
            }""",
            text,
        )
    ]


def main() -> None:
    """Say it."""
    book = generated(int(sys.argv[1]) if len(sys.argv) > 1 else 10_000)
    measured = sizes(book)
    lines = [
        f"{name:22}{plain / 1000:9.1f} kB{packed / 1000:9.1f} kB gzip"
        for name, (plain, packed) in measured.items()
    ]
    lines.append(f"{'in all':31}   {sum(packed for _, packed in measured.values()) / 1000:9.1f} kB gzip")
    chromium = os.environ.get("RIMBOOK_CHROMIUM") or shutil.which("chromium")
    switches = ["--no-sandbox"] if os.geteuid() == 0 else []
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium, args=switches)
        address = write_site(Path(folder), book).as_uri()
        runs = [key_strokes(browser.new_page(), address) for _ in range(RUNS)]
        browser.close()
    times = [min(run) for run in zip(*runs, strict=True)]
    median, worst = statistics.median(times), max(times)
    lines.append(f"{len(times)} key strokes, best of {RUNS}: median {median:.1f} ms, worst {worst:.1f} ms")
    sys.stdout.write("\n".join([*lines, ""]))


if __name__ == "__main__":
    main()
