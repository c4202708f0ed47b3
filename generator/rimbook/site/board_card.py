"""A frame on the board of my frames: a small file of its own, so that a board loads only its frames."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from rimbook.site.handover import handover_text, json_text
from rimbook.site.links import frame_path, link, part_path

FORMAT = 1


@dataclass(frozen=True, slots=True)
class BoardPart:
    """One line of a parts list; `id` is None where nobody knows the part, `kind` and `sold` are words."""

    id: str | None
    name: str
    kind: str
    count: int
    sold: str


def board_file(slug: str) -> str:
    """Where a frame's card lies."""
    return f"data/board/{slug}.js"


def board_card(
    slug: str,
    name: str,
    drawing: str,
    facts: Iterable[tuple[str, str]],
    parts: Iterable[BoardPart],
    shelf: str,
) -> bytes:
    """The card as a script.

    `name` is the name with its year, `drawing` the path of an SVG file from the root of the site, `facts`
    are short answers with what they answer, such as `("Bores", "2.1 mm: 66 holes, 2.7 mm: 10 holes")`.
    `shelf` is the `json_text` of what the places of the frame ask of a shelf.
    """
    card = {
        "format": FORMAT,
        "slug": slug,
        "name": name,
        "path": link("", frame_path(slug)),
        "drawing": drawing,
        "facts": [list(fact) for fact in facts],
        "parts": [
            {
                "id": part.id,
                "name": part.name,
                "path": link("", part_path(part.id)) if part.id else "",
                "kind": part.kind,
                "count": part.count,
                "sold": part.sold,
            }
            for part in parts
        ],
    }
    return handover_text(f"frame:{slug}", f'{json_text(card).removesuffix("}")},"shelf":{shelf}}}')
