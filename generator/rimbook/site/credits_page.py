"""Who measured and who confirmed: everybody whose handle stands in the book."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from functools import partial

from rimbook.book.model import Catalogue, Part
from rimbook.site.cross import Cross
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.paging import Sheet, sheets
from rimbook.site.summary import Summary
from rimbook.site.templates import render
from rimbook.site.words import counted

NAMED = 12
"""So many maps and parts of a person are linked; the others are counted."""


@dataclass(slots=True)
class Credit:
    """What one person did for the book, in order of name."""

    handle: str
    measured: list[Summary] = field(default_factory=list)
    confirmed: list[Summary] = field(default_factory=list)
    parts: list[Part] = field(default_factory=list)

    @property
    def total(self) -> int:
        """Everything counted once."""
        return len(self.measured) + len(self.confirmed) + len(self.parts)


def credit_pages(cross: Cross, catalogue: Catalogue) -> Iterator[Page]:
    """The list of people, broken up where it is long."""
    kind = KINDS["credits"]
    people = credits_of(cross, catalogue)
    for sheet in sheets(kind.pattern, people):
        yield Page(
            path=sheet.path,
            kind=kind.name if sheet.number == 1 else f"{kind.name}-more",
            title=kind.title + sheet.suffix,
            description="Who measured the frames and parts of this book, and who confirmed the maps.",
            make=partial(_body, kind.title + sheet.suffix, sheet, len(people)),
        )


def credits_of(cross: Cross, catalogue: Catalogue) -> Sequence[Credit]:
    """Everybody, those who did most first."""
    people: defaultdict[str, Credit] = defaultdict(lambda: Credit(""))
    for frame in cross.frames.values():
        if frame.vouched.measured:
            people[frame.vouched.measured.by].measured.append(frame)
        for handle in dict.fromkeys(each.by for each in frame.vouched.confirmed):
            people[handle].confirmed.append(frame)
    for part in catalogue.values():
        if part.measured:
            people[part.measured.by].parts.append(part)
    for handle, credit in people.items():
        credit.handle = handle
    return sorted(people.values(), key=lambda credit: (-credit.total, credit.handle))


def _body(title: str, sheet: Sheet[Credit], count: int) -> str:
    return render(
        "credits.html",
        title=title,
        caption=counted(count, "person", "people"),
        sheet=sheet,
        named=NAMED,
        root=to_root(sheet.path),
    )
