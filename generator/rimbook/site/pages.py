"""What is published: pages and files, as values that no host has touched yet."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import NamedTuple


class Kind(NamedTuple):
    """A kind of page: all its pages lie equally deep and look alike around their body.

    `pattern` is the path with `*` for each part that differs; `under` is the index
    page below which a host shows it as belonging. `title` is given where there is only
    one page of the kind, so that a menu can name it before it is made.
    """

    name: str
    pattern: str
    under: str
    title: str = ""

    @property
    def edited(self) -> bool:
        """Whether its pages are made from one file each, which a reader can correct."""
        return self.name in ("frame", "part", "part-more", "club", "shelf", "tape")

    @property
    def single(self) -> bool:
        """Whether there is only one page of the kind."""
        return "*" not in self.pattern


KINDS = {
    kind.name: kind
    for kind in (
        Kind("finder", "finder/", "finder/", "Find a frame"),
        Kind("board", "board/", "board/", "My frames"),
        Kind("frames", "frames/", "frames/", "All frames"),
        Kind("frames-more", "frames/*/", "frames/"),
        Kind("frame", "frames/*/", "frames/"),
        Kind("moved-frame", "frames/*/", "frames/"),
        Kind("tape", "frames/*/tape/", "frames/"),
        Kind("sports", "sports/", "sports/", "Frames by sport"),
        Kind("sport", "sports/*/", "sports/"),
        Kind("sport-more", "sports/*/*/", "sports/"),
        Kind("makers", "makers/", "makers/", "Makers"),
        Kind("maker", "makers/*/", "makers/"),
        Kind("maker-more", "makers/*/*/", "makers/"),
        Kind("parts", "parts/", "parts/", "All parts"),
        Kind("parts-more", "parts/*/", "parts/"),
        Kind("part", "parts/*/", "parts/"),
        Kind("moved-part", "parts/*/", "parts/"),
        Kind("part-more", "parts/*/*/", "parts/"),
        Kind("bores", "bores/", "bores/", "Bores"),
        Kind("bore", "bores/*/", "bores/"),
        Kind("bore-more", "bores/*/*/", "bores/"),
        Kind("sets", "sets/", "sets/", "Sets"),
        Kind("sets-more", "sets/*/", "sets/"),
        Kind("strips", "strips/", "strips/", "Strips"),
        Kind("strips-more", "strips/*/", "strips/"),
        Kind("matrix", "matrix/", "matrix/", "Matrix"),
        Kind("matrix-sport", "matrix/*/*/", "matrix/"),
        Kind("matrix-sport-more", "matrix/*/*/*/", "matrix/"),
        Kind("interchange", "interchange/", "interchange/", "What can stand in for what"),
        Kind("fits", "fits/", "fits/", "What fits this hole?"),
        Kind("clubs", "clubs/", "clubs/", "Clubs"),
        Kind("club", "clubs/*/", "clubs/"),
        Kind("shelf", "clubs/*/shelf/", "clubs/"),
        Kind("prices", "prices/", "prices/", "Prices and stock"),
        Kind("my-shelf", "my-shelf/", "my-shelf/", "My shelf"),
        Kind("draft", "draft/", "draft/", "Draft a map"),
        Kind("offline", "offline/", "offline/", "Offline use"),
        Kind("rules", "rules/", "rules/", "Rules of the book"),
        Kind("wanted", "wanted/", "wanted/", "Most wanted"),
        Kind("changes", "changes/", "changes/", "What changed lately"),
        Kind("credits", "credits/", "credits/", "Credits"),
        Kind("credits-more", "credits/*/", "credits/"),
        Kind("formulas", "formulas/", "formulas/", "Every formula on one sheet"),
        Kind("numbers", "numbers/*/", "formulas/"),
    )
}


INSIDE = "<!--inside-->"


@dataclass(frozen=True, slots=True)
class Page:
    """A page without the chrome around it.

    `path` ends in a slash and is relative to the root of the site. `title` and
    `description` are plain text. `make` gives the body: HTML with its own first heading,
    made only when a host wants it. `inside` gives what stands in it in place of `INSIDE`: HTML that was made
    before and is kept as bytes. `edit` is the path of the file the page was made from.
    `leads_to` is the path of the page to which a browser goes on at once.
    """

    path: str
    kind: str
    title: str
    description: str
    make: Callable[[], str]
    edit: str | None = None
    leads_to: str | None = None
    inside: Callable[[], bytes] | None = None

    @property
    def body(self) -> str:
        """The whole body, made now."""
        made = self.make()
        return made.replace(INSIDE, self.inside().decode(), 1) if self.inside else made

    @property
    def file(self) -> str:
        """Where the page is written, relative to the root of the site."""
        return f"{self.path}index.html"

    @property
    def root(self) -> str:
        """The way from the page up to the root of the site."""
        return to_root(self.path)


@dataclass(frozen=True, slots=True)
class Asset:
    """A file that is no page: data for other programs, or a style sheet. `make` gives its content."""

    file: str
    make: Callable[[], bytes]

    @property
    def data(self) -> bytes:
        """The content, made now."""
        return self.make()


def to_root(path: str) -> str:
    """The way from a page up to the root of the site: empty, or some `../`."""
    return "../" * path.count("/")
