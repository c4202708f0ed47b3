"""Books for the tests of the site: the demo book, and a small one made by hand."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

from rimbook.book.load import load_book
from rimbook.book.model import (
    Address,
    Book,
    Confirmed,
    Frame,
    Head,
    Hole,
    Measured,
    Part,
    Pass,
    Strip,
    Twin,
)
from rimbook.site.pages import Asset, Page
from rimbook.site.publish import site
from rimbook.site.settings import Settings

ROOT = Path(__file__).parents[2]
EDIT_BASE = "https://example.org/edit/"


@cache
def demo_book() -> Book:
    """The book in `frames/`."""
    loaded = load_book(ROOT / "frames")
    assert not loaded.problems
    return loaded.book


@cache
def demo_site() -> dict[str, Page | Asset]:
    """The whole demo site, by path of file."""
    return published(demo_book())


def published(book: Book) -> dict[str, Page | Asset]:
    """The site of a book, by path of file; no path comes twice."""
    found: dict[str, Page | Asset] = {}
    for each in site(book, Settings(EDIT_BASE)):
        assert each.file not in found
        found[each.file] = each
    return found


def plain(each: Page | Asset) -> bytes:
    """All that is published of a page or a file, made now."""
    if isinstance(each, Asset):
        return each.data
    return "\n".join((each.kind, each.title, each.description, each.body, str(each.edit))).encode()


def small_frame(slug: str = "wren-8") -> Frame:
    """Seven holes a side: a strip over the head, single parts, one hole without a string, a twin."""
    walk = {
        1: ("m1",),
        2: ("m2", "c1"),
        3: ("c2",),
        4: ("c3",),
        5: (),
        6: ("m2",),
        7: ("m1",),
    }
    right = [_hole("R", number, passes) for number, passes in walk.items()]
    left = [_hole("L", number, walk[number]) for number in reversed(walk)]
    return Frame(
        slug=slug,
        name="Wren 8",
        maker="Saltmarsh Works",
        sport="badminton",
        head=Head("ellipse", 180, 240),
        mains=4,
        crosses=3,
        holes=(*right, *left),
        strips=(Strip("crown", (Address("L", 1), Address("R", 1)), "crown-8"),),
        twins=(Twin((Address("R", 7), Address("L", 7)), "twin-21"),),
        measured=Measured("a-handle", date(2026, 10, 4), "calliper", 0.05),
        confirmed=(Confirmed("other-handle", date(2026, 10, 12)),),
        source=f"frames/maps/{slug}.yaml",
    )


def _hole(side: str, number: int, passes: tuple[str, ...]) -> Hole:
    strung = tuple(Pass("m" if word[0] == "m" else "c", int(word[1:])) for word in passes)
    address = Address("R" if side == "R" else "L", number)
    if number == 1:
        return Hole(address, strung, bore_mm=2.1, rim_depth_mm=9.4, part="crown-8", strip=0)
    if number == 7:
        return Hole(address, strung, bore_mm=2.1, rim_depth_mm=9.4, part="twin-21", twin=0)
    if number == 4:
        return Hole(address, strung)
    return Hole(address, strung, bore_mm=2.7 if len(strung) > 1 else 2.1, rim_depth_mm=9.4, part="barrel-21")


def small_parts() -> dict[str, Part]:
    """What the small frame takes, and the set that holds its strip."""
    parts = (
        Part("barrel-21", "Barrel 2.1", "single", None, 2.05, 1.3, (10.5,), 4.2, packs=(1, 25, 100)),
        Part("crown-8", "Wren crown", "strip", "Saltmarsh Works", 2.05, 1.3, (10.5,), 4.2, posts=2),
        Part("twin-21", "Twin 2.1", "twin-even", None, 2.05, 1.3, (10.5,), None, 7.5, packs=(10,)),
        Part(
            "wren-set",
            "Wren set",
            "set",
            contains={"crown-8": 1, "barrel-21": 8},
            frames=("wren-8",),
            packs=(1,),
        ),
    )
    return {part.id: part for part in parts}


def small_book() -> Book:
    """One frame and its parts."""
    frame = small_frame()
    return Book({frame.slug: frame}, small_parts())
