"""One page of each kind, made by the host with slots in it, and every page of the kind filled from it.

A host's theme renders slowly and always the same around the body, so it does it once.
Text goes into slots escaped, and what was filled in is never read for slots again.
"""

from __future__ import annotations

import html
import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, get_args
from urllib.parse import quote

from rimbook.hosts.leading_on import going_on
from rimbook.site.pages import Kind, Page
from rimbook.site.scripts import script_tag

Slot = Literal["title", "description", "edit", "body"]

SLOTS: Mapping[Slot, str] = {slot: f"rimbook-slot-{slot}" for slot in get_args(Slot)}

# A theme that looks for a first heading in the body finds one, and adds none of its own.
BODY = f"<!--<h1 {SLOTS['body']}-->"


def shell_path(kind: Kind) -> str:
    """Where the host makes the shell: the page itself, or one as deep as all pages of the kind.

    The dot keeps it apart from every page, since no slug has one.
    """
    first, *others = kind.pattern.split("*")
    return first + "".join(
        f"{f'shell.{kind.name}' if not index else 'x'}{other}" for index, other in enumerate(others)
    )


@dataclass(frozen=True, slots=True)
class Shell:
    """What a host puts round a page, cut at its slots."""

    pieces: tuple[str, ...]

    @staticmethod
    def cut(kind: Kind, made: str) -> Shell:
        """Cut a page that a host has made at its slots. Raises ValueError where the body has no place."""
        own = re.escape(quote(f"{shell_path(kind)}index.html"))
        slots = "|".join(map(re.escape, (BODY, *(word for slot, word in SLOTS.items() if slot != "body"))))
        pieces = tuple(re.split(f"({slots}|{own})", made))
        if pieces[1::2].count(BODY) != 1:
            raise ValueError(f"the shell of {kind.name} has no single place for the body")
        return Shell(pieces)

    def fill(self, page: Page, edit_url: str | None) -> str:
        """The whole page: chrome and body."""
        values = {
            BODY: page.body + script_tag(page.kind, page.root),
            SLOTS["title"]: html.escape(page.title),
            SLOTS["description"]: html.escape(page.description),
            SLOTS["edit"]: html.escape(edit_url or ""),
        }
        own = quote(page.file)
        pieces = self.pieces
        whole = "".join(values.get(piece, own) if index % 2 else piece for index, piece in enumerate(pieces))
        return whole.replace("</head>", f"{going_on(page)}</head>", 1) if page.leads_to else whole
