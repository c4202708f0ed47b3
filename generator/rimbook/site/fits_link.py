"""The address of the page of measured holes with a hole already filled in.

Its keys, lengths in mm: `bore`, `depth` of the rim, `strings` (how many), `string` (their diameters, a space
between them), `step` (how finely the bore was measured). They stand behind the `#`, which no server learns;
the browser's `fits_address.js` reads them.
"""

from __future__ import annotations

from collections.abc import Sequence
from urllib.parse import urlencode

from rimbook.site.links import link
from rimbook.site.pages import KINDS


def fits_link(
    root: str,
    bore_mm: float | None,
    depth_mm: float | None = None,
    string_mm: Sequence[float] = (),
    strings: int | None = None,
    step_mm: float | None = None,
) -> str:
    """`fits/index.html#bore=2.1&depth=9.4&strings=1&string=0.68`, seen from a page with this way to the root.

    What is None or empty is left to the reader.
    """
    known = {"bore": bore_mm, "depth": depth_mm, "strings": strings, "step": step_mm}
    typed = {key: f"{value:g}" for key, value in known.items() if value is not None}
    if string_mm:
        typed["string"] = " ".join(f"{each:g}" for each in string_mm)
    return link(root, KINDS["fits"].pattern, urlencode(typed))
