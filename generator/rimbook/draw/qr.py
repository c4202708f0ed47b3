"""A code to scan, as a drawing."""

from __future__ import annotations

import io

QUIET_MODULES = 4
"""White modules round the code, as ISO/IEC 18004 asks."""


def qr(text: str) -> bytes:
    """SVG of a QR code that reads as `text`, one unit a module, its quiet zone included. Error level M.

    Raises ValueError where the text is too long for a code.
    """
    import segno  # only a printed page needs it

    try:
        code = segno.make_qr(text, error="m")
    except segno.DataOverflowError as error:
        raise ValueError(f"{len(text)} characters are too many for a code") from error
    out = io.BytesIO()
    code.save(out, kind="svg", border=QUIET_MODULES, dark="#000", light="#fff", xmldecl=False, nl=False)
    return out.getvalue()
