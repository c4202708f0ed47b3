"""How high letters must be to be read from a distance.

Smith, S. L. (1979), “Letter size and legibility”, Human Factors 21(6), 661–670, doi
10.1177/001872087912210604: of some 2,000 measures on over 300 printed displays, over 90 % were legible where
letters were 0.003 of the distance high (10 arc minutes), and all but all at 0.007; the mean limit was 0.0019.
NUREG-0700 (US Nuclear Regulatory Commission), 11.4.1.5-1, asks 0.004 of labels in a control room and
prefers 0.006: a chart that must be read by everybody in poor light wants half the distance.
"""

from __future__ import annotations

SHARE = 0.003
"""Height of a capital letter or figure, as a share of the distance."""

SOURCE = "Smith 1979"

DISTANCE_M = 2.0
"""From here a chart on a wall is read."""

NEAREST_M = 0.4
"""A sheet that has to be read from nearer is no chart (from memory: reading matter held in the hand)."""


def least_mm(distance_m: float) -> float:
    """The least height of a capital letter, in mm, to be read from so far, in metres."""
    return SHARE * distance_m * 1000


def furthest_m(height_mm: float) -> float:
    """From how far letters of this height can be read, in metres."""
    return height_mm / (SHARE * 1000)
