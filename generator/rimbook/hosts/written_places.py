"""What the finder should find on a page written by hand: its title, headings and glossary words."""

from __future__ import annotations

import html
import re
from collections.abc import Iterable, Iterator

from rimbook.site.finder_index import FinderPlace, glossary_word

_ENTRY = re.compile(r"<dt>(.*?)</dt>\s*<dd>(.*?)</dd>", re.DOTALL)
_ALSO = re.compile(r"<em>Also\s+called:</em>(.*?)(?:\.\s|\.?$)", re.DOTALL)
_TAG = re.compile(r"<[^>]*>")


def written_places(
    title: str, path: str, headings: Iterable[tuple[str, str]], content: str
) -> Iterator[FinderPlace]:
    """The page at `path`, its headings as text and anchor, and each word that it defines.

    A page that says what else things are called is a glossary: other pages explain their own tables so.
    """
    yield FinderPlace("page", title, path)
    anchors = dict(headings)
    for words, anchor in anchors.items():
        yield FinderPlace("page", words, f"{path}#{anchor}", (), title)
    defined = [(_text(word), _ALSO.search(_joined(meaning))) for word, meaning in _ENTRY.findall(content)]
    if any(also for _, also in defined):
        for word, also in defined:
            yield glossary_word(word, path, re.split(r"[,;]", _text(also[1])) if also else ())


def _joined(markup: str) -> str:
    return " ".join(re.sub(r"<(?!/?em)[^>]*>", "", markup).split())


def _text(markup: str) -> str:
    return html.unescape(" ".join(_TAG.sub("", markup).split()))
