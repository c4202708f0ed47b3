"""What a rule of geometry looks at: a map, and where everything in it lies."""

from __future__ import annotations

from dataclasses import dataclass

from rimbook.book.model import Frame
from rimbook.book.reader import Document
from rimbook.rim.types import Rim


@dataclass(frozen=True, slots=True)
class PlacedMap:
    """A map file with its holes in their places."""

    frame: Frame
    document: Document
    rim: Rim
