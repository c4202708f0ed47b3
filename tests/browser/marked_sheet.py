"""A bench sheet with marks, as an address brings it, and a shop as the device keeps it."""

from __future__ import annotations

import json
import re
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser

from tests.browser.small_site import look_inside
from tests.watch import watched_page

THREE_SPLIT = {"R5": "split", "R20": "split", "L9": "split"}
"""On Plover 76: one in the crown strip, which is sold only in a set, a single part and a wide one."""

LOOKED_OVER = {"crack": "none", "edge": "none", "crushed": "none"}

SHOP: Any = {
    "format": 1,
    "list": {
        "currency": "EUR",
        "sold": [
            {"part": "plover-set", "count": 1, "price": 1450, "seller": "Oakum Lane"},
            {"part": "barrel-21-short", "count": 25, "price": 900, "seller": "Oakum Lane"},
            {"part": "barrel-27-short", "count": 1, "price": 60, "seller": "Oakum Lane"},
        ],
        "shelf": [],
    },
    "terms": {"hourly": 4800, "least": 500, "markup": 10, "half": "away"},
    "labour": {},
    "isExample": False,
}
"""An invented price list."""

_MARK = """([frame, way, marks, checks, isRestSound]) => {
  let sheet = inside.work(inside.EMPTY, way, way === "unhurried" ? null : 30);
  for (const [address, what] of Object.entries(marks)) {
    const isGrooved = typeof what === "number";
    const own = isGrooved ? { seen: "grooved", turns: what } : { seen: what, turns: 0 };
    sheet = inside.mark(sheet, [address], own);
  }
  if (isRestSound) sheet = inside.restIsSound(sheet, frame.holes.map(({ address }) => address));
  for (const [check, found] of Object.entries(checks)) sheet = inside.look(sheet, check, found);
  return inside.hashOfSheet(frame, sheet);
}"""


def frame_of(site: Path, slug: str) -> Any:
    """What the bench sheet knows of a frame of a built site."""
    text = (site / f"frames/{slug}/index.html").read_text("utf-8")
    found = re.search(r'<script type="application/json">(.*?)</script>', text, re.DOTALL)
    assert found is not None
    return json.loads(found[1])


def hash_of(
    browser: Browser,
    frame: Any,
    marks: Mapping[str, str | int] = THREE_SPLIT,
    *,
    way: str = "unhurried",
    checks: Mapping[str, str] = LOOKED_OVER,
    rest_is_sound: bool = True,
) -> str:
    """What stands behind the address of such a sheet, with `#`. A number is grooved with so many turns."""
    with watched_page(browser) as (page, faults):
        wanted = {
            "sheet_state": ["EMPTY", "mark", "look", "work", "restIsSound"],
            "sheet_kept": ["hashOfSheet"],
        }
        look_inside(page, wanted)
        made: str = page.evaluate(_MARK, [frame, way, dict(marks), dict(checks), rest_is_sound])
    assert faults == []
    return made
