"""One map as its writer wants to see it at once: drawn, with all that is wrong with it."""

from __future__ import annotations

from collections.abc import Sequence

from markupsafe import Markup

from rimbook.book.model import Catalogue, Frame
from rimbook.book.problems import Problem
from rimbook.draw.face import face
from rimbook.draw.legend import legend
from rimbook.draw.unrolled import unrolled
from rimbook.rim.place import place
from rimbook.site.templates import render


def one_map(name: str, frame: Frame | None, catalogue: Catalogue, problems: Sequence[Problem]) -> str:
    """The body of a page with the drawings of a frame, if it could be read, and the problems of its map."""
    drawings: list[Markup] = []
    if frame is not None:
        rim = place(frame)
        texts = (face(rim, catalogue), unrolled(rim, catalogue), legend(rim, catalogue))
        drawings = [Markup(text) for text in texts]  # noqa: S704 - drawings escape every text in them
    return render("one_map.html", name=name, drawings=drawings, problems=problems)
