"""A strict Content-Security-Policy on every page, and pages that keep to it.

A theme may write small scripts into its pages. They are moved to files of their
own, loaded at the same place and in the same order, so that the policy needs no
exception. Data blocks (`type="application/json"`) run nothing and stay.
"""

from __future__ import annotations

import re
from hashlib import sha256

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

_META = f'<meta http-equiv="Content-Security-Policy" content="{POLICY}">'
_INLINE_SCRIPT = re.compile(r"<script>(.*?)</script>", re.DOTALL)
_CHARSET = re.compile(r"<meta charset=[^>]*>", re.IGNORECASE)


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
    return _CHARSET.sub(lambda match: match[0] + _META, html, count=1), files
