"""Texts for the log of a forge, which reads some lines as commands.

Written as GitHub documents under "Workflow commands for GitHub Actions".
"""

from __future__ import annotations

import hashlib


def as_data(text: str) -> str:
    """A text as the message of a command."""
    return text.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def as_property(text: str) -> str:
    """A text as a property of a command."""
    return as_data(text).replace(":", "%3A").replace(",", "%2C")


def no_commands(listing: str) -> str:
    """A listing in which the forge reads no commands, whatever stands in it.

    The mark that ends it follows from the listing itself, so that no text can contain its own mark.
    """
    mark = hashlib.sha256(listing.encode("utf-8", "backslashreplace")).hexdigest()
    return "\n".join([f"::stop-commands::{mark}", listing.rstrip("\n"), f"::{mark}::", ""])
