"""What makes a browser go on from an old address by itself where no script runs, from a folder as well.

Where scripts run, that of the page goes on: it alone can take along what stands behind the `#`.
"""

from __future__ import annotations

import html

from rimbook.site.links import link
from rimbook.site.pages import Page


def going_on(page: Page) -> str:
    """The elements for the head of a page that leads to another; empty for any other page."""
    if page.leads_to is None:
        return ""
    href = html.escape(link(page.root, page.leads_to))
    refresh = f'<meta http-equiv="refresh" content="0; url={href}">'
    return f'<noscript>{refresh}</noscript>\n<meta name="robots" content="noindex">\n'
