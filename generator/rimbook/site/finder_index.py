"""The finder's index: ten thousand frames in two small files, as columns that gzip packs well."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from hashlib import blake2b
from typing import Literal, TypeVar

from rimbook.book.model import Moved
from rimbook.site.handover import handover
from rimbook.site.links import frame_path, link, part_path

Value = TypeVar("Value", str, tuple[int, ...])

FORMAT = 1
FRAMES_FILE = "data/finder.js"
PARTS_FILE = "data/finder-parts.js"
_NONE_MOVED = Moved()


@dataclass(frozen=True, slots=True)
class FinderFrame:
    """What the finder knows of a frame.

    `bores` are diameters in mm as written on pages, `shared` the places on the walk that have a shared
    hole on either side, `parts` catalogue ids, `holes` the number of drilled holes.
    """

    slug: str
    name: str
    maker: str
    sport: str
    mains: int
    crosses: int
    holes: int
    bores: tuple[str, ...] = ()
    shared: tuple[int, ...] = ()
    parts: tuple[str, ...] = ()
    aliases: tuple[str, ...] = ()
    year: int | None = None


@dataclass(frozen=True, slots=True)
class FinderPart:
    """What the finder knows of a part; `kind` in words, as on pages."""

    id: str
    name: str
    kind: str
    maker: str | None = None


@dataclass(frozen=True, slots=True)
class FinderPlace:
    """Anything else that can be found: a page, a heading, a maker, a bore, a word of the glossary.

    `path` is relative to the root of the site and names the file, with an anchor where there is one.
    `also` are other names: of a glossary word they lead to everything that has the word. `note` says in a
    few words where it is.
    """

    kind: Literal["maker", "bore", "sport", "page", "word"]
    title: str
    path: str
    also: tuple[str, ...] = ()
    note: str = ""


def finder_index(
    frames: Iterable[FinderFrame],
    parts: Iterable[FinderPart],
    places: Iterable[FinderPlace],
    moved: Moved = _NONE_MOVED,
) -> dict[str, bytes]:
    """The index as files by path. Frames are put in order of name, parts in order of id, places keep theirs.

    What `moved` is found by its old name as well. Both files carry the same stamp, so that a browser which
    kept one of an older build notices.
    """
    frames = sorted(frames, key=lambda frame: (frame.name.casefold(), frame.year or 0, frame.slug))
    parts = sorted(parts, key=lambda part: part.id)
    first, second = _frames(frames, list(places), moved), _parts(frames, parts, moved)
    stamp = blake2b(repr((first, second)).encode(), digest_size=6).hexdigest()
    return {
        FRAMES_FILE: handover("finder", {"format": FORMAT, "stamp": stamp, **first}),
        PARTS_FILE: handover("finder-parts", {"format": FORMAT, "stamp": stamp, **second}),
    }


def glossary_word(word: str, path: str, also: Iterable[str]) -> FinderPlace:
    """A word of the glossary, also found in the plural. `U-shaped grommet` is also found as `U-shaped`.

    Of two words that are explained together, `Measured, confirmed`, each is found.
    """
    names = [name.strip() for name in also if name.strip()]
    short = [re.sub(r" (grommet|part|hole)s?$", "", name) for name in names]
    own = word.split(", ") if "," in word else [_plural(word)]
    return FinderPlace("word", word, path, tuple(dict.fromkeys([*names, *short, *own])), "glossary")


def _plural(word: str) -> str:
    return f"{word}es" if word.endswith(("s", "x", "ch", "sh")) else f"{word}s"


def _frames(frames: Sequence[FinderFrame], places: Sequence[FinderPlace], moved: Moved) -> dict[str, object]:
    sports, sport = _listed(frame.sport for frame in frames)
    makers, maker = _listed(frame.maker for frame in frames)
    patterns, pattern = _listed((frame.mains, frame.crosses) for frame in frames)
    bores = sorted({bore for frame in frames for bore in frame.bores}, key=lambda bore: (float(bore), bore))
    number = {bore: at for at, bore in enumerate(bores)}
    bore_sets, bore_set = _sets({number[bore] for bore in frame.bores} for frame in frames)
    shared_sets, shared_set = _sets(frame.shared for frame in frames)
    return {
        "path": link("", frame_path("*")),
        "names": _lines(frame.name for frame in frames),
        "slugs": _lines("" if _gives(frame.name, frame.slug) else frame.slug for frame in frames),
        "aliases": "".join("\t".join(map(_line, frame.aliases)) + "\n" for frame in frames),
        "years": [frame.year or 0 for frame in frames],
        "sports": sports,
        "sport": sport,
        "makers": makers,
        "maker": maker,
        "patterns": [f"{mains}x{crosses}" for mains, crosses in patterns],
        "pattern": pattern,
        "holes": [frame.holes for frame in frames],
        "bores": bores,
        "boreSets": bore_sets,
        "boreSet": bore_set,
        "sharedSets": shared_sets,
        "sharedSet": shared_set,
        "places": [[place.kind, place.title, place.path, place.also, place.note] for place in places],
        "moved": dict(sorted(moved.frames.items())),
    }


def _parts(frames: Sequence[FinderFrame], parts: Sequence[FinderPart], moved: Moved) -> dict[str, object]:
    number = {part.id: at for at, part in enumerate(parts)}
    kinds, kind = _listed(part.kind for part in parts)
    makers, maker = _listed([*(part.maker or "" for part in parts), ""])
    part_sets, part_set = _sets((number[part] for part in frame.parts if part in number) for frame in frames)
    return {
        "path": link("", part_path("*")),
        "ids": _lines(part.id for part in parts),
        "names": _lines("" if part.name == _name_of(part.id) else part.name for part in parts),
        "kinds": kinds,
        "kind": kind,
        "makers": makers,
        "maker": maker[:-1],
        "partSets": part_sets,
        "partSet": part_set,
        "moved": dict(sorted(moved.parts.items())),
    }


def _listed(values: Iterable[Value]) -> tuple[list[Value], list[int]]:
    """Each value once, in order, and for every value its number in that list."""
    values = list(values)
    known = sorted(set(values))
    number = {value: at for at, value in enumerate(known)}
    return known, [number[value] for value in values]


def _sets(numbers: Iterable[Iterable[int]]) -> tuple[list[list[int]], list[int]]:
    """Each set of numbers once, as steps from one to the next, in the order in which it first comes.

    For every frame follows 0 where its set is the next new one, or how many new ones back it is: neighbours
    are often alike, and where all differ the column is nothing but zeros.
    """
    known: dict[tuple[int, ...], int] = {}
    column = []
    for each in numbers:
        ordered = tuple(sorted(set(each)))
        column.append(len(known) - known.get(ordered, len(known)))
        known.setdefault(ordered, len(known))
    return [_steps(each) for each in known], column


def _gives(name: str, slug: str) -> bool:
    """Whether the browser can tell the slug from the name: see `slugOf` in its index module."""
    return name.isascii() and re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-") == slug


def _name_of(part_id: str) -> str:
    """The name that an id has by itself: see `nameOf` in the browser's index module."""
    words = part_id.replace("-", " ")
    return words[:1].upper() + words[1:]


def _steps(numbers: Sequence[int]) -> list[int]:
    return [number - before for before, number in zip((0, *numbers), numbers, strict=False)]


def _lines(texts: Iterable[str]) -> str:
    return "".join(f"{_line(text)}\n" for text in texts)


def _line(text: str) -> str:
    return " ".join(text.split())
