"""A frame with everything in its place."""

from __future__ import annotations

from rimbook.book.model import Frame
from rimbook.rim.outline import curve
from rimbook.rim.path import paths
from rimbook.rim.places import places
from rimbook.rim.types import Rim


def place(frame: Frame) -> Rim:
    """The outline, the holes on it, and the way of the string.

    Raises NotDrawable where the walk leaves no way for the string; the rules say so first.
    """
    line = curve(frame.head)
    holes = places(frame)
    return Rim(frame, line, holes, paths(frame, holes, line))
