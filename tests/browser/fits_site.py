"""The page of measured holes with its data, and for each part a page of one line, as files in a folder."""

from __future__ import annotations

from pathlib import Path

from rimbook.book.model import Catalogue
from rimbook.browser.bundle import bundle, module_sources
from rimbook.draw.style import properties
from rimbook.hosts.policy import META
from rimbook.site.fits_page import fits_page
from rimbook.site.pages import Asset
from rimbook.site.publish import style

ICON = '<link rel="icon" href="data:,">'


def write_fits(folder: Path, catalogue: Catalogue) -> None:
    """Write it all below a folder; the page is `fits/index.html`."""
    files = {
        "assets/fits.js": bundle("fits", module_sources()).encode(),
        "assets/style.css": style() + f"\n:root {{ {properties(':root', dark=False)} }}".encode(),
        "parts/index.html": f"<!doctype html>{ICON}<title>parts</title>".encode(),
    }
    for part in catalogue:
        files[f"parts/{part}/index.html"] = f"<!doctype html>{ICON}<h1>{part}</h1>".encode()
    for each in fits_page(catalogue):
        files[each.file] = each.data if isinstance(each, Asset) else whole(each.body).encode()
    for path, data in files.items():
        (folder / path).parent.mkdir(parents=True, exist_ok=True)
        (folder / path).write_bytes(data)


def whole(body: str) -> str:
    return f"""<!doctype html><html lang="en"><head><meta charset="utf-8">{META}
    <meta name="viewport" content="width=device-width, initial-scale=1"><title>What fits this hole?</title>
    {ICON}<link rel="stylesheet" href="../assets/style.css">
    <script defer src="../assets/fits.js"></script></head><body><main>{body}</main></body></html>"""
