"""The style sheet of all drawings: what a page adds to the plain attributes.

A drawing is readable without it, on white. With it, colours follow the page's
scheme, and holes show which one has the focus. Layers have classes `layer-…` that a
page can switch.
"""

from __future__ import annotations

from rimbook.draw.palette import CLASSES, INKS

# Selector, property, ink.
_INKED: tuple[tuple[str, str, str], ...] = (
    (".drawing .rim-band, .drawing .throat", "stroke", "rim"),
    (".drawing :is(.rim-edge, .rim-join, .part-run, .tick, .helper, .axis)", "stroke", "edge"),
    (".drawing :is(.main, .outside)", "stroke", "main"),
    (".drawing .cross", "stroke", "cross"),
    (".drawing .strip-band", "stroke", "strip"),
    (".drawing :is(.ribs, .pull-words)", "stroke", "page"),
    (".drawing .pull", "stroke", "text"),
    (".drawing :is(.hatch, .pointer)", "stroke", "quiet"),
    (
        ".drawing :is(.strip-cap, .twin-staple, .knot-end, .wall, .dimension, .break, .bore-run)",
        "stroke",
        "text",
    ),
    (".drawing :is(.arrow, .bar-black, .knot, text)", "fill", "text"),
    (".drawing :is(.layer-heads, .scale) text, .drawing .quiet", "fill", "quiet"),
    # What `use` copies is matched without its surroundings, so these names stand alone.
    (".rim-mark-ring, .rim-mark-unknown", "stroke", "text"),
    (".rim-mark-ring, .rim-mark-hollow", "fill", "page"),
    (".rim-mark-undrilled", "stroke", "quiet"),
)

_RULES = """
.drawing { display: block; width: 100%; height: auto; max-width: 60rem; overflow: visible; }
.drawing text { font-family: inherit; font-variant-numeric: tabular-nums; }
.drawing .hole { cursor: pointer; }
.drawing .hole:focus { outline: none; }
.drawing .hole:focus-visible { outline: 2px solid var(--rim-text); outline-offset: 2px; border-radius: 2px; }
@media print {
  .drawing { max-width: 100%; break-inside: avoid; }
  .drawing .hole { cursor: auto; }
}
""".lstrip()


def stylesheet() -> str:
    """The whole style sheet as text. Inks are custom properties `--rim-…`, bores `--bore-…`."""
    return "\n".join(
        [
            properties(":root", dark=False),
            properties('[data-md-color-scheme="slate"]', dark=True),
            "@media print {",
            properties(':root, [data-md-color-scheme="slate"]', dark=False),
            "}",
            *(f"{where} {{ {name}: var(--rim-{ink}); }}" for where, name, ink in _INKED),
            *(f".rim-mark.{known.style} {{ fill: var(--{known.style}); }}" for known in CLASSES),
            _RULES,
        ]
    )


def properties(where: str, *, dark: bool) -> str:
    """The rule that gives what `where` selects the light or the dark value of every ink and bore."""
    inks = [f"--rim-{ink.name}: {ink.dark if dark else ink.light};" for ink in INKS]
    bores = [f"--{known.style}: {known.dark if dark else known.light};" for known in CLASSES]
    return f"{where} {{ {' '.join(inks + bores)} }}"
