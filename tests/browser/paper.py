"""What comes out of the printer: text, and what a reader of codes finds on a scan."""

from __future__ import annotations

from io import BytesIO
from typing import Any

import numpy as np
import pypdfium2
import zxingcpp
from playwright.sync_api import Page
from pypdf import PdfReader

PAPERS = ("A4", "Letter")
DOTS_PER_INCH = 300


def printed(page: Page, paper: str) -> bytes:
    """The page as a PDF, as a person prints it: without backgrounds."""
    return page.pdf(format=paper)


def sheets(data: bytes) -> list[str]:
    """The text of each sheet of paper."""
    return [" ".join(sheet.extract_text().split()) for sheet in PdfReader(BytesIO(data)).pages]


def scanned(data: bytes) -> list[str]:
    """The text of every code on the first sheet, scanned in grey."""
    sheet = pypdfium2.PdfDocument(data)[0]
    image: Any = sheet.render(scale=DOTS_PER_INCH / 72, grayscale=True).to_numpy()
    return [found.text for found in zxingcpp.read_barcodes(np.ascontiguousarray(image.squeeze()))]


def ink(data: bytes) -> float:
    """The share of the first sheet that is not white."""
    sheet = pypdfium2.PdfDocument(data)[0]
    image: Any = sheet.render(scale=1, grayscale=True).to_numpy()
    return float((255 - image.astype(float)).mean() / 255)
