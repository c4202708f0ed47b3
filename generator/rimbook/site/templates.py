"""The one place where values become HTML: every text is escaped, a missing value is an error."""

from __future__ import annotations

from functools import cache
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from rimbook.site import links, pieces, spans, words
from rimbook.site.hole_rows import hole_rows
from rimbook.site.numbers.links import explained
from rimbook.site.scripts import later_script


def render(template: str, **values: Any) -> str:
    """A template of this package filled with values; text among them is escaped."""
    return _environment().get_template(template).render(values)


@cache
def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("rimbook.site", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=False,
        auto_reload=False,
    )
    environment.filters.update(
        number=words.number,
        mm=words.mm,
        size=words.size,
        listed=words.listed,
        capital_first=words.capital,
        spans=spans.spans,
        plain=spans.plain,
        holes_links=pieces.holes_links,
        part_link=pieces.part_link,
        why=pieces.why,
        force=pieces.force,
        press=pieces.press,
    )
    environment.globals.update(
        counted=words.counted,
        explained=explained,
        hole_rows=hole_rows,
        later_script=later_script,
        link=links.link,
        bore_path=links.bore_path,
        club_path=links.club_path,
        shelf_path=links.shelf_path,
        frame_path=links.frame_path,
        tape_path=links.tape_path,
        part_path=links.part_path,
        KIND_NAMES=words.KIND_NAMES,
    )
    return environment
