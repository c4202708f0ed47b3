"""The pages that explain the numbers: one for each topic, and every formula on one sheet."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial
from itertools import chain

from rimbook.bench.thresholds import Thresholds
from rimbook.site.numbers import limits_table
from rimbook.site.numbers.formula import mathml, parts, plain
from rimbook.site.numbers.links import SHEET, topic_path
from rimbook.site.numbers.prose import prose
from rimbook.site.numbers.shown import Shown
from rimbook.site.numbers.topic import Topic
from rimbook.site.numbers.topics import GROUPS, TOPICS
from rimbook.site.pages import KINDS, Page, to_root
from rimbook.site.templates import render

Show = Callable[[], Shown | None]


def number_pages(show: Show, thresholds: Thresholds) -> Iterator[Page]:
    """A page for each topic, then the sheet. `show` gives the example out of the book when it is wanted."""
    for topic, before, after in zip(TOPICS, (None, *TOPICS), (*TOPICS[1:], None), strict=False):
        yield Page(
            path=topic_path(topic.slug),
            kind="numbers",
            title=topic.title,
            description=f"{topic.asks} The formula, its source, worked examples, and where it ends.",
            make=partial(_topic_body, topic, before, after, show, thresholds),
        )
    sheet = KINDS[SHEET]
    yield Page(
        path=sheet.pattern,
        kind=sheet.name,
        title=sheet.title,
        description="Every formula and every threshold behind a number in this book, on one sheet to print.",
        make=partial(_sheet_body, thresholds),
    )


def _topic_body(
    topic: Topic, before: Topic | None, after: Topic | None, show: Show, thresholds: Thresholds
) -> str:
    given = show()
    return _render(
        "numbers_topic.html",
        topic_path(topic.slug),
        topic=topic,
        before=before,
        after=after,
        tables=list(topic.tables(thresholds)) if topic.tables else [],
        limits=limits_table.rows(thresholds, topic.thresholds),
        published=list(topic.published(thresholds)),
        here=list(topic.here(given)) if given else [],
    )


def _sheet_body(thresholds: Thresholds) -> str:
    used = set(chain.from_iterable(topic.thresholds for topic in TOPICS))
    limits = limits_table.rows(thresholds)
    if missing := [row.name for row in limits if row.name not in used]:
        raise LookupError(f"No topic explains the thresholds {', '.join(missing)}.")
    by_name = {name: topic for topic in reversed(TOPICS) for name in topic.thresholds}
    return _render(
        "numbers_sheet.html",
        KINDS[SHEET].pattern,
        title=KINDS[SHEET].title,
        groups=GROUPS,
        limits=[(row, by_name[row.name]) for row in limits],
    )


def _render(template: str, path: str, **values: object) -> str:
    root = to_root(path)
    return render(
        template,
        **values,
        root=root,
        math=partial(mathml, block=True),
        symbol=mathml,
        parts=parts,
        plain=plain,
        prose=partial(prose, root=root),
    )
