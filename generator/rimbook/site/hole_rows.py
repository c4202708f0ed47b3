"""The rows of a frame's hole table as HTML.

They are two thirds of what a template would work through on the page of a frame, so they are written here,
as text. What people wrote is escaped; all else is made of numbers and words of our own.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import lru_cache

from markupsafe import Markup, escape

from rimbook.site.bench_view import Times
from rimbook.site.frame_view import HoleRow
from rimbook.site.links import link, part_path
from rimbook.site.words import UNKNOWN

_SHARED = ' <span class="rb-tag">shared</span>'
_TIE_OFF = ' <span class="rb-tag">tie-off</span>'


def hole_rows(rows: Sequence[HoleRow], forces: Mapping[str, Times], root: str) -> Markup:
    """One row a hole, a line each. `forces` gives the force on a hole by its address."""
    lines = "\n".join([_row(row, forces[row.address], root) for row in rows])
    return Markup(lines)  # noqa: S704 - what people wrote is escaped below


def _row(row: HoleRow, force: Times, root: str) -> str:
    at, tags = row.address, (_SHARED if row.shared else "") + (_TIE_OFF if row.tie_off else "")
    return (
        f'<tr id="{at}" data-hole="{at}" data-bore="{row.bore}"><th scope="row"><a href="#{at}">{at}</a></th>'
        f'<td><span class="rb-string">{row.strings or "none"}</span>{tags}</td><td>{row.bore}</td>'
        f"<td>{_part(row.part, row.part_name, root)}</td><td>{_text(row.piece)}</td>"
        f'<td class="rb-string">{row.spoken}</td><td>{row.place}</td>'
        f'<td data-rb-multiple="{force.factors}">{row.pull}</td>'
        f'<td data-rb-times="{force.factors}">{force.newtons}</td></tr>'
    )


@lru_cache(maxsize=4096)
def _part(part: str | None, name: str, root: str) -> str:
    return f'<a href="{escape(link(root, part_path(part)))}">{escape(name)}</a>' if part else UNKNOWN


@lru_cache(maxsize=4096)
def _text(text: str) -> str:
    return str(escape(text))
