"""The page of prices and a page with the work of one small sheet, side by side as files in a folder."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

from playwright.sync_api import Page

from rimbook.book.model import Part
from rimbook.browser.bundle import bundle, module_sources, script_of
from rimbook.draw.style import properties
from rimbook.hosts.policy import META
from rimbook.site.pages import Asset
from rimbook.site.prices_page import prices_page
from rimbook.site.publish import style
from tests.browser.sheet_frames import NAMES, small_frame

KINDS = {"wide-a": "wide", "pair-a": "twin-even", "crown-a": "strip", "kit-a": "set"}
PROBE = """
import { mark, look, EMPTY } from "./sheet_state.js";
import { startStore } from "./sheet_store.js";
import { startWork } from "./sheet_work_view.js";
const frame = JSON.parse(document.getElementById("frame").textContent);
const store = startStore(frame, EMPTY);
const jobs = startWork(document.getElementById("work"), store);
globalThis.inside = { store, jobs, mark, look };
"""


def small_catalogue() -> dict[str, Part]:
    """The parts of the small frame: the crown strip comes only in the kit."""
    return {
        part: Part(
            part,
            name,
            KINDS.get(part, "single"),  # type: ignore[arg-type]
            packs={"crown-a": (), "kit-a": (1,)}.get(part, (1, 25)),
            contains=small_frame()["sets"].get(part, {}),
        )
        for part, name in NAMES.items()
    }


def write_work(folder: Path) -> None:
    """Write `prices/index.html`, `sheet/index.html` and all that they load."""
    files = {
        "assets/scripts/probe.js": bundle("probe", {**module_sources(), "probe": PROBE}).encode(),
        "assets/scripts/prices.js": script_of("prices"),
        "assets/scripts/buy_worker.js": script_of("buy_worker"),
        "assets/style.css": style() + f"\n:root {{ {properties(':root', dark=False)} }}".encode(),
        "sheet/index.html": _whole(
            "Sheet",
            "probe",
            f'<h1>Sheet</h1><h2>Bench sheet</h2><div id="work"></div>'
            f'<script type="application/json" id="frame">{json.dumps(small_frame())}</script>',
        ).encode(),
    }
    for each in prices_page(small_catalogue()):
        files[each.file] = (
            each.data if isinstance(each, Asset) else _whole(each.title, "prices", each.body).encode()
        )
    for path, data in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(data)


def see(page: Page, seen: str, *holes: str, turns: int = 0) -> None:
    """Mark some holes of the small sheet."""
    page.evaluate(
        """([seen, holes, turns]) => {
          const { store, mark } = inside;
          store.change(mark(store.sheet(), holes, { seen, turns }));
        }""",
        [seen, list(holes), turns],
    )


def enter(page: Page, text: str, **terms: Any) -> None:
    """Keep a price list on the device as the page of prices would, in plain CSV below its heading."""
    rows = "\n".join(["kind,part,count,price,currency,seller", text.strip(), *_terms(terms)])
    page.get_by_label("Or paste rows from a spreadsheet").fill(rows)
    page.get_by_role("button", name="Take the rows over").click()


def _terms(terms: dict[str, Any]) -> list[str]:
    return [
        f"terms,{name},{value},,," if name == "markup" else f"terms,{name},,{value},,"
        for name, value in terms.items()
    ]


def _whole(title: str, script: str, body: str) -> str:
    return f"""<!doctype html><html lang="en"><head><meta charset="utf-8">{META}
    <meta name="viewport" content="width=device-width, initial-scale=1"><title>{title}</title>
    <link rel="icon" href="data:,"><link rel="stylesheet" href="../assets/style.css">
    <script defer src="../assets/scripts/{script}.js"></script></head>
    <body><main>{body}</main></body></html>"""
