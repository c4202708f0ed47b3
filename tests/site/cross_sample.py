"""A book of a few frames that take nearly the same parts, small enough to count by hand.

Seven holes a side: R1 and L1 under a crown strip, R7 and L7 in a twin, the others single. Where nothing else
is said, the bore is 2.1 with two shared holes of 2.7, and all parts are known.
"""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from rimbook.book.model import Address, Book, Frame, Hole, Part, Sport
from rimbook.site.pages import Asset, Page
from tests.site.sample import published, small_frame, small_parts

SPORT: Sport = "badminton"


def frame(
    slug: str,
    name: str,
    maker: str = "Saltmarsh Works",
    *,
    at: dict[int, Hole] | None = None,
    crown: str = "crown-8",
    twin: bool = True,
    sport: Sport = SPORT,
) -> Frame:
    """The frame with some holes, the same on both sides, put in the place of its own.

    `at` gives them by number; only bore and part count. `crown` is the strip; without `twin` R7 and L7 are
    single.
    """
    small = small_frame(slug)
    holes = tuple(_changed(hole, at or {}, crown, twin) for hole in small.holes)
    return replace(
        small,
        name=name,
        maker=maker,
        sport=sport,
        holes=holes,
        strips=tuple(replace(strip, part=crown) for strip in small.strips),
        twins=small.twins if twin else (),
    )


def _changed(hole: Hole, at: dict[int, Hole], crown: str, twin: bool) -> Hole:
    number = hole.address.number
    if number == 1:
        return replace(hole, part=crown)
    if number == 7 and not twin:
        return replace(hole, part="barrel-21", twin=None)
    if number == 4 and 4 not in at:
        return replace(hole, bore_mm=2.1, part="barrel-21")
    if number in at:
        return replace(hole, bore_mm=at[number].bore_mm, part=at[number].part)
    return hole


def of(bore_mm: float | None, part: str | None) -> Hole:
    """A bore and what sits there."""
    return Hole(Address("R", 99), bore_mm=bore_mm, part=part)


FRAMES = (
    frame("robin-8", "Robin 8"),
    frame("twite-8", "Twite 8", "Lantern Row"),
    frame("brambling-8", "Brambling 8", crown="crown-9"),
    frame("siskin-8", "Siskin 8", twin=False),
    frame("linnet-8", "Linnet 8", at={5: of(2.7, "barrel-27")}),
    frame("dipper-8", "Dipper 8", at={4: of(None, None)}),
    frame("ouzel-8", "Ouzel 8", sport="tennis", at={number: of(3.3, "barrel-33") for number in range(2, 7)}),
)


def parts() -> dict[str, Part]:
    """What the frames take, a part of nearly the size of one, and two sets."""
    small = small_parts()
    more = (
        replace(small["crown-8"], id="crown-9", name="Brambling crown", packs=(1,)),
        Part("barrel-27", "Barrel 2.7", "wide", None, 2.65, 1.8, (10.5,), 4.6, packs=(1,)),
        Part("barrel-28", "Barrel 2.8", "wide", None, 2.75, 1.9, (10.5,), 4.6, packs=(1,)),
        Part("barrel-33", "Barrel 3.3", "single", None, 3.25, 2.2, (12.0,), 5.0, packs=(1,)),
        Part(
            "robin-set",
            "Robin set",
            "set",
            "Saltmarsh Works",
            contains={"crown-8": 1, "barrel-21": 10, "twin-21": 1},
            frames=("robin-8", "heron-9"),
            packs=(1,),
        ),
    )
    return small | {part.id: part for part in more}


def book() -> Book:
    """The frames and their parts, in order of id."""
    return Book({each.slug: each for each in sorted(FRAMES, key=lambda each: each.slug)}, parts())


@cache
def cross_site() -> dict[str, Page | Asset]:
    """The site of the book, by path of file."""
    return published(book())
