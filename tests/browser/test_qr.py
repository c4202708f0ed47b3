"""The code to scan, module by module against two other encoders, and read by another reader.

segno, and ZXing-C++ as encoder and reader, are independent writings of ISO/IEC 18004. segno 1.6 adds a byte
of zeros behind every terminator that ends on a whole byte, against 7.4.10, so it is asked only for symbols
without padding; ZXing-C++ chooses masks its own way, so it is compared under the mask that it chose.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import numpy as np
import pytest
import segno
import zxingcpp
from playwright.sync_api import Browser, Page

from tests.browser.small_site import look_inside
from tests.watch import watched_page

LEVELS = ("L", "M")
ADDRESS = "https://rimbook.example/frames/plover-76/index.html#sheet=1.k3f9a.f112.c12.ax4r1_r8q0l9.g1b2r9.z7q"
ASCII = ("a", "plover weir", ADDRESS, "a-b" * 9, "~" * 61, "x/" * 70, ADDRESS * 3)
TEXTS = (*ASCII, "Łódka & Søn, 桜 76, рамка", "0000000000000000")

# ISO/IEC 18004:2015, table 7: bytes that a version holds.
CAPACITY = {
    (1, "L"): 17, (1, "M"): 14, (2, "L"): 32, (2, "M"): 26, (6, "L"): 134, (7, "L"): 154, (7, "M"): 122,
    (9, "M"): 180, (10, "M"): 213, (26, "L"): 1367, (27, "L"): 1465, (27, "M"): 1125, (40, "L"): 2953,
    (40, "M"): 2331,
}  # fmt: skip


@pytest.fixture(scope="module")
def inside(browser: Browser) -> Iterator[Page]:
    with watched_page(browser) as (page, faults):
        look_inside(page, {"qr": ["qr", "qrPath", "QUIET"]})
        yield page
    assert faults == []


def ours(page: Page, text: str, **how: Any) -> Any:
    return page.evaluate(
        """([text, how]) => {
          const code = inside.qr(text, how);
          return code && { ...code, modules: code.modules.map((row) => row.map(Number).join("")) };
        }""",
        [text, how],
    )


def by_segno(text: str, version: int, level: str, mask: int | None) -> tuple[int, list[str]]:
    code = segno.make_qr(
        text.encode(), mode="byte", version=version, error=level, mask=mask, boost_error=False
    )
    return code.mask, ["".join(map(str, row)) for row in code.matrix]


def by_zxing(text: str, level: str) -> tuple[int, list[str]]:
    drawn = zxingcpp.create_barcode(text, zxingcpp.BarcodeFormat.QRCode, ec_level=level)
    image: Any = (np.array(drawn.to_image(scale=1, add_quiet_zones=False)) < 128).tolist()
    told = int("".join("01"[bit] for bit in image[8][:5]), 2) ^ 0b10101  # ISO/IEC 18004:2015, 7.9.1
    return told & 7, ["".join("01"[dark] for dark in row) for row in image]


def filled(version: int, level: str) -> str:
    """As much text as a version holds, so that nothing is padded."""
    capacity: Any = segno.consts.SYMBOL_CAPACITY
    bits = capacity[version][segno.consts.ERROR_MAPPING[level]]
    return (ADDRESS * 40)[: (bits - (12 if version < 10 else 20)) // 8]


def scanned(rows: list[str]) -> Any:
    """What a reader makes of the modules, drawn dark on white with a quiet zone."""
    light = np.array([[module == "0" for module in row] for row in rows], dtype=np.uint8)
    return zxingcpp.read_barcode(np.kron(np.pad(light, 4, constant_values=1), np.full((3, 3), 255, np.uint8)))


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("version", range(1, 41))
def test_every_version_is_that_of_another_encoder(inside: Page, version: int, level: str) -> None:
    text = filled(version, level)
    for mask in (None, *(range(8) if version in (1, 2, 7, 14) else [version % 8])):
        code = ours(inside, text, level=level, mask=mask)
        assert (code["version"], code["mask"], code["modules"]) == (
            version,
            *by_segno(text, version, level, mask),
        )


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("text", [*ASCII, *(ADDRESS[:length] for length in range(30, 40))])
def test_padding_is_that_of_another_encoder(inside: Page, text: str, level: str) -> None:
    mask, modules = by_zxing(text, level)
    assert ours(inside, text, level=level, mask=mask)["modules"] == modules


@pytest.mark.parametrize(("version", "level"), CAPACITY)
def test_a_version_is_filled_to_the_last_byte(inside: Page, version: int, level: str) -> None:
    most = CAPACITY[version, level]
    text = (ADDRESS * 40)[:most]
    assert ours(inside, text, level=level)["version"] == version
    more = ours(inside, f"{text}!", level=level)
    assert more is None if version == 40 else more["version"] == version + 1


@pytest.mark.parametrize("level", LEVELS)
@pytest.mark.parametrize("text", [*TEXTS, ADDRESS * 20])
def test_a_reader_reads_it(inside: Page, text: str, level: str) -> None:
    found = scanned(ours(inside, text, level=level)["modules"])
    assert found is not None
    assert found.format == zxingcpp.BarcodeFormat.QRCode
    assert found.bytes == text.encode()
    assert found.ec_level == level


@pytest.mark.parametrize("level", LEVELS)
def test_a_reader_mends_what_it_cannot_see(inside: Page, level: str) -> None:
    """A spot of 4 × 4 modules touches at most 7 codewords: version 5 mends 12 or more."""
    code = ours(inside, "A" * 60, level=level, version=5)
    rows = [
        "".join(
            "10"[int(module)] if 20 <= i < 24 and 14 <= j < 18 else module for j, module in enumerate(row)
        )
        for i, row in enumerate(code["modules"])
    ]
    found = scanned(rows)
    assert found is not None
    assert found.text == "A" * 60


def test_the_path_draws_the_modules_and_leaves_the_quiet_zone(inside: Page) -> None:
    drawn = inside.evaluate(
        """(text) => {
          const code = inside.qr(text);
          const size = code.modules.length + 2 * inside.QUIET;
          const path = new Path2D(inside.qrPath(code));
          const context = new OffscreenCanvas(size, size).getContext("2d");
          const at = Array.from({ length: size }, (_, index) => index + 0.5);
          return at.map((y) => at.map((x) => Number(context.isPointInPath(path, x, y))).join(""));
        }""",
        ADDRESS,
    )
    rows = ours(inside, ADDRESS)["modules"]
    empty = "0" * len(drawn)
    assert drawn == [empty] * 4 + [f"0000{row}0000" for row in rows] + [empty] * 4


def test_a_code_takes_no_time_that_a_hand_would_feel(inside: Page) -> None:
    """As long an address as a frame with a mark of its own at each of 100 holes can have."""
    took = inside.evaluate(
        """(text) => {
          const times = Array.from({ length: 5 }, () => {
            const start = performance.now();
            inside.qr(text);
            return performance.now() - start;
          });
          return Math.min(...times);
        }""",
        "x" * 800,
    )
    assert took < 200
