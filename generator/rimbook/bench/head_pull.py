"""How hard the strings pull the head together: so many strings, each at its tension.

Along the racket the mains pull the head and the throat together by mains·T, across it the crosses pull
the sides together by crosses·T, in newtons. It follows from cutting the head across all strings of a kind
(equilibrium of forces). Assumes straight strings at their pull tension, without friction; a string loses
about 30 % of it soon after stringing (Cross and Bower, Sports Engineering, 2001).
"""

from __future__ import annotations

from dataclasses import dataclass

from rimbook.bench import given
from rimbook.book.model import Frame


@dataclass(frozen=True, slots=True)
class HeadPull:
    """The pull on the head in newtons: along the racket and across it."""

    along_n: float
    across_n: float


def head_pull(frame: Frame, mains_n: float, crosses_n: float | None = None) -> HeadPull:
    """The pull of all strings at a tension in newtons; the crosses may have one of their own."""
    given.force("tension of the mains", mains_n)
    crosses = mains_n if crosses_n is None else given.force("tension of the crosses", crosses_n)
    return HeadPull(frame.mains * mains_n, frame.crosses * crosses)
