"""Colour as it is measured: contrast, colour vision, and how far apart two colours look."""

from __future__ import annotations

from math import atan2, cos, degrees, exp, hypot, radians, sin, sqrt

Triple = tuple[float, float, float]

VISIONS: dict[str, tuple[Triple, Triple, Triple]] = {
    # G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of
    # Color Vision Deficiency", IEEE TVCG 15 (2009) 1291-1298: matrices of the authors' table, severity 1.0,
    # for linear RGB.
    "usual": ((1, 0, 0), (0, 1, 0), (0, 0, 1)),
    "protanopia": (
        (0.152286, 1.052583, -0.204868),
        (0.114503, 0.786281, 0.099216),
        (-0.003882, -0.048116, 1.051998),
    ),
    "deuteranopia": (
        (0.367322, 0.860646, -0.227968),
        (0.280085, 0.672501, 0.047413),
        (-0.011820, 0.042940, 0.968881),
    ),
    "tritanopia": (
        (1.255528, -0.076749, -0.178779),
        (-0.078411, 0.930809, 0.147602),
        (0.004733, 0.691367, 0.303900),
    ),
}

# sRGB to XYZ and the white point D65, IEC 61966-2-1.
_XYZ = (
    (0.4124564, 0.3575761, 0.1804375),
    (0.2126729, 0.7151522, 0.0721750),
    (0.0193339, 0.1191920, 0.9503041),
)
_WHITE = (0.95047, 1.0, 1.08883)


def linear(colour: str) -> Triple:
    """`#rrggbb` as linear RGB from 0 to 1: WCAG 2.2, relative luminance, step 1."""
    red, green, blue = (int(colour[start : start + 2], 16) / 255 for start in (1, 3, 5))
    return _line(red), _line(green), _line(blue)


def _line(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4


def contrast(one: str, other: str) -> float:
    """The contrast ratio of WCAG 2.2, from 1 to 21."""
    dark, light = sorted(
        0.2126 * red + 0.7152 * green + 0.0722 * blue for red, green, blue in map(linear, (one, other))
    )
    return (light + 0.05) / (dark + 0.05)


def seen(colour: str, vision: str) -> Triple:
    """A colour as CIELAB, as somebody with such a colour vision sees it."""
    rgb = tuple(min(1.0, max(0.0, value)) for value in _times(VISIONS[vision], linear(colour)))
    x, y, z = (value / white for value, white in zip(_times(_XYZ, rgb), _WHITE, strict=True))
    fx, fy, fz = map(_cube, (x, y, z))
    return 116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)


def _cube(value: float) -> float:
    return value ** (1 / 3) if value > 216 / 24389 else (24389 / 27 * value + 16) / 116


def _times(matrix: tuple[Triple, Triple, Triple], values: tuple[float, ...]) -> Triple:
    first, second, third = (sum(a * b for a, b in zip(row, values, strict=True)) for row in matrix)
    return first, second, third


def difference(one: Triple, other: Triple) -> float:
    """CIEDE2000 of two CIELAB colours.

    G. Sharma, W. Wu, E. N. Dalal, "The CIEDE2000 Color-Difference Formula: Implementation Notes,
    Supplementary Test Data, and Mathematical Observations", Color Research and Application 30 (2005) 21-30.
    """
    (l1, a1, b1), (l2, a2, b2) = one, other
    mean_c = (hypot(a1, b1) + hypot(a2, b2)) / 2
    g = 0.5 * (1 - sqrt(mean_c**7 / (mean_c**7 + 25**7)))
    a1, a2 = (1 + g) * a1, (1 + g) * a2
    c1, c2 = hypot(a1, b1), hypot(a2, b2)
    h1, h2 = degrees(atan2(b1, a1)) % 360, degrees(atan2(b2, a2)) % 360
    turn = h2 - h1
    if c1 * c2 == 0:
        turn, mean_h = 0.0, h1 + h2
    elif abs(turn) <= 180:
        mean_h = (h1 + h2) / 2
    else:
        turn += 360 if turn < 0 else -360
        mean_h = (h1 + h2 + (360 if h1 + h2 < 360 else -360)) / 2
    delta_h = 2 * sqrt(c1 * c2) * sin(radians(turn / 2))
    mean_l, mean_c = (l1 + l2) / 2, (c1 + c2) / 2
    t = (
        1
        - 0.17 * cos(radians(mean_h - 30))
        + 0.24 * cos(radians(2 * mean_h))
        + 0.32 * cos(radians(3 * mean_h + 6))
        - 0.20 * cos(radians(4 * mean_h - 63))
    )
    r_c = 2 * sqrt(mean_c**7 / (mean_c**7 + 25**7))
    r_t = -sin(radians(60 * exp(-(((mean_h - 275) / 25) ** 2)))) * r_c
    light = (l2 - l1) / (1 + 0.015 * (mean_l - 50) ** 2 / sqrt(20 + (mean_l - 50) ** 2))
    chroma = (c2 - c1) / (1 + 0.045 * mean_c)
    hue = delta_h / (1 + 0.015 * mean_c * t)
    return sqrt(light**2 + chroma**2 + hue**2 + r_t * chroma * hue)
