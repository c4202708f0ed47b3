"""The map of the site for search engines: shells leave it, filled pages join it."""

from __future__ import annotations

import gzip
import re
from collections.abc import Iterable
from pathlib import Path
from urllib.parse import quote, urljoin
from xml.sax.saxutils import escape


def replace(site: Path, site_url: str | None, shells: Iterable[str], pages: Iterable[str]) -> None:
    """Put pages in the place of shells. A host that wrote no map, or knows no address, gets none."""
    file = site / "sitemap.xml"
    if not site_url or not file.is_file():
        return
    text = file.read_text("utf-8")
    for path in shells:
        address = re.escape(_escaped(site_url, path))
        text = re.sub(rf"\s*<url>\s*<loc>{address}</loc>.*?</url>", "", text, flags=re.DOTALL)
    added = "".join(
        f"    <url>\n         <loc>{_escaped(site_url, path)}</loc>\n    </url>\n" for path in pages
    )
    text = text.replace("</urlset>", f"{added}</urlset>")
    file.write_text(text, "utf-8")
    packed = file.with_suffix(".xml.gz")
    if packed.is_file():
        packed.write_bytes(gzip.compress(text.encode(), mtime=0))


def _escaped(site_url: str, path: str) -> str:
    return escape(urljoin(site_url, quote(path)))
