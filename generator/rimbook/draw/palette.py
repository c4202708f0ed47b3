"""How a bore is told: by shape, by number and by colour.

Seven classes by upper limit, and one for the unknown. The colours are our own,
in two sets: one for white paper and light pages, one for dark pages. A test
measures their contrast, and how far apart they stay for every kind of colour vision.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache


@dataclass(frozen=True, slots=True)
class BoreClass:
    """One class of drilled bores: all up to `limit_mm`, above the class before.

    `outline` is path data round the origin, about one unit in radius, upright on the page.
    """

    name: str
    shape: str
    limit_mm: float | None
    light: str
    dark: str
    outline: str

    @property
    def style(self) -> str:
        """The class of the symbol in a drawing."""
        return f"bore-{self.name}"


CLASSES: tuple[BoreClass, ...] = (
    BoreClass("1", "disc", 2.3, "#3a616f", "#5fc9f4", "M-.94 0A.94 .94 0 1 0 .94 0A.94 .94 0 1 0-.94 0Z"),
    BoreClass("2", "triangle", 2.6, "#978616", "#ffe2b2", "M0-1.22L1.14 .8H-1.14Z"),
    BoreClass("3", "diamond", 2.9, "#dd3fd3", "#a87597", "M0-1.2L1.2 0L0 1.2L-1.2 0Z"),
    BoreClass("4", "square", 3.3, "#430070", "#9c6af2", "M-.86-.86H.86V.86H-.86Z"),
    BoreClass(
        "5",
        "plus",
        3.8,
        "#24967f",
        "#6e9d7c",
        "M-.42-1.12H.42V-.42H1.12V.42H.42V1.12H-.42V.42H-1.12V-.42H-.42Z",
    ),
    BoreClass("6", "bow", 4.5, "#8b503f", "#e55434", "M-1.16-.98L0-.3L1.16-.98V.98L0 .3L-1.16 .98Z"),
    BoreClass("7", "dome", None, "#501500", "#ffae0e", "M-1.16 .66A1.16 1.4 0 0 1 1.16 .66Z"),
)

UNKNOWN = BoreClass("unknown", "question", None, "#1d2228", "#e8eaee", "")

ALL = (*CLASSES, UNKNOWN)


@dataclass(frozen=True, slots=True)
class Ink:
    """One colour of a drawing: its name, its light value and its dark value."""

    name: str
    light: str
    dark: str


PAGE = Ink("page", "#ffffff", "#1e2129")
TEXT = Ink("text", "#1d2228", "#e8eaee")
QUIET = Ink("quiet", "#5c6570", "#a7afbb")
RIM = Ink("rim", "#e8ebef", "#343a46")
EDGE = Ink("edge", "#868d96", "#79828f")
MAIN = Ink("main", "#59636e", "#aab3bf")
CROSS = Ink("cross", "#8c7452", "#b09a78")
STRIP = Ink("strip", "#6f7883", "#969fab")

INKS = (PAGE, TEXT, QUIET, RIM, EDGE, MAIN, CROSS, STRIP)


def bore_class(bore_mm: float | None) -> BoreClass:
    """The class of a drilled bore in millimetres; None is unknown."""
    if bore_mm is None:
        return UNKNOWN
    for known in CLASSES:
        if known.limit_mm is None or bore_mm <= known.limit_mm + 1e-9:
            return known
    return CLASSES[-1]


@lru_cache(maxsize=1 << 10)
def bore_style(bore_mm: float | None) -> str:
    """The class of the symbol of a drilled bore."""
    return bore_class(bore_mm).style


def limits(known: BoreClass) -> str:
    """The class in words, as `over 2.6 up to 2.9 mm`."""
    if known is UNKNOWN:
        return "bore unknown"
    index = CLASSES.index(known)
    above = f"over {CLASSES[index - 1].limit_mm:g}" if index else ""
    upto = f"up to {known.limit_mm:g}" if known.limit_mm is not None else ""
    return " ".join(piece for piece in (above, upto, "mm") if piece)
