"""One form for all files of the book: keys in the order of the guide, and no stray blanks.

Comments stay with what they stand above, no fact is touched, and what a person broke into lines stays so.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from rimbook.book.reader import Document, read

_BLANK_LINES = re.compile(r"\n{3,}")


class CannotTidy(Exception):
    """Tidying would have changed what the file says, so it was left alone."""


class _Block(NamedTuple):
    """A key of the file with the comments above it, to the line before the next one's comments."""

    key: str
    text: str


def tidy(document: Document, order: Sequence[str]) -> str:
    """The text of a document in the book's own form. `order` names the keys, the first one first.

    A key that `order` lacks goes to the end. Raises CannotTidy rather than change a fact.
    """
    opening, blocks = _blocks(document)
    rank = {key: at for at, key in enumerate(order)}
    blocks.sort(key=lambda block: rank.get(block.key, len(rank)))
    pieces = [piece for piece in (opening, *(block.text for block in blocks)) if piece.strip()]
    text = _BLANK_LINES.sub("\n\n", "".join(_closed(piece) for piece in pieces)).strip("\n") + "\n"
    if read(text, document.file).value != document.value:
        raise CannotTidy(document.file)
    return text


def _blocks(document: Document) -> tuple[str, list[_Block]]:
    """What stands before the first key and belongs to the file as a whole, and its blocks."""
    text = document.text.rstrip()
    lines = text.split("\n")
    keys = [(mark, str(path[0])) for path, mark in document.key_marks.items() if len(path) == 1]
    if not keys or any(mark.column != 1 for mark, _ in keys):  # written as one flow of braces
        return text, []
    keyed = sorted((mark.line - 1, key) for mark, key in keys)
    tops = [_with_comments(lines, at) for at, _ in keyed]
    if keyed[0][1] == "format":  # comments above it are about the whole file
        tops[0] = keyed[0][0]
    ends = [*tops[1:], len(lines)]
    blocks = [
        _Block(key, "\n".join(lines[top:end])) for (_, key), top, end in zip(keyed, tops, ends, strict=True)
    ]
    return "\n".join(lines[: tops[0]]), blocks


def _with_comments(lines: Sequence[str], at: int) -> int:
    """The first of the comment lines that stand right above a line; it itself where there are none."""
    while at > 0 and lines[at - 1].startswith("#"):
        at -= 1
    return at


def _closed(piece: str) -> str:
    """A piece without blanks at the ends of its lines; a blank line after it stays one."""
    lines = [line.rstrip(" \t\r") for line in piece.split("\n")]
    end = "" if lines[-1] else "\n"
    return "\n".join(lines).strip("\n") + "\n" + end
