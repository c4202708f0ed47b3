"""Drawings that somebody has looked at, and that stay as they are.

A change that is meant is taken over with `RENEW_GOLDEN=1 pytest tests/draw/test_golden.py`. Then open the
files below tests/golden in a browser, at the width of a phone and large, and look at every one.
"""

from __future__ import annotations

import os
from collections.abc import Callable

import pytest

from rimbook.draw.face import face
from rimbook.draw.legend import legend
from rimbook.draw.section import section
from rimbook.draw.unrolled import unrolled
from tests.draw.drawn import ROOT, SIGNS, book, rim

GOLDEN = ROOT / "tests" / "golden"

DRAWINGS: dict[str, Callable[[], str]] = {
    "every-sign-face": lambda: face(rim(SIGNS, "every-sign"), book(SIGNS).parts),
    "every-sign-unrolled": lambda: unrolled(rim(SIGNS, "every-sign"), book(SIGNS).parts),
    "every-sign-legend": lambda: legend(rim(SIGNS, "every-sign"), book(SIGNS).parts),
    "plain-20-face": lambda: face(rim(SIGNS, "plain-20"), book(SIGNS).parts),
    "twin-uneven-section": lambda: section(book(SIGNS).parts["twin-uneven"]),
}


@pytest.mark.parametrize("name", DRAWINGS)
def test_a_drawing_is_as_it_was_looked_at(name: str) -> None:
    path = GOLDEN / f"{name}.svg"
    drawing = DRAWINGS[name]().replace("><", ">\n<") + "\n"
    if os.environ.get("RENEW_GOLDEN"):
        path.write_text(drawing, encoding="utf-8", newline="\n")
    assert path.read_text(encoding="utf-8") == drawing
