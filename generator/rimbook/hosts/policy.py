"""A strict Content-Security-Policy on every page, and pages that keep to it.

A theme may write small scripts into its pages. They are moved to files of their
own, loaded at the same place and in the same order, so that the policy needs no
exception. Data blocks (`type="application/json"`) run nothing and stay.
"""

from __future__ import annotations

import re
from hashlib import sha256
from html.parser import HTMLParser

SCRIPT_FOLDER = "assets/moved"

POLICY = "; ".join(
    (
        "default-src 'none'",
        "script-src 'self'",
        "style-src 'self'",
        "img-src 'self' data: blob:",
        "font-src 'self'",
        "connect-src 'self'",
        "worker-src 'self'",
        "manifest-src 'self'",
        "base-uri 'none'",
        "form-action 'self'",
        "object-src 'none'",
    )
)

META = f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">'

_INLINE_SCRIPT = re.compile(r"<script>(.*?)</script>", re.DOTALL)
_CHARSET = re.compile(r"<meta charset=[^>]*>", re.IGNORECASE)
_SUSPECT = re.compile(
    r"<(?:style|base)\b|\s(?:style|on[a-z]+)\s*=|<script(?![^>]*\s(?:src=|type=\"application/json\"))",
    re.IGNORECASE,
)


def strict(html: str, root: str) -> tuple[str, dict[str, bytes]]:
    """A page under the policy, and the files its inline scripts became.

    `root` leads from the page to the top of the site: empty, or `../` for each
    folder. The files are named by their content: the same script is one file.
    """
    files: dict[str, bytes] = {}

    def moved(match: re.Match[str]) -> str:
        source = match[1].encode()
        path = f"{SCRIPT_FOLDER}/{sha256(source).hexdigest()[:12]}.js"
        files[path] = source
        return f'<script src="{root}{path}"></script>'

    html = _INLINE_SCRIPT.sub(moved, html)
    return _CHARSET.sub(lambda match: match[0] + META, html, count=1), files


def offences(html: str) -> list[str]:
    """What in a page the policy will not let work, each named once: `<p style>`, `<script> without src`."""
    if not _SUSPECT.search(html):
        return []
    finder = _Offences()
    finder.feed(html)
    finder.close()
    return list(finder.found)


class _Offences(HTMLParser):
    def __init__(self) -> None:
        super().__init__()
        self.found: dict[str, None] = {}

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        named = dict(attrs)
        if tag in ("style", "base"):
            self.found[f"<{tag}>"] = None
        if tag == "script" and "src" not in named and not (named.get("type") or "").endswith("json"):
            self.found["<script> without src"] = None
        for name in named:
            if name == "style" or name.startswith("on"):
                self.found[f"<{tag} {name}>"] = None
